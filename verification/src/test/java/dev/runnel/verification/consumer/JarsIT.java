package dev.runnel.verification.consumer;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.verification.House;
import java.io.File;
import java.io.IOException;
import java.lang.module.ModuleFinder;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.JarFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class JarsIT {
    private static final Path SOURCES = House.root().resolve("verification/src/test/resources/consumer");

    @TempDir
    private Path classes;

    @ParameterizedTest
    @MethodSource("dev.runnel.verification.Modules#names")
    void jarNamesItselfAndCarriesTheLicence(String module) throws IOException {
        assertThat(ModuleFinder.of(Jars.of(module)).findAll())
                .singleElement()
                .satisfies(found -> assertThat(found.descriptor().name()).isEqualTo("dev.runnel." + module));
        try (JarFile jar = new JarFile(Jars.of(module).toFile())) {
            assertThat(jar.stream().map(entry -> entry.getName())).contains("META-INF/LICENSE");
        }
    }

    @Test
    void worksFromTheClassPath() throws Exception {
        compile("--class-path", Jars.libraries(), SOURCES.resolve("Consumer.java"));
        assertThat(run("--class-path", classes + File.pathSeparator + Jars.libraries(), "consumer.Consumer"))
                .containsExactly("2328", "312518", "1.5", "class path");
    }

    @Test
    void worksFromTheModulePath() throws Exception {
        compile(
                "--module-path",
                Jars.libraries(),
                SOURCES.resolve("Consumer.java"),
                SOURCES.resolve("module-info.java"));
        assertThat(run(
                        "--module-path",
                        classes + File.pathSeparator + Jars.libraries(),
                        "--module",
                        "consumer/consumer.Consumer"))
                .containsExactly("2328", "312518", "1.5", "module path");
    }

    /**
     * As strict as a careful user would be, a warning about our class files being an error; and as a process of its own,
     * since a compiler inside this one sees the path of the tests as well.
     */
    private void compile(String option, String path, Path... sources) throws Exception {
        List<String> arguments = new ArrayList<>(List.of(
                option,
                path,
                "-d",
                classes.toString(),
                "-Xlint:all,-requires-automatic",
                "-Werror",
                "--release",
                "17"));
        for (Path source : sources) {
            arguments.add(source.toString());
        }
        assertThat(tool("javac", arguments)).isEmpty();
    }

    private static List<String> run(String... arguments) throws Exception {
        return tool("java", List.of(arguments));
    }

    /** Starts a tool of the JDK and returns what it printed; the arguments pass through a file, whatever is in a path. */
    private static List<String> tool(String name, List<String> arguments) throws Exception {
        Path file = Files.createTempFile("arguments", ".txt");
        try {
            Files.write(
                    file,
                    arguments.stream()
                            .map(each -> '"' + each.replace("\\", "\\\\") + '"')
                            .toList(),
                    Charset.forName(System.getProperty("native.encoding")));
            Process process = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", name)
                                    .toString(),
                            "@" + file)
                    .redirectErrorStream(true)
                    .start();
            List<String> lines = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .toList();
            assertThat(process.waitFor()).as(String.join("\n", lines)).isZero();
            return lines;
        } finally {
            Files.delete(file);
        }
    }
}
