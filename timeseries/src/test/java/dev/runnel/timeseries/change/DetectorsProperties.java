package dev.runnel.timeseries.change;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.contract.MachineContract;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;

class DetectorsProperties {
    private static List<Reading> readings(double[] values) {
        return RegularSeries.of(Instant.EPOCH, Duration.ofMinutes(5), values).toSeries().stream()
                .toList();
    }

    @Property(tries = 100)
    void keepTheContractOfMachines(@ForAll @Size(min = 1, max = 40) double @DoubleRange(min = -9, max = 9) [] values) {
        List<Reading> readings = readings(values);
        MachineContract.holds(CusumRule.ofReferenceAndDecision(0.25, 4).withTarget(0.5), readings);
        MachineContract.holds(
                EwmaRule.ofWeightAndWidth(0.3, 1.5).withTarget(0.5).withDeviation(2), readings);
        MachineContract.holds(PageHinkleyRule.ofSlackAndThreshold(0.5, 6), readings);
        MachineContract.holds(HampelRule.of(2, 2), readings);
    }

    @Property(tries = 200)
    void mirroredValuesGiveTheMirroredSum(
            @ForAll @Size(min = 1, max = 40) double @DoubleRange(min = -9, max = 9) [] values) {
        double[] mirrored = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            mirrored[i] = -values[i];
        }
        assertThat(CusumRule.ofReferenceAndDecision(0.5, 4).lower(mirrored))
                .isEqualTo(CusumRule.ofReferenceAndDecision(0.5, 4).upper(values));
        assertThat(Pettitt.of(append(values)).statistic())
                .isEqualTo(Pettitt.of(append(mirrored)).statistic());
    }

    /** The test wants two values at least. */
    private static double[] append(double[] values) {
        double[] longer = java.util.Arrays.copyOf(values, values.length + 1);
        return longer;
    }

    /** Missing values, values that repeat, both signs of 0, and windows that are longer than the record. */
    @Property(tries = 1000)
    void windowsInOrderAreWhatSortingGives(
            @ForAll @Size(max = 80) List<@IntRange(min = -7, max = 6) Integer> steps,
            @ForAll @IntRange(min = 1, max = 9) int half,
            @ForAll boolean fine) {
        double[] values = steps.stream()
                .mapToDouble(step -> step == 6 ? Double.NaN : step == -7 ? -0.0 : fine ? Math.sin(step * 1e3) : step)
                .toArray();
        double[] present = Arrays.stream(values).filter(x -> !Double.isNaN(x)).toArray();
        double[] expected = new double[values.length];
        List<Integer> wild = new ArrayList<>();
        int at = 0;
        for (int i = 0; i < values.length; i++) {
            expected[i] = Double.NaN;
            if (!Double.isNaN(values[i])) {
                if (at >= half && at + half < present.length) {
                    double median = middle(Arrays.copyOfRange(present, at - half, at + half + 1));
                    double scatter = middle(Arrays.stream(Arrays.copyOfRange(present, at - half, at + half + 1))
                            .map(x -> Math.abs(x - median))
                            .toArray());
                    expected[i] = median + 0.0;
                    if (Math.abs(values[i] - median) > 2 * (1.482602218505602 * scatter)) {
                        wild.add(i);
                    }
                }
                at++;
            }
        }
        double[] medians = new double[values.length];
        RollingMedian.ofHalfWidth(half).medians(values, medians);
        assertThat(medians).isEqualTo(expected);
        HampelRule rule = HampelRule.of(half, 2);
        assertThat(rule.wildAmong(values))
                .isEqualTo(wild.stream().mapToInt(i -> i).toArray());
        assertThat(rule.over(readings(values)))
                .extracting(HampelRule.Wild::time)
                .isEqualTo(wild.stream()
                        .map(i -> Instant.EPOCH.plus(Duration.ofMinutes(5L * i)))
                        .toList());
    }

    private static double middle(double[] values) {
        Arrays.sort(values);
        return values[values.length / 2];
    }
}
