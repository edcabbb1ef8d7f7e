package dev.runnel.timeseries.change;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.contract.MachineContract;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
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
}
