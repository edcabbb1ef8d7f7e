package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What the gauges of a survey say of each other. Rain of half an hour at 10:00 on the second, fourth and sixth day. */
class GaugesCompareTest {
    private static final Duration FIVE_MINUTES = Duration.ofMinutes(5);
    private static final int STEPS_OF_A_DAY = 288;

    @TempDir
    private Path temporary;

    /** Depths of the three storms, mm in each of six steps. */
    private static String rain(double... storms) {
        return SiteOnDisk.readings("time,rain_mm", "2026-03-02T00:00:00Z", FIVE_MINUTES, 7 * STEPS_OF_A_DAY, i -> {
            int day = i / STEPS_OF_A_DAY;
            int step = i % STEPS_OF_A_DAY;
            return day % 2 == 1 && step >= 120 && step < 126 ? "" + storms[day / 2] : "0";
        });
    }

    private SiteOnDisk sites(String[] names, String... rains) {
        return sitesOf(7, names, rains);
    }

    private SiteOnDisk sitesOf(int days, String[] names, String... rains) {
        SiteOnDisk sites = new SiteOnDisk(temporary);
        for (int i = 0; i < names.length; i++) {
            sites.with("../" + names[i] + "/site.txt", SiteOnDisk.PLAIN_SITE + "site = " + names[i] + "\n")
                    .with("../" + names[i] + "/depth.csv", SiteOnDisk.days(days, 15))
                    .with("../" + names[i] + "/rain.csv", rains[i]);
        }
        return sites;
    }

    private String between(SiteOnDisk sites) {
        SiteOnDisk.Outcome outcome = sites.review(temporary.toString());
        assertThat(outcome.err()).isEmpty();
        assertThat(outcome.status()).isZero();
        String flat = outcome.flat();
        return flat.substring(flat.indexOf("BETWEEN THE SITES"), flat.indexOf(" files "));
    }

    /** The bad one comes first, catches half and misses the last storm; it alone is to be looked at. */
    @Test
    void theBadGaugeAccusesNoOther() {
        SiteOnDisk sites = sites(
                new String[] {"alder", "beck", "site"}, rain(0.5, 0.6, 0), rain(1, 1.2, 2), rain(1.05, 1.26, 2.1));
        assertThat(between(sites))
                .isEqualTo(
                        "BETWEEN THE SITES gauges alder: 0.26 of the median of the others over 3 storms, farther than 20 %: "
                                + "look at this gauge; nothing while the others had 5.0 mm or more: Sat 7 Mar 10:00 - was it dead? "
                                + "its dry days are then not dry gauges beck: 0.95 of the median of the others over 3 storms "
                                + "gauges site: 1.05 of the median of the others over 3 storms");
    }

    /** Many that agree have one line; the one that does not keeps its own, and the first. */
    @Test
    void gaugesThatAgreeShareALine() {
        SiteOnDisk sites = sites(
                new String[] {"alder", "beck", "cliff", "dune", "site"},
                rain(1, 1.2, 2),
                rain(1.1, 1.3, 2.2),
                rain(0.5, 0.6, 0),
                rain(1.05, 1.26, 2.1),
                rain(1, 1.2, 2));
        assertThat(between(sites))
                .startsWith("BETWEEN THE SITES gauges cliff: ")
                .contains("was it dead? its dry days are then not dry gauges the other 4: 0.9")
                .containsPattern(
                        "gauges the other 4: 0\\.9[0-9] to 1\\.[01][0-9] of the median of the others, none silent while "
                                + "these had 5.0 mm or more")
                .doesNotContain("alder")
                .doesNotContain("dune");
    }

    /** The same half hours of rain from gauges whose steps are no part of a quarter hour, or do not begin with one. */
    @Test
    void gaugesOfAnySteps() {
        SiteOnDisk sites = sites(
                new String[] {"alder", "beck", "site"},
                steady("2026-03-02T00:00:00Z", 2),
                steady("2026-03-02T00:00:00Z", 10),
                steady("2026-03-02T00:03:00Z", 5));
        assertThat(between(sites))
                .contains("alder: 1.00 of the median of the others over 3 storms")
                .contains("beck: 1.00 of the median of the others over 3 storms")
                .contains("site: 1.00 of the median of the others over 3 storms");
    }

    /** Two tenths of a millimetre a minute for some half an hour after ten on the second, fourth and sixth day. */
    private static String steady(String start, int minutes) {
        return SiteOnDisk.readings("time,rain_mm", start, Duration.ofMinutes(minutes), 7 * 1440 / minutes, i -> {
            int minute = i * minutes % 1440;
            boolean rains = i * minutes / 1440 % 2 == 1 && minute >= 600 && minute < 630;
            return rains ? "" + minutes / 5.0 : "0";
        });
    }

    @Test
    void ofTwoNobodyCanSayWhichIsWrong() {
        SiteOnDisk sites = sites(new String[] {"beck", "site"}, rain(1, 1.2, 2), rain(1.05, 0.6, 2));
        assertThat(between(sites))
                .isEqualTo(
                        "BETWEEN THE SITES gauges in the storms of their common time beck 25.2 mm, site 21.9 mm (0.87); of 3 "
                                + "storms 1 differs by more than 20 %: Thu 5 Mar 10:00 (7.2 and 3.6 mm) - look at both gauges");
    }

    /** Records of different weeks in one folder: nothing to compare, and no reason to stop. */
    @Test
    void gaugesOfDifferentWeeksAreNotCompared() {
        SiteOnDisk sites = sites(
                new String[] {"alder", "beck", "site"},
                rain(1, 1.2, 2).replace("2026-03-0", "2026-04-0"),
                rain(1, 1.2, 2).replace("2026-03-0", "2026-05-0"),
                rain(1, 1.2, 2));
        assertThat(between(sites))
                .contains("gauges alder: fewer than two storms at the same time as the others")
                .contains("gauges beck: fewer than two storms at the same time as the others")
                .contains("gauges site: fewer than two storms at the same time as the others");
        assertThat(sites.output().resolve("index.html")).content().doesNotContain("Double mass of the gauges");
    }

