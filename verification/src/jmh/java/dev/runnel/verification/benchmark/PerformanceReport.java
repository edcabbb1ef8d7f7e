package dev.runnel.verification.benchmark;

import java.io.IOException;
import java.lang.reflect.Method;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.openjdk.jmh.profile.GCProfiler;
import org.openjdk.jmh.results.Result;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;

/**
 * Runs the short set of benchmarks and writes docs/performance.md: each kernel beside its rivals, measured one after the
 * other in the same round, so that what is stated is a ratio and not the time of one machine.
 *
 * <pre>mvn -q package -P bench-report</pre>
 *
 * <p>Takes about ten minutes and wants a machine that does nothing else; {@code -Dbench.rounds=1} takes a third of it. A later
 * JDK that lies beside the one that runs this is measured too, one round of it.
 */
public final class PerformanceReport {
    private static final List<Class<? extends TimedBenchmark>> BENCHMARKS = List.of(
            CircularAreaBenchmark.class,
            ManningBenchmark.class,
            ColebrookWhiteBenchmark.class,
            CriticalDepthBenchmark.class,
            EggDepthBenchmark.class,
            FrictionFactorBenchmark.class,
            FlowArraysBenchmark.class,
            FlowSeriesBenchmark.class,
            TipsBenchmark.class,
            EventsBenchmark.class,
            SlidingMaximumBenchmark.class,
            AlarmBenchmark.class,
            CsvBenchmark.class,
            MedianBenchmark.class,
            BootstrapBenchmark.class);

    private static final String ALLOCATION = "gc.alloc.rate.norm";

    private PerformanceReport() {}

    /**
     * Runs and writes.
     *
     * @param args the file to write, the number of rounds, and part of a class name to measure those classes alone
     * @throws RunnerException if a benchmark fails, for one because its accuracy is not what it must be
     * @throws IOException if the file cannot be written
     */
    public static void main(String[] args) throws RunnerException, IOException {
        int rounds = Integer.parseInt(args[1]);
        // A third argument, part of a class name, measures those classes alone.
        String part = args.length > 2 ? args[2] : "";
        List<Class<? extends TimedBenchmark>> chosen = BENCHMARKS.stream()
                .filter(benchmark -> benchmark.getSimpleName().contains(part))
                .toList();
        Path home = Path.of(System.getProperty("java.home"));
        List<Map<String, RunResult>> measured = new ArrayList<>();
        for (int round = 0; round < rounds; round++) {
            measured.add(round(chosen, home));
        }
        Optional<LaterJdk> later = LaterJdk.beside(home);
        Map<String, RunResult> byLater =
                later.isPresent() ? round(chosen, later.get().home()) : Map.of();
        Files.writeString(Path.of(args[0]), page(chosen, measured, later, byLater), StandardCharsets.UTF_8);
    }

    private static Map<String, RunResult> round(List<Class<? extends TimedBenchmark>> chosen, Path jdk)
            throws RunnerException {
        Map<String, RunResult> results = new LinkedHashMap<>();
        for (Class<?> benchmark : chosen) {
            run(benchmark, jdk).forEach(result -> results.put(result.getParams().getBenchmark(), result));
        }
        return results;
    }

    private static Iterable<RunResult> run(Class<?> benchmark, Path jdk) throws RunnerException {
        var options = new OptionsBuilder()
                .jvm(jdk.resolve("bin").resolve("java").toString())
                .include("\\." + benchmark.getSimpleName() + "\\.")
                .addProfiler(GCProfiler.class)
                .timeout(TimeValue.minutes(2))
                .shouldFailOnError(true)
                .verbosity(VerboseMode.SILENT)
                .build();
        return new Runner(options).run();
    }

