package dev.runnel.hydraulics.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import dev.runnel.hydraulics.structure.ApproachChannel;
import dev.runnel.hydraulics.structure.RectangularWeir;
import java.util.Arrays;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Printed examples of JCGM 100:2008 and JCGM 101:2008. */
class MeasurementModelTest {
    /** JCGM 100, H.1, an end gauge: nm and degrees. */
    private static MeasurementModel endGauge() {
        ToDoubleFunction<double[]> length = x -> {
            double temperature = x[5] + x[6];
            return x[0] + x[1] + x[2] + x[3] - x[0] * (x[7] * temperature + x[4] * x[8]);
        };
        return MeasurementModel.of(
                length,
                UncertainInput.normal("standard", 50_000_623, 25).withDegreesOfFreedom(18),
                UncertainInput.normal("difference", 215, 5.8).withDegreesOfFreedom(24),
                UncertainInput.normal("comparator, random", 0, 3.9).withDegreesOfFreedom(5),
                UncertainInput.normal("comparator, systematic", 0, 6.7).withDegreesOfFreedom(8),
                UncertainInput.rectangular("expansion", 11.5e-6, 2e-6),
                UncertainInput.normal("temperature", -0.1, 0.2),
                UncertainInput.arcsine("swing", 0, 0.5),
                UncertainInput.rectangular("difference of expansion", 0, 1e-6).withDegreesOfFreedom(50),
                UncertainInput.rectangular("difference of temperature", 0, 0.05).withDegreesOfFreedom(2));
    }

    @Test
    void endGaugeOfTheGuide() {
        Propagation result = endGauge().propagated();
        assertThat(result.value()).isCloseTo(50_000_838, within(0.5));
        assertThat(result.standardUncertainty()).isCloseTo(32, within(0.5));
        assertThat(Math.floor(result.effectiveDegreesOfFreedom())).isEqualTo(16);
        assertThat(result.coverageFactor(0.99)).isCloseTo(2.92, within(0.005));
        assertThat(result.contributions().get(7).amount()).isCloseTo(2.9, within(0.05));
        assertThat(result.contributions().get(8).amount()).isCloseTo(16.6, within(0.05));
        assertThat(endGauge().secondOrderUncertainty()).isCloseTo(34, within(0.5));
        assertThat(result.contributions().stream()
                        .mapToDouble(Contribution::share)
                        .sum())
                .isCloseTo(1, within(1e-12));
        assertThat(result.table()).startsWith("input,estimate,").contains("\nstandard,5.00006e+07,25,1,25,62.3\n");
    }

    /** The differences that give sensitivities have their rounding: 7 degrees of freedom must not count as 6. */
    @Test
    void wholeDegreesOfFreedomStayWhole() {
        Propagation result = MeasurementModel.of(
                        x -> x[0] + x[1],
                        UncertainInput.normal("x0", 4, 2).withDegreesOfFreedom(7),
                        UncertainInput.normal("x1", 5, 0))
                .propagated();
        assertThat(result.effectiveDegreesOfFreedom()).isCloseTo(7, within(1e-6));
        assertThat(result.coverageFactor(0.95)).isCloseTo(2.3646, within(5e-5));
    }

    /** JCGM 100, H.2: voltage, current and phase measured together. */
    @Test
    void resistanceAndReactance() {
        double[][] printed = {{127.732, 0.071}, {219.847, 0.295}, {254.260, 0.236}};
        List<ToDoubleFunction<double[]>> models =
                List.of(x -> x[0] / x[1] * Math.cos(x[2]), x -> x[0] / x[1] * Math.sin(x[2]), x -> x[0] / x[1]);
        for (int i = 0; i < 3; i++) {
            Propagation result = MeasurementModel.of(
                            models.get(i),
                            UncertainInput.normal("V", 4.9990, 0.0032),
                            UncertainInput.normal("I", 0.0196610, 0.0000095),
                            UncertainInput.normal("phase", 1.04446, 0.00075))
                    .withCorrelation("V", "I", -0.36)
                    .withCorrelation("V", "phase", 0.86)
                    .withCorrelation("I", "phase", -0.65)
                    .propagated();
            assertThat(result.value()).isCloseTo(printed[i][0], within(0.0015));
            // the Guide works on with rounded inputs
            assertThat(result.standardUncertainty()).isCloseTo(printed[i][1], withPercentage(1.5));
        }
    }

    private static double sum(double[] values) {
        return Arrays.stream(values).sum();
    }

    private static UncertainInput rectangular(String name, double deviation) {
        return UncertainInput.rectangular(name, 0, deviation * Math.sqrt(3));
    }

