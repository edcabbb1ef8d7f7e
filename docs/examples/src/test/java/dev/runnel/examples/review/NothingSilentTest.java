package dev.runnel.examples.review;

import static dev.runnel.examples.review.SiteOnDisk.day;
import static dev.runnel.examples.review.SiteOnDisk.days;
import static dev.runnel.examples.review.SiteOnDisk.readings;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the review must bring to the eye of its reader, and must not leave out without a word. */
class NothingSilentTest {
    @TempDir
    Path temporary;

    /** 20 readings of 100 mm, 10 of 300 mm, 30 of 100 mm, a minute apart; the pipe is 450 mm high. */
    private static String crestOfTenMinutes() {
        return readings(
                "time,depth_mm",
                "2026-03-02T00:00:00Z",
                Duration.ofMinutes(1),
                60,
                i -> i >= 20 && i < 30 ? "300" : "100");
    }

    @Test
    void aSpillBelowTheSoffitIsToBeLookedAt() {
        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary)
                .with("depth.csv", crestOfTenMinutes())
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "overflow crest level = 250 mm\n")
                .review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("look at 1 Water above the overflow's crest once, 10 min together, highest 50 mm above it on "
                        + "Mon 2 Mar 00:20: 1 spill.")
                .doesNotContain("Surcharged");
    }

    @Test
    void noWaterAboveTheCrestIsNothingToLookAt() {
        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary)
                .with("depth.csv", day(2))
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "overflow crest level = 250 mm\n")
                .review();

        assertThat(outcome.flat()).doesNotContain("Water above").contains("crest at 250 mm: no water above it");
    }

    @Test
    void anAlarmStillActiveAtTheEndIsToBeLookedAt() {
        String rising = readings(
                "time,depth_mm", "2026-03-02T00:00:00Z", Duration.ofMinutes(1), 60, i -> i < 40 ? "100" : "3" + i);
        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary)
                .with("depth.csv", rising)
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "alarm level = 250 mm\n")
                .review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("The depth alarm is still active at the end of the record, since Mon 2 Mar 00:40, highest "
                        + "359 mm on Mon 2 Mar 00:59.");
    }

    @Test
    void anAlarmThatReturnedIsNotCalledActive() {
        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary)
                .with("depth.csv", crestOfTenMinutes())
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "alarm level = 250 mm\n")
                .review();

        assertThat(outcome.flat()).contains("1 alarm").doesNotContain("still active");
    }

    /** The gauge goes silent for an hour right after the first reading above the crest. */
    @Test
    void aSpillSeenInOneReadingIsCountedAndNamed() {
        String text = readings(
                        "time,depth_mm",
                        "2026-03-02T00:00:00Z",
                        Duration.ofMinutes(1),
                        31,
                        i -> i == 30 ? "300" : "100")
                + readings("time,depth_mm", "2026-03-02T01:30:00Z", Duration.ofMinutes(1), 30, i -> "100")
                        .replace("time,depth_mm\n", "");
        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary)
                .with("depth.csv", text)
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "overflow crest level = 250 mm\n")
                .review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains(
                        "water above it 1 time, 1 min together; 1 spill by blocks of 12 and 24 h; 1 seen in one reading "
                                + "only, taken as 1 min each")
                .contains("1 spill.");
    }

    @Test
    void aVelocityFileWithoutReadingsIsNamed() {
        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary)
                .with("depth.csv", day(2))
                .with("velocity.csv", "time,velocity_m_per_s\n")
                .review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains(
                        "velocity.csv: no readings, a header and no line below it; no velocity readings: the review is "
                                + "of depth only");
    }

    @Test
    void filesWithoutContentAreNotWritten() {
        SiteOnDisk site = new SiteOnDisk(temporary).with("depth.csv", day(2));

        assertThat(site.review().err()).isEmpty();

        for (String file : new String[] {"rejected.csv", "flags.csv", "alarms.csv", "spills.csv", "events.csv"}) {
            assertThat(Files.exists(site.output().resolve("site").resolve(file)))
                    .as(file)
                    .isFalse();
        }
    }

    @Test
    void aLongRecordHasTheYearInItsDates() {
        String site = SiteOnDisk.PLAIN_SITE + "longest gap = 3 h\n";
        SiteOnDisk.Outcome brief = new SiteOnDisk(temporary.resolve("brief"))
                .with("depth.csv", days(300, 60))
                .with("site.txt", site + "alarm level = 130 mm\n")
                .review();
        SiteOnDisk.Outcome lengthy = new SiteOnDisk(temporary.resolve("lengthy"))
                .with("depth.csv", days(301, 60))
                .with("site.txt", site + "alarm level = 130 mm\n")
                .review();

        assertThat(brief.flat())
                .contains("2 Mar 2026 00:00 to 27 Dec 2026 00:00")
                .contains("Mon 2 Mar 04:00 04:00");
        assertThat(lengthy.flat()).contains("Mon 2 Mar 2026 04:00 04:00");
    }

    /** A pump that runs for one reading in five lifts the level by more than a spike may be: 57 of 288 readings are left out. */
    @Test
    void strokesOfAPumpThatFailAsSpikesAreToldOf() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with(
                        "depth.csv",
                        readings(
                                "time,depth_mm",
                                "2026-03-02T00:00:00Z",
                                Duration.ofMinutes(5),
                                288,
                                i -> i % 5 == 3 ? "300" : "40"));

        assertThat(site.review().flat())
                .contains(
                        "57 of 288 depth readings have no value or failed, 57 of them as spikes: where pumps start and stop"
                                + " between two readings these are no faults and the level is told too low without them; set"
                                + " \"depth spike\" in site.txt higher then.");
    }

    /**
     * The same with a velocity that moves with the pump: of the 57 strokes none is left out. One is spared beside a reading that stands
     * out farther, between it and a false echo at 08:20, which the velocity does not share.
     */
    @Test
    void strokesThatTheVelocitySharesAreNotLeftOut() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with(
                        "depth.csv",
                        readings(
                                "time,depth_mm",
                                "2026-03-02T00:00:00Z",
                                Duration.ofMinutes(5),
                                288,
                                i -> i == 100 ? "500" : i % 5 == 3 ? "300" : "40"))
                .with(
                        "velocity.csv",
                        readings(
                                "time,velocity_m_per_s",
                                "2026-03-02T00:00:00Z",
                                Duration.ofMinutes(5),
                                288,
                                i -> i % 5 == 3 ? "1.2" : "0.4"));

        assertThat(site.review().flat())
                .contains("depth tests: lone reading 1 failed (from Mon 2 Mar 08:20); spike 57 unusual");
        assertThat(site.written("site/flow.csv")).contains("2026-03-02T08:20:00Z,0.50000,suspect");
    }

    /** A velocity that drops out for one reading while the water stands is no flow of 0; where the level falls with it, it is. */
    @Test
    void aVelocityThatDropsOutForOneReadingIsLeftOut() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with(
                        "depth.csv",
                        readings(
                                "time,depth_mm",
                                "2026-03-02T00:00:00Z",
                                Duration.ofMinutes(15),
                                96,
                                i -> i == 60 ? "40" : i % 2 == 0 ? "99" : "100"))
                .with(
                        "velocity.csv",
                        readings(
                                "time,velocity_m_per_s",
                                "2026-03-02T00:00:00Z",
                                Duration.ofMinutes(15),
                                96,
                                i -> i % 20 == 0 ? "0" : i % 3 == 0 ? "0.68" : "0.7"));

        assertThat(site.review().flat()).contains("velocity tests: lone reading 3 failed (from Mon 2 Mar 05:00)");
        assertThat(site.written("site/flags.csv"))
                .contains("2026-03-02T05:00:00Z,velocity,lone reading,fail,")
                .doesNotContain("2026-03-02T15:00:00Z,velocity");
    }

    /** What stays in use and what is left out stands in the files themselves. */
    @Test
    void theFilesSayWhatTheirWordsMean() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with(
                        "depth.csv",
                        readings(
                                "time,depth_mm",
                                "2026-03-02T00:00:00Z",
                                Duration.ofMinutes(1),
                                60,
                                i -> i == 20 ? "250" : i == 40 ? "400" : "100"));

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.flat()).contains("unusual failed").contains("spike");
        assertThat(site.written("site/flags.csv"))
                .startsWith("# verdict: unusual stays in use (quality poor), fail is left out (quality suspect)\n")
                .contains("2026-03-02T00:20:00Z,depth,spike,unusual,")
                .contains("2026-03-02T00:40:00Z,depth,spike,fail,");
        assertThat(site.written("site/flow.csv"))
                .contains("2026-03-02T00:20:00Z,0.25000,poor")
                .contains("2026-03-02T00:40:00Z,0.40000,suspect");
    }

    /** 10 minutes of 300 mm over a crest at 250 mm of 1 m: Q = 1.8385 x 0.05^1.5 = 20.56 l/s. */
    @Test
    void whatGoesOverAWeirIsToldWithItsUncertainty() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("depth.csv", crestOfTenMinutes())
                .with(
                        "site.txt",
                        SiteOnDisk.PLAIN_SITE
                                + "overflow crest level = 250 mm\noverflow crest length = 1 m\nbathing season = 05-15 to 09-30\n"
                                + "depth uncertainty = 5 mm\nvelocity uncertainty = 0.03 m/s\n");
        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.err()).isEmpty();
        // 540 s at 20.56 l/s and 60 s on a straight line to 0: 11.72 m3; with 40 and 60 mm of head 8.38 and 15.4 m3.
        assertThat(outcome.flat())
                .contains(
                        "volume 11.7 m3 (8.38 m3 to 15.4 m3 by twice the uncertainty of the level); by a weir of 1000 mm, "
                                + "Cd 0.623 by Francis")
                .contains("2026: 1 spill, 0.17 h; seen 0.0 % of the time")
                .doesNotContain("may have been none");
        assertThat(site.written("site/annual-return.csv"))
                .contains("site,2026,2026-01-01T00:00:00Z,2027-01-01T00:00:00Z,1,1,1,0,0.17,11.72,0,0,0.01")
                .contains("site,bathing season 2026,2026-05-15T00:00:00Z,2026-10-01T00:00:00Z,0,0,0,0,0.00,0,0,0,0.00");
    }

    @Test
    void aSpillWithinTheUncertaintyMayHaveBeenNone() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("depth.csv", crestOfTenMinutes())
                .with(
                        "site.txt",
                        SiteOnDisk.PLAIN_SITE + "overflow crest level = 295 mm\noverflow crest length = 1 m\n"
                                + "depth uncertainty = 5 mm\nvelocity uncertainty = 0.03 m/s\n");

        assertThat(site.review().flat())
                .contains(
                        "1 of these may have been none: the level stood above the crest by no more than twice its uncertainty")
                .contains("2026: 0 spills (1 with uncertain ones)")
                .contains("of it at heads below 30 mm, where the law is not to be trusted");
        assertThat(site.written("site/spills.csv")).contains(",yes,no,");
    }

    @Test
    void aWeirNeedsItsLevel() {
        SiteOnDisk site = new SiteOnDisk(temporary).with("depth.csv", crestOfTenMinutes());

        assertThat(site.with("site.txt", SiteOnDisk.PLAIN_SITE + "overflow crest length = 1 m\n")
                        .review()
                        .err())
                .contains("line 4, column 25: overflow crest length needs an overflow crest level beside it");
        assertThat(site.with("site.txt", SiteOnDisk.PLAIN_SITE + "overflow lowest head = 1 mm\n")
                        .review()
                        .err())
                .contains("overflow lowest head needs an overflow crest length beside it");
        assertThat(site.with("site.txt", SiteOnDisk.PLAIN_SITE + "bathing season = summer\n")
                        .review()
                        .err())
                .contains("bathing season must be two days of a year such as 05-15 to 09-30, was \"summer\"");
    }
}
