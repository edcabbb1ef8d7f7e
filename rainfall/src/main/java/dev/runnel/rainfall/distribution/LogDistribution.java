package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import java.util.Map;

/** A distribution whose logarithm to a base follows another one: log-Pearson type III and lognormal. */
abstract class LogDistribution implements Distribution {
    private final Distribution ofLogarithm;
    private final double logOfBase;

    LogDistribution(Distribution ofLogarithm, double base) {
        this.ofLogarithm = ofLogarithm;
        this.logOfBase = base == Math.E ? 1 : Math.log(base);
    }

    @Override
    public final double cdf(double x) {
        return Require.finite("x", x, "") <= 0 ? 0 : ofLogarithm.cdf(logarithm(x));
    }

    @Override
    public final double exceedance(double x) {
        return Require.finite("x", x, "") <= 0 ? 1 : ofLogarithm.exceedance(logarithm(x));
    }

    @Override
    public final double logDensity(double x) {
        return Require.finite("x", x, "") <= 0
                ? Double.NEGATIVE_INFINITY
                : ofLogarithm.logDensity(logarithm(x)) - Math.log(x) - Math.log(logOfBase);
    }

    @Override
    public final double quantile(double probability) {
        return Math.exp(logOfBase * ofLogarithm.quantile(probability));
    }

    @Override
    public final double quantileOfExceedance(double exceedance) {
        return Math.exp(logOfBase * ofLogarithm.quantileOfExceedance(exceedance));
    }

    @Override
    public final double lowerBound() {
        return Math.exp(logOfBase * ofLogarithm.lowerBound());
    }

    @Override
    public final double upperBound() {
        return Math.exp(logOfBase * ofLogarithm.upperBound());
    }

    private double logarithm(double x) {
        return Math.log(x) / logOfBase;
    }

    @Override
    public final Map<String, Double> parameters() {
        return ofLogarithm.parameters();
    }

    @Override
    public final boolean equals(Object other) {
        return other instanceof LogDistribution that
                && getClass() == that.getClass()
                && ofLogarithm.equals(that.ofLogarithm);
    }

    @Override
    public final int hashCode() {
        return ofLogarithm.hashCode();
    }

    @Override
    public final String toString() {
        return ShapedDistribution.describe(this);
    }
}
