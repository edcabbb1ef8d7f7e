package dev.runnel.examples.review;

import static dev.runnel.examples.review.SiteOnDisk.PLAIN_SITE;
import static dev.runnel.examples.review.SiteOnDisk.days;
import static dev.runnel.examples.review.SiteOnDisk.readings;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Files as loggers write them: each in a way of its own, in pieces, as counts, in inches, with times as numbers. */
class FilesAsTheyComeTest {
    private static final Instant START = Instant.parse("2026-03-02T00:00:00Z");

    @TempDir
    Path temporary;

    private SiteOnDisk site() {
        return new SiteOnDisk(temporary);
    }

    /** Three days of depths, and 30 tips of 0.2 mm on the second from 10:00 on, counted by quarters of an hour: 4, 20, 6. */
    private SiteOnDisk withCounts(String header, boolean isZeroWritten, String keys) {
        StringBuilder text = new StringBuilder(header).append('\n');
        for (int i = 0; i < 3 * 96; i++) {
            int count = i == 136 ? 4 : i == 137 ? 20 : i == 138 ? 6 : 0;
            if (isZeroWritten || count > 0) {
                text.append(START.plus(Duration.ofMinutes(15L * i)))
                        .append(',')
                        .append(count)
                        .append('\n');
            }
        }
        return site().with("depth.csv", days(3, 15))
                .with("tips.csv", text.toString())
                .with("site.txt", PLAIN_SITE + keys);
    }

    @Test
    void readingsOfAClockThatWasADayAheadAreSetAsideAndPushNoOthersOut() {
        StringBuilder text = new StringBuilder("time,depth_mm\n");
        for (int i = 0; i < 5 * 96; i++) {
            boolean isAhead = i >= 150 && i < 190;
            text.append(START.plus(Duration.ofMinutes(15L * (isAhead ? i + 96 : i))))
                    .append(',')
                    .append(isAhead ? 300 : 100 + i % 7)
                    .append('\n');
        }
        SiteOnDisk.Outcome outcome =
                new SiteOnDisk(temporary).with("depth.csv", text.toString()).review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("40 lines of depth.csv stamped with another time than the lines around, from line 152 "
                        + "(stamped 1 d after their place among the lines; rejected)")
                .contains("depth 480 440 40 0")
                .doesNotContain("conflicting duplicate");
    }

    @Test
    void oneFileOfDepthAndVelocityIsSaidOnceToHaveLinesOfAnotherTime() {
        StringBuilder text = new StringBuilder("time,depth_mm,velocity_m_s\n");
        for (int i = 0; i < 5 * 96; i++) {
            text.append(START.plus(Duration.ofMinutes(15L * (i >= 150 && i < 190 ? i + 35_040 : i))))
                    .append(',')
                    .append(100 + i % 7)
                    .append(",0.7\n");
        }
        String flat = new SiteOnDisk(temporary)
                .with("depth.csv", text.toString())
                .review()
                .flat();
        assertThat(flat.split("stamped with another time", -1)).hasSize(2);
        assertThat(flat).contains("(stamped 365 d after their place among the lines; rejected)");
    }

    @Test
    void countsOfTipsAreTakenAsCountsByTheNameOfTheirColumn() {
        SiteOnDisk.Outcome outcome = withCounts("time,tips", true, "").review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("rain 6.0 mm in 288 steps of 15 min; 1 storm of 1.0 mm or more")
                .contains(
                        "rain from \"tips\" in counts of tips of 0.2 mm, steps of 15 min stamped at their beginnings");
    }

    @Test
    void aColumnThatMayHoldCountsMustBeSaid() {
        assertThat(withCounts("time,n", true, "").review().err())
                .contains(
                        "tips.csv: column \"n\" holds whole numbers from 0 to 20, which may be counts of tips: add "
                                + "\"tips count column = n\" to site.txt, or \"tips count column = none\" if each line is one tip");
        assertThat(withCounts("time,n", true, "tips count column = n\n")
                        .review()
                        .flat())
                .contains("rain 6.0 mm in 288 steps");
        assertThat(withCounts("time,n", true, "tips count column = none\n")
                        .review()
                        .flat())
                .contains("rain 57.6 mm from 288 tips");
        assertThat(withCounts("time,n", true, "tips count column = m\n")
                        .review()
                        .err())
                .contains("tips.csv: header must have m, was [time, n]");
    }

