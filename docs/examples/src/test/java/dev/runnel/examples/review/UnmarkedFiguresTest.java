package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Random;
import java.util.function.IntFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Figures that no finding marks and that are not what they seem: one mean over two states, water that comes back. Invented readings. */
class UnmarkedFiguresTest {
    private static final int DAY = 96;

    @TempDir
    Path temporary;

    private SiteOnDisk site(int days, IntFunction<String> values) {
        return new SiteOnDisk(temporary)
                .with("site.txt", SiteOnDisk.PLAIN_SITE)
                .with("depth.csv", SiteOnDisk.quarterHours(days * DAY, values))
                // A tip a day: dry days, and a gauge that is alive.
                .with(
                        "tips.csv",
                        SiteOnDisk.readings("time", "2026-03-02T00:00:00Z", Duration.ofDays(1), days, i -> ""));
    }

    /** Depth and velocity of a day, times a factor, with noise. */
    private static String values(int i, Random random, double depth, double velocity) {
        double day = Math.sin(2 * Math.PI * i / DAY);
        return Math.round(depth * (100 + 20 * day) + random.nextGaussian()) + ","
                + Math.round(1000 * velocity * (0.7 + 0.1 * day + 0.03 * random.nextGaussian())) / 1000.0;
    }

    /** A velocity that reads 13 % more at a depth 3 % higher lies within what the watch calls usual for long. */
    @Test
    void usualDaysThatAreNotAlikeAreSaidToBeTwo() {
        Random random = new Random(5);
        SiteOnDisk site = site(40, i -> values(i, random, i < 22 * DAY ? 1 : 1.04, i < 22 * DAY ? 1 : 1.06));
        String text = site.review().flat();
        assertThat(text)
                .doesNotContain("Finding 1")
                .containsPattern(
                        "the usual days are not alike: 18\\.[0-9] l/s in the median before Tue 24 Mar, 2[01]\\.[0-9] l/s"
                                + " from then on \\(Pettitt's test, p < 0\\.001\\)");
        assertThat(site.written("site.html")).containsPattern("the days are not alike: 18\\.[0-9](&nbsp;| )l/s before");
        assertThat(site.written("index.html")).contains("(days not alike)");
        assertThat(text).doesNotContain("of usual dry days is another");
    }

    /** A fifth and more needs a person's eye; the site scatters so much from day to day that the watch allows for it. */
    @Test
    void usualDaysThatAreFarFromAlikeAreLookedAt() {
        Random random = new Random(5);
        double[] days = random.doubles(60, 0.8, 1.25).toArray();
        SiteOnDisk site = site(60, i -> values(i, random, 1, (i < 30 * DAY ? 1 : 1.3) * days[i / DAY]));
        String text = site.review().flat();
        assertThat(text)
                .doesNotContain("Finding 1")
                .containsPattern(
                        "The flow of usual dry days is another since about [A-Z][a-z]+ [0-9]+ [A-Z][a-z]+: 1[789]\\.[0-9]"
                                + " l/s in the median before, 2[3-7]\\.[0-9] l/s from then on\\.");
    }

    @Test
    void daysThatAreAlikeAreNot() {
        Random random = new Random(5);
        SiteOnDisk site = site(40, i -> values(i, random, 1, 1));
        assertThat(site.review().flat()).contains("dry weather flow 1").doesNotContain("alike");
        assertThat(site.written("index.html")).doesNotContain("alike");
    }

    /** Eight hours of each day run back at a quarter of the speed: learned as usual, so no finding. */
    @Test
    void waterThatCameBackFromTheFirstDayOnIsSaidBesideTheFigure() {
        Random random = new Random(5);
        SiteOnDisk site = site(30, i -> values(i, random, 1, i % DAY < 32 ? -0.25 : 1));
        String text = site.review().flat();
        assertThat(text)
                .containsPattern("33 % of the flows beyond doubt were read against the stream, 1[0-9] % of what flowed")
                .containsPattern("33 % of the flows were read against the stream and enter with their sign");
        assertThat(site.written("site.html")).contains("were read against the stream");
        assertThat(site.written("index.html")).contains("(partly upstream)");
    }

    @Test
    void aFewLostSignsAreNoWaterThatComesBack() {
        Random random = new Random(5);
        SiteOnDisk site = site(30, i -> values(i, random, 1, i % 100 == 7 ? -1 : 1));
        assertThat(site.review().flat()).contains("dry weather flow").doesNotContain("against the stream");
        assertThat(site.written("index.html")).doesNotContain("upstream)");
    }
}
