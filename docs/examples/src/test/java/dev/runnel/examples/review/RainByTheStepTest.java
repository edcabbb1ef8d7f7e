package dev.runnel.examples.review;

import static dev.runnel.examples.review.SiteOnDisk.PLAIN_SITE;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Gauges whose logger writes the rain of each step instead of tips. */
class RainByTheStepTest {
    private static final Duration FIVE_MINUTES = Duration.ofMinutes(5);

    @TempDir
    private Path temporary;

    /** Three days, dry but for half an hour from 10:00 on the second. */
    private static String rain(String header, double value) {
        return SiteOnDisk.readings(
                header, "2026-03-02T00:00:00Z", FIVE_MINUTES, 864, i -> i >= 408 && i < 414 ? "" + value : "0");
    }

    private SiteOnDisk site(String keys, String rain) {
        return new SiteOnDisk(temporary)
                .with("site.txt", PLAIN_SITE + keys)
                .with("depth.csv", SiteOnDisk.days(3, 15))
                .with("rain.csv", rain);
    }

    private static String storms(SiteOnDisk site) {
        SiteOnDisk.Outcome outcome = site.review();
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.status()).isZero();
        return outcome.flat();
    }

    private static void assertRefused(SiteOnDisk site, String message) {
        SiteOnDisk.Outcome outcome = site.review();
        assertThat(outcome.status()).isNotZero();
        assertThat(outcome.err().replaceAll("\\s+", " ")).contains(message);
    }

    @Test
    void depthsAreStormsAndDryDays() {
        SiteOnDisk site = site("", rain("time,rain_mm", 1.2));
        assertThat(storms(site))
                .contains("7.2 mm in 864 steps of 5 min; 1 storm of 1.0 mm or more")
                .contains("rain from \"rain_mm\" in mm, steps of 5 min stamped at their beginnings");
        assertThat(site.written("site/events.csv")).contains("2026-03-03T10:00:00Z,2026-03-03T10:30:00Z,7.2");
        assertThat(site.written("site/daily.csv"))
                .contains("2026-03-02,not known,0.0000")
                .contains("2026-03-03,wet,7.2000");
    }

    /** 7.2 mm in half an hour and in an hour; the table has 7.2 mm at 10 years in 30 min, its limits have it at 30 and at 5. */
    @Test
    void returnPeriodsComeWithTheirLimits() {
        SiteOnDisk site = site("ddf confidence = 0.8\n", rain("time,rain_mm", 1.2))
                .with("ddf.csv", "duration_min,2,5,10,30\n30,4,6,7.2,9\n60,8,10,12,14\n")
                .with("ddf-lower.csv", "duration_min,2,5,10,30\n30,3,5,6,7.2\n60,7,9,11,12\n")
                .with("ddf-upper.csv", "duration_min,2,5,10,30\n30,5,7.2,9,12\n60,9,12,14,17\n");
        assertThat(storms(site))
                .contains("10 y (5 y to 30 y) over 30 min")
                .contains("in brackets: limits of 80 % confidence");
        assertThat(site.written("site/events.csv")).contains(",30,10.0000,this,5.0000,this,30.0000,this");
        assertThat(site.written("site/rarity.csv")).contains(",7.2000,10.0000,this,5.0000,this,30.0000,this");
    }

    @Test
    void oneLimitAloneIsRefused() {
        assertRefused(
                site("", rain("time,rain_mm", 1.2))
                        .with("ddf.csv", "duration_min,2,5\n30,4,6\n")
                        .with("ddf-upper.csv", "duration_min,2,5\n30,5,7\n"),
                "ddf-lower.csv: file must be there, since");
    }

    @Test
    void intensitiesGiveTheSameStorms() {
        assertThat(storms(site("", rain("time,intensity (mm/h)", 14.4))))
                .contains("7.2 mm in 864 steps of 5 min; 1 storm of 1.0 mm or more");
        assertThat(storms(site("rain unit = mm/h\n", rain("time,rain", 14.4)))).contains("7.2 mm in 864 steps");
    }

    @Test
    void stampsAtTheEndMoveTheStorm() {
        SiteOnDisk site = site("rain time = end\n", rain("time,rain_mm", 1.2));
        assertThat(storms(site)).contains("864 steps of 5 min; 1 of them not known");
        assertThat(site.written("site/events.csv")).contains("2026-03-03T09:55:00Z,2026-03-03T10:25:00Z");
    }

    @Test
    void dryStepsMayBeLeftOut() {
        String wet = "time,rain_mm\n2026-03-03T10:00:00Z,1.2\n2026-03-03T10:20:00Z,1.4\n2026-03-03T10:21:00Z,0.2\n";
        assertThat(storms(site("dry steps = left out\nrain interval = 5 min\n", wet)))
                .contains("2.6 mm in 864 steps of 5 min; 862 without a line taken as dry; "
                        + "1 line with 0.2 mm fit no step and were left out");
        assertRefused(
                site("dry steps = left out\n", wet),
                "rain.csv: the length of a step is not known from wet steps alone: add \"rain interval = ...\" to site.txt");
    }

    @Test
    void coarseStepsHaveNoPeaksShorterThanThemselves() {
        String hourly = SiteOnDisk.readings(
                "time,rain_mm", "2026-03-02T00:00:00Z", Duration.ofHours(1), 72, i -> i == 34 ? "6.5" : "0");
        SiteOnDisk site = site("", hourly);
        assertThat(storms(site)).contains("6.5 mm in 72 steps of 1 h");
        assertThat(site.written("site/events.csv"))
                .contains(",6.5000,1.0000,34.0000,at least,yes,,,,6.5000,6.5000,6.5000,6.5000,");
    }

    @Test
    void saysWhatItCannotUse() {
        assertRefused(
                site("", rain("time,rain", 1.2)), "the unit of column \"rain\" is not known: add \"rain unit = ...\"");
        assertRefused(
                site("", rain("time,rain_mm", -99)),
                "rain.csv: readings must be 0 or greater (mm), or NaN for missing, was -99 at index 408, "
                        + "2026-03-03T10:00:00Z; \"missing marks = ...\" in site.txt");
        assertRefused(
                site("rain interval = 7 min\n", rain("time,rain_mm", 1)), "the steps of the rain must divide a day");
        assertRefused(
                site("", rain("time,rain_mm", 1)).with("tips.csv", OtherFoldersTest.tips(3, "2026-03-03T10:00:00Z")),
                "one gauge has tips or rain of each step, and tips.csv is there too; name the one to take in site.txt");
    }

    @Test
    void takesTheFileThatIsNamed() {
        SiteOnDisk site = site("rain file = rain.csv\n", rain("time,rain_mm", 1.2))
                .with("tips.csv", OtherFoldersTest.tips(3, "2026-03-03T10:00:00Z"));
        assertThat(storms(site)).contains("7.2 mm in 864 steps");
        site.with("site.txt", PLAIN_SITE + "tips file = tips.csv\n");
        assertThat(storms(site)).contains("0.6 mm from 3 tips");
    }

    @Test
    void aHeaderAloneIsNoRecord() {
        assertThat(storms(site("rain interval = 5 min\n", "time,rain_mm\n")))
                .contains("rain: a header and no reading below it")
                .contains("864 of them not known");
        assertThat(storms(site("rain interval = 5 min\ndry steps = left out\n", "time,rain_mm\n")))
                .contains("0.0 mm in 864 steps of 5 min; 864 without a line taken as dry");
    }
}
