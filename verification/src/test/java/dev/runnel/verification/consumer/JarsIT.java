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
import java.util.jar.JarEntry;
import java.util.jar.JarFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class JarsIT {
    private static final Path SOURCES = House.root().resolve("docs/consumers/maven-module-path/src/main/java");

    @TempDir
    private Path classes;

    @ParameterizedTest
    @MethodSource("dev.runnel.verification.Modules#names")
    void jarNamesItselfAndCarriesLicenceAndNotice(String module) throws IOException {
        assertThat(ModuleFinder.of(Jars.of(module)).findAll())
                .singleElement()
                .satisfies(found -> assertThat(found.descriptor().name()).isEqualTo("dev.runnel." + module));
        try (JarFile jar = new JarFile(Jars.of(module).toFile())) {
            assertThat(jar.stream().map(entry -> entry.getName())).contains("META-INF/LICENSE", "META-INF/NOTICE");
        }
    }

    @Test
    void runnableJarCarriesTheTextsOfAllItHolds() throws IOException {
        Path file = House.root().resolve("verification/target/runnel-verification.jar");
        try (JarFile jar = new JarFile(file.toFile())) {
            assertThat(text(jar, "META-INF/LICENSE"))
                    .isEqualTo(Files.readString(House.root().resolve("docs/LICENSE"), StandardCharsets.UTF_8))
                    .contains("Apache License", "TERMS AND CONDITIONS");
            assertThat(text(jar, "META-INF/NOTICE"))
                    .contains("The Runnel authors", "Apache Commons Math", "Apache Commons Numbers");
            assertThat(text(jar, "META-INF/licenses/fastcsv.txt")).contains("MIT License");
            assertThat(text(jar, "META-INF/licenses/jts-core.txt")).contains("Eclipse Distribution License");
            // Whoever adds a library adds its text.
            assertThat(jar.stream()
                            .map(JarEntry::getName)
                            .filter(name -> name.endsWith(".class"))
                            .map(name -> name.substring(0, name.lastIndexOf('/')))
                            .filter(name -> !name.matches(
                                    "(META-INF/versions/.*/)?(dev/runnel|org/apache/commons/(math3|numbers)|org/jspecify"
                                            + "|org/apiguardian|de/siegmar/fastcsv|org/locationtech/jts)(/.*)?"))
                            .distinct())
                    .isEmpty();
        }
    }

    private static String text(JarFile jar, String name) throws IOException {
        return new String(jar.getInputStream(jar.getEntry(name)).readAllBytes(), StandardCharsets.UTF_8);
    }

    @Test
    void worksFromTheClassPath() throws Exception {
        compile("--class-path", Jars.libraries(), SOURCES.resolve("consumer/Consumer.java"));
        assertThat(run("--class-path", classes + File.pathSeparator + Jars.libraries(), "consumer.Consumer"))
                .containsExactly("2328", "312518", "1.5", "class path");
    }

    @Test
    void worksFromTheModulePath() throws Exception {
        compile(
                "--module-path",
                Jars.libraries(),
                SOURCES.resolve("consumer/Consumer.java"),
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

    /** An argument in which each path, if it is one or several joined, is relative. */
    private static String fromHere(String argument) {
        Path here = Path.of("").toAbsolutePath();
        List<String> parts = new ArrayList<>();
        for (String part : argument.split(File.pathSeparator)) {
            boolean near = new File(part).isAbsolute()
                    && here.getRoot().equals(Path.of(part).getRoot());
            parts.add(near ? here.relativize(Path.of(part)).toString() : part);
        }
        return String.join(File.pathSeparator, parts);
    }

    /**
     * Starts a tool of the JDK and returns what it printed. The arguments pass through a file, whatever is in a path; and
     * from the folder in which both processes stand, since JDK 17 hands over nothing that is not in {@code file.encoding}.
     */
    private static List<String> tool(String name, List<String> arguments) throws Exception {
        Path file = Files.createTempFile("arguments", ".txt");
        try {
            Files.write(
                    file,
                    arguments.stream()
                            .map(JarsIT::fromHere)
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
