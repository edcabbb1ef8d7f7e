package dev.runnel.timeseries.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.change.ChangeSignal.Side;
import dev.runnel.timeseries.contract.MachineContract;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class DetectorsTest {
    private static final Instant START = Instant.parse("2026-05-01T00:00:00Z");

    private static List<Reading> readings(double... values) {
        return RegularSeries.of(START, Duration.ofHours(1), values).toSeries().stream()
                .toList();
    }

    private static Instant hour(int hour) {
        return START.plus(Duration.ofHours(hour));
    }

    @Test
    void cusumSignalsUpThenDownAndBeginsAnew() {
        List<ChangeSignal> signals = MachineContract.holds(
                CusumRule.ofReferenceAndDecision(0.5, 2).withTarget(10),
                readings(10, 10, 11, 12, 11, 10, Double.NaN, 8, 8, 8, 10));
        // 0.5, 2.0, 2.5: a signal at hour 4; 1.5, 3.0: a signal at hour 8.
        assertThat(signals)
                .containsExactly(
                        new ChangeSignal(hour(4), hour(2), Side.UP, 2.5),
                        new ChangeSignal(hour(8), hour(7), Side.DOWN, 3));
    }

    @Test
    void ewmaSignalsWhenTheAverageLeavesItsLimits() {
        EwmaRule rule = EwmaRule.ofWeightAndWidth(0.5, 3);
        assertThat(rule.upperLimit()).isCloseTo(Math.sqrt(3), within(1e-15));
        // 1, 1.5, 1.75 > 1.732
        assertThat(MachineContract.holds(rule, readings(0, 2, 2, 2, 0)))
                .containsExactly(new ChangeSignal(hour(3), hour(1), Side.UP, 1.75));
        assertThat(MachineContract.holds(rule, readings(-9)).get(0).side()).isEqualTo(Side.DOWN);
    }

    @Test
    void pageHinkleyFindsTheStepOfTheWorkedExample() {
        double[] values = {10, 9, 11, 10, 10, 9, 10, 11, 10, 10, 13, 12, 13, 14, 13, 12, 13};
        PageHinkleyRule rule = PageHinkleyRule.ofSlackAndThreshold(0.5, 5);
        List<ChangeSignal> signals = MachineContract.holds(rule, readings(values));
        assertThat(signals.get(0).time()).isEqualTo(hour(12));
        assertThat(signals.get(0).side()).isEqualTo(Side.UP);
        assertThat(signals.get(0).since()).isEqualTo(hour(10));
        assertThat(signals.get(0).statistic()).isCloseTo(5.195221, within(5e-7));
        assertThat(rule.upward(values)[16]).isCloseTo(11.099108, within(5e-7));
    }

    @Test
    void hampelTellsSingleWildValuesAndNoSteps() {
        HampelRule rule = HampelRule.of(2, 3);
        List<HampelRule.Wild> wild =
                MachineContract.holds(rule, readings(1.0, 1.1, 0.9, 1.2, 5.0, 1.1, 1.0, 0.9, 1.0, -3.0, 1.1, 1.2, 1.0));
        assertThat(wild).extracting(HampelRule.Wild::time).containsExactly(hour(4), hour(9));
        assertThat(wild.get(0).median()).isEqualTo(1.1);
        assertThat(MachineContract.holds(
                        rule.withLeastScatter(0.1), readings(1, 1.1, 0.9, 1, 1.1, 3, 3.1, 2.9, 3, 3.1)))
                .isEmpty();
    }

    @Test
    void pettittFindsTheChange() {
        Pettitt test = Pettitt.of(1, 2, 1, 2, 1, 5, 6, 5, 6, 5);
        assertThat(test.before()).isEqualTo(5);
        assertThat(test.statistic()).isEqualTo(25);
        assertThat(test.pValue()).isCloseTo(2 * Math.exp(-6 * 625 / 1100.0), within(1e-15));
        assertThat(Pettitt.of(3, 3, 3).pValue()).isEqualTo(1);
    }

    @Test
    void runLengthIsWhatASimulationShows() {
        Random random = new Random(7);
        double total = 0;
        int runs = 4000;
        for (int run = 0; run < runs; run++) {
            double sum = 0;
            int length = 0;
            while (sum <= 3) {
                sum = Math.max(0, sum + random.nextGaussian() + 0.5 - 0.5);
                length++;
            }
            total += length;
        }
        double expected = AverageRunLength.ofCusumOneSide(CusumRule.ofReferenceAndDecision(0.5, 3), 0.5);
        // The run length is about exponential: its mean over 4000 runs scatters by 1.6 %; four of those.
        assertThat(total / runs).isCloseTo(expected, within(0.065 * expected));
    }

    @Test
    void refusesBadFigures() {
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> CusumRule.ofReferenceAndDecision(-1, 2).withTarget(10))
                .withMessageContaining("reference");
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> EwmaRule.ofWeightAndWidth(1.5, 3))
                .withMessageContaining("weight");
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> HampelRule.of(0, 3))
                .withMessageContaining("halfWidth");
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> Pettitt.of(1, Double.NaN))
                .withMessageContaining("values[1]");
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> AverageRunLength.ofCusum(CusumRule.ofReferenceAndDecision(5, 20), 0))
                .withMessageContaining("1e9");
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(() -> CusumRule.ofReferenceAndDecision(1, 2).parseState("ewma/1 statistics=0.0, starts=0,"))
                .withMessageContaining("cusum");
        assertThatExceptionOfType(IllegalArgumentException.class)
                .isThrownBy(
                        () -> CusumRule.ofReferenceAndDecision(1, 2).parseState("cusum/1 statistics=0.0, starts=0,"))
                .withMessageContaining("2 statistics");
    }
}
