package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Random;
import java.util.function.IntFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Readings of a quarter of an hour see strokes of pumps in part: what a single day is worth stands beside its volume. */
class SingleDaysTest {
    private static final int READINGS = 20 * 96;

    @TempDir
    Path temporary;

    private SiteOnDisk site(IntFunction<String> values) {
        return new SiteOnDisk(temporary)
                .with("site.txt", SiteOnDisk.PLAIN_SITE)
                .with("depth.csv", SiteOnDisk.quarterHours(READINGS, values));
    }

    @Test
    void strokesMarkTheVolumeOfASingleDay() {
        Random random = new Random(3);
        SiteOnDisk site = site(i -> random.nextInt(3) == 0 ? "160,1.1" : "60,0.5");
        String text = site.review().flat();
        assertThat(text)
                .containsPattern("single days: the flow comes in strokes of which readings every 15 min see a part\\.")
                .containsPattern("so the volume of one day may be off by \\+- [0-9.]+ %, means over many days by less");
        assertThat(site.written("site.html")).containsPattern("a single day \u00B1 [0-9.]+(&nbsp;| )%");
        assertThat(site.written("site/daily.csv")).contains("flow in strokes: that of a single day +- ");
    }

    @Test
    void aSteadyFlowIsNotMarked() {
        Random random = new Random(3);
        SiteOnDisk site = site(i -> Math.round(100 + 30 * Math.sin(2 * Math.PI * i / 96) + random.nextGaussian()) + ","
                + Math.round(1000 * (0.7 + 0.15 * Math.sin(2 * Math.PI * i / 96) + 0.03 * random.nextGaussian()))
                        / 1000.0);
        assertThat(site.review().flat()).contains("dry weather").doesNotContain("single days");
        assertThat(site.written("site.html")).doesNotContain("a single day");
        assertThat(site.written("site/daily.csv")).doesNotContain("single day");
    }

    /** Of 20 days 8 carry half as much again: the mean of all is a fifth above dry weather. */
    @Test
    void withoutAGaugeTheFigureSaysThatWetDaysAreAmongItsDays() {
        SiteOnDisk site = site(i -> 100 + i % 2 + "," + (i / 96 % 5 < 2 ? "0.9" : "0.6") + i % 2);
        String text = site.review().flat();
        assertThat(text)
                // 2.65 dm2 wet at 100.5 mm: 16 l/s at 0.6 m/s, 24 at 0.9.
                .containsPattern(
                        "all days of the record, wet ones among them, so that the mean is rather too high; a quarter of"
                                + " the days have less than 1[56]\\.[0-9] l/s");
        assertThat(site.written("site.html"))
                .containsPattern(
                        "from 20(&nbsp;| )usual days, wet ones among them: no gauge, a quarter of the days below 1[56]\\.[0-9]");
        site.with("tips.csv", "time\n2026-03-10T00:00:00Z\n");
        assertThat(site.review().flat()).doesNotContain("wet ones among them");
        assertThat(site.written("site.html")).doesNotContain("wet ones among them");
    }

    /** Off its neighbours by 90 mm: no test calls it unusual, and yet it is the highest by far. */
    @Test
    void aHighestLevelOfOneReadingAloneSaysWhatTwoInARowReached() {
        SiteOnDisk site = site(i -> (i == 700 ? 190 : 100 + i % 41) + "," + (0.6 + i % 3 / 100.0));
        String text = site.review().flat();
        assertThat(site.written("site.html"))
                .containsPattern("below the soffit, in one reading alone: two in a row reached 139(&nbsp;| )mm");
        assertThat(text).containsPattern("of full bore, in one reading alone: two in a row reached [0-9.]+ l/s");
        assertThat(site.written("survey.csv"))
                .contains("highest_level_in_a_row_m")
                .contains(",0.13900,");

        SiteOnDisk two = site(i -> (i == 700 || i == 701 ? 190 : 100 + i % 41) + "," + (0.6 + i % 3 / 100.0));
        assertThat(two.review().flat()).doesNotContain("in one reading alone");
        assertThat(two.written("site.html")).doesNotContain("in one reading alone");
    }

