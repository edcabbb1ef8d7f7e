package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Figures say what they did not see: a logger that was off or sleeps, a gauge without a drop, nights unlike those before. */
class WhatWasNotSeenTest {
    private static final int PER_DAY = 96;
    private static final Instant START = Instant.parse("2026-03-02T00:00:00Z");

    @TempDir
    Path temporary;

    /** Depths of some days at 15 minutes where they are written, tips on the hours of some days. */
    private SiteOnDisk site(
            int days, IntPredicate isWritten, IntToDoubleFunction depthMm, List<Integer> wetDays, String more) {
        StringBuilder depths = new StringBuilder("time,depth_mm\n");
        for (int i = 0; i < days * PER_DAY; i++) {
            if (isWritten.test(i)) {
                depths.append(START.plus(Duration.ofMinutes(15L * i)))
                        .append(',')
                        .append(Math.round(depthMm.applyAsDouble(i)))
                        .append('\n');
            }
        }
        String tips = wetDays.stream()
                .flatMap(day -> java.util.stream.IntStream.range(0, 12)
                        .mapToObj(tip ->
                                START.plus(Duration.ofDays(day)).plus(Duration.ofMinutes(480 + 10L * tip)) + "\n"))
                .collect(Collectors.joining());
        return new SiteOnDisk(temporary)
                .with("site.txt", SiteOnDisk.PLAIN_SITE + more)
                .with("depth.csv", depths.toString())
                .with("tips.csv", "time\n" + tips);
    }

    private static double usual(int i) {
        return 120 + 30 * Math.sin(2 * Math.PI * (i % PER_DAY) / PER_DAY) + i % 3;
    }

    /** Of 40 days the logger was off from day 12 to day 22. */
    private SiteOnDisk off(List<Integer> wetDays) {
        return site(
                40,
                i -> i < 12 * PER_DAY || i >= 22 * PER_DAY,
                i -> i / PER_DAY == 5 && i % PER_DAY < 4 ? 400 : usual(i),
                wetDays,
                "overflow crest level = 350 mm\n");
    }

    @Test
    void rainIsNotKnownWhileNothingWrites() {
        SiteOnDisk site = off(List.of(2, 5, 8, 11, 24, 27, 30, 33, 36, 39));
        String text = site.review().flat();
        assertThat(text)
                .contains("Neither the monitor nor the gauge wrote anything for 10 d from")
                .contains("a dry time, or a logger that was off");
        // The day before each gap is read to its last quarter of an hour.
        assertThat(site.written("site/daily.csv"))
                .contains("2026-03-20,not known,")
                .contains("2026-03-10,wet,");
        assertThat(site.written("site.html").replace("&nbsp;", " ").replace('\u00a0', ' '))
                .contains("not known for 10 d")
                .containsPattern("above the crest, seen 75 % of the time");
        assertThat(site.written("index.html").replace('\u00a0', ' ')).contains("1 (seen 75");
    }

    @Test
    void aTipInTheGapShowsThatTheGaugeWasAtWork() {
        SiteOnDisk site = off(List.of(2, 5, 8, 11, 16, 24, 27, 30, 33, 36, 39));
        assertThat(site.review().flat()).doesNotContain("Neither the monitor nor the gauge");
        assertThat(site.written("site/daily.csv")).contains("2026-03-20,dry,");
    }

    @Test
    void aLongTimeWithoutADropIsSaid() {
        SiteOnDisk site =
                site(60, i -> true, WhatWasNotSeenTest::usual, List.of(1, 4, 7, 10, 13, 16, 19, 45, 50, 59), "");
        // From 9:50 on the 20th day to 8:00 on the 46th, less what the last tip is spread over.
        assertThat(site.review().flat())
                .containsPattern(
                        "The gauge wrote no drop for 25 d 22 h from Sat 21 Mar 09:5[01] to Thu 16 Apr 0[78]:[0-9]+;"
                                + " the next longest time without rain is 8 d 2[0-9] h\\. A drought, or was it dead\\?");
        assertThat(site.written("site.html")).contains("on end: was the gauge dead?");
        SiteOnDisk even =
                site(60, i -> true, WhatWasNotSeenTest::usual, List.of(1, 4, 7, 10, 13, 27, 30, 45, 50, 59), "");
        assertThat(even.review().flat()).doesNotContain("wrote no drop");
        assertThat(even.written("site.html")).doesNotContain("on end: was");
    }

    @Test
    void aLoggerThatSleepsAtNight() {
        IntPredicate awake = i -> i < 15 * PER_DAY || i % PER_DAY >= 20;
        String text = site(30, awake, WhatWasNotSeenTest::usual, List.of(1, 8, 15, 22, 29), "")
                .review()
                .flat();
        // A day without its nights has another mean, and is no other day.
        assertThat(text).doesNotContain("not alike").doesNotContain("another since about");
        assertThat(text)
                .contains("The monitor writes nothing at the same hours day after day: 15 times since Mon 16 Mar 23:45,"
                        + " the first for 5 h 15 min, the last on Mon 30 Mar 23:45 for 5 h 15 min.");
        // Four nights are none, nor are gaps that come when they like.
        IntPredicate four = i -> i < 26 * PER_DAY || i % PER_DAY >= 20;
        assertThat(site(30, four, WhatWasNotSeenTest::usual, List.of(1, 8, 15, 22, 29), "")
                        .review()
                        .flat())
                .contains("4 gaps of more than")
                .doesNotContain("at the same hours");
        IntPredicate strewn = i -> Math.floorMod(i - 11 * (i / PER_DAY), PER_DAY) >= 20;
        assertThat(site(30, strewn, WhatWasNotSeenTest::usual, List.of(1, 8, 15, 22, 29), "")
                        .review()
                        .flat())
                .contains("gaps of more than")
                .doesNotContain("at the same hours");
    }

    /** Half as much again at night, so much less by day that the mean of the day stays. */
    @Test
    void nightsThatAreNotAlike() {
        Random random = new Random(5);
        IntToDoubleFunction changed = i -> {
            int quarter = i % PER_DAY;
            boolean isNight = quarter >= 4 && quarter < 24;
            double level = isNight ? 60 : 120;
            return level + random.nextGaussian() + (i < 30 * PER_DAY ? 0 : isNight ? 30 : -30 * 20 / 76.0);
        };
        SiteOnDisk site =
                site(60, i -> true, changed, List.of(1, 59), "baseline from = 2026-03-03\nbaseline to = 2026-03-16\n");
        String page = site.review().flat()
                + site.written("site.html").replace('\u00a0', ' ').replace("&nbsp;", " ");
        assertThat(page)
                .contains("the nights of the usual days are not alike, from 02:00 to 05:00: 60 mm in the median before")
                .contains("the nights are not alike: 60 mm before Wed 1 Apr, 90 mm from then on");
        assertThat(site(60, i -> true, WhatWasNotSeenTest::usual, List.of(1, 59), "")
                        .review()
                        .flat())
                .doesNotContain("nights");
    }
}
