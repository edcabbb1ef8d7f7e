package dev.runnel.hydraulics.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;

class PropagationTest {
    /** Percentiles of Student's t, 97.5 %: 12.706 of one degree of freedom, 2.5706 of five; of the normal law 1.95996. */
    @Test
    void coverageByDegreesOfFreedom() {
        assertThat(of(0.5).coverageFactor(0.95)).isCloseTo(12.706, within(5e-4));
        assertThat(of(5.9).coverageFactor(0.95)).isCloseTo(2.5706, within(5e-5));
        assertThat(of(2e6).coverageFactor(0.95)).isCloseTo(1.959964, within(5e-7));
        assertThat(of(Double.POSITIVE_INFINITY).coverageFactor(0.95)).isCloseTo(1.959964, within(5e-7));
        assertThat(of(5).expanded(0.95)).isCloseTo(2 * 2.5706, within(1e-4));
        for (double wrong : new double[] {0, 1, Double.NaN}) {
            assertThatThrownBy(() -> of(5).coverageFactor(wrong))
                    .hasMessageStartingWith("probability must be greater than 0 and less than 1, was ");
        }
    }

    private static Propagation of(double freedom) {
        return new Propagation(-8, 2, freedom, List.of());
    }

    @Test
    void relativeToTheSizeOfTheValue() {
        assertThat(of(5).relative()).isEqualTo(0.25);
        assertThat(new Propagation(0, 0, 5, List.of()).relative()).isZero();
        assertThat(new Propagation(0, 1, 5, List.of()).relative()).isInfinite();
        assertThat(of(5)).hasToString("Propagation[-8 ± 2 (standard), -8 ± 5.1 (95 %)]");
    }

    /**
     * y = 3c − 2b + a with an exact c: u² = 0.16 + 0.04, and the greatest share comes first. Of 3a − 2b with r = ½ it is 0.36 +
     * 0.16 − 2 · 0.5 · 0.6 · 0.4.
     */
    @Test
    void theTableOfABudget() {
        Propagation result = MeasurementModel.of(
                        x -> 3 * x[0] - 2 * x[1] + x[2],
                        UncertainInput.normal("c", 4, 0),
                        UncertainInput.normal("b", 2, 0.2),
                        UncertainInput.normal("a", 1, 0.2))
                .propagated();
        assertThat(result.contributions().get(0).sensitivity()).isZero();
        assertThat(result.contributions().get(0).share()).isZero();
        assertThat(result.contributions().get(1).sensitivity()).isCloseTo(-2, within(1e-10));
        assertThat(result.contributions().get(1).amount()).isCloseTo(0.4, within(1e-10));
        assertThat(result.contributions().get(1)).hasToString("Contribution[b: 0.4, 80 %]");
        assertThat(result.standardUncertainty()).isCloseTo(Math.sqrt(0.2), within(1e-10));
        assertThat(result.table().lines().map(line -> line.substring(0, 2))).containsExactly("in", "b,", "a,", "c,");
        assertThat(result.table()).contains("\nb,2,0.2,-2,0.4,80\n");
        double tied = MeasurementModel.of(
                        x -> 3 * x[0] - 2 * x[1],
                        UncertainInput.normal("a", 1, 0.2),
                        UncertainInput.normal("b", 2, 0.2))
                .withCorrelation("b", "a", 0.5)
                .propagated()
                .standardUncertainty();
        assertThat(tied * tied).isCloseTo(0.28, within(1e-10));
    }

    /** Welch-Satterthwaite, JCGM 100, G.4.1: (1 + 4)²/(1/4 + 16/9) for c u of 1 and 2 with 4 and 9 degrees of freedom. */
    @Test
    void effectiveDegreesOfFreedom() {
        Propagation result = MeasurementModel.of(
                        x -> x[0] + 2 * x[1],
                        UncertainInput.normal("a", 1, 1).withDegreesOfFreedom(4),
                        UncertainInput.normal("b", 2, 1).withDegreesOfFreedom(9))
                .propagated();
        assertThat(result.effectiveDegreesOfFreedom()).isCloseTo(25 / (0.25 + 16.0 / 9), within(1e-8));
    }

