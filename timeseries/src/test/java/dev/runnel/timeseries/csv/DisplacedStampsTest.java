package dev.runnel.timeseries.csv;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Series;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DisplacedStampsTest {
    private static final Instant START = Instant.parse("2026-03-02T00:00:00Z");
    private static final CsvLayout LAYOUT = CsvLayout.of("time")
            .withColumn("depth", "depth_mm", CsvUnit.MILLIMETRE)
            .withSorting();

    @TempDir
    Path temporary;

    /** Stamps of two days at five minutes, of which a test moves some. */
    private static List<Instant> stamps() {
        List<Instant> stamps = new ArrayList<>();
        for (int i = 0; i < 576; i++) {
            stamps.add(START.plusSeconds(300L * i));
        }
        return stamps;
    }

    private static void move(List<Instant> stamps, int from, int to, Duration by) {
        for (int i = from; i < to; i++) {
            stamps.set(i, stamps.get(i).plus(by));
        }
    }

    /** Line 1 is the header, so that stamp i stands in line i + 2, and its depth is i mm. */
    private Path file(List<Instant> stamps) throws IOException {
        List<String> lines = new ArrayList<>(List.of("time,depth_mm"));
        for (int i = 0; i < stamps.size(); i++) {
            lines.add(stamps.get(i) + "," + i);
        }
        return Files.write(temporary.resolve("depth.csv"), lines);
    }

    private CsvResult read(List<Instant> stamps) throws IOException {
        Path file = file(stamps);
        return CsvRecords.read(file, LAYOUT.withoutDisplaced(DisplacedStamps.in(file, LAYOUT)));
    }

    @Test
    void aClockThatWasADayAheadForSomeHoursIsTold() throws IOException {
        List<Instant> stamps = stamps();
        move(stamps, 100, 150, Duration.ofDays(1));
        Path file = file(stamps);

        DisplacedStamps displaced = DisplacedStamps.in(file, LAYOUT);
        assertThat(displaced.runs()).containsExactly(new DisplacedStamps.Run(102, 151, Duration.ofDays(1)));
        assertThat(displaced).hasToString("DisplacedStamps[stamped 1 d after their place among the lines]");

        CsvResult result = CsvRecords.read(file, LAYOUT.withoutDisplaced(displaced));
        Series depth = result.series("depth");
        assertThat(depth.size()).isEqualTo(526);
        // Without it the lines of the next day would have been rejected as doubled.
        assertThat(CsvRecords.read(file, LAYOUT).report().count(CsvIssue.Kind.CONFLICTING_DUPLICATE))
                .isEqualTo(50);
        assertThat(depth.value(
                        depth.firstIndexAtOrAfter(START.plus(Duration.ofDays(1)).plusSeconds(100 * 300L))))
                .isEqualTo(0.388);
        assertThat(result.report().count(CsvIssue.Kind.DISPLACED_STAMP)).isEqualTo(50);
        assertThat(result.report().rejected()).isEqualTo(50);
        assertThat(result.report().altered()).isZero();
        assertThat(result.report().issues().get(0))
                .hasToString("line 102: stamp out of place, stamped 1 d after their place among the lines; rejected");
    }

    @Test
    void aClockThatFellBackToThePastIsToldAndOneLineIsARunToo() throws IOException {
        List<Instant> stamps = stamps();
        move(stamps, 10, 40, Duration.ofDays(-9000));
        move(stamps, 200, 201, Duration.ofDays(26_000));
        // More nanoseconds than a long holds.
        move(stamps, 300, 301, Duration.ofDays(-118_000));
        assertThat(DisplacedStamps.in(file(stamps), LAYOUT).runs())
                .containsExactly(
                        new DisplacedStamps.Run(12, 41, Duration.ofDays(-9000)),
                        new DisplacedStamps.Run(202, 202, Duration.ofDays(26_000)),
                        new DisplacedStamps.Run(302, 302, Duration.ofDays(-118_000)));
        assertThat(read(stamps).report().accepted()).isEqualTo(544);
    }

    @Test
    void whatCameLateTwiceOrAfterAGapIsInPlace() throws IOException {
        List<Instant> late = stamps();
        Collections.rotate(late.subList(100, 300), 150);
        assertThat(DisplacedStamps.in(file(late), LAYOUT).runs()).isEmpty();

        List<Instant> twice = stamps();
        twice.addAll(200, stamps().subList(100, 150));
        assertThat(DisplacedStamps.in(file(twice), LAYOUT).runs()).isEmpty();

        List<Instant> gap = stamps();
        move(gap, 300, 576, Duration.ofDays(40));
        assertThat(DisplacedStamps.in(file(gap), LAYOUT).runs()).isEmpty();
        assertThat(read(gap).report().accepted()).isEqualTo(576);
    }

    /** Less than an hour may be a clock that was mended, and what overlaps its own place cannot be told from doubled lines. */
    @Test
    void aLittleOutOfPlaceIsLeftAsItIs() throws IOException {
        List<Instant> little = stamps();
        move(little, 100, 105, Duration.ofMinutes(50));
        assertThat(DisplacedStamps.in(file(little), LAYOUT).runs()).isEmpty();
        move(little, 100, 105, Duration.ofMinutes(10));
        assertThat(DisplacedStamps.in(file(little), LAYOUT).runs())
                .containsExactly(new DisplacedStamps.Run(102, 106, Duration.ofHours(1)));

        List<Instant> overlapping = stamps();
        move(overlapping, 100, 200, Duration.ofHours(3));
        assertThat(DisplacedStamps.in(file(overlapping), LAYOUT).runs()).isEmpty();
    }

    @Test
    void oneLineHasNoStep() throws IOException {
        assertThat(DisplacedStamps.in(file(List.of(START)), LAYOUT).runs()).isEmpty();
        assertThat(DisplacedStamps.none().runs()).isEmpty();
    }
}