    @Test
    void countsWithoutTheirZerosNeedTheInterval() {
        assertThat(withCounts("time,tip_count", false, "").review().err())
                .contains(
                        "the length of a step is not known from wet steps alone: add \"rain interval = ...\" to site.txt");
        assertThat(withCounts("time,tip_count", false, "rain interval = 15 min\n")
                        .review()
                        .flat())
                .contains("rain 6.0 mm in 288 steps of 15 min; 285 without a line taken as dry");
    }

    @Test
    void aColumnOfOnesOrALineNumberIsNoCount() {
        for (boolean isNumber : new boolean[] {true, false}) {
            StringBuilder text = new StringBuilder("time,nr\n");
            for (int i = 0; i < 30; i++) {
                text.append(START.plus(Duration.ofMinutes(i + 2000L)))
                        .append(',')
                        .append(isNumber ? i + 7 : 1)
                        .append('\n');
            }
            assertThat(site().with("depth.csv", days(3, 15))
                            .with("tips.csv", text.toString())
                            .review()
                            .flat())
                    .contains("rain 6.0 mm from 30 tips");
        }
    }

    @Test
    void inchesAreRainToo() {
        String inches = readings(
                "time,rain_in", "2026-03-02T00:00:00Z", Duration.ofMinutes(15), 288, i -> i == 136 ? "0.5" : "0.00");
        SiteOnDisk.Outcome outcome =
                site().with("depth.csv", days(3, 15)).with("rain.csv", inches).review();
        assertThat(outcome.flat()).contains("rain 12.7 mm in 288 steps").contains("rain from \"rain_in\" in in, steps");

        SiteOnDisk.Outcome hourly = site().with("rain.csv", inches.replace("rain_in", "Precip (in/h)"))
                .with("depth.csv", days(3, 15))
                .review();
        assertThat(hourly.flat()).contains("rain 3.2 mm in 288 steps");
    }

    @Test
    void aTipMayBeAHundredthOfAnInch() {
        assertThat(withCounts("time,tips", true, "tip size = 0.01 in\n")
                        .review()
                        .flat())
                .contains("rain 7.6 mm in 288 steps");
    }

    @Test
    void monthsInAFolderAreOneRecord() throws IOException {
        String all = days(20, 15);
        String header = all.substring(0, all.indexOf('\n') + 1);
        String[] lines = all.substring(header.length()).split("\n");
        SiteOnDisk site = site().with("site.txt", PLAIN_SITE + "depth file = depths\n");
        Files.createDirectories(site.folder().resolve("depths"));
        // The names do not tell the order, and the second begins a day before the first ends.
        piece(site, "depths/zebra.csv", header, lines, 0, 1000);
        piece(site, "depths/aard.csv", header, lines, 904, 1920);

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("20 d at 15 min")
                .contains("depth 2016 2016 0 0 0 0 0 -")
                .contains("depth from 2 files; they overlap: 96 lines stand in two of them and count once")
                .doesNotContain("differ");
    }

