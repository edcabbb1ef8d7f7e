package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.correction.Corrections;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The audit of one corrected month: every altered reading is explained and undone by what the review wrote. */
class CorrectedMonthTest {
    private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");
    private static final Duration STEP = Duration.ofMinutes(15);
    private static final int READINGS = 31 * 96;
    private static final double WRITTEN = 1e-5;

    private static final String LIST = """
            series,from,to,kind,value,value at end,source,reason,evidence,author
            depth,2026-03-02T00:00:00Z,2026-03-05T00:00:00Z,offset,0.013,,,zero off,visit 7,A. Reed
            depth,2026-03-04T00:00:00Z,2026-03-09T00:00:00Z,drift,0,-0.02,,"drifts, slowly",visits 7 and 8,A. Reed
            depth,2026-03-11T00:00:00Z,2026-03-12T00:00:00Z,factor,1.1,,,scale,bench,B. Moss
            depth,2026-03-14T00:00:00Z,2026-03-15T00:00:00Z,clock shift,420,,,clock 7 min slow,visit 9,B. Moss
            depth,2026-03-17T00:00:00Z,2026-03-17T06:00:00Z,removal,,,,ragged,picture 3,A. Reed
            depth,2026-03-20T00:00:00Z,2026-03-21T00:00:00Z,replacement,,,spare_mm,drowned,note,A. Reed
            depth,2026-03-24T00:00:00Z,2026-04-01T00:00:00Z,sediment,0.03,,,bed found,visit 10,A. Reed
            """;

    @TempDir
    Path temporary;

    private static int depth(int i) {
        return (int) Math.round(160 + 60 * Math.sin(2 * Math.PI * i / 96) + i % 7);
    }

