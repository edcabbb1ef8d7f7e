package dev.runnel.rainfall.areal;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * The weights of gauges for one place. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class PlaceWeights {
    /** How far weights may sum from 1: rounding of a sum, and of weights written with ten digits; chosen here. */
    private static final double ROUNDING = 1e-9;

    private final double[] weights;
    private final OptionalDouble variance;

    private PlaceWeights(double[] weights, OptionalDouble variance) {
        this.weights = weights;
        this.variance = variance;
    }

    /**
     * Returns weights without a variance.
     *
     * @param weights one for each gauge, together 1
     * @return the weights
     * @throws IllegalArgumentException if there is none, one is not finite, or they do not add up to 1 within 1e-9
     */
    public static PlaceWeights of(double... weights) {
        return checked(weights, OptionalDouble.empty());
    }

    /**
     * Returns the same weights with a variance.
     *
     * @param varianceMm2 variance of the estimate, mm²; 0 or greater
     * @return the weights
     * @throws IllegalArgumentException if it is negative, infinite or NaN
     */
    public PlaceWeights withVariance(double varianceMm2) {
        return new PlaceWeights(weights, OptionalDouble.of(Require.nonNegative("varianceMm2", varianceMm2, "mm2")));
    }

    private static PlaceWeights checked(double[] weights, OptionalDouble variance) {
        Require.atLeast("number of weights", weights.length, 1);
        for (double weight : weights) {
            Require.finite("weight", weight, "");
        }
        Require.inRange(
                "sum of weights", CompensatedSum.of(weights, 0, weights.length), 1 - ROUNDING, 1 + ROUNDING, "");
        return new PlaceWeights(weights.clone(), variance);
    }

    /**
     * Returns the weights.
     *
     * @return one for each gauge; a copy
     */
    public double[] weights() {
        return weights.clone();
    }

    /**
     * Returns the variance of the estimate.
     *
     * @return variance, mm²; empty if the rule knows none
     */
    public OptionalDouble varianceMm2() {
        return variance;
    }

    /**
     * Returns the rain of the place.
     *
     * @param depthsMm depth of each gauge, mm; 0 or greater
     * @return Σ w P, mm, cut at 0
     * @throws IllegalArgumentException if the number of depths differs, or one is negative or NaN
     */
    public double depthMm(double... depthsMm) {
        Require.sameLength("depthsMm", weights.length, depthsMm.length);
        CompensatedSum sum = new CompensatedSum();
        for (int i = 0; i < weights.length; i++) {
            sum.add(weights[i] * Require.nonNegative("depthsMm at index " + i, depthsMm[i], "mm"));
        }
        return Math.max(0, sum.value());
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PlaceWeights that
                && Arrays.equals(weights, that.weights)
                && variance.equals(that.variance);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(weights) + variance.hashCode();
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("PlaceWeights[");
        for (int i = 0; i < weights.length; i++) {
            text.append(i == 0 ? "" : ", ").append(Text.significant(weights[i], 4));
        }
        Optional<Double> known = variance.isPresent() ? Optional.of(variance.getAsDouble()) : Optional.empty();
        return text.append(known.map(each -> "; variance " + Text.significant(each, 4) + " mm2]")
                        .orElse("]"))
                .toString();
    }
}
