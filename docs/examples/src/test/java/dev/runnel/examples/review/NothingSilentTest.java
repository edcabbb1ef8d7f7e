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
}
