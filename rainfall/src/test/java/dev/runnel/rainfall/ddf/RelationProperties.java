package dev.runnel.rainfall.ddf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.areal.ArealReduction;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.frequency.AnnualMaxima;
import dev.runnel.rainfall.frequency.ScaledDdf;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.Scale;

/** The contract of {@link DepthDurationFrequency}, for every kind of relation. */
class RelationProperties {
    private static final List<DepthDurationFrequency> BASIC = List.of(
            Bilham.relation(),
            DdfTable.parse("""
                    duration_min,0.5,1,2,5,10,30,100
                    5,2,4,6,9,11,13,16
                    15,4,8,10,14,17,22,26
                    60,7,12,16,22,26,33,40
                    1440,7,12,30,40,50,60,70
                    """, ReturnPeriodBasis.PEAKS_OVER_THRESHOLD),
            FormulaDdf.of(
                    ReturnPeriodBasis.ANNUAL_MAXIMUM,
                    Map.of(
                            2.0,
                            IntensityFormula.sherman(700, 8, 0.8, Duration.ofMinutes(5), Duration.ofHours(6)),
                            10.0,
                            IntensityFormula.kimijima(2400, 12, 0.95, Duration.ofMinutes(5), Duration.ofHours(6)),
                            50.0,
                            IntensityFormula.talbot(4500, 12, Duration.ofMinutes(5), Duration.ofHours(6)))),
            FloodStudies1975.of(20, 0.35).atPoint(),
            FloodStudies1975.of(14, 0.18)
                    .withGrowthFactors(GrowthFactors.floodStudiesScotlandAndNorthernIreland())
                    .atPoint(),
            FloodStudies1975.of(22, 0.42)
                    .withGrowthFactors(GrowthFactors.floodStudiesEnglandAndWales())
                    .overArea(ArealReduction.keersWescott(), 25),
            scaled(DistributionFamily.GUMBEL, FitMethod.L_MOMENTS),
            scaled(DistributionFamily.GEV, FitMethod.MOMENTS).withGreatestYears(1000));

    private static ScaledDdf scaled(DistributionFamily family, FitMethod method) {
        SortedMap<Duration, double[]> depths = new TreeMap<>();
        depths.put(Duration.ofMinutes(10), new double[] {5, 9, 14, 7, 6, 11, 8, 10, 13, 6});
        depths.put(Duration.ofMinutes(60), new double[] {9, 17, 22, 15, 9, 21, 18, 15, 30, 14});
        depths.put(Duration.ofHours(12), new double[] {25, 31, 40, 35, 29, 44, 36, 30, 66, 38});
        return ScaledDdf.of(
                AnnualMaxima.of(List.of(1, 2, 3, 4, 5, 6, 7, 8, 9, 10), depths, Duration.ZERO), family, method);
    }

    @Provide
    Arbitrary<DepthDurationFrequency> relations() {
        return Arbitraries.of(BASIC)
                .flatMap(basic -> Arbitraries.of(
                        basic,
                        basic.withUplift(ClimateUplift.ofPercent("invented", 40)),
                        basic.withBasis(ReturnPeriodBasis.ANNUAL_MAXIMUM),
                        basic.withUplift(ClimateUplift.ofPercent("invented", -20))
                                .withBasis(ReturnPeriodBasis.PEAKS_OVER_THRESHOLD)));
    }

    private static Duration duration(DepthDurationFrequency relation, double share) {
        double from = Math.log((double) relation.shortestDuration().toNanos());
        double to = Math.log((double) relation.longestDuration().toNanos());
        long nanos = Math.round(Math.exp(from + share * (to - from)));
        return Duration.ofNanos(Math.max(
                relation.shortestDuration().toNanos(),
                Math.min(relation.longestDuration().toNanos(), nanos)));
    }

    private static double years(DepthDurationFrequency relation, double share) {
        double between =
                relation.smallestYears() * Math.pow(relation.greatestYears() / relation.smallestYears(), share);
        return Math.max(relation.smallestYears(), Math.min(relation.greatestYears(), between));
    }

    @Property
    void depthNeverFallsWithDurationAndRisesWithReturnPeriod(
            @ForAll("relations") DepthDurationFrequency relation,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(6) double d1,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(6) double d2,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(6) double t1,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(6) double t2) {
        Duration shorter = duration(relation, Math.min(d1, d2));
        Duration longer = duration(relation, Math.max(d1, d2));
        double rarer = years(relation, Math.max(t1, t2));
        double moreFrequent = years(relation, Math.min(t1, t2));
        double rounding = 1 - 1e-14;
        assertThat(relation.depthMm(shorter, moreFrequent)).isPositive();
        assertThat(relation.depthMm(longer, rarer)).isGreaterThanOrEqualTo(rounding * relation.depthMm(shorter, rarer));
        assertThat(relation.depthMm(shorter, rarer))
                .isGreaterThanOrEqualTo(rounding * relation.depthMm(shorter, moreFrequent));
        if (rarer > 1.001 * moreFrequent) {
            assertThat(relation.depthMm(shorter, rarer)).isGreaterThan(relation.depthMm(shorter, moreFrequent));
        }
    }

    @Property
    void returnPeriodComesBackFromDepth(
            @ForAll("relations") DepthDurationFrequency relation,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(6) double d,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(6) double t) {
        Duration duration = duration(relation, d);
        double years = years(relation, t);
        ReturnPeriod back = relation.returnPeriod(duration, relation.depthMm(duration, years));
        assertThat(back.isWithin()).isTrue();
        assertThat(back.basis()).isEqualTo(relation.basis());
        assertThat(back.years()).isCloseTo(years, within(1e-10 * years));
    }

    @Property
    void theLimitsThemselvesComeBackToo(
            @ForAll("relations") DepthDurationFrequency relation,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(6) double d) {
        Duration duration = duration(relation, d);
        for (double years : new double[] {relation.smallestYears(), relation.greatestYears()}) {
            ReturnPeriod back = relation.returnPeriod(duration, relation.depthMm(duration, years));
            assertThat(back.isWithin())
                    .as("%s years over %s of %s", years, duration, relation)
                    .isTrue();
            assertThat(back.years()).isEqualTo(years);
            assertThat(relation.depthMm(duration, back.years())).isEqualTo(relation.depthMm(duration, years));
        }
    }

    @Property
    void beyondTheLimitsNothingIsExtrapolated(
            @ForAll("relations") DepthDurationFrequency relation,
            @ForAll @DoubleRange(min = 0, max = 1) @Scale(6) double d) {
        Duration duration = duration(relation, d);
        double greatest = relation.depthMm(duration, relation.greatestYears());
        double smallest = relation.depthMm(duration, relation.smallestYears());
        assertThat(relation.returnPeriod(duration, greatest * 1.001).isAbove()).isTrue();
        assertThat(relation.returnPeriod(duration, greatest * 1.001).years())
                .isCloseTo(relation.greatestYears(), within(1e-12 * relation.greatestYears()));
        assertThat(relation.returnPeriod(duration, smallest * 0.999).isBelow()).isTrue();
        assertThat(relation.returnPeriod(duration, 0).isBelow()).isTrue();
    }
}
