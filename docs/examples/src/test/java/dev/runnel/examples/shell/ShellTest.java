package dev.runnel.examples.shell;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.timeseries.Series;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.InputStream;
import java.io.PrintStream;
import java.lang.reflect.Modifier;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileSystem;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Stream;
import jdk.jshell.tool.JavaShellToolBuilder;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ShellTest {
    /** What JShell imports by itself, and what every class sees. */
    private static final List<String> USUAL = List.of(
            "java.lang.",
            "java.io.",
            "java.math.",
            "java.util.function.",
            "java.util.stream.",
            "java.util.regex.",
            "java.util.concurrent.",
            "java.net.");

    @ParameterizedTest
    @ValueSource(classes = {Series.class, CircularSection.class, TippingBucket.class})
    void everyPublicPackageIsImported(Class<?> oneOfTheModule) throws Exception {
        Set<String> packages = new TreeSet<>();
        publicTypes(oneOfTheModule).forEach(type -> packages.add("import " + type.getPackageName() + ".*;"));
        assertThat(packages).isNotEmpty();
        assertThat(Shell.imports().lines()).containsAll(packages);
    }

    @Test
    void noNameHasTwoMeanings() throws Exception {
        Map<String, Set<String>> meanings = new TreeMap<>();
        List<String> packages = new ArrayList<>(USUAL);
        Shell.imports()
                .lines()
                .filter(line -> line.endsWith(".*;") && !line.contains("static"))
                .forEach(line -> packages.add(line.replace("import ", "").replace("*;", "")));
        for (Class<?> module : List.of(Series.class, CircularSection.class, TippingBucket.class)) {
            for (Class<?> type : publicTypes(module)) {
                for (String from : packages) {
                    if (isPublicType(from + type.getSimpleName())) {
                        meanings.computeIfAbsent(type.getSimpleName(), name -> new TreeSet<>())
                                .add(from);
                    }
                }
            }
        }
        assertThat(meanings)
                .isNotEmpty()
                .allSatisfy((name, where) -> assertThat(where).as(name).hasSize(1));
    }

    @Test
    void theRealShellAnswersInFull() throws Exception {
        String long1 = "\"0123456789\".repeat(20)";
        String session = session("var bore = 0.45\nbore * 2\n" + long1 + "\nint half(int a) { return a / 2; }\n"
                + "CircularSection.ofDiameter(bore)\nthrow new IllegalStateException(\"stuck\")\n");
        assertThat(session)
                .contains(
                        "bore ==> 0.45",
                        "$2 ==> 0.9",
                        "$3 ==> \"" + "0123456789".repeat(20) + "\"",
                        "|  created method half(int)",
                        "$5 ==> CircularSection[D = 0.45 m]",
                        "|  Exception java.lang.IllegalStateException: stuck")
                .doesNotContain("|  Error");
    }

    @Test
    void theRealShellDrawsAndSaysWhere() throws Exception {
        String session = session("var drawn = chart(CircularSection.ofDiameter(0.45))\nsparkline(RegularSeries.of("
                + "Instant.EPOCH, ofMinutes(5), 1, 2, 3))\ncharts().size()\n");
        assertThat(session)
                .contains("drawn ==> Chart[CircularSection[D = 0.45 m]]", "lowest 1, highest 3", "$3 ==> 1", "chart: ")
                .doesNotContain("|  E");
        Path page = Path.of(session.lines()
                .filter(line -> line.contains("chart: "))
                .findFirst()
                .orElseThrow()
                .replaceAll(".*chart: ", ""));
        try {
            assertThat(page).exists().content().startsWith("<!DOCTYPE html>");
        } finally {
            Files.deleteIfExists(page);
            Files.deleteIfExists(page.resolveSibling(""));
        }
    }

    /** What a person would see who types this. */
    private static String session(String typed) throws Exception {
        ByteArrayOutputStream shown = new ByteArrayOutputStream();
        PrintStream out = new PrintStream(shown, true, StandardCharsets.UTF_8);
        InputStream in = new ByteArrayInputStream((typed + "/exit\n").getBytes(StandardCharsets.UTF_8));
        String before = System.getProperty("runnel.charts", "keep");
        System.setProperty("runnel.charts", "print");
        try {
            Shell.run(JavaShellToolBuilder.builder().in(in, null).out(out).err(out));
        } finally {
            System.setProperty("runnel.charts", before);
        }
        return shown.toString(StandardCharsets.UTF_8);
    }

    /** The top-level types a user may name, of the jar or the classes folder that a given one came from. */
    private static List<Class<?>> publicTypes(Class<?> oneOfTheModule) throws Exception {
        URI location = oneOfTheModule
                .getProtectionDomain()
                .getCodeSource()
                .getLocation()
                .toURI();
        if (location.getPath().endsWith(".jar")) {
            try (FileSystem jar = FileSystems.newFileSystem(Path.of(location))) {
                return publicTypes(jar.getPath("/"));
            }
        }
        return publicTypes(Path.of(location));
    }

    private static List<Class<?>> publicTypes(Path root) throws Exception {
        List<Class<?>> types = new ArrayList<>();
        try (Stream<Path> files = Files.walk(root)) {
            for (Path file :
                    files.filter(path -> path.toString().endsWith(".class")).toList()) {
                String name =
                        root.relativize(file).toString().replace(".class", "").replaceAll("[/\\\\]", ".");
                boolean offered = !name.contains("$") && !name.contains(".internal.") && !name.contains(".base.");
                if (offered && isPublicType(name)) {
                    types.add(Class.forName(name));
                }
            }
        }
        return types;
    }

    private static boolean isPublicType(String name) {
        try {
            return Modifier.isPublic(
                    Class.forName(name, false, ShellTest.class.getClassLoader()).getModifiers());
        } catch (ClassNotFoundException e) {
            return false;
        }
    }
}
