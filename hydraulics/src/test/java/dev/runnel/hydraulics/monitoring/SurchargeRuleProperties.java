package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.contract.MachineContract;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

class SurchargeRuleProperties {
    private static final SurchargeRule RULE = SurchargeRule.above(1).withMaximumGap(Duration.ofMinutes(10));

    @Property(tries = 300)
    void keepsTheContractOfMachines(@ForAll("levels") Series levels) {
        MachineContract.holds(RULE, levels.stream().toList());
    }

    @Property
    void lookingAtWhatIsOpenDoesNotDisturbIt(@ForAll("levels") Series levels) {
        SurchargeWatch watch = RULE.start();
        List<SurchargePeriod> periods = new ArrayList<>();
        for (Reading level : levels) {
            periods.addAll(watch.next(level));
            watch.ongoing();
        }
        periods.addAll(watch.finish());
        assertThat(periods).isEqualTo(RULE.over(levels));
    }

    @Property
    void everyUsableReadingAboveBelongsToExactlyOnePeriodAndPeriodsAreApart(@ForAll("levels") Series levels) {
        List<SurchargePeriod> periods = RULE.over(levels);
        double[] usable = levels.toUsableValues();
        int above = 0;
        for (int i = 0; i < usable.length; i++) {
            if (usable[i] > 1) {
                above++;
                int index = i;
                assertThat(periods.stream()
                                .filter(period -> period.interval().contains(levels.time(index))
                                        || !period.endSeen()
                                                && period.interval().end().equals(levels.time(index)))
                                .count())
                        .isEqualTo(1);
            }
        }
        assertThat(periods.stream().mapToInt(SurchargePeriod::readings).sum()).isEqualTo(above);
        for (int i = 1; i < periods.size(); i++) {
            assertThat(periods.get(i).interval().start())
                    .isAfterOrEqualTo(periods.get(i - 1).interval().end());
        }
    }

    @Property
    void longerBridgesNeverGiveMorePeriods(@ForAll("levels") Series levels) {
        assertThat(RULE.withMaximumGap(Duration.ofMinutes(30)).over(levels))
                .hasSizeLessThanOrEqualTo(RULE.over(levels).size());
    }

    @Provide
    Arbitrary<Series> levels() {
        Arbitrary<Integer> minutes = Arbitraries.integers().between(1, 15);
        Arbitrary<Double> level = Arbitraries.frequencyOf(
                Tuple.of(4, Arbitraries.doubles().between(0.5, 1.5).ofScale(6)),
                Tuple.of(1, Arbitraries.of(1.0, Double.NaN)));
        return Combinators.combine(minutes, level)
                .as((step, value) -> new double[] {step, value})
                .list()
                .ofMaxSize(60)
                .map(SurchargeRuleProperties::series);
    }

    private static Series series(List<double[]> steps) {
        long[] times = new long[steps.size()];
        double[] values = new double[steps.size()];
        long time = 0;
        for (int i = 0; i < times.length; i++) {
            time += (long) (steps.get(i)[0] * 60e9);
            times[i] = time;
            values[i] = steps.get(i)[1];
        }
        return Series.of(times, values);
    }
}
