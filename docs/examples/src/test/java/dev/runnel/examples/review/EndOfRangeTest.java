package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import dev.runnel.timeseries.quality.QualityFlags;
import dev.runnel.timeseries.quality.Verdict;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a sensor or logger does not read any farther, and levels that merely come again. Invented readings. */
class EndOfRangeTest {
    private static final Instant START = Instant.parse("2026-03-02T00:00:00Z");
    private static final Duration STAY = Duration.ofHours(2);
    private static final int DAY = 96;

    @TempDir
    Path temporary;

    private static double day(int i, Random random) {
        return Math.rint(100 + 30 * Math.sin(2 * Math.PI * i / DAY) + 2 * random.nextGaussian());
    }

    private static Series depths(int days, DoubleUnaryOperator atHighest) {
        Random random = new Random(8);
        SeriesBuilder series = Series.builder();
        for (int i = 0; i < days * DAY; i++) {
            series.add(time(i), Math.min(day(i, random), atHighest.applyAsDouble((double) i / DAY)));
        }
        return series.build();
    }

    private static Instant time(int i) {
        return START.plus(Duration.ofMinutes(15L * i));
    }

    @Test
    void tellsWhatStandsAtOneValueAndNothingElse() {
        Series depth = depths(40, day -> day >= 12.5 && day < 30 ? 115 : 1000);
        EndOfRange ends = EndOfRange.in(depth, STAY).orElseThrow();
        assertThat(ends.ends()).hasSize(1);
        assertThat(ends.ends().get(0).value()).isEqualTo(115);
        QualityFlags flags = ends.apply(depth);
        int told = 0;
        for (int i = 0; i < depth.size(); i++) {
            boolean stands = depth.value(i) == 115 && i >= 12.5 * DAY && i < 30 * DAY;
            told += stands ? 1 : 0;
            if (stands) {
                assertThat(flags.verdict(i)).as(depth.get(i).toString()).isEqualTo(Verdict.UNUSUAL);
            } else if (i < 12 * DAY || i >= 31 * DAY || depth.value(i) != 115) {
                assertThat(flags.verdict(i)).as(depth.get(i).toString()).isEqualTo(Verdict.PASS);
            }
        }
        assertThat(told).isGreaterThan(17 * 30);
        assertThat(flags.raised().get(0).reason())
                .isEqualTo("115 is the highest of its week, for hours on at least 3 days");
    }

    @Test
    void daysThatRiseToTheirHighestAndFallAgainHaveNone() {
        assertThat(EndOfRange.in(depths(40, day -> 1000), STAY)).isEmpty();
        assertThat(EndOfRange.in(Series.empty(), STAY)).isEmpty();
    }

    /** A sensor of coarse steps stands at its highest step each day; so does a level that two or three values make up. */
    @Test
    void coarseStepsAreNoEnd() {
        Random random = new Random(8);
        SeriesBuilder coarse = Series.builder();
        for (int i = 0; i < 40 * DAY; i++) {
            coarse.add(time(i), 10 * Math.rint(day(i, random) / 10));
        }
        assertThat(EndOfRange.in(coarse.build(), STAY)).isEmpty();
    }

    /** Two days of seven are two storms, or a weir; shorter stays are peaks. */
    @Test
    void twoDaysAndShortStaysAreNoEnd() {
        assertThat(EndOfRange.in(
                        depths(40, day -> day % 7 < 2 && day % 1 < 0.6 ? 115 : day % 1 < 0.6 ? 114 - day % 7 : 1000),
                        STAY))
                .isEmpty();
        Series depth = depths(40, day -> 115);
        assertThat(EndOfRange.in(depth, Duration.ofHours(2))).isPresent();
        assertThat(EndOfRange.in(depth, Duration.ofHours(14))).isEmpty();
    }

    @Test
    void whatIsMissingOrSuspectIsNotJudged() {
        EndOfRange ends = EndOfRange.in(depths(20, day -> 115), STAY).orElseThrow();
        Series some = Series.builder()
                .add(new Reading(time(0), 115, Quality.SUSPECT))
                .add(time(1), Double.NaN)
                .add(time(2), 115)
                .build();
        QualityFlags flags = ends.apply(some);
        assertThat(List.of(flags.verdict(0), flags.verdict(1), flags.verdict(2)))
                .containsExactly(Verdict.NOT_EVALUATED, Verdict.MISSING, Verdict.UNUSUAL);
    }

    @Test
    void theReviewSaysSoAndMarksTheVolumes() {
        Random random = new Random(5);
        SiteOnDisk site = new SiteOnDisk(temporary)
                .with("depth.csv", SiteOnDisk.quarterHours(40 * DAY, i -> {
                    double depth = day(i, random);
                    return Math.round(i < 25 * DAY ? depth : Math.min(depth, 122)) + ","
                            + Math.round(1000
                                            * (0.7
                                                    + 0.1 * Math.sin(2 * Math.PI * i / DAY)
                                                    + 0.03 * random.nextGaussian()))
                                    / 1000.0;
                }))
                .with("tips.csv", SiteOnDisk.readings("time", "2026-03-02T00:00:00Z", Duration.ofDays(1), 40, i -> ""));
        String text = site.review().flat();
        assertThat(text)
                .containsPattern(
                        "From [A-Z][a-z]{2} 2[67] Mar [0-9:]+ to Fri 10 Apr [0-9:]+ the depth goes up to 122 mm and no"
                                + " farther: 3[0-9]{2} readings \\([89]\\.[0-9] %\\) stand there")
                .contains("left out of the dry weather flow")
                .doesNotContain("Finding 1")
                .containsPattern("depth tests: end of range 3[0-9]{2} unusual");
        assertThat(site.written("site/daily.csv"))
                .containsPattern("2026-03-20,dry,0\\.2000,[0-9.]+,0\\.0000,1\\.0000,yes")
                .containsPattern("2026-04-03,dry,0\\.2000,[0-9.]+,0\\.[34][0-9]+,1\\.0000,yes");
    }
}
