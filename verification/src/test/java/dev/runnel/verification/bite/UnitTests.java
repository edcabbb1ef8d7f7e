package dev.runnel.verification.bite;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.platform.engine.TestExecutionResult;
import org.junit.platform.engine.discovery.DiscoverySelectors;
import org.junit.platform.launcher.LauncherDiscoveryRequest;
import org.junit.platform.launcher.TagFilter;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestIdentifier;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;

/**
 * Asks the {@linkplain NearestTests unit tests that reach} a changed class, in a process of its own, whether they notice the
 * change. Its main method is that process, and ends with a number of its own at the first test that fails: 1 is what a JVM that
 * cannot begin ends with, and would be taken for a test that notices everything.
 */
public final class UnitTests {
    private static final int NOTICED = 10;
    private static final int PASSED = 0;
    private static final int TOO_LONG = 11;

    /** Of computing, not of waiting: a busy machine changes no answer. */
    private static final Duration LIMIT = Duration.ofMinutes(1);

    private static final Duration GLANCE = Duration.ofMillis(500);

    /** What the tests say of a change. */
    enum Answer {
        /** A test fails. */
        NOTICED,
        /** All pass. */
        PASSED,
        /** No test failed within the limit: an endless loop, or many slow tests. Nobody can tell which. */
        TOO_LONG;

        String text() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    private UnitTests() {}

    /** Whether a test class passes in the library as it is; one that does not would notice everything. */
    private static final Map<String, Boolean> SOUND = new ConcurrentHashMap<>();

    /**
     * Asks the tests of the module that reach the class about a change.
     *
     * @param className the changed class
     * @param bytes the class with the change
     * @return what they say
     */
    static Answer ask(String className, byte[] bytes) {
        List<String> tests = new ArrayList<>(NearestTests.of(className));
        while (true) {
            tests.removeAll(unsound());
            Said said = tests.isEmpty() ? new Said(Answer.PASSED, "") : run(tests, className, bytes);
            if (said.answer != Answer.NOTICED || SOUND.computeIfAbsent(said.test, UnitTests::passesByItself)) {
                return said.answer;
            }
        }
    }

    /** The test classes that failed in the library as it is, and so were left out. */
    static List<String> unsound() {
        return SOUND.entrySet().stream()
                .filter(each -> !each.getValue())
                .map(Map.Entry::getKey)
                .sorted()
                .toList();
    }

    private static boolean passesByItself(String test) {
        return run(List.of(test), test, new byte[0]).answer == Answer.PASSED;
    }

    /** What tests say, and the class that failed. */
    private record Said(Answer answer, String test) {}

    /** Runs test classes of a module in a JVM of their own, with a class in place of the library's if there are bytes. */
    private static Said run(List<String> tests, String className, byte[] bytes) {
        Path module =
                NearestTests.folder(className.split("\\.")[2]).toAbsolutePath().normalize();
        Path folder = null;
        try {
            folder = Files.createTempDirectory("bite");
            if (bytes.length > 0) {
                Path file = folder.resolve(className.replace('.', '/') + ".class");
                Files.createDirectories(file.getParent());
                Files.write(file, bytes);
            }
            Path out = folder.resolve("out.txt");
            Path failed = folder.resolve("failed.txt");
            List<String> command = new ArrayList<>(List.of(
                    Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                    "-XX:TieredStopAtLevel=1",
                    "-XX:+UseSerialGC",
                    "-cp",
                    String.join(
                            System.getProperty("path.separator"),
                            folder.toString(),
                            module.toString(),
                            System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"))),
                    UnitTests.class.getName(),
                    failed.toString()));
            command.addAll(tests);
            int said = new ProcessBuilder(command)
                    .directory(module.resolve("../..").normalize().toFile())
                    .redirectErrorStream(true)
                    .redirectOutput(out.toFile())
                    .start()
                    .waitFor();
            return switch (said) {
                case NOTICED -> new Said(Answer.NOTICED, Files.readString(failed));
                case PASSED -> new Said(Answer.PASSED, "");
                case TOO_LONG -> new Said(Answer.TOO_LONG, "");
                default -> throw new IllegalStateException("the tests could not be run: " + Files.readString(out));
            };
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        } finally {
            delete(folder);
        }
    }

    private static void delete(@Nullable Path folder) {
        if (folder == null) {
            return;
        }
        try (Stream<Path> files = Files.walk(folder)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) {
                Files.delete(file);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Runs test classes in their order.
     *
     * @param arguments file for the name of the class that fails, and the names of the classes
     */
    public static void main(String[] arguments) {
        Thread clock = new Thread(UnitTests::endAtLimit);
        clock.setDaemon(true);
        clock.start();
        int[] run = {0};
        Path failed = Path.of(arguments[0]);
        for (String name : List.of(arguments).subList(1, arguments.length)) {
            // One after the other: a launcher that is given all chooses an order of its own.
            LauncherDiscoveryRequest request = LauncherDiscoveryRequestBuilder.request()
                    .selectors(List.of(DiscoverySelectors.selectClass(name)))
                    .filters(TagFilter.excludeTags("gate"))
                    .configurationParameter("jqwik.reporting.onlyfailures", "true")
                    .configurationParameter("jqwik.database", "")
                    .build();
            LauncherFactory.create().execute(request, new TestExecutionListener() {
                @Override
                public void executionFinished(TestIdentifier test, TestExecutionResult result) {
                    run[0] += test.isTest() ? 1 : 0;
                    if (result.getStatus() == TestExecutionResult.Status.FAILED) {
                        note(failed, name);
                        Runtime.getRuntime().halt(NOTICED);
                    }
                }
            });
        }
        Runtime.getRuntime().halt(run[0] > 0 ? PASSED : 2);
    }

    private static void note(Path file, String name) {
        try {
            Files.writeString(file, name);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void endAtLimit() {
        while (ProcessHandle.current()
                        .info()
                        .totalCpuDuration()
                        .orElse(Duration.ZERO)
                        .compareTo(LIMIT)
                < 0) {
            try {
                Thread.sleep(GLANCE.toMillis());
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                return;
            }
        }
        Runtime.getRuntime().halt(TOO_LONG);
    }
}
