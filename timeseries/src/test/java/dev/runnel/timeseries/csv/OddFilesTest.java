package dev.runnel.timeseries.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.tuple;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import dev.runnel.timeseries.csv.CsvIssue.Kind;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OddFilesTest {
    private static final CsvLayout LAYOUT = CsvLayout.of("time").withColumn("depth");
    private static final String TEXT = "time,depth\n2026-01-01T00:00:00Z,0.1\n2026-01-01T00:02:00Z,0.2\n";

    @Test
    void utf16IsKnownByItsMark(@TempDir Path folder) throws IOException {
        for (Charset charset : List.of(StandardCharsets.UTF_16LE, StandardCharsets.UTF_16BE, StandardCharsets.UTF_8)) {
            Path file = folder.resolve(charset.name());
            Files.write(file, ("\uFEFF" + TEXT).getBytes(charset));
            CsvResult result = CsvRecords.read(file, LAYOUT);
            assertThat(result.series("depth").toValues()).as(charset.name()).containsExactly(0.1, 0.2);
            assertThat(result.report().issues()).isEmpty();
        }
        Path unmarked = Files.write(folder.resolve("unmarked"), TEXT.getBytes(StandardCharsets.UTF_16LE));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.read(unmarked, LAYOUT))
                .withMessageContaining("control character 0");
        Path table = Files.write(folder.resolve("table"), "\uFEFFa,b\n1,2\n".getBytes(StandardCharsets.UTF_16LE));
        assertThat(CsvTable.read(table, "a", "b").rows().get(0).number("b")).isEqualTo(2);
        Path empty = Files.write(folder.resolve("empty"), new byte[0]);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.read(empty, LAYOUT))
                .withMessageContaining("was empty");
    }

    @Test
    void zerosOfAPowerCutCostTheirLineOnly() {
        CsvResult result = CsvRecords.parse(
                TEXT + "\0\0\0\0\0\0\0\0\n2026-01-01T00:04:00Z,0.\0\0\0\0"
                        + "2026-01-01T00:06:00Z,0.3\n2026-01-01T00:08:00Z,0.4\n",
                LAYOUT);
        assertThat(result.series("depth").toValues()).containsExactly(0.1, 0.2, 0.4);
        assertThat(result.report().issues())
                .extracting(CsvIssue::line, CsvIssue::kind)
                .containsExactly(tuple(4L, Kind.UNREADABLE_LINE), tuple(5L, Kind.UNREADABLE_LINE));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.parse("time,\0depth\n", LAYOUT))
                .withMessageContaining("control character 0");
    }

    /** Neither in a first field that nobody asked for, nor with a mark beyond ASCII. */
    @Test
    void aCommentIsNoLineWhereverTheTimeStands() {
        for (char mark : new char[] {'#', '§'}) {
            CsvResult result = CsvRecords.parse(
                    "note,time,depth\nx,2026-03-02T11:00Z,1\n" + mark
                            + "x,2026-03-02T11:02Z,2\ny,2026-03-02T11:04Z,3\n",
                    LAYOUT.withCommentMark(mark));
            assertThat(result.series("depth").toValues()).containsExactly(1, 3);
        }
    }

    @Test
    void timesMayBeNumbers() {
        Series unix = series(TimeNumber.UNIX_SECONDS, "1767225600", "1767225600.5", "-1");
        assertThat(unix.time(0)).isEqualTo(Instant.parse("2026-01-01T00:00:00Z"));
        assertThat(unix.time(1)).isEqualTo(Instant.parse("2026-01-01T00:00:00.5Z"));
        assertThat(unix.size()).as("-1 goes back").isEqualTo(2);
        assertThat(series(TimeNumber.UNIX_MILLISECONDS, "1767225600123").time(0))
                .isEqualTo(Instant.parse("2026-01-01T00:00:00.123Z"));
        // 46023 is 1 January 2026, 46204 is 1 July; a third of a day is eight hours in the morning.
        Series days = CsvRecords.parse(
                        "time,depth\n46023.0,1\n46204.3333333333,2\n60.5,3\n1e5,4\n99999999999999,5\n",
                        LAYOUT.withTimeNumbers(TimeNumber.SPREADSHEET_DAYS).withZone(ZoneId.of("Europe/London")))
                .series("depth");
        assertThat(days.stream().map(each -> each.time().toString()))
                .containsExactly("2026-01-01T00:00:00Z", "2026-07-01T07:00:00Z");
        CsvReport report = CsvRecords.parse(
                        "time,depth\n60.5,3\n1e5,4\n99999999999999,5\n",
                        LAYOUT.withTimeNumbers(TimeNumber.SPREADSHEET_DAYS).withZone(ZoneId.of("UTC")))
                .report();
        assertThat(report.count(Kind.UNREADABLE_TIME)).isEqualTo(3);
        assertThat(report.issues().get(0))
                .hasToString(
                        "line 2, column 1: unreadable time, \"60.5\" must be days of a spreadsheet, 61 or more; rejected");
        assertThat(LAYOUT.withTimeNumbers(TimeNumber.UNIX_SECONDS))
                .hasToString("CsvLayout[time in time as seconds since 1970, depth from depth]");
        assertThat(LAYOUT.withTimeNumbers(TimeNumber.UNIX_SECONDS).withTimePattern("dd/MM/yyyy"))
                .hasToString("CsvLayout[time in time as dd/MM/yyyy, depth from depth]");
    }

    @Test
    void rowByRowGivesWhatAllAtOnceGives() {
        StringBuilder text = new StringBuilder("time,depth,velocity\n");
        Random random = new Random(11);
        Instant time = Instant.parse("2026-01-01T00:00:00Z");
        for (int i = 0; i < 5000; i++) {
            time = time.plusSeconds(random.nextInt(50) == 0 ? 0 : 60);
            String value = random.nextInt(40) == 0 ? "?" : String.valueOf(random.nextInt(3));
            text.append(time).append(',').append(value).append(random.nextInt(60) == 0 ? "\n" : ",1\n");
        }
        CsvLayout two = LAYOUT.withColumn("velocity");
        CsvResult whole = CsvRecords.parse(text.toString(), two);
        SeriesBuilder depth = Series.builder();
        SeriesBuilder velocity = Series.builder();
        CsvReport report =
                CsvRecords.forEach("text", new StringReader(text.toString()), two, (at, values, qualities) -> {
                    depth.add(at, values[0], Quality.ofCode(qualities[0]));
                    velocity.add(at, values[1], Quality.ofCode(qualities[1]));
                });
        assertThat(depth.build()).isEqualTo(whole.series("depth"));
        assertThat(velocity.build()).isEqualTo(whole.series("velocity"));
        assertThat(report).hasToString(whole.report().toString());
        assertThat(report.issues()).isEqualTo(whole.report().issues()).isNotEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.forEach(
                        "text", new StringReader(TEXT), LAYOUT.withSorting(), (at, values, qualities) -> {}))
                .withMessageStartingWith(
                        "layout must neither sort nor add lines of one instant where rows are not kept");
    }

    private static Series series(TimeNumber kind, String... times) {
        StringBuilder text = new StringBuilder("time,depth\n");
        for (String time : times) {
            text.append(time).append(",1\n");
        }
        return CsvRecords.parse(text.toString(), LAYOUT.withTimeNumbers(kind)).series("depth");
    }
}
