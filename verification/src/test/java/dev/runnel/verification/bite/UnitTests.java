package dev.runnel.verification.bite;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.platform.engine.TestExecutionResult;
import org.junit.platform.engine.discovery.ClassNameFilter;
import org.junit.platform.engine.discovery.DiscoverySelectors;
import org.junit.platform.launcher.LauncherDiscoveryRequest;
import org.junit.platform.launcher.TagFilter;
import org.junit.platform.launcher.TestExecutionListener;
import org.junit.platform.launcher.TestIdentifier;
import org.junit.platform.launcher.core.LauncherDiscoveryRequestBuilder;
import org.junit.platform.launcher.core.LauncherFactory;

/**
 * Asks the unit tests of the package of a changed class, in a process of its own, whether they notice the change. Its main
 * method is that process, and ends with a number of its own at the first test that fails: 1 is what a JVM that cannot begin
 * ends with, and would be taken for a test that notices everything.
 */
public final class UnitTests {
    private static final int NOTICED = 10;
    private static final int PASSED = 0;
    private static final int MINUTES = 4;

    /** What the tests say of a change. */
    enum Answer {
        /** A test fails. */
        NOTICED,
        /** All pass. */
        PASSED,
        /** They do not come to an end in their time: an endless loop, or a busy machine. Nobody can tell which. */
        TOO_LONG
    }

    private UnitTests() {}

    /**
     * Asks the tests of the package about a change.
     *
     * @param className the changed class
     * @param bytes the class with the change
     * @return what they say
     */
    static Answer ask(String className, byte[] bytes) {
        String module = className.split("\\.")[2];
        Path folder = null;
        try {
            folder = Files.createTempDirectory("bite");
            Path file = folder.resolve(className.replace('.', '/') + ".class");
            Files.createDirectories(file.getParent());
            Files.write(file, bytes);
            String path = String.join(
                    System.getProperty("path.separator"),
                    folder.toString(),
                    Path.of("..", module, "target", "test-classes").toString(),
                    System.getProperty("surefire.test.class.path", System.getProperty("java.class.path")));
            Process process = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-XX:TieredStopAtLevel=1",
                            "-cp",
                            path,
                            UnitTests.class.getName(),
                            className.substring(0, className.lastIndexOf('.')))
                    .redirectErrorStream(true)
                    .redirectOutput(folder.resolve("out.txt").toFile())
                    .start();
            if (!process.waitFor(MINUTES, TimeUnit.MINUTES)) {
                process.destroyForcibly();
                return Answer.TOO_LONG;
            }
            if (process.exitValue() != PASSED && process.exitValue() != NOTICED) {
                throw new IllegalStateException(
                        "the tests could not be run: " + Files.readString(folder.resolve("out.txt")));
            }
            return process.exitValue() == NOTICED ? Answer.NOTICED : Answer.PASSED;
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
     * Runs the tests of a package.
     *
     * @param arguments name of the package
     */
    public static void main(String[] arguments) {
        LauncherDiscoveryRequest request = LauncherDiscoveryRequestBuilder.request()
                .selectors(List.of(DiscoverySelectors.selectPackage(arguments[0])))
                .filters(ClassNameFilter.includeClassNamePatterns(".*(Test|Properties)"), TagFilter.excludeTags("gate"))
                .configurationParameter("jqwik.reporting.onlyfailures", "true")
                .configurationParameter("jqwik.database", "")
                .build();
        long[] run = {0};
        LauncherFactory.create().execute(request, new TestExecutionListener() {
            @Override
            public void executionFinished(TestIdentifier test, TestExecutionResult result) {
                run[0] += test.isTest() ? 1 : 0;
                if (result.getStatus() == TestExecutionResult.Status.FAILED) {
                    Runtime.getRuntime().halt(NOTICED);
                }
            }
        });
        Runtime.getRuntime().halt(run[0] > 0 ? PASSED : 2);
    }
}