    /** A level alone every quarter of an hour: no test can tell whether 500 mm of one reading are an echo. */
    @Test
    void aSurchargeOfOneReadingAloneSaysSo() {
        for (int readings = 1; readings <= 2; readings++) {
            int above = readings;
            SiteOnDisk site = new SiteOnDisk(temporary)
                    .with("site.txt", SiteOnDisk.PLAIN_SITE + "overflow crest level = 300 mm\n")
                    .with(
                            "depth.csv",
                            SiteOnDisk.readings(
                                    "time,depth_mm",
                                    "2026-03-02T00:00:00Z",
                                    Duration.ofMinutes(15),
                                    960,
                                    i -> i >= 500 && i < 500 + above ? "500" : "" + (100 + i % 41)));
            String text = site.review().flat();
            assertThat(text)
                    .contains("Surcharged once, highest 50 mm above the soffit")
                    .contains("1 spill.");
            if (above == 1) {
                assertThat(text)
                        .containsPattern("Surcharged once[^.]*; once in one reading alone\\.")
                        .containsPattern(
                                "Water above the overflow's crest once[^.]*; once in one reading alone: 1 spill\\.")
                        .contains("1 of these may have been none")
                        .contains("2026: 0 spills (1 with uncertain ones)");
                assertThat(site.written("index.html")).containsPattern("500(&nbsp;| )mm \\(one reading\\)");
            } else {
                assertThat(text).doesNotContain("in one reading alone").doesNotContain("may have been none");
                assertThat(site.written("index.html")).doesNotContain("(one reading)");
            }
        }
    }

    /** A velocity against the stream is unusual and stays in use; the one that failed is named. */
    @Test
    void aTestIsSaidToFlagFromTheFirstReadingThatFailed() {
        SiteOnDisk site =
                velocities("one day", 96, i -> i == 20 ? "-0.3" : i == 60 ? "7.5" : "" + (0.6 + i % 3 / 100.0));
        assertThat(site.review().flat())
                .containsPattern(
                        "Velocity: 1 reading failed the range test, flagged from [^;]*15:00; its flow is left out")
                .doesNotContainPattern("range test, flagged from [^;]*05:00");
    }

    /** A lone reading that failed is no news before a law that does not hold; a twentieth of all is. */
    @Test
    void fewReadingsThatFailedStandBehindWhatMatters() {
        assertThat(placeOfFailed(1)).isGreaterThan(1);
        assertThat(placeOfFailed(50)).isEqualTo(1);
    }

    /** The place of the failed readings among what to look at, where the velocity is twice the law's too. */
    private int placeOfFailed(int failed) {
        SiteOnDisk site = velocities(
                "failed" + failed, 960, i -> i % 19 == 5 && i / 19 < failed ? "7.5" : "" + (2 + i % 3 / 100.0));
        String text = site.review().flat();
        Matcher line = Pattern.compile("(\\d+) Velocity: " + failed + " readings? failed the range test")
                .matcher(text);
        assertThat(line.find()).as(text).isTrue();
        assertThat(text).contains("of the law's at the same depth");
        return Integer.parseInt(line.group(1));
    }

    /** A site of its own folder, with water of 100 mm. */
    private SiteOnDisk velocities(String name, int readings, IntFunction<String> velocity) {
        return new SiteOnDisk(temporary.resolve(name))
                .with("site.txt", SiteOnDisk.PLAIN_SITE)
                .with(
                        "depth.csv",
                        SiteOnDisk.readings(
                                "time,depth_mm,velocity_m_s",
                                "2026-03-02T00:00:00Z",
                                Duration.ofMinutes(15),
                                readings,
                                i -> 100 + i % 2 + "," + velocity.apply(i)));
    }
}
