package dev.runnel.verification.simulation;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The command, with Runnel's own watch. */
class ScoreTest {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @TempDir
    private Path folder;

    private int run(String... arguments) {
        return Score.run(
                List.of(arguments),
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
    }

    @Test
    void writesTablesAndFiles() throws IOException {
        assertThat(run("--seeds=developing", "--sites=1", "--fault=velocity zeros", "--report=" + folder, "--survey="))
                .isZero();

        assertThat(out.toString(StandardCharsets.UTF_8))
                .contains("developing seeds, 1 site a cell", "| velocity zeros | 25 % of readings | ");
        assertThat(folder.resolve("score.md")).exists();
        assertThat(Files.readAllLines(folder.resolve("cases.csv"))).hasSize(2);
        assertThat(Files.readAllLines(folder.resolve("findings.csv")).get(0)).startsWith("seed,fault,severity,");
    }

    /** The run is a fold: the watch sees a site the same way alone and among others, whatever runs beside it. */
    @Test
    void scoreIsTheSameTwice() throws IOException {
        run("--seeds=developing", "--sites=2", "--fault=frozen", "--report=" + folder.resolve("a"));
        run("--seeds=developing", "--sites=2", "--fault=frozen", "--report=" + folder.resolve("b"));

        assertThat(Files.readString(folder.resolve("a/findings.csv")))
                .isEqualTo(Files.readString(folder.resolve("b/findings.csv")));
    }

    @Test
    void readsRealRecordsByFolder() throws IOException {
        StringBuilder monitor = new StringBuilder("Month,Day,Year,Hour,Minute,Velocity_fps,Depth_in\n");
        StringBuilder gauge = new StringBuilder("Month,Day,Year,Hour,Minute,Rain (inch)\n");
        for (int i = 0; i < 20 * 96; i++) {
            int hour = i / 4 % 24;
            String time = "3," + (1 + i / 96) + ",2021," + hour + "," + 15 * (i % 4);
            double depth = 6 + 2 * Math.sin(2 * Math.PI * i / 96) + 0.02 * (i % 7);
            monitor.append(time).append(String.format(Locale.ROOT, ",%.3f,%.2f%n", 2 * Math.sqrt(depth / 6), depth));
            gauge.append(time).append(",0\n");
        }
        monitor.append("3,40,2021,0,0,2,6\n");
        Files.writeString(folder.resolve("Flow.csv"), monitor);
        Files.writeString(folder.resolve("Rain.csv"), gauge);
        Files.writeString(folder.resolve("notes.csv"), "who,what\nnobody,nothing\n");

        assertThat(run("--survey=" + folder, "--diameter=0.6858")).isZero();

        assertThat(out.toString(StandardCharsets.UTF_8))
                .contains(
                        "notes.csv: no record of depth or rain",
                        "Flow.csv: 1920 readings, 2021-03-01T00:00:00Z to 2021-03-20T23:45:00Z",
                        "1 lines not readable",
                        "findings: 0");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--seeds=mine     | --seeds must be scoring or developing, was \"mine\"",
                "--sites=0        | --sites must be a count in [1, 1000], was \"0\"",
                "--sites=many     | --sites must be a count in [1, 1000], was \"many\"",
                "--generator=last | --generator must be first, second or third, was \"last\"",
                "--level-only=yes | --level-only must be true or false, was \"yes\"",
                "--diameter=NaN   | --diameter must be in (0, 20] m, was \"NaN\"",
                "--zone=Nowhere   | --zone must be a time zone, was \"Nowhere\"",
                "--colour=red     | unknown option \"--colour=red\", see --help",
                "--fault=meteor   | no fault is named \"meteor\"",
            })
    void refusesWhatItDoesNotKnow(String argument, String message) {
        assertThat(run(argument)).isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8)).startsWith(message);
    }

    @Test
    void folderThatIsNotThereIsAnError() {
        assertThat(run("--survey=" + folder.resolve("nowhere"))).isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("nowhere");
    }

    @Test
    void helpNamesEveryOption() {
        assertThat(run("--help")).isZero();
        assertThat(out.toString(StandardCharsets.UTF_8))
                .contains(
                        "--seeds",
                        "--sites",
                        "--fault",
                        "--level-only",
                        "--generator",
                        "--report",
                        "--survey",
                        "--diameter");
    }

    @Test
    void setsLabelsBesideFindings() throws IOException {
        StringBuilder levels = new StringBuilder("timestamp,value\n");
        for (int i = 0; i < 40 * 96; i++) {
            double level = 200 + 50 * Math.sin(2 * Math.PI * i / 96) + i % 7 + (i > 25 * 96 ? 300 : 0);
            levels.append(Instant.parse("2021-03-01T00:00:00Z").plusSeconds(900L * i))
                    .append(',')
                    .append(level)
                    .append('\n');
        }
        Files.writeString(folder.resolve("A7_stream.csv"), levels);
        Files.writeString(
                folder.resolve("metadata_60d.csv"),
                "Node ID,start,end,Clean\nA7,2021-03-01 00:00:00+00:00,2021-03-20 00:00:00+00:00,1\n");
        Files.writeString(
                folder.resolve("all_windows.json"),
                "{\"x/A7_stream.csv\": [[\"2021-03-25 12:00:00.000000\", \"2021-04-05 00:00:00.000000\"]], \"b.csv\": []}");

        assertThat(run("--survey=" + folder)).isZero();

        assertThat(out.toString(StandardCharsets.UTF_8))
                .contains(
                        "labelled clean from 2021-03-01T00:00:00Z to 2021-03-20T00:00:00Z: no finding",
                        "labelled anomalous from 2021-03-25T12:00:00Z to 2021-04-05T00:00:00Z: level up");
    }
}
