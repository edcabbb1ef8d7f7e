package dev.runnel.examples.review;

import static dev.runnel.examples.review.SiteOnDisk.PLAIN_SITE;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Two days at 15 min: 100 mm, of which the second reads 120 mm; somebody came at the end of each day. */
class SiteBooksTest {
    private static final String HEADER = "series,from,to,kind,value,value at end,source,reason,evidence,author\n";
    private static final String OFFSET =
            "depth,2026-03-03T00:00:00Z,2026-03-04T00:00:00Z,offset,-0.02,,,sensor moved,visit of 3 March,A. Reed\n";
    private static final String SEDIMENT =
            "depth,2026-03-02T12:00:00Z,2026-03-03T12:00:00Z,sediment,0.03,,,found,visit of 2 March,A. Reed\n";
    private static final String VISITS = "time,author,hand depth,clock,adjusted,work\n"
            + "2026-03-02T12:00:00Z,A. Reed,0.101,5,no,\n"
            + "2026-03-03T12:00:00Z,A. Reed,0.1,-90,yes,lens cleaned\n";

    @TempDir
    Path temporary;

    /** A site whose review has every file of visits and corrections. */
    static SiteOnDisk booked(Path temporary) {
        return site(temporary)
                .with("visits.csv", VISITS)
                .with("corrections.csv", HEADER + OFFSET.replace("-0.02", "0.02") + SEDIMENT);
    }

    private SiteOnDisk site() {
        return site(temporary);
    }

    private static SiteOnDisk site(Path temporary) {
        return new SiteOnDisk(temporary)
                .with(
                        "depth.csv",
                        SiteOnDisk.readings(
                                "time,depth_mm,second_mm",
                                "2026-03-02T00:00:00Z",
                                Duration.ofMinutes(15),
                                192,
                                i -> (i < 96 ? "100" : "120") + ",77"))
                .with("site.txt", PLAIN_SITE + "depth column = depth_mm\n");
    }

