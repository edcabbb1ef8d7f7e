package dev.runnel.verification.consumer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import dev.runnel.verification.House;
import dev.runnel.verification.Modules;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The projects of {@code docs/consumers}, built as a user builds them: by Maven and by Gradle, with the artifacts of this
 * build out of a repository, by this JDK and by the latest that lies beside it.
 */
class ConsumersIT {
    private static final List<String> FIGURES = List.of("2328", "312518", "1.5");

    /** A local repository: what the machine has, by links, and our artifacts as {@code mvn install} would put them there. */
    private static Path repository = Path.of("");

    @TempDir
    private Path project;

    @BeforeAll
    static void install() throws IOException {
        repository = Files.createTempDirectory("repository");
        Path machine = Path.of(System.getProperty("local.repository"));
        linkAllBut(machine, repository, "dev");
        Path groups = Files.createDirectories(repository.resolve("dev"));
        linkAllBut(machine.resolve("dev"), groups, "runnel");
        install("runnel-bom", House.root().resolve("docs/bom/target/published-pom.xml"), null);
        for (String module : Modules.names()) {
            install(
                    "runnel-" + module,
                    House.root().resolve(module).resolve("target/published-pom.xml"),
                    Jars.of(module));
        }
    }

    @AfterAll
    static void delete() throws IOException {
        // Links are not followed.
        try (Stream<Path> all = Files.walk(repository)) {
            for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(each);
            }
        }
    }

    private static void linkAllBut(Path folder, Path to, String name) throws IOException {
        if (!Files.isDirectory(folder)) {
            return;
        }
        try (Stream<Path> all = Files.list(folder)) {
            for (Path each : all.toList()) {
                if (!each.getFileName().toString().equals(name)) {
                    link(to.resolve(each.getFileName()), each);
                }
            }
        }
    }

    private static void link(Path link, Path target) throws IOException {
        try {
            Files.createSymbolicLink(link, target);
        } catch (IOException | UnsupportedOperationException e) {
            assumeTrue(false, "links to files need a right that this user has not: " + e.getMessage());
        }
    }

    private static void install(String artifact, Path pom, @Nullable Path jar) throws IOException {
        String version = System.getProperty("project.version");
        Path folder = Files.createDirectories(
                repository.resolve("dev/runnel").resolve(artifact).resolve(version));
        Files.copy(pom, folder.resolve(artifact + "-" + version + ".pom"));
        if (jar != null) {
            Files.copy(jar, folder.resolve(artifact + "-" + version + ".jar"));
        }
    }

    /** This JDK, and the latest beside it. */
    static List<Path> jdks() throws IOException {
        Path mine = Path.of(System.getProperty("java.home"));
        List<Path> jdks = new ArrayList<>(List.of(mine));
        try (Stream<Path> beside = Files.list(mine.toRealPath().getParent())) {
            beside.filter(jdk -> version(jdk) > version(mine) && Files.isRegularFile(jdk.resolve("bin/javac")))
                    .max(Comparator.comparingInt(ConsumersIT::version))
                    .ifPresent(jdks::add);
        }
        return jdks;
    }

    /** The number of a JDK, or 0 if the folder is none. */
    private static int version(Path jdk) {
        try {
            return Files.readAllLines(jdk.resolve("release")).stream()
                    .filter(line -> line.startsWith("JAVA_VERSION=\""))
                    .map(line -> line.replaceAll("\\D*(\\d+).*", "$1"))
                    .mapToInt(Integer::parseInt)
                    .findFirst()
                    .orElse(0);
        } catch (IOException e) {
            return 0;
        }
    }

    @ParameterizedTest
    @MethodSource("jdks")
    void mavenOnTheClassPath(Path jdk) throws Exception {
        assertThat(maven("maven-class-path", jdk)).containsExactlyElementsOf(figures("class path"));
    }

    @ParameterizedTest
    @MethodSource("jdks")
    void mavenOnTheModulePath(Path jdk) throws Exception {
        assertThat(maven("maven-module-path", jdk)).containsExactlyElementsOf(figures("module path"));
    }

    @Test
    void gradle() throws Exception {
        String program = windows() ? "gradle.bat" : "gradle";
        assumeTrue(
                Stream.of(System.getenv("PATH").split(File.pathSeparator))
                        .anyMatch(folder -> Files.isExecutable(Path.of(folder, program))),
                "no gradle on the path");
        copy("gradle");
        List<String> lines = run(
                Path.of(System.getProperty("java.home")),
                program,
                "-q",
                "--no-daemon",
                "--offline",
                "-g",
                project.resolve("home").toString(),
                "-Dmaven.repo.local=" + repository,
                "-PrunnelVersion=" + System.getProperty("project.version"),
                "run");
        assertThat(lines).endsWith(figures("class path").toArray(String[]::new));
    }

    /** An image of the JDK with what the libraries need of it, and nothing of them: they are automatic modules. */
    @Test
    void imageOfTheJdk() throws Exception {
        Path jdk = Path.of(System.getProperty("java.home"));
        Path image = project.resolve("image");
        run(
                jdk,
                jdk.resolve("bin/jlink").toString(),
                "--add-modules",
                "java.base,java.xml",
                "--output",
                image.toString());
        copy("maven-class-path");
        Files.createDirectory(project.resolve("lib"));
        for (String jar : Jars.libraries().split(File.pathSeparator)) {
            Files.copy(Path.of(jar), project.resolve("lib").resolve(Path.of(jar).getFileName()));
        }
        run(
                jdk,
                jdk.resolve("bin/javac").toString(),
                "-cp",
                "lib/*",
                "-d",
                "classes",
                "src/main/java/consumer/Consumer.java");
        assertThat(run(
                        image,
                        image.resolve("bin/java").toString(),
                        "-cp",
                        "classes" + File.pathSeparator + "lib/*",
                        "consumer.Consumer"))
                .containsExactlyElementsOf(figures("class path"));
    }

    private static List<String> figures(String where) {
        return Stream.concat(FIGURES.stream(), Stream.of(where)).toList();
    }

    private List<String> maven(String name, Path jdk) throws Exception {
        copy(name);
        return run(
                jdk,
                Path.of(System.getProperty("maven.home"), "bin", windows() ? "mvn.cmd" : "mvn")
                        .toString(),
                "-q",
                "-B",
                "-ntp",
                "-Dstyle.color=never",
                "-Dmaven.repo.local=" + repository,
                "-Drunnel.version=" + System.getProperty("project.version"),
                "process-classes");
    }

    private static Path folder(String name) {
        return House.root().resolve("docs/consumers").resolve(name);
    }

    private void copy(String name) throws IOException {
        try (Stream<Path> files = Files.walk(folder(name))) {
            for (Path file : files.filter(Files::isRegularFile).toList()) {
                Path to = project.resolve(folder(name).relativize(file).toString());
                Files.createDirectories(to.getParent());
                Files.copy(file, to);
            }
        }
    }

    /** Runs a program in the project's folder and returns what it printed. */
    private List<String> run(Path jdk, String... command) throws Exception {
        ProcessBuilder builder = new ProcessBuilder(command).directory(project.toFile());
        Map<String, String> environment = builder.environment();
        environment.put("JAVA_HOME", jdk.toString());
        environment.keySet().removeIf(each -> each.startsWith("MAVEN_") || each.equals("JAVA_TOOL_OPTIONS"));
        Path errors = project.resolve("errors.txt");
        Process process = builder.redirectError(errors.toFile()).start();
        List<String> lines = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8)
                .lines()
                // Maven writes escape codes around what it does not print itself.
                .map(line -> line.replaceAll("\u001b\\[[0-9;]*m", ""))
                .filter(line -> !line.isEmpty())
                .toList();
        assertThat(process.waitFor())
                .as(String.join("\n", lines) + "\n" + Files.readString(errors, StandardCharsets.ISO_8859_1))
                .isZero();
        return lines;
    }

    private static boolean windows() {
        return File.separatorChar == '\\';
    }
}