    private static String page(
            List<Class<? extends TimedBenchmark>> chosen,
            List<Map<String, RunResult>> measured,
            Optional<LaterJdk> later,
            Map<String, RunResult> byLater)
            throws IOException {
        StringBuilder text = new StringBuilder();
        text.append("# Performance\n\n")
                .append(
                        "How long the kernels take beside what one would write without them, and beside the floor that the\n")
                .append("processor sets. Each row is measured in ")
                .append(measured.size() == 1 ? "one round" : measured.size() + " rounds")
                .append(", kernel and rival one after the other; the figure is\n")
                .append(
                        "the middle one of the ratios, rival's time over ours: above 1 we take less. Accuracy is asserted before\n")
                .append("anything is timed.\n\n```text\nmvn -q package -P bench-report -Dbench.rounds=")
                .append(measured.size())
                .append("\n```\n\n")
                .append("| | |\n| --- | --- |\n")
                .append(row("processor", processor()))
                .append(row(
                        "processors the JVM sees",
                        String.valueOf(Runtime.getRuntime().availableProcessors())))
                .append(row("system", System.getProperty("os.name") + " " + System.getProperty("os.arch")))
                .append(row("JDK", System.getProperty("java.vm.name") + " " + Runtime.version()))
                .append(row("later JDK", later.map(LaterJdk::name).orElse("none beside it")))
                .append(row("benchmarks", "JMH, fixed seeds, one thread; sources in `verification/src/jmh`"))
                .append(
                        "\n| kernel | beside | rival's time / ours | least to most | goal | met | ours, ns | allocated a call, bytes | rival's time / ours, later JDK |\n")
                .append("| --- | --- | ---: | ---: | ---: | --- | ---: | ---: | ---: |\n");
        for (Class<?> benchmark : chosen) {
            for (Method method : inOrder(benchmark)) {
                for (Against against : method.getAnnotationsByType(Against.class)) {
                    text.append(row(measured, byLater, benchmark, method, against));
                }
            }
        }
        text.append(
                        "\nTimes are those of one element (a depth, a reading, a minute, a row of the file); what is allocated is that of\n")
                .append("a whole call, with all elements of its array, series or file. Ratios to forms with an\n")
                .append(
                        "inverse cosine are several times smaller on JDK 21 and later, where it is no longer a native call.\n");
        return text.append(CostGrowth.plots()).toString();
    }

    private static List<Method> inOrder(Class<?> benchmark) {
        return Arrays.stream(benchmark.getDeclaredMethods())
                .filter(method -> method.getAnnotationsByType(Against.class).length > 0)
                .sorted((a, b) -> a.getName().compareTo(b.getName()))
                .toList();
    }

    private static String row(
            List<Map<String, RunResult>> measured,
            Map<String, RunResult> byLater,
            Class<?> benchmark,
            Method method,
            Against against) {
        double[] ratios = new double[measured.size()];
        double[] times = new double[measured.size()];
        double allocated = 0;
        for (int i = 0; i < ratios.length; i++) {
            RunResult ours = result(measured.get(i), benchmark, method.getName());
            RunResult rival = result(measured.get(i), benchmark, against.rival());
            times[i] = ours.getPrimaryResult().getScore();
            ratios[i] = rival.getPrimaryResult().getScore() / times[i];
            Result<?> perElement = ours.getSecondaryResults().get(ALLOCATION);
            if (perElement == null) {
                perElement = ours.getSecondaryResults().get("·" + ALLOCATION);
            }
            allocated = perElement == null
                    ? Double.NaN
                    : perElement.getScore() * ours.getParams().getOpsPerInvocation();
        }
        Arrays.sort(ratios);
        Arrays.sort(times);
        return row(
                against.row(),
                against.named(),
                number(ratios[ratios.length / 2]),
                number(ratios[0]) + " to " + number(ratios[ratios.length - 1]),
                against.goal() > 0 ? number(against.goal()) : "",
                against.goal() > 0 ? ratios[ratios.length / 2] >= against.goal() ? "yes" : "no" : "",
                number(times[times.length / 2]),
                Double.isNaN(allocated) ? "unknown" : String.format(Locale.ROOT, "%.0f", allocated),
                byLater.isEmpty() ? "" : number(ratio(byLater, benchmark, method, against)));
    }

    private static double ratio(Map<String, RunResult> results, Class<?> benchmark, Method method, Against against) {
        return result(results, benchmark, against.rival()).getPrimaryResult().getScore()
                / result(results, benchmark, method.getName())
                        .getPrimaryResult()
                        .getScore();
    }

    private static RunResult result(Map<String, RunResult> results, Class<?> benchmark, String method) {
        RunResult result = results.get(benchmark.getName() + "." + method);
        if (result == null) {
            throw new IllegalStateException("no result of " + benchmark.getSimpleName() + "." + method);
        }
        return result;
    }

    private static String row(String... cells) {
        return "| " + String.join(" | ", cells) + " |\n";
    }

    /** Three digits, and no more decimals than that. */
    private static String number(double value) {
        int decimals = value >= 100 ? 0 : value >= 10 ? 1 : value >= 1 ? 2 : 3;
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    /** What Linux tells of the processor, else its kind. */
    private static String processor() throws IOException {
        Path info = Path.of("/proc/cpuinfo");
        if (!Files.isReadable(info)) {
            return System.getProperty("os.arch");
        }
        return Files.readAllLines(info, StandardCharsets.UTF_8).stream()
                .filter(line -> line.startsWith("model name"))
                .map(line -> line.substring(line.indexOf(':') + 1).strip())
                .findFirst()
                .orElse(System.getProperty("os.arch"));
    }
}
