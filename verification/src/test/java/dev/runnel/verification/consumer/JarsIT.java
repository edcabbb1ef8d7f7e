package dev.runnel.verification.consumer;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.verification.House;
import java.io.ByteArrayOutputStream;
import java.io.File;
import java.io.IOException;
import java.lang.module.ModuleFinder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.jar.JarFile;
import javax.tools.ToolProvider;
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

    /** As strict as a careful user would be: a warning about our class files is an error. */
    private void compile(String option, String path, Path... sources) {
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
        ByteArrayOutputStream messages = new ByteArrayOutputStream();
        int status =
                ToolProvider.getSystemJavaCompiler().run(null, messages, messages, arguments.toArray(String[]::new));
        assertThat(status).as(messages.toString(StandardCharsets.UTF_8)).isZero();
    }

    private static List<String> run(String... arguments) throws Exception {
        List<String> command = new ArrayList<>(
                List.of(Path.of(System.getProperty("java.home"), "bin", "java").toString()));
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        List<String> lines = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                .lines()
                .toList();
        assertThat(process.waitFor()).as(String.join("\n", lines)).isZero();
        return lines;
    }
}
