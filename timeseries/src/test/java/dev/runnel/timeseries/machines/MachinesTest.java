package dev.runnel.timeseries.machines;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.MachineState;
import dev.runnel.timeseries.contract.MachineContract;
import dev.runnel.timeseries.contract.SampleRecord;
import dev.runnel.timeseries.contract.SecondJvm;
import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** All rules of the module on one record each. */
class MachinesTest {
    private static final int CUT = 31;

    static List<SampleRecord<?, ?, ?>> records() {
        return new TimeSeriesRecords().all();
    }

    @ParameterizedTest
    @MethodSource("records")
    void everyRuleKeepsTheContract(SampleRecord<?, ?, ?> sample) {
        assertThat(holds(sample)).as("results, or the sample shows nothing").isNotEmpty();
    }

    private static <I, O, S extends MachineState> List<O> holds(SampleRecord<I, O, S> sample) {
        return MachineContract.holds(sample.rule(), sample.inputs());
    }

    @Test
    @Timeout(60)
    void aSecondJvmGoesOnWhereTheFirstStood() throws IOException, InterruptedException {
        assertThat(SecondJvm.goesOn(new TimeSeriesRecords(), CUT)).hasSizeGreaterThan(100);
    }
}
