package dev.runnel.examples.review;

import static dev.runnel.examples.review.SiteOnDisk.day;
import static dev.runnel.examples.review.SiteOnDisk.days;
import static dev.runnel.examples.review.SiteOnDisk.readings;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The review on folders other than the demo: every one gives a review or says clearly why not. */
class OtherFoldersTest {
    @TempDir
    Path temporary;

    @Test
    void depthAloneGivesAReviewOfDepth() {
        SiteOnDisk site = new SiteOnDisk(temporary).with("depth.csv", day(2));

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.status()).isZero();
        assertThat(outcome.flat())
                .contains("no velocity readings: the review is of depth only, there is no flow")
                .contains("no rain gauge")
                .contains("1 site in site")
                .doesNotContain("NaN");
        assertThat(site.written("site/flow.csv")).contains("time,level_m,level_m_quality\n2026-03-02T00:00:00Z,0.1");
        assertThat(Files.exists(site.output().resolve("site/events.csv"))).isFalse();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 5, 15})
    void takesAnyLoggingInterval(int minutes) {
        SiteOnDisk.Outcome outcome =
                new SiteOnDisk(temporary).with("depth.csv", day(minutes)).review();

        assertThat(outcome.err()).isEmpty();
        int lines = 24 * 60 / minutes;
        assertThat(outcome.flat())
                .contains("24 h at " + minutes + " min; times in UTC")
                .contains("depth " + lines + " " + lines + " 0 0 0 0 0 - read as: depth from \"depth_mm\" in mm");
    }

    @Test
    void readsOtherColumnsUnitsSeparatorsClocksAndDecimals() {
        StringBuilder text =
                new StringBuilder("Logger 17\nDatum;Uhrzeit;Fliesstiefe [cm];Geschwindigkeit [m/s];Akku\n");
        for (int i = 0; i < 96; i++) {
            text.append(String.format("02.03.2026;%02d:%02d;%s;0,%d;3,6\n", i / 4, i % 4 * 15, "10," + i % 7, 500 + i));
        }
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("alles.csv", text.toString())
                .with(
                        "site.txt",
                        SiteOnDisk.PLAIN_SITE
                                + "time zone = Europe/Berlin\nlines before header = 1\ndecimal mark = comma\n"
                                + "time column = Datum\ntime of day column = Uhrzeit\ntime pattern = dd.MM.yyyy HH:mm\n"
                                + "depth file = alles.csv\ndepth column = Fliesstiefe [cm]\n"
                                + "velocity file = alles.csv\nvelocity column = Geschwindigkeit [m/s]\n");

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("2 Mar 2026 00:00 to 3 Mar 2026 00:00, 24 h at 15 min; times in Europe/Berlin");
        // Midnight in Berlin is 23:00 UTC of the day before; 10,0 cm and 0,500 m/s.
        assertThat(site.written("site/flow.csv"))
                .contains("2026-03-01T23:00:00Z,0.10000,unchecked,0.50000,unchecked,0.01");
    }

    @Test
    void findsAVelocityColumnBesideTheDepths() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with(
                        "depth.csv",
                        readings(
                                "time,depth (m),velocity (m/s)",
                                "2026-03-02T00:00:00Z",
                                Duration.ofMinutes(2),
                                720,
                                i -> "0.1,0.6"));

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat()).contains("velocity (m/s)").doesNotContain("no velocity readings");
    }

    @Test
    void aFileWithoutHeaderIsReadByPosition() {
        String text = day(5).replace("time,depth_mm\n", "");
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("depth.csv", text)
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "depth unit = mm\n");

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat()).contains("24 h at 5 min");
    }

    @Test
    void aDryWeekOfTheGaugeIsNoError() {
        SiteOnDisk site =
                new SiteOnDisk(temporary).with("depth.csv", days(7, 15)).with("tips.csv", "time\n");

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("tips: a header and no tip below it")
                .contains("0.0 mm from 0 tips; 0 storms");
        assertThat(Files.exists(site.output().resolve("site/events.csv"))).isFalse();
    }

    @Test
    void stormsWithoutATableHaveNoReturnPeriods() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("depth.csv", days(3, 15))
                .with("tips.csv", tips(30, "2026-03-03T10:00:00Z"));

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("6.0 mm from 30 tips; 1 storm of 1.0 mm or more")
                .contains("no depth-duration-frequency table: no return periods");
    }

    @Test
    void tipsOutOfOrderAreSortedAndListed() {
        String late = tips(30, "2026-03-03T10:00:00Z") + "2026-03-03T09:59:00Z\n";
        SiteOnDisk site =
                new SiteOnDisk(temporary).with("depth.csv", days(3, 15)).with("tips.csv", late);

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat()).contains("6.2 mm from 31 tips").contains("tips lines: 1 out of order (line 32)");
        assertThat(site.written("site/rejected.csv")).contains("tips.csv,32,0,out of order,");
    }

    @Test
    void onlyASurchargeIsReviewed() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with(
                        "depth.csv",
                        readings("time,depth_mm", "2026-03-02T00:00:00Z", Duration.ofMinutes(2), 60, i -> "900"));

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("Surcharged once, highest 450 mm above the soffit")
                .contains("the record hides its start or end");
    }

    @Test
    void oneBadSiteDoesNotStopTheOthers() {
        SiteOnDisk site = new SiteOnDisk(temporary).with("depth.csv", day(2));
        site.with("../other/site.txt", "diameter = 450\n");

        SiteOnDisk.Outcome outcome = site.review(temporary.toString());

        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.flat()).contains("1 site in ");
        assertThat(outcome.err())
                .startsWith("Site review: other cannot be reviewed. ")
                .contains(
                        "site.txt, line 1, column 12: diameter must be a number and a unit of mm, cm, m, in, ft, was \"450\"");
    }

    @Test
    void refusesAnEmptyFile() {
        refused("depth.csv", "", "depth.csv: must hold a line that names its columns, is empty");
    }

    @Test
    void refusesAHeaderAlone() {
        refused("depth.csv", "time,depth_mm\n", "depth.csv: no readings, a header and no line below it");
    }

    @Test
    void refusesAFileOfAnotherKind() {
        byte[] picture = new byte[600];
        for (int i = 0; i < picture.length; i++) {
            picture[i] = (byte) (i * 37 + 0x89);
        }
        SiteOnDisk.Outcome outcome =
                new SiteOnDisk(temporary).with("depth.csv", picture).review();

        assertRefused(outcome, "depth.csv: file must be text, is of another kind");
    }

    @Test
    void refusesTimesInAnotherFormAndSaysHowToNameIt() {
        String text = day(2).replace("2026-03-02T", "02/03/2026 ").replace(":00Z", "");
        refused(
                "depth.csv",
                text,
                "depth.csv: must hold at least two readings, had 0 in 720 lines; line 2, column 1: unreadable time, "
                        + "\"02/03/2026 00:00\"");
        SiteOnDisk.Outcome helped = new SiteOnDisk(temporary)
                .with("depth.csv", text)
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "time pattern = dd/MM/yyyy HH:mm\n")
                .review();
        assertThat(helped.err()).isEmpty();
        assertThat(helped.status()).isZero();
    }

    @Test
    void refusesReadingsOfWhichNoneIsUsable() {
        refused(
                "depth.csv",
                readings("time,depth_mm", "2026-03-02T00:00:00Z", Duration.ofMinutes(2), 30, i -> ""),
                "of 30 in column \"depth_mm\" 30 have no value and 0 are out of range as mm");
        refused(
                "depth.csv",
                readings("time,depth (m)", "2026-03-02T00:00:00Z", Duration.ofMinutes(2), 30, i -> "120"),
                "0 have no value and 30 are out of range as m; are column and unit right?");
    }

    @Test
    void depthAndVelocityOnClocksOfTheirOwnAreBroughtTogether() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("depth.csv", days(2, 2))
                .with(
                        "velocity.csv",
                        readings("time,v (m/s)", "2026-03-02T00:00:30Z", Duration.ofMinutes(2), 1440, i -> "0.8"));

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat()).contains("Depth and velocity were read at different times");
        assertThat(site.written("site/flow.csv")).contains("2026-03-02T00:02:00Z,0.10000,unchecked,0.80000,estimate,");
    }

    @Test
    void aSkippedHourIsNotGuessed() {
        StringBuilder text = new StringBuilder("time,depth_mm\n");
        for (int i = 0; i < 96; i++) {
            text.append(String.format("2026-03-29 %02d:%02d,100\n", i / 4, i % 4 * 15));
        }
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("depth.csv", text.toString())
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "time zone = Europe/London\n");

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("depth 96 92 4 0")
                .contains("4 lines in the hour that the clock change skips: does the logger follow that clock?");
    }

    @Test
    void weeksOfNothingButRainHaveNoDryWeatherFlow() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("depth.csv", days(10, 15))
                .with(
                        "tips.csv",
                        readings("time", "2026-03-02T00:00:00Z", Duration.ofMinutes(10), 1440, i -> "")
                                .replace("Z,\n", "Z\n"));

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("0 dry days, 10 wet")
                .contains("it takes 3 such days with readings, there are 0")
                .contains("* the record does not hold all of it");
    }

    @Test
    void refusesTextThatHoldsNoReadings() {
        refused("depth.csv", "Dear all,\nplease find attached, as agreed,\nthe readings\n", "depth.csv");
    }

    @Test
    void refusesAColumnThatIsNotThere() {
        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary)
                .with("depth.csv", day(2))
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "depth column = stage\ndepth unit = mm\n")
                .review();

        assertRefused(outcome, "stage");
    }

    @Test
    void namesAMissingColumnBeforeItsUnit() {
        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary)
                .with("depth.csv", day(2))
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "depth column = depht_mn\n")
                .review();

        assertRefused(
                outcome, "depth.csv: header must have depht_mn, was [time, depth_mm]; did you mean \"depth_mm\"?");
    }

    @Test
    void asksWhichColumnHoldsTheDepth() {
        refused(
                "depth.csv",
                "time,a,b\n2026-03-02T00:00:00Z,1,2\n",
                "depth.csv: no column is known to hold depth, the columns are [time, a, b]: add \"depth column = ...\"");
    }

    @Test
    void asksForAUnitThatNothingTells() {
        refused(
                "depth.csv",
                "time,depth\n2026-03-02T00:00:00Z,1\n",
                "depth.csv: the unit of column \"depth\" is not known: add \"depth unit = ...\" to site.txt");
    }

    @Test
    void refusesAFolderWithoutDepths() {
        SiteOnDisk site = new SiteOnDisk(temporary);

        assertRefused(site.review(), "depth.csv: file must be there, it holds the depth readings");
    }

    @Test
    void refusesAFolderWithoutSites() throws Exception {
        Path empty = Files.createDirectories(temporary.resolve("empty"));

        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary).review(empty.toString());

        assertRefused(outcome, "folder must hold site.txt, or folders that hold one, was " + empty);
    }

    @Test
    void refusesAFolderThatIsNotThere() {
        assertRefused(
                new SiteOnDisk(temporary).review(temporary.resolve("nowhere").toString()),
                "folder must be there, was ");
    }

    @Test
    void refusesAFileInPlaceOfAFolder() {
        SiteOnDisk site = new SiteOnDisk(temporary);

        assertRefused(
                site.review(site.folder().resolve("site.txt").toString()), "folder must be a folder, was the file ");
    }

    @Test
    void refusesATableWhoseDepthFallsWithDuration() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("depth.csv", day(2))
                .with("ddf.csv", "duration_min,2,5\n60,16,20\n120,15,25\n");

        assertRefused(site.review(), "ddf.csv line 3, column 2");
    }

    @Test
    void refusesAVelocityFileThatTheSiteNamesAndIsNotThere() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("depth.csv", day(2))
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "velocity file = speeds.csv\n");

        assertRefused(site.review(), "speeds.csv: file must be there, it is named in site.txt");
    }

    @Test
    void oneStampOfTheNextCenturyIsSetAsideAndNamed() {
        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary)
                .with("depth.csv", day(2) + "2099-01-01T00:00:00Z,150\n")
                .review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("24 h at 2 min")
                .contains(
                        "1 line of depth stamped more than 30 days from all others and set aside, the first 1 Jan 2099");
    }

    @Test
    void aGaugeThatFallsSilentHasNoDryDaysAfterIt() {
        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary)
                .with("depth.csv", SiteOnDisk.days(40, 15))
                .with(
                        "tips.csv",
                        tips(30, "2026-03-01T10:00:00Z")
                                + tips(30, "2026-03-04T10:00:00Z").replace("time\n", ""))
                .review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat()).contains("The gauge wrote nothing for").contains("was it dead?");
    }

    @Test
    void refusesAnIntervalOfAges() {
        refused(
                "site.txt",
                SiteOnDisk.PLAIN_SITE + "logging interval = 99999999999 h\n",
                "site.txt, line 4, column 20: logging interval must be at most 366 d, was \"99999999999 h\"");
    }

    private void refused(String file, String text, String message) {
        assertRefused(new SiteOnDisk(temporary).with(file, text).review(), message);
    }

    /** One paragraph on the error stream, nothing on the other, an exit code that scripts can see. */
    private static void assertRefused(SiteOnDisk.Outcome outcome, String message) {
        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.out()).isEmpty();
        assertThat(outcome.err()).startsWith("Site review: ").contains(message).hasLineCount(1);
        assertThat(outcome.err()).doesNotContain("Exception");
    }

    static String tips(int count, String start) {
        return readings("time", start, Duration.ofMinutes(2), count, i -> "").replace("Z,\n", "Z\n");
    }

    @Test
    void aByteOrderMarkAndWindowsLineEndsDoNotMatter() {
        byte[] text = ("\uFEFF" + day(2).replace("\n", "\r\n")).getBytes(StandardCharsets.UTF_8);

        SiteOnDisk.Outcome outcome =
                new SiteOnDisk(temporary).with("depth.csv", text).review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat()).contains("24 h at 2 min");
    }
}