    /** JCGM 101, 9.2.2 to 9.2.4: ends 3.92, 3.88 and 17.0; the law of propagation is right only in the first. */
    @Test
    void additiveModels() {
        MeasurementModel normal = MeasurementModel.of(
                MeasurementModelTest::sum,
                UncertainInput.normal("a", 0, 1),
                UncertainInput.normal("b", 0, 1),
                UncertainInput.normal("c", 0, 1),
                UncertainInput.normal("d", 0, 1));
        Validation first = normal.validated(2, 1_000_000, 7);
        assertThat(first.propagation().expanded(0.95)).isCloseTo(3.92, within(0.005));
        assertThat(first.simulation().interval(0.95)[1]).isCloseTo(3.92, within(0.015));
        assertThat(first.tolerance()).isCloseTo(0.05, within(1e-12));
        assertThat(first.isValid()).isTrue();
        MeasurementModel even = MeasurementModel.of(
                MeasurementModelTest::sum,
                rectangular("a", 1),
                rectangular("b", 1),
                rectangular("c", 1),
                rectangular("d", 1));
        Simulation second = even.simulated(1_000_000, 8);
        assertThat(second.standardUncertainty()).isCloseTo(2.0, within(0.005));
        assertThat(second.interval(0.95)[1]).isCloseTo(3.88, within(0.015));
        MeasurementModel one = MeasurementModel.of(
                MeasurementModelTest::sum,
                rectangular("a", 1),
                rectangular("b", 1),
                rectangular("c", 1),
                rectangular("d", 10));
        Validation third = one.validated(2, 1_000_000, 9);
        assertThat(third.simulation().interval(0.95)[1]).isCloseTo(17.0, within(0.05));
        assertThat(third.propagation().expanded(0.95)).isCloseTo(19.9, within(0.05));
        assertThat(third.isValid()).isFalse();
        assertThat(third.toString()).startsWith("Validation[NOT valid: ");
    }

    /** JCGM 101, 9.4, loss of a microwave comparison, δY = x₁² + x₂²: printed in units of 1e-6. */
    @Test
    void comparisonLoss() {
        double[][] printed = {{0, 50, 50, 0, 150}, {0.010, 150, 112, 0, 367}, {0.050, 2550, 502, 1590, 3543}};
        for (double[] row : printed) {
            Simulation loss = MeasurementModel.of(
                            x -> 1e6 * (x[0] * x[0] + x[1] * x[1]),
                            UncertainInput.normal("x1", row[0], 0.005),
                            UncertainInput.normal("x2", 0, 0.005))
                    .simulated(1_000_000, 11);
            assertThat(loss.mean()).isCloseTo(row[1], within(0.002 * row[1] + 0.2));
            assertThat(loss.standardUncertainty()).isCloseTo(row[2], withPercentage(0.6));
            // the shortest interval is flat near its least length
            assertThat(loss.shortestInterval(0.95)[0]).isCloseTo(row[3], within(0.02 * row[2] + 0.2));
            assertThat(loss.shortestInterval(0.95)[1]).isCloseTo(row[4], within(0.02 * row[2]));
        }
        Propagation law = MeasurementModel.of(
                        x -> x[0] * x[0] + x[1] * x[1],
                        UncertainInput.normal("x1", 0, 0.005),
                        UncertainInput.normal("x2", 0, 0.005))
                .propagated();
        assertThat(law.standardUncertainty()).isZero();
    }

    /** Correlated draws: of a sum of two with r = 0.9 the variance is 2 (1 + r), of their difference 2 (1 − r). */
    @Test
    void correlatedDraws() {
        UncertainInput a = UncertainInput.normal("a", 1, 1);
        UncertainInput b = UncertainInput.normal("b", 2, 1);
        Simulation sum = MeasurementModel.of(MeasurementModelTest::sum, a, b)
                .withCorrelation("a", "b", 0.9)
                .simulated(400_000, 3);
        assertThat(sum.standardUncertainty()).isCloseTo(Math.sqrt(3.8), withPercentage(0.5));
        Simulation difference = MeasurementModel.of(x -> x[0] - x[1], a, b)
                .withCorrelation("a", "b", 0.9)
                .simulated(400_000, 3);
        assertThat(difference.standardUncertainty()).isCloseTo(Math.sqrt(0.2), withPercentage(0.5));
        assertThat(MeasurementModel.of(x -> x[0] - x[1], a, b)
                        .withCorrelation("a", "b", 1)
                        .propagated()
                        .standardUncertainty())
                .isZero();
    }

    /** The budget of a weir: crest length, head and coefficient; the head matters most, by its exponent of 1.5. */
    @Test
    void whichInputOfAWeirMatters() {
        ApproachChannel channel = ApproachChannel.ofWidth(1).withCrestHeight(0.5);
        MeasurementModel flow = MeasurementModel.of(
                x -> x[2] * RectangularWeir.contracted(x[0], channel).discharge(x[1]),
                UncertainInput.normal("crest length", 0.4, 0.001),
                UncertainInput.normal("head", 0.2, 0.002),
                UncertainInput.normal("coefficient", 1, 0.0075));
        Propagation result = flow.propagated();
        RectangularWeir weir = RectangularWeir.contracted(0.4, channel);
        double ofHead = weir.exponent(0.2) * 0.01;
        assertThat(result.contributions().get(1).amount() / result.value()).isCloseTo(ofHead, within(1e-7));
        assertThat(result.contributions().get(1).share()).isGreaterThan(0.7);
        assertThat(result.relative()).isCloseTo(Math.hypot(Math.hypot(ofHead, 0.0075), 0.0025), within(0.0001));
        assertThat(flow.validated(1, 100_000, 5).isValid()).isTrue();
    }