    @Test
    void inputsAreValues() {
        UncertainInput head = UncertainInput.rectangular("head", 0.2, 0.003);
        assertThat(head.standardUncertainty()).isCloseTo(0.003 / Math.sqrt(3), within(1e-18));
        assertThat(head)
                .isEqualTo(UncertainInput.rectangular("head", 0.2, 0.003))
                .hasSameHashCodeAs(UncertainInput.rectangular("head", 0.2, 0.003))
                .isNotEqualTo(UncertainInput.rectangular("depth", 0.2, 0.003))
                .isNotEqualTo(UncertainInput.rectangular("head", 0.21, 0.003))
                .isNotEqualTo(UncertainInput.normal("head", 0.2, head.standardUncertainty()))
                .isNotEqualTo(head.withDegreesOfFreedom(1))
                .hasToString("UncertainInput[head = 0.2 ± 0.0017 (standard)]");
        assertThat(UncertainInput.normal("x", 1, 2).hashCode())
                .isNotEqualTo(UncertainInput.normal("x", 3, 2).hashCode())
                .isNotEqualTo(UncertainInput.normal("y", 1, 2).hashCode());
        assertThat(head.withDegreesOfFreedom(1).degreesOfFreedom()).isEqualTo(1);
        assertThatThrownBy(() -> head.withDegreesOfFreedom(0.9))
                .hasMessage("newDegreesOfFreedom must be 1 or greater, was 0.9");
        assertThatThrownBy(() -> UncertainInput.ofReadings("head", 1))
                .hasMessage("count of readings of head must be at least 2, was 1");
        assertThatThrownBy(() -> UncertainInput.ofReadings("head", 1, Double.NaN))
                .hasMessageStartingWith("readings[1] of head must be in ");
    }

    @Test
    void modelsRefuse() {
        UncertainInput a = UncertainInput.normal("a", 1, 1);
        UncertainInput b = UncertainInput.normal("b", 1, 1);
        assertThatThrownBy(() -> MeasurementModel.of(x -> 1)).hasMessage("count of inputs must be in [1, 200], was 0");
        assertThatThrownBy(() -> MeasurementModel.of(x -> x[0], a, b).withCorrelation("a", "a", 0.5))
                .hasMessage("second must be another input than \"a\"");
        assertThatThrownBy(() -> MeasurementModel.of(x -> x[0], a, b).withCorrelation("a", "b", 1.1))
                .hasMessage("coefficient must be in [-1, 1], was 1.1");
        assertThatThrownBy(() -> MeasurementModel.of(x -> x[0], a, b).validated(3, 1000, 1))
                .hasMessage("significantDigits must be in [1, 2], was 3");
        assertThat(MeasurementModel.of(x -> x[0], a, b)).hasToString("MeasurementModel[[a, b]]");
    }

    /** A memory shorter than a step is none, one longer than the record ties all of it. */
    @Test
    void memoryOfErrors() {
        double[] flows = {0.3, -0.1, 0.2};
        VolumeUncertainty.FlowErrors errors =
                VolumeUncertainty.FlowErrors.ofRandom(0.1).withCommon(0.05);
        double alone = 0.1 * 60 * Math.sqrt(0.14);
        VolumeUncertainty volume = VolumeUncertainty.of(flows, 60, errors);
        assertThat(volume.volume()).isCloseTo(24, within(1e-12));
        assertThat(volume.random()).isCloseTo(alone, within(1e-12));
        assertThat(volume.common()).isCloseTo(1.2, within(1e-12));
        assertThat(volume.standard()).isCloseTo(Math.hypot(alone, 1.2), within(1e-12));
        assertThat(VolumeUncertainty.of(flows, 60, errors.withMemory(30)).random())
                .isEqualTo(volume.random());
        assertThat(VolumeUncertainty.of(flows, 60, errors.withMemory(1e6)).random())
                .isCloseTo(alone * Math.sqrt(3), within(1e-12));
        assertThat(VolumeUncertainty.of(new double[] {-0.4}, 60, errors).common())
                .isCloseTo(1.2, within(1e-12));
        assertThatThrownBy(() -> VolumeUncertainty.of(new double[0], 60, errors))
                .hasMessage("count of flows must be at least 1, was 0");
        assertThatThrownBy(() -> VolumeUncertainty.of(flows, 0, errors)).hasMessageStartingWith("stepSeconds must be ");
        assertThatThrownBy(() -> VolumeUncertainty.of(new double[] {0, Double.NaN}, 60, errors))
                .hasMessageStartingWith("flows[1] must be in ");
        assertThatThrownBy(() -> VolumeUncertainty.FlowErrors.ofRandom(5.1))
                .hasMessage("random must be in [0, 5], was 5.1");
        assertThatThrownBy(() -> errors.withCommon(-0.1)).hasMessage("common must be in [0, 5], was -0.1");
        assertThatThrownBy(() -> errors.withMemory(-1)).hasMessageStartingWith("memorySeconds must be ");
    }
}
