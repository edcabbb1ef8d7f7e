package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;

/**
 * What the families with location, scale and shape share: a value is x = &xi; + &alpha; (1 - exp(-k s))/k, or
 * &xi; + &alpha; s for k = 0, where s is the variate that names the family (Gumbel, logistic, exponential, normal).
 * A family is its variate and its L-moments.
 */
abstract class ShapedDistribution implements Distribution {
    final double location;
    final double scale;
    final double shape;

    ShapedDistribution(double location, double scale, double shape) {
        this.location = Require.finite("location", location, "");
        this.scale = Require.positive("scale", scale, "");
        this.shape = Require.finite("shape", shape, "");
    }

    /** Returns s for a probability of non-exceedance. */
    abstract double variate(double nonExceedance);

    /** Returns s for a probability of exceedance, without forming 1 - p. */
    abstract double variateOfExceedance(double exceedance);

    abstract double cdfOfVariate(double s);

    abstract double exceedanceOfVariate(double s);

    abstract double logDensityOfVariate(double s);

    /** Returns the smallest s, negative infinity for most families. */
    double lowestVariate() {
        return Double.NEGATIVE_INFINITY;
    }

    @Override
    public final double quantile(double probability) {
        return quantileOfVariate(variate(Probability.inside("probability", probability)));
    }

    final double quantileOfVariate(double s) {
        return between(valueOf(s));
    }

    @Override
    public final double quantileOfExceedance(double exceedance) {
        return quantileOfVariate(variateOfExceedance(Probability.inside("exceedance", exceedance)));
    }

    @Override
    public final double cdf(double x) {
        double s = variateOfValue(x);
        return s <= lowestVariate() ? 0 : s == Double.POSITIVE_INFINITY ? 1 : cdfOfVariate(s);
    }

    @Override
    public final double exceedance(double x) {
        double s = variateOfValue(x);
        return s <= lowestVariate() ? 1 : s == Double.POSITIVE_INFINITY ? 0 : exceedanceOfVariate(s);
    }

    @Override
    public final double logDensity(double x) {
        double s = variateOfValue(x);
        if (Double.isInfinite(s) || s < lowestVariate()) {
            return Double.NEGATIVE_INFINITY;
        }
        // ds/dx = exp(k s)/alpha
        return logDensityOfVariate(s) + shape * s - Math.log(scale);
    }

    @Override
    public final double lowerBound() {
        double lowest = lowestVariate();
        if (Double.isInfinite(lowest)) {
            return shape < 0 ? location + scale / shape : Double.NEGATIVE_INFINITY;
        }
        return valueOf(lowest);
    }

    @Override
    public final double upperBound() {
        return shape > 0 ? location + scale / shape : Double.POSITIVE_INFINITY;
    }

    /** Takes back the last digit by which rounding may carry a value over a bound. */
    private double between(double x) {
        return Math.max(lowerBound(), Math.min(upperBound(), x));
    }

    /** expm1 keeps the digits of a shape near 0, where 1 - exp(-k s) would lose them. */
    private double valueOf(double s) {
        return location + scale * (shape == 0 ? s : -Math.expm1(-shape * s) / shape);
    }

    private double variateOfValue(double x) {
        double z = (Require.finite("x", x, "") - location) / scale;
        if (shape == 0) {
            return z;
        }
        double inside = -shape * z;
        if (inside <= -1) {
            return shape > 0 ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY;
        }
        return -Math.log1p(inside) / shape;
    }

    @Override
    public Map<String, Double> parameters() {
        return named("xi", location, "alpha", scale, "k", shape);
    }

    static Map<String, Double> named(Object... namesAndValues) {
        Map<String, Double> named = new LinkedHashMap<>();
        for (int i = 0; i < namesAndValues.length; i += 2) {
            named.put((String) namesAndValues[i], (Double) namesAndValues[i + 1]);
        }
        return java.util.Collections.unmodifiableMap(named);
    }

    static String describe(Distribution distribution) {
        return distribution.getClass().getSimpleName()
                + distribution.parameters().entrySet().stream()
                        .map(entry -> entry.getKey() + " = " + Text.significant(entry.getValue(), 6))
                        .collect(Collectors.joining(", ", "[", "]"));
    }

    @Override
    public final boolean equals(Object other) {
        return other instanceof ShapedDistribution that
                && getClass() == that.getClass()
                && parameters().equals(that.parameters());
    }

    @Override
    public final int hashCode() {
        return parameters().hashCode();
    }

    @Override
    public final String toString() {
        return describe(this);
    }
}
