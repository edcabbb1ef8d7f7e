package dev.runnel.rainfall.frequency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.ddf.ReturnPeriod;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.Fit;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.distribution.Gumbel;
import dev.runnel.rainfall.distribution.NoFitException;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ScaledDdfTest {
    private static final Duration HOUR = Duration.ofHours(1);
    private static final Duration DAY = Duration.ofDays(1);

    /** Maxima spread so widely that most laws fitted to them reach below 0. */
    private static AnnualMaxima spread() {
        double[] base = {2, 3, 40, 5, 4, 30, 2, 6, 3, 25};
        SortedMap<Duration, double[]> depths = new TreeMap<>();
        depths.put(Duration.ofMinutes(10), base);
        depths.put(Duration.ofMinutes(30), times(1.5, base));
        depths.put(Duration.ofMinutes(120), times(2.2, base));
        depths.put(Duration.ofMinutes(720), times(3, base));
        return maxima(depths);
    }

    private static double[] times(double factor, double... values) {
        return Arrays.stream(values).map(value -> factor * value).toArray();
    }

    private static AnnualMaxima maxima(SortedMap<Duration, double[]> depths) {
        int years = depths.values().iterator().next().length;
        return AnnualMaxima.of(IntStream.rangeClosed(2001, 2000 + years).boxed().toList(), depths, Duration.ZERO);
    }

    @ParameterizedTest
    @ValueSource(strings = {"GUMBEL", "GEV", "NORMAL", "GENERALIZED_LOGISTIC", "PEARSON_III", "LOG_NORMAL"})
    void everyDepthIsAboveZeroAndRisesWithDurationAndReturnPeriod(DistributionFamily family) {
        ScaledDdf ddf = ScaledDdf.of(spread(), family, FitMethod.L_MOMENTS);
        for (int i = 0; i <= 50; i++) {
            double years = ddf.smallestYears() + (ddf.greatestYears() - ddf.smallestYears()) * Math.pow(i / 50.0, 3);
            double before = 0;
            for (int minutes = 10; minutes <= 720; minutes += 10) {
                Duration duration = Duration.ofMinutes(minutes);
                double depth = ddf.depthMm(duration, years);
                assertThat(depth).as("%s years, %s", years, duration).isGreaterThan(before);
                before = depth;
                ReturnPeriod back = ddf.returnPeriod(duration, depth);
                assertThat(back.isWithin()).isTrue();
                assertThat(back.years()).isCloseTo(years, within(1e-9 * years));
            }
        }
        assertThat(ddf.returnPeriod(HOUR, 0).isBelow()).isTrue();
    }

    /** The Gumbel law of y is 0 at 1/(1 - exp(-exp(xi/alpha))) years. */
    @Test
    void theRangeBeginsWhereTheLawIsAboveZero() {
        ScaledDdf ddf = ScaledDdf.of(spread(), DistributionFamily.GUMBEL, FitMethod.L_MOMENTS);
        double[] parameters = ddf.rescaledDistribution().parameters().values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        double xi = parameters[0];
        double alpha = parameters[1];
        double zero = 1 / (1 - Math.exp(-Math.exp(xi / alpha)));
        assertThat(ddf.smallestYears()).isBetween(zero, zero + 0.0101).isGreaterThan(1.1);
        assertThat(ddf.toString()).contains("%, " + ddf.smallestYears() + " to 20 years");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ddf.depthMm(HOUR, 1.01))
                .withMessage("returnPeriodYears must be in [" + ddf.smallestYears() + ", 20] years, was 1.01");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ddf.withGreatestYears(1.05))
                .withMessage("years must be greater than " + ddf.smallestYears() + " and finite, was 1.05");
        for (double years : new double[] {ddf.smallestYears(), Double.POSITIVE_INFINITY}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> ddf.withGreatestYears(years))
                    .withMessageStartingWith("years must be greater than ");
        }
        assertThat(ddf.thetaHours()).isGreaterThanOrEqualTo(0);
        assertThat(ScaledDdf.of(spread(), DistributionFamily.LOG_NORMAL, FitMethod.L_MOMENTS)
                        .smallestYears())
                .isEqualTo(1.01);
    }

    /** The power is 1 but for a rounding; the depth is the same in every duration. */
    @Test
    void depthsThatDoNotGrowWithDurationAreTaken() {
        SortedMap<Duration, double[]> depths = new TreeMap<>();
        double[] same = {10.1, 12.3, 17.7, 11.9, 15.2};
        for (int minutes : new int[] {10, 20, 45, 60, 70, 130}) {
            depths.put(Duration.ofMinutes(minutes), same);
        }
        ScaledDdf ddf = ScaledDdf.of(maxima(depths), DistributionFamily.GUMBEL, FitMethod.L_MOMENTS);
        assertThat(ddf.eta()).isLessThanOrEqualTo(1).isCloseTo(1, within(1e-9));
        assertThat(ddf.depthMm(HOUR, 5))
                .isCloseTo(ddf.depthMm(Duration.ofMinutes(10), 5), within(1e-6))
                .isCloseTo(
                        Fit.of(DistributionFamily.GUMBEL, FitMethod.L_MOMENTS, same)
                                .returnLevel(5),
                        within(0.5));
    }

    @Test
    void depthsThatFallWithDurationAreRefusedWithThePower() {
        SortedMap<Duration, double[]> depths = new TreeMap<>();
        for (int hours : new int[] {1, 2, 6}) {
            depths.put(Duration.ofHours(hours), times(Math.pow(hours, -0.00002), 10.1, 12.3, 17.7, 11.9, 15.2));
        }
        assertThatExceptionOfType(NoFitException.class)
                .isThrownBy(() -> ScaledDdf.of(maxima(depths), DistributionFamily.GUMBEL, FitMethod.L_MOMENTS))
                .withMessageStartingWith(
                        "maxima must have a mean intensity that falls with duration by a power in (0, 1], was 1.0000");
        depths.remove(HOUR);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ScaledDdf.of(maxima(depths), DistributionFamily.GUMBEL, FitMethod.L_MOMENTS))
                .withMessage("number of durations must be at least 3, was 2");
    }

    @Test
    void whatSpeaksAgainstTheMaximaGoesWithTheRelation() {
        double[] steady = new double[20];
        double[] rising = new double[20];
        for (int i = 0; i < 20; i++) {
            steady[i] = 40 + 7 * i % 10;
            rising[i] = 20 + i;
        }
        SortedMap<Duration, double[]> depths = new TreeMap<>();
        depths.put(HOUR, rising);
        depths.put(Duration.ofHours(3), steady);
        depths.put(DAY, times(1.5, steady));
        ScaledDdf ddf = ScaledDdf.of(maxima(depths), DistributionFamily.GUMBEL, FitMethod.L_MOMENTS);
        assertThat(ddf.warnings()).hasSize(1);
        assertThat(ddf.warnings().get(0)).startsWith("1 h: Trend over the years: tau 1");
        assertThat(ddf.withGreatestYears(100).warnings()).isEqualTo(ddf.warnings());
        assertThat(ddf.toString()).endsWith(" to 40 years, warnings 1]");
        assertThat(maxima(depths)
                        .table(DistributionFamily.GUMBEL, FitMethod.L_MOMENTS, 2, 5)
                        .provenance())
                .isEqualTo("GUMBEL by L-moments to each duration of 20 years, warnings 1");
        assertThat(spread().warnings()).contains("Only 10 years: a fit of so few is rough, look at its limits.");
    }

    @Test
    void aScaledRelationGivesBackTheLawItWasDrawnFrom() {
        // y of the Gumbel distribution, i = y/(D + 0.2 h)^0.7: every duration shares the year's y, 250 years.
        Gumbel y = Gumbel.of(20, 6);
        Random random = new Random(7);
        double[] values = new double[250 * 365 * 24 / 6];
        double[] hours = {6, 12, 24};
        for (int year = 0; year < 250; year++) {
            double drawn = y.quantile(random.nextDouble(1e-9, 1));
            double before = 0;
            for (int k = 1; k <= 4; k++) {
                double total = drawn * 6 * k / Math.pow(6 * k + 0.2, 0.7);
                values[year * 365 * 4 + 200 + k] = total - before;
                before = total;
            }
        }
        AnnualMaxima maxima = AnnualMaxima.from(
                RegularSeries.of(Instant.parse("1700-01-01T00:00:00Z"), Duration.ofHours(6), values),
                List.of(Duration.ofHours(6), Duration.ofHours(12), DAY),
                YearRule.calendar());
        ScaledDdf ddf = ScaledDdf.of(maxima, DistributionFamily.GUMBEL, FitMethod.L_MOMENTS);
        assertThat(ddf.eta()).isCloseTo(0.7, within(0.05));
        for (double d : hours) {
            Duration duration = Duration.ofHours((long) d);
            double expected = y.returnLevel(50) * d / Math.pow(d + 0.2, 0.7);
            assertThat(ddf.depthMm(duration, 50) / expected).isCloseTo(1, within(0.08));
            ReturnPeriod back = ddf.returnPeriod(duration, ddf.depthMm(duration, 50));
            assertThat(back.isWithin()).isTrue();
            assertThat(back.years()).isCloseTo(50, within(1e-9));
            assertThat(ddf.returnPeriod(duration, 1e4).isAbove()).isTrue();
            assertThat(ddf.returnPeriod(duration, 0).isBelow()).isTrue();
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ddf.depthMm(HOUR, 10))
                .withMessage("duration must be in [6 h, 1 d], was 1 h");
    }

    /** Exact powers of D + 0.2 h; with the last mean half as large again no power fits them. */
    @Test
    void theFormSaysHowWellItSuitsTheRecord() {
        SortedMap<Duration, double[]> depths = new TreeMap<>();
        for (int hours : new int[] {1, 2, 6, 24}) {
            double scale = hours / Math.pow(hours + 0.2, 0.7);
            depths.put(Duration.ofHours(hours), new double[] {20 * scale, 26 * scale, 31 * scale, 44 * scale});
        }
        List<Integer> years = List.of(2001, 2002, 2003, 2004);
        ScaledDdf exact = ScaledDdf.of(
                AnnualMaxima.of(years, depths, Duration.ZERO), DistributionFamily.GUMBEL, FitMethod.L_MOMENTS);
        assertThat(exact.worstMeanPercent()).isLessThan(1e-4);
        assertThat(exact.thetaHours()).isCloseTo(0.2, within(1e-3));
        depths.put(DAY, Arrays.stream(depths.get(DAY)).map(depth -> 1.5 * depth).toArray());
        ScaledDdf bent = ScaledDdf.of(
                AnnualMaxima.of(years, depths, Duration.ZERO), DistributionFamily.GUMBEL, FitMethod.L_MOMENTS);
        assertThat(bent.worstMeanPercent()).isBetween(5.0, 50.0);
        assertThat(bent.toString()).contains("means within ");
    }
}
