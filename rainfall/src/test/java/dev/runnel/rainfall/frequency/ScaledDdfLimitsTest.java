package dev.runnel.rainfall.frequency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.ddf.DdfBand;
import dev.runnel.rainfall.ddf.ReturnPeriod;
import dev.runnel.rainfall.distribution.Bootstrap;
import dev.runnel.rainfall.distribution.ConfidenceInterval;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.distribution.Gumbel;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.concurrent.ForkJoinPool;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ScaledDdfLimitsTest {
    private static final Duration QUARTER = Duration.ofMinutes(15);
    private static final Duration HOUR = Duration.ofHours(1);
    private static final Duration SIX = Duration.ofHours(6);
    private static final Instant START = Instant.parse("2026-07-01T12:00:00Z");
    private static final AnnualMaxima MAXIMA = maxima();
    private final ScaledDdfLimits limits =
            ScaledDdfLimits.of(MAXIMA, DistributionFamily.GUMBEL, FitMethod.L_MOMENTS, Bootstrap.of(400, 7));

    /** 40 years in which all durations rise and fall together, by a factor of their own within 10 %. */
    private static AnnualMaxima maxima() {
        double[] year = Gumbel.of(20, 5).sample(40, 3);
        SortedMap<Duration, double[]> depths = new TreeMap<>();
        for (Duration duration : List.of(QUARTER, HOUR, SIX)) {
            double hours = duration.toMinutes() / 60.0;
            double[] wobble = Gumbel.of(1, 0.03).sample(40, duration.toMinutes());
            depths.put(
                    duration,
                    IntStream.range(0, 40)
                            .mapToDouble(i -> year[i] * wobble[i] * Math.pow(hours, 0.3))
                            .toArray());
        }
        return AnnualMaxima.of(IntStream.range(1980, 2020).boxed().toList(), depths, Duration.ZERO);
    }

    @Test
    void limitsHoldTheEstimateAndComeFromTheSeed() {
        Bootstrap.Interval depth = limits.depthMm(HOUR, 30);
        assertThat(depth.estimate()).isEqualTo(limits.relation().depthMm(HOUR, 30));
        assertThat(depth.lower()).isLessThan(depth.estimate());
        assertThat(depth.upper()).isGreaterThan(depth.estimate());
        // Of the order of the limits of a Gumbel level of 40 values: some 10 % each way.
        assertThat((depth.upper() - depth.lower()) / depth.estimate()).isBetween(0.1, 0.5);
        assertThat(depth.failed()).isZero();
        assertThat(ScaledDdfLimits.of(MAXIMA, DistributionFamily.GUMBEL, FitMethod.L_MOMENTS, Bootstrap.of(400, 7))
                        .depthMm(HOUR, 30))
                .isEqualTo(depth);
    }

    @Test
    void theNumberOfThreadsChangesNothing() throws Exception {
        ScaledDdfLimits one = new ForkJoinPool(1)
                .submit(() -> ScaledDdfLimits.of(
                        MAXIMA, DistributionFamily.GUMBEL, FitMethod.L_MOMENTS, Bootstrap.of(400, 7)))
                .get();
        assertThat(one.depthMm(SIX, 20)).isEqualTo(limits.depthMm(SIX, 20));
    }

    /** A depth is rarer than T exactly if the depth of T is less, in every replicate. */
    @Test
    void theLimitsOfAReturnPeriodAreThoseOfItsDepth() {
        double depth = limits.relation().depthMm(HOUR, 25);
        ConfidenceInterval years = limits.returnPeriod(HOUR, depth);
        assertThat(years.estimate()).isCloseTo(25, within(1e-9));
        assertThat(limits.depthMm(HOUR, years.lower()).upper() / depth).isCloseTo(1, within(5e-3));
        assertThat(years.toText()).startsWith("25, 90 % between ");
    }

    /** The rarest duration makes the estimate; in no replicate is it less rare than over one duration. */
    @Test
    void severalDurationsAtOnce() {
        double ten = limits.relation().depthMm(HOUR, 10);
        double five = limits.relation().depthMm(SIX, 5);
        RainfallEvent event = RainfallEvent.of(
                Interval.of(START, Duration.ofHours(8)),
                200,
                List.of(new PeakDepth(HOUR, ten, START), new PeakDepth(SIX, five, START)));
        ConfidenceInterval both = limits.returnPeriod(event);
        assertThat(both.estimate()).isCloseTo(10, within(1e-9));
        assertThat(both.lower())
                .isGreaterThanOrEqualTo(limits.returnPeriod(HOUR, ten).lower());
        assertThat(both.upper())
                .isGreaterThanOrEqualTo(limits.returnPeriod(SIX, five).upper());
        RainfallEvent none =
                RainfallEvent.of(Interval.of(START, HOUR), 3, List.of(new PeakDepth(Duration.ofMinutes(5), 2, START)));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> limits.returnPeriod(none))
                .withMessageEndingWith("had none");
    }

    /** An estimate inside the range with an upper limit beyond it; and one below all that the relation answers for. */
    @Test
    void theRarityOfAStormStandsInTheRange() {
        ScaledDdf relation = limits.relation();
        DdfBand.Rarity inside = rarity(relation.depthMm(HOUR, 60));
        assertThat(inside.estimate().standing()).isEqualTo(ReturnPeriod.Standing.WITHIN);
        assertThat(inside.estimate().years()).isCloseTo(60, within(1e-6));
        assertThat(inside.upper().standing()).isEqualTo(ReturnPeriod.Standing.ABOVE);
        assertThat(inside.upper().years()).isEqualTo(relation.greatestYears());
        DdfBand.Rarity below = rarity(relation.depthMm(HOUR, relation.smallestYears()) / 2);
        assertThat(below.estimate().standing()).isEqualTo(ReturnPeriod.Standing.BELOW);
        assertThat(below.estimate().years()).isEqualTo(relation.smallestYears());
        assertThat(limits.toString()).startsWith("ScaledDdfLimits[400 replicates of ScaledDdf[");
    }

    private DdfBand.Rarity rarity(double depthMm) {
        return limits.rarity(
                        RainfallEvent.of(Interval.of(START, HOUR), 200, List.of(new PeakDepth(HOUR, depthMm, START))))
                .limits()
                .orElseThrow();
    }
}
