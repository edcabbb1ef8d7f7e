package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.examples.House;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Reports of some days, and reviews that are proved again. */
class PeriodAndProofTest {
    private static final Path QUAY = House.root().resolve("docs/examples/marram-bay/quay-street");

    @TempDir
    Path temporary;

    private SiteOnDisk quayStreet() throws IOException {
        SiteOnDisk site = new SiteOnDisk(temporary);
        try (Stream<Path> files = Files.list(QUAY)) {
            for (Path file : files.toList()) {
                site.with(file.getFileName().toString(), Files.readAllBytes(file));
            }
        }
        return site;
    }

    @Test
    void aWeekIsCutFromTheRecordAndJudgedByAllOfIt() throws IOException {
        SiteOnDisk site = quayStreet();
        SiteOnDisk.Outcome week = site.review(site.folder().toString(), "from=2026-11-02", "to=2026-11-08");
        assertThat(week.err()).isEmpty();
        assertThat(week.status()).isZero();
        // What is usual was learned in October, before the week.
        assertThat(week.flat()).contains("7 d at 2 min").contains("learned from Mon 5 Oct");
        assertThat(week.flat()).contains("Finding 1");
        assertThat(site.written("site/daily.csv").lines().filter(line -> line.startsWith("2026-")))
                .hasSize(7)
                .allMatch(line -> line.compareTo("2026-11-02") >= 0 && line.compareTo("2026-11-09") < 0);
        assertThat(site.written("manifest.txt").lines()).contains("from 2026-11-02", "to 2026-11-08");
        assertThat(site.written("site/flow.csv").lines().filter(line -> line.startsWith("2026")))
                .hasSize(7 * 720);
    }

    @Test
    void aFindingThatWasOverBeforeIsNotTold() throws IOException {
        SiteOnDisk site = quayStreet();
        SiteOnDisk.Outcome week = site.review(site.folder().toString(), "from=2026-10-19", "to=2026-10-25");
        assertThat(week.status()).isZero();
        assertThat(week.flat()).doesNotContain("Finding 1");
    }

    @Test
    void daysWithoutReadingsAreRefused() throws IOException {
        SiteOnDisk site = quayStreet();
        SiteOnDisk.Outcome none = site.review(site.folder().toString(), "from=2027-01-01");
        assertThat(none.status()).isEqualTo(1);
        assertThat(none.err())
                .contains("site cannot be reviewed. It must hold usable depth readings from 2027-01-01, its record is");
    }

    @Test
    void wordsOfTheCommandAreChecked() {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("depth.csv", SiteOnDisk.day(15).getBytes(java.nio.charset.StandardCharsets.UTF_8));
        String folder = site.folder().toString();
        assertThat(site.review(folder, "from=yesterday").err())
                .contains("from must be a date such as 2026-10-05, was \"yesterday\"");
        assertThat(site.review(folder, "from=2026-03-02", "to=2026-03-01").err())
                .contains("to must not lie before from");
        assertThat(site.review(folder, "until=2026-03-01").err()).contains("was \"until=2026-03-01\"");
        assertThat(site.review(folder, "from=2026-03-02", "prove=x").err())
                .contains("from and to must not be given with prove");
        assertThat(site.review(folder, "prove=" + temporary).err())
                .contains("prove must name the folder of an earlier review");
        assertThat(site.review(folder, "from=", "to=", "prove=").status()).isZero();
    }

    @Test
    void anEarlierReviewIsProvedAgainAndWhatDiffersIsNamed() throws IOException {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("depth.csv", SiteOnDisk.days(3, 15).getBytes(java.nio.charset.StandardCharsets.UTF_8));
        String folder = site.folder().toString();
        assertThat(site.review(folder, "from=2026-03-03", "to=2026-03-04").status())
                .isZero();
        Path kept = Files.move(site.output(), temporary.resolve("kept"));

        SiteOnDisk.Outcome same = site.review(folder, "prove=" + kept);
        assertThat(same.out()).startsWith("proved again: 2 files read, ").contains("every byte the same");
        assertThat(same.status()).isZero();

        Files.writeString(kept.resolve("review.txt"), "polished");
        SiteOnDisk.Outcome polished = site.review(folder, "prove=" + kept);
        assertThat(polished.status()).isEqualTo(1);
        assertThat(polished.out())
                .startsWith("not proved again: ")
                .contains("written then with other bytes: review.txt")
                .doesNotContain("made anew");

        site.with(
                "depth.csv",
                SiteOnDisk.days(3, 15).replace(",100\n", ",101\n").getBytes(java.nio.charset.StandardCharsets.UTF_8));
        SiteOnDisk.Outcome changed = site.review(folder, "prove=" + kept);
        assertThat(changed.out())
                .contains("read then with other bytes: depth.csv")
                .contains("made anew, written then with other bytes: site/flow.csv");
    }

    @Test
    void nothingOfAnEarlierSurveyStays() throws IOException {
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("depth.csv", SiteOnDisk.day(15).getBytes(java.nio.charset.StandardCharsets.UTF_8));
        assertThat(site.review().status()).isZero();
        Files.createDirectories(site.output().resolve("gone"));
        Files.writeString(site.output().resolve("gone/flow.csv"), "old");
        assertThat(site.review().status()).isZero();
        assertThat(site.output().resolve("gone")).doesNotExist();
        assertThat(temporary.resolve("output-old")).doesNotExist();
        assertThat(temporary.resolve("output-new")).doesNotExist();
    }
}
