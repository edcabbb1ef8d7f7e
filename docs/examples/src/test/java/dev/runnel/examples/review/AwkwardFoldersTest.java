package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Folders as they come and should not: each gives a right figure or one sentence that says what to mend. */
class AwkwardFoldersTest {
    @TempDir
    Path temporary;

    private static final String HEADER = "time,depth_mm";

    /** Some lines of a record of quarters of an hour, as a file of its own. */
    private static String part(String header, String readings, int from, int to) {
        StringBuilder text = new StringBuilder(header).append('\n');
        readings.lines()
                .skip(1L + from)
                .limit(to - from)
                .forEach(line -> text.append(line).append('\n'));
        return text.toString();
    }

    @Test
    void swappedColumnsWithoutAWordAreNamed() {
        String swapped = SiteOnDisk.day(15).replaceAll("(?m)^([^,]*),(.*)$", "$2,$1");

        SiteOnDisk.Outcome outcome =
                new SiteOnDisk(temporary).with("depth.csv", swapped).review();

        assertThat(outcome.status()).isEqualTo(1);
        assertThat(outcome.err())
                .contains(
                        "depth.csv: the first column, \"depth_mm\", is taken for the times, and has a unit: add \"time "
                                + "column = ...\" to site.txt if the times stand in another one, of [depth_mm, time]");
    }

    @Test
    void swappedColumnsThatTheSiteFileTellsOfAreRead() {
        String swapped = SiteOnDisk.day(15).replaceAll("(?m)^([^,]*),(.*)$", "$2,$1");

        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary)
                .with("depth.csv", swapped)
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "time column = time\n")
                .review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat()).contains("depth 96 96 0 0 0 0 0");
    }

    /** A copy of a month, a month that has begun and holds nothing yet, and one written in cm. */
    @Test
    void monthsThatOverlapAreEmptyOrHaveAnotherUnitAreOneRecord() {
        String all = SiteOnDisk.days(3, 15);
        String last = part("time,depth_cm", all, 192, 288).replaceAll("(?m),(\\d+)$", ",$1e-1");

        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary)
                .with("m/1.csv", part(HEADER, all, 0, 110))
                .with("m/2.csv", part(HEADER, all, 96, 192))
                .with("m/2 copy.csv", part(HEADER, all, 96, 192))
                .with("m/3.csv", last)
                .with("m/4.csv", "")
                .with("site.txt", SiteOnDisk.PLAIN_SITE + "depth file = m/*.csv\n")
                .review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("3 d at 15 min")
                .contains(
                        "depth from 4 files; 1 file beside them without a line; they overlap: 110 lines stand in two of "
                                + "them and count once; 1 file of another header, read from \"depth_cm\" in cm");
        assertThat(new SiteOnDisk(temporary).written("site/flow.csv"))
                .contains("2026-03-04T06:00:00Z,0.1400")
                .contains("2026-03-02T06:00:00Z,0.1400");
    }

    @Test
    void aFolderInThePlaceOfASiteFileIsNamedAndStopsNoOther() throws IOException {
        Path sites = temporary.resolve("sites");
        Files.createDirectories(sites.resolve("good"));
        Files.writeString(sites.resolve("good/site.txt"), SiteOnDisk.PLAIN_SITE);
        Files.writeString(sites.resolve("good/depth.csv"), SiteOnDisk.day(15));
        Files.createDirectories(sites.resolve("odd/site.txt"));

        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary).review(sites.toString());

        assertThat(outcome.err())
                .contains("odd cannot be reviewed. ")
                .contains("site.txt: must be a file, and is a folder or a device");
        assertThat(outcome.flat()).contains("1 site in sites");
    }

    @Test
    void sitesUpstreamOfThemselvesAreNamedAndNotCompared() throws IOException {
        Path sites = temporary.resolve("sites");
        String readings = SiteOnDisk.quarterHours(192, i -> "20" + i % 3 + ",0.5" + i % 7);
        String[][] upstream = {{"a", "b"}, {"b", "c"}, {"c", "b"}, {"d", "d"}, {"e", "aa"}, {"f", "a"}};
        for (String[] each : upstream) {
            Files.createDirectories(sites.resolve(each[0]));
            Files.writeString(
                    sites.resolve(each[0]).resolve("site.txt"), SiteOnDisk.PLAIN_SITE + "upstream = " + each[1] + "\n");
            Files.writeString(sites.resolve(each[0]).resolve("depth.csv"), readings);
        }

        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary).review(sites.toString());

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("b: it lies upstream of itself, by \"upstream = ...\" in the site.txt of b, c; no volumes")
                .contains("c: it lies upstream of itself, by \"upstream = ...\" in the site.txt of c, b; no volumes")
                .contains("d: it lies upstream of itself, by \"upstream = ...\" in the site.txt of d; no volumes")
                .contains("e: the site upstream, aa, is not in this review")
                .contains("on 2 days complete at both: b ")
                .contains("a downstream ");
    }

    /**
     * The normal egg, 600 mm wide: area 4.594 r2 and perimeter 7.930 r with r = 0.3 m, both by adding up its arcs; then
     * Manning's law: 700.4 l/s at 1.694 m/s.
     */
    @Test
    void anEggCarriesWhatItsArcsSay() {
        SiteOnDisk.Outcome outcome = new SiteOnDisk(temporary)
                .with("depth.csv", SiteOnDisk.day(15))
                .with("site.txt", "shape = egg\nwidth = 600 mm\ngradient = 1:200\nroughness = manning 0.013\n")
                .review();

        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.flat())
                .contains("egg 600 mm wide and 900 mm high, gradient 1:200")
                .contains("full bore 700 l/s at 1.69 m/s");
    }
}