    @Test
    void readingsAndStudent() {
        UncertainInput head = UncertainInput.ofReadings("head", 0.201, 0.203, 0.202, 0.206);
        assertThat(head.estimate()).isCloseTo(0.203, within(1e-15));
        assertThat(head.standardUncertainty()).isCloseTo(Math.sqrt(14e-6 / 3 / 4), within(1e-12));
        assertThat(head.degreesOfFreedom()).isEqualTo(3);
        // variance of Student's t with 3 degrees of freedom is 3; with 10 it is 1.25
        Simulation t = MeasurementModel.of(
                        MeasurementModelTest::sum,
                        UncertainInput.normal("x", 0, 1).withDegreesOfFreedom(10))
                .simulated(400_000, 2);
        assertThat(t.standardUncertainty()).isCloseTo(Math.sqrt(1.25), withPercentage(1));
        Simulation triangle = MeasurementModel.of(MeasurementModelTest::sum, UncertainInput.triangular("x", 2, 1))
                .simulated(200_000, 2);
        assertThat(triangle.standardUncertainty()).isCloseTo(1 / Math.sqrt(6), withPercentage(1));
        assertThat(triangle.quantile(0)).isGreaterThanOrEqualTo(1);
        assertThat(triangle.quantile(1)).isLessThanOrEqualTo(3);
        Simulation swing = MeasurementModel.of(MeasurementModelTest::sum, UncertainInput.arcsine("x", 0, 1))
                .simulated(200_000, 2);
        assertThat(swing.standardUncertainty()).isCloseTo(Math.sqrt(0.5), withPercentage(1));
    }

    @Test
    void volumesKeepTheCommonPart() {
        double[] day = new double[1440];
        Arrays.fill(day, 0.05);
        VolumeUncertainty.FlowErrors errors =
                VolumeUncertainty.FlowErrors.ofRandom(0.1).withCommon(0.03);
        VolumeUncertainty volume = VolumeUncertainty.of(day, 60, errors);
        assertThat(volume.volume()).isCloseTo(4320, within(1e-9));
        assertThat(volume.random()).isCloseTo(432 / Math.sqrt(1440), within(1e-9));
        assertThat(volume.common()).isCloseTo(129.6, within(1e-9));
        assertThat(VolumeUncertainty.of(day, 60, errors.withMemory(3600)).random())
                .isCloseTo(432 / Math.sqrt(24), within(1e-9));
        VolumeUncertainty month = volume;
        for (int i = 1; i < 30; i++) {
            month = month.plus(volume);
        }
        assertThat(month.common() / month.volume()).isCloseTo(0.03, within(1e-12));
        assertThat(month.random()).isCloseTo(volume.random() * Math.sqrt(30), within(1e-9));
        assertThat(volume).hasToString("VolumeUncertainty[4320 m3 ± 130 (standard): random 11, common 130]");
    }

    @Test
    void refusals() {
        UncertainInput a = UncertainInput.normal("a", 1, 1);
        assertThatThrownBy(() -> MeasurementModel.of(MeasurementModelTest::sum, a, a))
                .hasMessageStartingWith("inputs must have different names");
        assertThatThrownBy(
                        () -> MeasurementModel.of(MeasurementModelTest::sum, a).withCorrelation("a", "z", 0.5))
                .hasMessage("input must be one of [a], was \"z\"");
        assertThatThrownBy(() -> MeasurementModel.of(x -> Math.log(x[0] - 1), a).propagated())
                .hasMessageStartingWith("function must give a finite result, was NaN at ");
        assertThatThrownBy(() -> UncertainInput.normal("a", 1, -1))
                .hasMessage("uncertainty of a must be in [0, 1.0E100], was -1");
        UncertainInput b = UncertainInput.normal("b", 1, 1);
        UncertainInput c = UncertainInput.normal("c", 1, 1);
        assertThatThrownBy(() -> MeasurementModel.of(MeasurementModelTest::sum, a, b, c)
                        .withCorrelation("a", "b", 0.9)
                        .withCorrelation("b", "c", 0.9)
                        .withCorrelation("a", "c", -0.9)
                        .simulated(1000, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("correlations must not contradict each other");
        assertThatThrownBy(() -> MeasurementModel.of(MeasurementModelTest::sum, a, rectangular("r", 1))
                        .withCorrelation("a", "r", 0.5)
                        .simulated(1000, 1))
                .hasMessageStartingWith("a correlated input must be normal");
        assertThatThrownBy(
                        () -> MeasurementModel.of(MeasurementModelTest::sum, a).simulated(Integer.MAX_VALUE, 1))
                .hasMessageStartingWith("trials must be in [1000, ");
    }
}
