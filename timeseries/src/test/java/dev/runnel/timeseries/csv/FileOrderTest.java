package dev.runnel.timeseries.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.StringReader;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Rows in the order of the file, for one who reads a file in parts while it grows. */
class FileOrderTest {
    private static final CsvLayout PLAIN =
            CsvLayout.of("time").withColumn("depth").withOrderOfFile(Instant.MIN);

    /** Line, time and values of each row. */
    private static List<String> rows(String text, CsvLayout layout) {
        List<String> rows = new ArrayList<>();
        CsvRecords.forEach("part", new StringReader(text), layout, new CsvRowConsumer() {
            @Override
            public void accept(long epochNanos, double[] values, byte[] qualities) {
                throw new AssertionError("the row is handed over with its line");
            }

            @Override
            public void accept(long line, long epochNanos, double[] values, byte[] qualities) {
                rows.add(line + " " + Instant.ofEpochSecond(epochNanos / 1_000_000_000)
                        + (values.length == 0 ? "" : " " + values[0]));
            }
        });
        return rows;
    }

    @Test
    void handsOverLateAndRepeatedRowsWithTheirLines() {
        String text = "time,depth\n2026-03-02T00:02:00Z,1\n# a comment\n2026-03-02T00:00:00Z,2\nbad,3\n"
                + "2026-03-02T00:00:00Z,2\n2099-01-01T00:00:00Z,4\n2026-03-02T00:04:00Z,5\n";

        assertThat(rows(text, PLAIN))
                .containsExactly(
                        "2 2026-03-02T00:02:00Z 1.0",
                        "4 2026-03-02T00:00:00Z 2.0",
                        "6 2026-03-02T00:00:00Z 2.0",
                        "7 2099-01-01T00:00:00Z 4.0",
                        "8 2026-03-02T00:04:00Z 5.0");
    }

    @Test
    void takesBareInstants() {
        CsvLayout tips = CsvLayout.of("time").withOrderOfFile(Instant.MIN);

        assertThat(rows("time\n2026-03-02T00:02:00Z\n2026-03-02T00:02:00Z\n", tips))
                .containsExactly("2 2026-03-02T00:02:00Z", "3 2026-03-02T00:02:00Z");
    }

    /** Clocks went back on 25 October 2026 at 01:00 UTC; the part begins in the second pass of the hour. */
    @Test
    void aRepeatedHourGoesOnWhereThePartBeforeEnded() {
        CsvLayout layout =
                CsvLayout.of("time").withZone(ZoneId.of("Europe/London")).withRepeatedHour(RepeatedHour.BY_ORDER);
        String part = "time\n2026-10-25T01:02:00\n";

        assertThat(rows(part, layout.withOrderOfFile(Instant.parse("2026-10-25T00:00:00Z"))))
                .containsExactly("2 2026-10-25T00:02:00Z");
        assertThat(rows(part, layout.withOrderOfFile(Instant.parse("2026-10-25T01:00:00Z"))))
                .containsExactly("2 2026-10-25T01:02:00Z");
    }

    @Test
    void isForRowsThatAreNotKept() {
        assertThatThrownBy(() -> CsvRecords.parse("time,depth\n", PLAIN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("layout must not have the order of the file where all is kept, was CsvLayout[time in time, "
                        + "depth from depth]");
        assertThatThrownBy(() -> CsvRecords.forEach(
                        "part", new StringReader("time\n"), CsvLayout.of("time"), (time, values, qualities) -> {}))
                .hasMessageStartingWith("layout must have a column of values, was ");
    }
}
