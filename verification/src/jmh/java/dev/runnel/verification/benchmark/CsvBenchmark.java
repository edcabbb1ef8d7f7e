package dev.runnel.verification.benchmark;

import dev.runnel.timeseries.csv.CsvLayout;
import dev.runnel.timeseries.csv.CsvRecords;
import dev.runnel.timeseries.csv.CsvResult;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Locale;
import java.util.SplittableRandom;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.OperationsPerInvocation;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.TearDown;

/**
 * A file of readings, two values a row.
 *
 * <pre>mvn -q package -Dbench=Csv</pre>
 */
@State(Scope.Thread)
public class CsvBenchmark extends TimedBenchmark {
    private static final int ROWS = 100_000;

    private final CsvLayout layout =
            CsvLayout.of("time").withZone(ZoneOffset.UTC).withColumn("depth").withColumn("velocity");
    private final long[] times = new long[ROWS];
    private final double[] depths = new double[ROWS];
    private final double[] velocities = new double[ROWS];
    private Path file = Path.of("");

    /** The file, and the check. */
    @Setup
    public void write() throws IOException {
        SplittableRandom random = new SplittableRandom(SEED);
        LocalDateTime start = LocalDateTime.of(2019, 1, 1, 0, 0);
        StringBuilder text = new StringBuilder("time,depth,velocity\n");
        for (int i = 0; i < ROWS; i++) {
            text.append(start.plusMinutes(2L * i)).append(":00,");
            text.append(String.format(Locale.ROOT, "%.4f,%.3f%n", random.nextDouble(), random.nextDouble()));
        }
        file = Files.createTempFile("runnel-benchmark", ".csv");
        Files.writeString(file, text.toString().replace("\r\n", "\n"));
        CsvResult result = read();
        readLine();
        for (int i = 0; i < ROWS; i++) {
            requireClose("depth", result.series("depth").value(i), depths[i], 0);
            requireClose("velocity", result.series("velocity").value(i), velocities[i], 0);
            if (result.series("depth").epochNanos(i) != times[i]) {
                throw new IllegalStateException("time of row " + i + " must be " + times[i]);
            }
        }
    }

    /** Takes the file away. */
    @TearDown
    public void delete() throws IOException {
        Files.delete(file);
    }

    /** Reads the file. */
    @Benchmark
    @OperationsPerInvocation(ROWS)
    @Against(
            row = "CSV, a row of two values",
            rival = "readLine",
            named = "readLine, split, java.time and parseDouble",
            goal = 20)
    public CsvResult read() {
        return CsvRecords.read(file, layout);
    }

    /** Rival. */
    @Benchmark
    @OperationsPerInvocation(ROWS)
    public int readLine() throws IOException {
        int i = 0;
        try (BufferedReader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            reader.readLine();
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                String[] cells = line.split(",");
                times[i] = LocalDateTime.parse(cells[0]).toEpochSecond(ZoneOffset.UTC) * 1_000_000_000;
                depths[i] = Double.parseDouble(cells[1]);
                velocities[i] = Double.parseDouble(cells[2]);
                i++;
            }
        }
        return i;
    }
}