    @Test
    void correctsBeforeEverythingAndSaysWhatIsAltered() {
        SiteOnDisk site = site().with("corrections.csv", HEADER + OFFSET);
        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.status()).as(outcome.err()).isZero();
        assertThat(outcome.flat())
                .contains("corrections depth: 96 of 192 readings altered; applied before everything else")
                .contains(
                        "c1 depth, Tue 3 Mar 00:00 to Wed 4 Mar 00:00: offset -20.0 mm, sensor moved (visit of 3 March;"
                                + " A. Reed); 96 readings");
        assertThat(site.written("site/flow.csv"))
                .contains("2026-03-02T23:45:00Z,0.10000,unchecked")
                .contains("2026-03-03T00:00:00Z,0.10000,estimate")
                .doesNotContain("0.12000");
        assertThat(site.written("manifest.txt")).contains("corrections.csv");
        assertThat(site.written("site.html").replace("&nbsp;", " ").replace("\u00a0", " "))
                .contains("\"kind\":\"CORRECTION\"", "<li>corrected: depth, Tue 3 Mar 00:00", ">corrected</text>");
        assertThat(site.written("site/altered.csv").lines().filter(line -> line.startsWith("depth,")))
                .hasSize(96)
                .first()
                .isEqualTo("depth,2026-03-03T00:00:00Z,0.120000,2026-03-03T00:00:00Z,0.100000,1,sensor moved");
    }

    @Test
    void comparesVisitsAndProposes() {
        SiteOnDisk site = site().with("visits.csv", VISITS);
        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.status()).as(outcome.err()).isZero();
        // 20 mm stand against the larger of 6 mm and 2 % of 100 mm, 90 s against 60 s.
        assertThat(outcome.flat())
                .contains("2 visits; compared with the readings, tolerances: depth 6 mm or 2 %,")
                .contains(
                        "Mon 2 Mar 12:00, A. Reed: depth 101.0 mm by hand, 100.0 mm by the monitor, within 6.0 mm; clock"
                                + " 5 s ahead, within 60 s")
                .contains(
                        "Tue 3 Mar 12:00, A. Reed: depth 100.0 mm by hand, 120.0 mm by the monitor, beyond 6.0 mm; clock"
                                + " 90 s behind, beyond 60 s; adjusted; lens cleaned")
                .contains(
                        "The visit of Tue 3 Mar 12:00 found depth 100.0 mm by hand, 120.0 mm by the monitor, beyond 6.0"
                                + " mm of tolerance.")
                .contains("proposed, not applied: depth, Mon 2 Mar 12:00 to Tue 3 Mar 12:00: drift from 1.0 mm to"
                        + " -20.0 mm");
        assertThat(site.written("site.html").replace("&nbsp;", " ").replace("\u00a0", " "))
                .contains("\"kind\":\"VISIT\"", "<li>visit: Tue 3 Mar 12:00, A. Reed", ">visit</text>");
        assertThat(site.written("site/visits.csv"))
                .contains("2026-03-03T12:00:00Z,A. Reed,depth,0.100000,0.120000,0.020000,0.006000,beyond")
                .contains("2026-03-03T12:00:00Z,A. Reed,clock,0.000000,-90.000000,-90.000000,60.000000,beyond");
        assertThat(site.written("site/proposals.csv"))
                .contains("depth,2026-03-02T12:00:00Z,2026-03-03T12:00:00Z,drift,");
    }

    @Test
    void comparesWithCorrectedReadingsAndStatedTolerances() {
        String flat = site().with("visits.csv", VISITS)
                .with("corrections.csv", HEADER + OFFSET)
                .with(
                        "site.txt",
                        PLAIN_SITE
                                + "depth column = depth_mm\nvisit depth tolerance = 0.5 mm\nvisit clock tolerance = 2 min\n")
                .review()
                .flat();

        assertThat(flat)
                .contains("compared with the readings as corrected, tolerances: depth 0.5 mm,")
                .contains(
                        "depth 100.0 mm by hand, 100.0 mm by the monitor, within 0.5 mm; clock 90 s behind, within 120 s")
                .contains("depth 101.0 mm by hand, 100.0 mm by the monitor, beyond 0.5 mm");
    }

    @Test
    void takesAColumnBesideForAReplacementAndLeavesOtherTimesAlone() {
        SiteOnDisk site = site().with(
                        "corrections.csv",
                        HEADER
                                + "depth,2026-03-03T00:00:00Z,2026-03-03T00:30:00Z,replacement,,,second_mm,drowned,note,A. Reed\n"
                                + "depth,2026-03-05T00:00:00Z,2026-03-06T00:00:00Z,removal,,,,test,note,A. Reed\n");

        assertThat(site.review().flat())
                .contains("depth: 2 of 192 readings altered")
                .contains("replacement by second_mm, drowned (note; A. Reed); 2 readings")
                .contains("1 correction of other times than the record");
        assertThat(site.written("site/flow.csv")).contains("2026-03-03T00:15:00Z,0.07700,estimate");
    }

    /** A box 0.4 m wide and 0.5 m high, full of plain areas: Q = v 0.4 (y - b), Manning's full bore by hand. */
    @Test
    void settingsByDateChangeLevelFlowAndCapacity() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("depth.csv", SiteOnDisk.quarterHours(192, i -> i % 2 == 0 ? "200,0.5" : "200,0.6"))
                .with(
                        "site.txt",
                        "shape = box\nwidth = 400 mm\nheight = 500 mm\ngradient = 1:200\nroughness = manning 0.013\n")
                .with(
                        "corrections.csv",
                        HEADER + SEDIMENT
                                + "depth,2026-03-03T00:00:00Z,2026-03-04T00:00:00Z,sensor offset,0.02,,,moved,visit,A. Reed\n"
                                + "depth,2026-03-03T12:00:00Z,2026-03-04T00:00:00Z,roughness,0.026,,,slime,visit,A. Reed\n")
                .with(
                        "visits.csv",
                        "time,author,sediment\n2026-03-02T12:00:00Z,A. Reed,0.03\n2026-03-03T12:00:00Z,A. Reed,0.01\n");
        SiteOnDisk.Outcome outcome = site.review();

        assertThat(outcome.status()).as(outcome.err()).isZero();
        assertThat(site.written("site/flow.csv"))
                .contains("2026-03-02T11:30:00Z,0.20000,unchecked,0.50000,unchecked,0.04000,")
                .contains("2026-03-02T12:00:00Z,0.20000,unchecked,0.50000,unchecked,0.03400,")
                .contains("2026-03-03T00:00:00Z,0.22000,unchecked,0.50000,unchecked,0.03800,")
                .contains("2026-03-03T12:00:00Z,0.22000,unchecked,0.50000,unchecked,0.04400,");
        // R = A/P of 0.4 x 0.5 with four wetted walls, of 0.4 x 0.47 over the bed; Q = A R^(2/3) S^(1/2) / n.
        double clean = 0.2 * Math.pow(0.2 / 1.8, 2.0 / 3) * Math.sqrt(0.005) / 0.013;
        double silted = 0.188 * Math.pow(0.188 / 1.74, 2.0 / 3) * Math.sqrt(0.005) / 0.013;
        assertThat(site.written("site/settings.csv").lines().filter(line -> line.startsWith("2026")))
                .containsExactly(
                        "2026-03-02T00:00:00Z,2026-03-02T12:00:00Z,0.000000,0.000000,Manning n 0.013," + six(clean)
                                + "," + six(clean),
                        "2026-03-02T12:00:00Z,2026-03-03T00:00:00Z,0.030000,0.000000,Manning n 0.013," + six(silted)
                                + "," + six(clean),
                        "2026-03-03T00:00:00Z,2026-03-03T12:00:00Z,0.030000,0.020000,Manning n 0.013," + six(silted)
                                + "," + six(clean),
                        "2026-03-03T12:00:00Z,2026-03-04T00:00:00Z,0.000000,0.020000,Manning n 0.026," + six(clean / 2)
                                + "," + six(clean / 2));
        assertThat(outcome.flat())
                .contains("sediment 30.0 mm, found (visit of 2 March; A. Reed); the flow area of 96 readings")
                .contains("sensor offset 20.0 mm, moved (visit; A. Reed); the level of 96 readings")
                .contains("roughness 0.026, slime (visit; A. Reed); the law beside 48 readings, not their flow")
                .contains(
                        "Mon 2 Mar 12:00 to Tue 3 Mar 00:00: sediment 30 mm, sensor at 0 mm, Manning n 0.013: full bore")
                // The first visit is what the list says already; the second one is not.
                .contains("proposed, not applied: depth, Tue 3 Mar 12:00 to Wed 4 Mar 00:00: sediment 10.0 mm, sediment"
                        + " found")
                .doesNotContain("proposed, not applied: depth, Mon 2 Mar 12:00");
        assertThat(site.written("site.html").replace("&nbsp;", " ").replace("\u00a0", " "))
                .contains("<li>set by date: depth, Mon 2 Mar 12:00");
    }

    private static String six(double value) {
        return String.format(java.util.Locale.ROOT, "%.6f", value);
    }

    @Test
    void badBooksEndInOneMessage() {
        for (String[] each : new String[][] {
            {"corrections.csv", HEADER + OFFSET.replace("offset", "ofset"), "corrections.csv, line 2, column"},
            {
                "corrections.csv",
                "# by hand\n" + HEADER + SEDIMENT + OFFSET.replace("depth,", "rain,"),
                "corrections.csv, line 4: column \"series\" must be one of [depth, velocity], was \"rain\""
            },
            {
                "corrections.csv",
                HEADER + SEDIMENT.replace("0.03", "30"),
                "corrections.csv, line 2: column \"value\" is not possible: bedAboveInvert must be below the soffit at"
            },
            {
                "corrections.csv",
                HEADER + SEDIMENT.replace("depth,", "velocity,"),
                "corrections.csv, line 2: column \"series\" must be depth for a sediment, was \"velocity\""
            },
            {
                "corrections.csv",
                HEADER + SEDIMENT.replace("sediment,0.03", "sensor offset,-0.03"),
                "corrections.csv, line 2: kind sensor offset: height must be 0 or greater and finite (m), was -0.03"
            },
            {
                "corrections.csv",
                HEADER + OFFSET.replace("offset,-0.02", "clock shift,-900"),
                "corrections.csv, line 2: a clock shift must not move a reading onto or past another one"
            },
            {"visits.csv", VISITS.replace("0.101", "-0.101"), "must be 0 or greater (m), was -0.101"},
            {"site.txt", PLAIN_SITE + "visits file = book.csv\n", "visits file must be a file that is there"},
            {"site.txt", PLAIN_SITE + "visit depth tolerance = 2 %\n", "visit depth tolerance"},
            {"site.txt", PLAIN_SITE + "visit depth tolerance = -1 mm\n", "must be 0 or greater, its share at most 100 %"
            }
        }) {
            SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary.resolve("" + each[2].hashCode()))
                    .with("depth.csv", SiteOnDisk.days(2, 15))
                    .with(each[0], each[1])
                    .review();
            assertThat(outcome.status()).as(each[2]).isNotZero();
            assertThat(outcome.err()).contains(each[2]);
            assertThat(outcome.err().strip().lines().count()).as(outcome.err()).isEqualTo(1);
        }
    }
}