    private SiteOnDisk site() {
        return new SiteOnDisk(temporary)
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "depth column = depth_mm\n")
                .with(
                        "depth.csv",
                        SiteOnDisk.readings(
                                "time,depth_mm,spare_mm",
                                START.toString(),
                                STEP,
                                READINGS,
                                i -> depth(i) + "," + (depth(i) + 4)))
                .with("corrections.csv", LIST);
    }

    /** A reading with the numbers of the corrections that had a part in it. */
    private record Expected(Instant time, double value, List<Integer> numbers) {}

    /** The list once more, in plain arithmetic. */
    private static Expected corrected(Instant time, double raw, double spare) {
        double value = raw;
        Instant at = time;
        List<Integer> numbers = new ArrayList<>();
        if (isIn(time, 2, 5)) {
            value += 0.013;
            numbers.add(1);
        }
        if (isIn(time, 4, 9)) {
            value -= 0.02 * Duration.between(day(4), time).toMinutes() / (5 * 1440.0);
            numbers.add(2);
        }
        if (isIn(time, 11, 12)) {
            value *= 1.1;
            numbers.add(3);
        }
        if (isIn(time, 14, 15)) {
            at = time.plusSeconds(420);
            numbers.add(4);
        }
        if (!time.isBefore(day(17)) && time.isBefore(day(17).plus(Duration.ofHours(6)))) {
            value = Double.NaN;
            numbers.add(5);
        }
        if (isIn(time, 20, 21)) {
            value = spare;
            numbers.add(6);
        }
        return new Expected(at, value, numbers);
    }

    private static Instant day(int day) {
        return START.plus(Duration.ofDays(day - 1));
    }

    private static boolean isIn(Instant time, int from, int to) {
        return !time.isBefore(day(from)) && time.isBefore(day(to));
    }

    private static double number(String cell) {
        return cell.isEmpty() ? Double.NaN : Double.parseDouble(cell);
    }

    private static Map<Instant, Double> levels(SiteOnDisk site) {
        Map<Instant, Double> levels = new TreeMap<>();
        site.written("site/flow.csv")
                .lines()
                .filter(line -> line.startsWith("2026"))
                .map(line -> line.split(",", -1))
                .forEach(cells -> levels.put(Instant.parse(cells[0]), number(cells[1])));
        return levels;
    }

    private static List<String[]> altered(SiteOnDisk site) {
        return site.written("site/altered.csv")
                .lines()
                .filter(line -> line.startsWith("depth,"))
                .map(line -> line.split(",", 7))
                .toList();
    }

    @Test
    void everyAlteredReadingIsExplainedAndNoOtherIsAltered() {
        SiteOnDisk site = site();
        SiteOnDisk.Outcome outcome = site.review();
        assertThat(outcome.err()).isEmpty();
        Map<Instant, Double> levels = levels(site);
        Map<Instant, String[]> explained = new TreeMap<>();
        altered(site).forEach(row -> explained.put(Instant.parse(row[1]), row));
        String[] reasons = {"zero off", "drifts, slowly", "scale", "clock 7 min slow", "ragged", "drowned"};

        int count = 0;
        for (int i = 0; i < READINGS; i++) {
            Instant time = START.plus(STEP.multipliedBy(i));
            Expected expected = corrected(time, depth(i) / 1000.0, (depth(i) + 4) / 1000.0);
            if (Double.isNaN(expected.value())) {
                assertThat(levels.getOrDefault(expected.time(), Double.NaN))
                        .as("%s", time)
                        .isNaN();
            } else {
                assertThat(levels.get(expected.time())).as("%s", time).isCloseTo(expected.value(), within(WRITTEN));
            }
            String[] row = explained.get(time);
            assertThat(row == null)
                    .as("%s is explained", time)
                    .isEqualTo(expected.numbers().isEmpty());
            if (row != null) {
                count++;
                assertThat(number(row[2])).isEqualTo(depth(i) / 1000.0);
                assertThat(Instant.parse(row[3])).isEqualTo(expected.time());
                assertThat(Double.compare(number(row[4]), expected.value()) == 0
                                || Math.abs(number(row[4]) - expected.value()) < WRITTEN)
                        .as("%s", time)
                        .isTrue();
                assertThat(row[5])
                        .isEqualTo(String.join(
                                " ",
                                expected.numbers().stream().map(String::valueOf).toList()));
                for (int number : expected.numbers()) {
                    assertThat(row[6]).contains(reasons[number - 1]);
                }
            }
        }

        // Days 2 to 8 by two that overlap, 11, 14, a quarter of 17, and 20.
        assertThat(count).isEqualTo(96 * (7 + 1 + 1 + 1) + 24).isEqualTo(explained.size());
        assertThat(outcome.flat()).contains("depth: " + count + " of 2976 readings altered");
    }

    @Test
    void whatTheReviewWroteUndoesIt() {
        SiteOnDisk site = site();
        site.review();
        Map<Instant, Double> levels = levels(site);
        List<String[]> altered = altered(site);

        altered.forEach(row -> levels.remove(Instant.parse(row[3])));
        altered.forEach(row -> levels.put(Instant.parse(row[1]), number(row[2])));

        assertThat(levels).hasSize(READINGS);
        for (int i = 0; i < READINGS; i++) {
            assertThat(levels.get(START.plus(STEP.multipliedBy(i)))).isCloseTo(depth(i) / 1000.0, within(WRITTEN));
        }
    }

    @Test
    void theSameListGivesTheSameBytesAndTheReadingsStayAsTheyCame() throws IOException {
        SiteOnDisk site = site();
        byte[] readings = Files.readAllBytes(site.folder().resolve("depth.csv"));
        site.review();
        String flow = site.written("site/flow.csv");
        String altered = site.written("site/altered.csv");
        Path list = site.folder().resolve("corrections.csv");
        Corrections.read(list).write(list);
        byte[] written = Files.readAllBytes(list);

        site.review();

        assertThat(site.written("site/flow.csv")).isEqualTo(flow);
        assertThat(site.written("site/altered.csv")).isEqualTo(altered);
        Corrections.read(list).write(list);
        assertThat(Files.readAllBytes(list)).isEqualTo(written);
        assertThat(Files.readAllBytes(site.folder().resolve("depth.csv"))).isEqualTo(readings);
    }
}
