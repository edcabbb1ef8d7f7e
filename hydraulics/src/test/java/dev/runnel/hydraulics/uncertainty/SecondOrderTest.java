package dev.runnel.hydraulics.uncertainty;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/**
 * JCGM 100, 5.1.2 note: Σ(c u)² + Σᵢ Σₖ (½ fᵢₖ² + fᵢ fᵢₖₖ) uᵢ² uₖ². Polynomials, whose derivatives the differences give without
 * error; expected sums are worked out by hand.
 */
class SecondOrderTest {
    private static double variance(ToDoubleFunction<double[]> function, UncertainInput... inputs) {
        double u = MeasurementModel.of(function, inputs).secondOrderUncertainty();
        return u * u;
    }

    /** Of a product of independent inputs a² v² + b² u² + u² v² is exact. */
    @Test
    void aProduct() {
        assertThat(variance(x -> x[0] * x[1], UncertainInput.normal("a", 3, 0.4), UncertainInput.normal("b", 2, 0.7)))
                .isCloseTo(9 * 0.49 + 4 * 0.16 + 0.16 * 0.49, within(1e-9));
    }

    /** Of a square 4 a² u² + 2 u⁴, the variance of the square of a normal quantity. */
    @Test
    void aSquare() {
        assertThat(variance(x -> x[0] * x[0], UncertainInput.normal("a", 3, 0.4)))
                .isCloseTo(4 * 9 * 0.16 + 2 * Math.pow(0.4, 4), within(1e-9));
    }

    /** Of a cube 9 a⁴ u² + 36 a² u⁴: the third derivative takes part. */
    @Test
    void aCube() {
        assertThat(variance(x -> x[0] * x[0] * x[0], UncertainInput.normal("a", 1.5, 0.4)))
                .isCloseTo(9 * Math.pow(1.5, 4) * 0.16 + 36 * 2.25 * Math.pow(0.4, 4), within(1e-9));
    }

    /** f = a b²: f₁₂ = 2b, f₂₂ = 2a, f₁₂₂ = 2, so that b⁴u² + 4a²b²v² + 4b²u²v² + 2a²v⁴ + 2b²u²v². */
    @Test
    void aMixedThirdDerivative() {
        double a = 1.3;
        double b = 0.9;
        double u2 = 0.09;
        double v2 = 0.04;
        double expected = Math.pow(b, 4) * u2
                + 4 * a * a * b * b * v2
                + 4 * b * b * u2 * v2
                + 2 * a * a * v2 * v2
                + 2 * b * b * u2 * v2;
        assertThat(variance(
                        x -> x[0] * x[1] * x[1],
                        UncertainInput.normal("a", a, 0.3),
                        UncertainInput.normal("b", b, 0.2)))
                .isCloseTo(expected, within(1e-9));
    }

    @Test
    void ofALineTheSecondOrderAddsNothing() {
        UncertainInput a = UncertainInput.normal("a", 5, 0.3);
        UncertainInput b = UncertainInput.normal("b", -2, 0.4);
        assertThat(variance(x -> 2 * x[0] - x[1], a, b)).isCloseTo(4 * 0.09 + 0.16, within(1e-12));
        MeasurementModel tied = MeasurementModel.of(x -> x[0] * x[1], a, b).withCorrelation("a", "b", 0.1);
        assertThatThrownBy(tied::secondOrderUncertainty)
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("inputs must be independent for the second order");
    }
}