    /** One gauge of three with a record of its own week: two are drawn, the third is counted. */
    @Test
    void aGaugeWithoutCommonStormsHasNoLineAndIsCounted() {
        SiteOnDisk sites = sites(
                new String[] {"alder", "beck", "site"},
                rain(1, 1.2, 2).replace("2026-03-0", "2026-04-0"),
                rain(1, 1.2, 2),
                rain(1, 1.3, 2));
        between(sites);
        assertThat(sites.output().resolve("index.html"))
                .content()
                .contains("Double mass of the gauges")
                .contains("Without a line: 1&nbsp;gauge with fewer than two storms at the same time as others.");
    }

    /** Thirty storms, one every other day, of depths that go up and down by their own pattern; from a day on. */
    private static String ownRain(int firstDay, int pattern) {
        return SiteOnDisk.readings("time,rain_mm", "2026-03-02T00:00:00Z", FIVE_MINUTES, 61 * STEPS_OF_A_DAY, i -> {
            int storm = (i / STEPS_OF_A_DAY - firstDay) / 2;
            boolean rains = i / STEPS_OF_A_DAY >= firstDay && (i / STEPS_OF_A_DAY - firstDay) % 2 == 0;
            int step = i % STEPS_OF_A_DAY;
            return rains && step >= 120 && step < 126 ? "" + (3 + storm * pattern % 31) / 5.0 : "0";
        });
    }

    @Test
    void gaugesOfOtherRainAccuseNobody() {
        SiteOnDisk sites = sitesOf(61, new String[] {"alder", "site"}, ownRain(0, 7), ownRain(1, 11));
        assertThat(between(sites))
                .isEqualTo(
                        "BETWEEN THE SITES gauges alder and site have not the same rain (rank correlation of the depths "
                                + "of wet days -0.86): not compared");
        assertThat(sites.output().resolve("index.html")).content().doesNotContain("Double mass of the gauges");
    }

    /** Two towns and a gauge between them: each is set against its own. */
    @Test
    void gaugesAreComparedWithinTheirRain() {
        SiteOnDisk sites = sitesOf(
                61,
                new String[] {"alder", "beck", "cliff", "dune", "site"},
                ownRain(0, 7),
                ownRain(1, 11),
                ownRain(0, 7),
                ownRain(1, 11),
                ownRain(0, 13));
        assertThat(between(sites))
                .startsWith("BETWEEN THE SITES gauges these have each a rain of their own: alder, cliff; beck, dune "
                        + "gauges in the storms of their common time alder ")
                .contains("gauges in the storms of their common time beck ")
                .contains("none differs by more than 20 %")
                .contains(
                        "gauges site: rain that is not that of any other (rank correlation of the depths of wet days ")
                .endsWith(" at most), set against none: another place, a clock a day off or a gauge at fault");
        assertThat(sites.output().resolve("index.html"))
                .content()
                .contains("Without a line: 1&nbsp;gauge with rain that is not that of others.");
    }

    @Test
    void deadGaugesAreNotCompared() {
        SiteOnDisk sites = sites(new String[] {"beck", "site"}, rain(0, 0, 0), rain(0, 0, 0));
        assertThat(between(sites)).contains("no storm that both beck and site recorded");
        assertThat(sites.output().resolve("index.html")).content().doesNotContain("Double mass of the gauges");
    }

    /** Five weeks of storms, one every third day; the clock of one gauge goes an hour ahead after the fifth. */
    @Test
    void aClockIsFoundByTheStormsOfTheOthers() {
        String sound = manyStorms(0, 1);
        SiteOnDisk sites =
                sitesOf(36, new String[] {"alder", "beck", "site"}, sound, manyStorms(0, 1.1), manyStorms(12, 1));
        assertThat(between(sites))
                .endsWith(
                        "clocks site: its rain is stamped about 1 h later than that of the others in 7 of 7 storms from "
                                + "Tue 17 Mar 10:00 to the last; before it 5 storms - look at its clock");
        assertThat(sites.written("index.html")).contains("clocks: site: its rain is stamped about 1 h later");
    }

    @Test
    void ofTwoGaugesNobodyCanSayWhoseClockIsWrong() {
        SiteOnDisk sites = sitesOf(36, new String[] {"beck", "site"}, manyStorms(0, 1), manyStorms(-12, 1));
        assertThat(between(sites))
                .contains(
                        "clocks beck: its rain is stamped about 1 h later than that of the other in 7 of 7 storms from")
                .contains(
                        "clocks site: its rain is stamped about 1 h earlier than that of the other in 7 of 7 storms from")
                .endsWith("look at both clocks");
    }

    /** Twelve storms at 10:00 of every third day, their steps uneven; from the sixth on stamped some steps late. */
    private static String manyStorms(int lateSteps, double factor) {
        return SiteOnDisk.readings("time,rain_mm", "2026-03-02T00:00:00Z", FIVE_MINUTES, 36 * STEPS_OF_A_DAY, i -> {
            int at = i / STEPS_OF_A_DAY >= 15 ? i - lateSteps : i;
            int storm = at / (3 * STEPS_OF_A_DAY);
            int step = at % (3 * STEPS_OF_A_DAY) - 120;
            return step >= 0 && step < 36 && (step * (storm + 3)) % 7 < 3 ? "" + factor : "0";
        });
    }
}
