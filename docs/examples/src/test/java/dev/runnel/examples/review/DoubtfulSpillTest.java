package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Random;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Forty days at 15 minutes, of which the depth stands still above the crest for the last four, or rises there and falls again. */
class DoubtfulSpillTest {
    private static final int PER_DAY = 96;
    private static final int DAYS = 40;

    @TempDir
    Path temporary;

    private SiteOnDisk site(IntFunction<Double> atTheEnd) {
        return site(atTheEnd, "");
    }

    private SiteOnDisk site(IntFunction<Double> atTheEnd, String more) {
        Conduit pipe = Conduit.of(CircularSection.ofDiameter(0.45), Gradient.ofRatio(1, 150), Manning.of(0.013));
        Random random = new Random(7);
        return new SiteOnDisk(temporary)
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "overflow crest level = 250 mm\n" + more)
                .with("depth.csv", SiteOnDisk.quarterHours(DAYS * PER_DAY, i -> {
                    double usual = 0.1 + 0.04 * Math.sin(2 * Math.PI * i / PER_DAY);
                    boolean isEnd = i >= (DAYS - 4) * PER_DAY;
                    double depth = isEnd ? atTheEnd.apply(i) : usual;
                    double velocity = pipe.velocity(isEnd ? usual : depth) * Math.exp(0.04 * random.nextGaussian());
                    return Math.round(1000 * depth + random.nextGaussian() * (isEnd ? 0 : 1)) + ","
                            + Math.round(1000 * velocity) / 1000.0;
                }));
    }

    @Test
    void aFrozenDepthMakesNoCountOfSpills() {
        SiteOnDisk site = site(i -> 0.3);
        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.status()).as(outcome.err()).isZero();
        assertThat(outcome.flat())
                .contains("of that time rests on depths that a finding puts in doubt, so the count is withheld");
        String[] header = line(site, 0);
        String[] row = line(site, 1);
        assertThat(row[at(header, "spills")]).isEmpty();
        assertThat(row[at(header, "spill_h")]).isEmpty();
        assertThat(Double.parseDouble(row[at(header, "doubtful_spill_share")])).isGreaterThan(0.9);
        assertThat(site.written("site.html")).contains("<td>withheld ");
    }

    @Test
    void aSpillThatNothingDoubtsIsCounted() {
        // Up to 300 mm and back within two hours.
        SiteOnDisk site = site(i -> i % 384 < 8 ? 0.3 : 0.1 + 0.04 * Math.sin(2 * Math.PI * i / PER_DAY));
        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.status()).as(outcome.err()).isZero();
        assertThat(outcome.flat()).doesNotContain("the count is withheld");
        String[] header = line(site, 0);
        String[] row = line(site, 1);
        assertThat(row[at(header, "spills")]).isEqualTo("1");
        assertThat(Double.parseDouble(row[at(header, "doubtful_spill_share")])).isLessThan(0.5);
    }

    /** Centimetres read for millimetres in the last four days: the pipe was not surcharged for them, and nobody says so. */
    @Test
    void aDepthInAnotherUnitIsNoSurcharge() {
        SiteOnDisk site = site(i -> 10 * (0.1 + 0.04 * Math.sin(2 * Math.PI * i / PER_DAY)));
        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.status()).as(outcome.err()).isZero();
        assertThat(outcome.flat()).contains("Surcharged once, by doubtful depths only, highest");
        String[] header = line(site, 0);
        String[] row = line(site, 1);
        assertThat(Double.parseDouble(row[at(header, "highest_level_m")])).isBetween(0.138, 0.145);
        assertThat(Double.parseDouble(row[at(header, "highest_doubtful_level_m")]))
                .isEqualTo(1.4);
        assertThat(Double.parseDouble(row[at(header, "doubtful_surcharge_share")]))
                .isGreaterThan(0.9);
        assertThat(site.written("site.html")).contains("1400&nbsp;mm by doubtful depths");
    }

    /** The same with an alarm: it stands, and what its highest level is worth is said wherever it is named. */
    @Test
    void anAlarmOfDoubtfulDepthsSaysSo() {
        SiteOnDisk site = site(i -> 10 * (0.1 + 0.04 * Math.sin(2 * Math.PI * i / PER_DAY)), "alarm level = 0.3 m\n");
        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.status()).as(outcome.err()).isZero();
        assertThat(outcome.flat())
                .contains("The depth alarm is still active at the end of the record")
                .containsPattern("highest 1400 mm on [A-Za-z0-9 :]+, a depth that finding 1 puts in doubt\\.")
                .containsPattern("largest flow [^,]+, [0-9]+ % of full bore, a flow that finding 1 puts in doubt")
                .containsPattern("above the soffit at [A-Za-z0-9 :]+, a depth that finding 1 puts in doubt")
                .containsPattern("still active 1400 mm \\? [A-Za-z0-9 :]+ - \\?: a depth that finding 1 puts in doubt");
        assertThat(site.written("site/alarms.csv").lines().skip(1)).allMatch(row -> row.endsWith(",1"));
        assertThat(site.written("site/surcharge.csv").lines().skip(1)).allMatch(row -> row.endsWith(",1"));
    }

    /** A sound alarm is left alone. */
    @Test
    void anAlarmThatNothingDoubtsIsNotMarked() {
        SiteOnDisk site = site(
                i -> i % 384 < 8 ? 0.35 : 0.1 + 0.04 * Math.sin(2 * Math.PI * i / PER_DAY), "alarm level = 0.3 m\n");
        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.status()).as(outcome.err()).isZero();
        assertThat(outcome.flat()).contains(": 1 alarm").doesNotContain("puts in doubt");
        assertThat(site.written("site/alarms.csv").lines().skip(1)).hasSize(1).allMatch(row -> row.endsWith(","));
    }

    /** One reading out of its neighbours may be an echo of something else, two in a row are water. */
    @Test
    void aSpillInAReadingThatATestCallsUnusualMayHaveBeenNone() {
        for (int readings = 1; readings <= 2; readings++) {
            int above = readings;
            SiteOnDisk site = new SiteOnDisk(temporary)
                    .with("site.txt", SiteOnDisk.PLAIN_SITE + "overflow crest level = 250 mm\n")
                    .with(
                            "depth.csv",
                            SiteOnDisk.readings(
                                    "time,depth_mm",
                                    "2026-03-02T00:00:00Z",
                                    Duration.ofMinutes(5),
                                    288,
                                    i -> i >= 100 && i < 100 + above ? "320" : "200"));
            String text = site.review().flat();
            assertThat(text).contains("water above it 1 time");
            if (above == 1) {
                assertThat(text)
                        .contains("1 of these may have been none")
                        .contains("2026: 0 spills (1 with uncertain ones)");
            } else {
                assertThat(text).doesNotContain("may have been none").contains("2026: 1 spill,");
            }
        }
    }

    private static String[] line(SiteOnDisk site, int number) {
        return site.written("survey.csv").lines().toList().get(number).split(",", -1);
    }

    private static int at(String[] header, String name) {
        return java.util.Arrays.asList(header).indexOf(name);
    }
}