    @Test
    void monthsByAPatternMayDifferWhereTheyOverlap() throws IOException {
        String all = days(4, 15);
        String header = all.substring(0, all.indexOf('\n') + 1);
        String[] lines = all.substring(header.length()).split("\n");
        SiteOnDisk site = site().with("site.txt", PLAIN_SITE + "depth file = depth-*.csv\n");
        piece(site, "depth-2026-03.csv", header, lines, 0, 200);
        lines[199] = lines[199] + "9\nnot a line";
        piece(site, "depth-2026-04.csv", header, lines, 199, 384);

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.flat())
                .contains("1 lines of one time differ between them: that of the file which begins earlier stands");
        assertThat(site.written("site/rejected.csv"))
                .contains("depth-*.csv,3,1,too few columns,\"depth-2026-04.csv: must have 2");
        assertThat(site.written("manifest.txt")).contains(" depth-2026-03.csv").contains(" depth-2026-04.csv");
    }

    private static void piece(SiteOnDisk site, String name, String header, String[] lines, int from, int to)
            throws IOException {
        StringBuilder text = new StringBuilder(header);
        for (int i = from; i < to; i++) {
            text.append(lines[i]).append('\n');
        }
        Files.writeString(site.folder().resolve(name), text);
    }

    @Test
    void tipsThatStandInTwoFilesAreTheSameTips() {
        String tips = "2026-03-03T10:00:00Z\n2026-03-03T10:00:00Z\n2026-03-03T10:05:00Z\n";
        SiteOnDisk.Outcome outcome = site().with("site.txt", PLAIN_SITE + "tips file = tips-*\n")
                .with("depth.csv", days(3, 15))
                .with("tips-1.csv", "time\n" + tips)
                .with("tips-2.csv", "time\n" + tips + "2026-03-03T10:09:00Z\n")
                .review();

        assertThat(outcome.flat())
                .contains("0.8 mm from 4 tips")
                .contains("tips from 2 files; they overlap: 3 lines stand in two of them and count once");
    }

    @Test
    void aPatternThatNoFileFitsIsSaid() {
        assertThat(site().with("site.txt", PLAIN_SITE + "depth file = dept-*.csv\n")
                        .review()
                        .err())
                .contains("dept-*.csv: at least one file must fit this name in site.txt, none does");
    }

    /** The logger has date and time apart, decimal commas and local time; the gauge none of these. */
    @Test
    void eachFileMayBeWrittenInAWayOfItsOwn() {
        DateTimeFormatter day =
                DateTimeFormatter.ofPattern("dd.MM.yyyy;HH:mm", Locale.ROOT).withZone(ZoneOffset.ofHours(2));
        StringBuilder depth = new StringBuilder("Datum;Zeit;depth [cm]\n");
        StringBuilder velocity = new StringBuilder("when|velocity [m/s]\n");
        for (int i = 0; i < 288; i++) {
            Instant time = START.plus(Duration.ofMinutes(15L * i));
            depth.append(day.format(time)).append(";10,").append(i % 9).append('\n');
            velocity.append(time.getEpochSecond())
                    .append("|0.")
                    .append(500 + i % 7)
                    .append('\n');
        }
        SiteOnDisk site = site().with("depth.csv", depth.toString())
                .with("velocity.csv", velocity.toString())
                .with("tips.csv", "t,x\n2026-03-03T10:00:00,1\n2026-03-03T10:01:00,1\n")
                .with(
                        "site.txt",
                        PLAIN_SITE
                                + "logger clock = +02:00\ntime column = Datum\ntime of day column = Zeit\n"
                                + "time pattern = dd.MM.yyyy HH:mm\ndecimal mark = comma\n"
                                + "velocity clock = UTC\nvelocity time column = when\nvelocity time of day column = none\n"
                                + "velocity time pattern = seconds since 1970\nvelocity decimal mark = point\n"
                                + "gauge clock = UTC\ntips time column = t\ntips time of day column = none\n"
                                + "tips time pattern = ISO 8601\ntips decimal mark = point\n");

        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("depth 288 288 0 0")
                .contains("velocity 288 288 0 0")
                .contains("0.4 mm from 2 tips");
        assertThat(site.written("site/flow.csv"))
                .contains("2026-03-02T00:15:00Z,0.10100,unchecked,0.50100,unchecked,0.01");
    }

    @Test
    void timesMayBeDaysOfASpreadsheet() {
        // 46083 is 2 March 2026.
        String text = readings("t,depth_mm", "2026-03-02T00:00:00Z", Duration.ofHours(1), 48, i -> "100")
                .replace("2026-03-02T00:00:00Z", "46083")
                .replace("2026-03-02T12:00:00Z", "46083.5");
        SiteOnDisk.Outcome outcome = site().with(
                        "depth.csv",
                        text.lines().filter(line -> !line.contains("T")).reduce("", (a, b) -> a + b + "\n"))
                .with("site.txt", PLAIN_SITE + "time pattern = spreadsheet days\n")
                .review();

        assertThat(outcome.flat()).contains("2 Mar 2026 00:00 to 3 Mar 2026 00:00, 24 h at 12 h");
    }

    @Test
    void utf16IsKnownByItsMark() {
        SiteOnDisk.Outcome outcome = site().with(
                        "depth.csv", ("\uFEFF" + days(1, 15)).getBytes(StandardCharsets.UTF_16LE))
                .review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat()).contains("depth 96 96 0 0");
    }

    /** 35 readings of -9999 fail, and no other. */
    @Test
    void whatFailsTheRangeTakesNoNeighbourWithIt() {
        SiteOnDisk.Outcome outcome = site().with(
                        "depth.csv",
                        readings(
                                "time,depth_mm",
                                "2026-03-02T00:00:00Z",
                                Duration.ofMinutes(2),
                                7000,
                                i -> i % 200 == 77 ? "-9999" : "" + (100 + i % 3)))
                .review();

        assertThat(outcome.flat())
                .contains("depth 7000 7000 0 0 0 35 0 -")
                .contains("depth tests: range 35 failed (from Mon 2 Mar 02:34)");
    }

    @Test
    void badValuesAndFilesEndInOneMessageEach() throws IOException {
        for (String[] each : new String[][] {
            {"logging interval = 99999999999 h", "logging interval must be at most 366 d, was \"99999999999 h\""},
            {
                "missing marks = NaN NaN",
                "site.txt, line 4, column 17: missing marks must name each mark once, was \"NaN NaN\""
            },
            {"velocity missing marks = --- -99 ---", "velocity missing marks must name each mark once, was"},
            {"missing marks = NaN nan -9999", ""},
            {"depth file = /dev/zero", "depth file must lie in the folder of the site, or be allowed by"},
            {"ddf file = ../ddf.csv", "ddf file must lie in the folder of the site, or be allowed by"},
            {"velocity decimal mrk = comma", "did you mean \"velocity decimal mark\""},
            {"tips repeated hour = maybe", "tips repeated hour must be one of reject, by order, earlier, later, was"},
            {"depth column = depht_mm", "header must have depht_mm, was [time, depth_mm]; did you mean \"depth_mm\""},
            {"time pattern = seconds since 1900", "or one of \"ISO 8601\", \"seconds since 1970\""}
        }) {
            SiteOnDisk.Outcome outcome = site().with("depth.csv", days(1, 15))
                    .with("site.txt", PLAIN_SITE + each[0] + "\n")
                    .review();
            if (each[1].isEmpty()) {
                assertThat(outcome.err()).as(each[0]).isEmpty();
            } else {
                assertThat(outcome.err()).as(each[0]).contains(each[1]);
                assertThat(outcome.err().strip().lines().count())
                        .as(outcome.err())
                        .isEqualTo(1);
            }
        }
    }

    @Test
    void whatIsOutsideTheFolderIsReadOnlyIfWhoStartsTheProgramAllowsIt() throws IOException {
        SiteOnDisk site = site().with("depth.csv", days(1, 15)).with("../depths.csv", "secret\n" + days(1, 15));
        site.with("site.txt", PLAIN_SITE + "depth file = ../depths.csv\n");
        assertThat(site.review().err()).contains("was \"../depths.csv\"").doesNotContain("secret");

        Files.createSymbolicLink(
                site.folder().resolve("link.csv"), site.folder().resolve("../depths.csv"));
        site.with("site.txt", PLAIN_SITE + "depth file = link.csv\n");
        assertThat(site.review().err())
                .contains("must lie in the folder of the site")
                .doesNotContain("secret");

        System.setProperty("runnel.files.outside", "allowed");
        try {
            assertThat(site.review().err()).contains("secret");
            for (String key : List.of("depth", "ddf")) {
                assertThat(site.with("site.txt", PLAIN_SITE + key + " file = /dev/zero\n")
                                .review()
                                .err())
                        .contains("must be a file, and is a folder or a device");
            }
        } finally {
            System.clearProperty("runnel.files.outside");
        }
    }

    @Test
    void aFileOfZerosEndsInAMessage() {
        SiteOnDisk nothing = site();
        zeros(nothing.folder().resolve("depth.csv"), 0, "");
        assertThat(nothing.review().err())
                .contains("depth.csv: file must be text, its first line is longer than 1048576 bytes");

        zeros(nothing.folder().resolve("depth.csv"), 300_000_000, days(1, 15));
        assertThat(nothing.review().err())
                .contains("depth.csv, line 98: a line must have at most 1048576 bytes, was longer");
    }

    /** Writes a text and 300 MB of zeros behind it, most of which take no room on the disk. */
    private static void zeros(Path file, long more, String text) {
        try (var channel = java.nio.channels.FileChannel.open(
                file,
                java.nio.file.StandardOpenOption.CREATE,
                java.nio.file.StandardOpenOption.TRUNCATE_EXISTING,
                java.nio.file.StandardOpenOption.WRITE)) {
            channel.write(java.nio.ByteBuffer.wrap(text.getBytes(StandardCharsets.UTF_8)));
            channel.position(Math.max(more, 300_000_000));
            channel.write(java.nio.ByteBuffer.allocate(1));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
