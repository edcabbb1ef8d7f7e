package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Text;

/** The exponential variate s = -ln(1 - F), 0 or greater, of the exponential and the generalised Pareto distribution. */
abstract class ExponentialVariateDistribution extends ShapedDistribution {
    ExponentialVariateDistribution(double location, double scale, double shape) {
        super(location, scale, shape);
    }

    @Override
    final double variate(double nonExceedance) {
        return -Math.log1p(-nonExceedance);
    }

    @Override
    final double variateOfExceedance(double exceedance) {
        return -Math.log(exceedance);
    }

    @Override
    final double cdfOfVariate(double s) {
        return -Math.expm1(-s);
    }

    @Override
    final double exceedanceOfVariate(double s) {
        return Math.exp(-s);
    }

    @Override
    final double logDensityOfVariate(double s) {
        return -s;
    }

    @Override
    final double lowestVariate() {
        return 0;
    }

    @Override
    public final LMoments lMoments() {
        double k = shape;
        if (k <= -1) {
            throw new IllegalStateException("L-moments exist for shape above -1, was " + Text.number(k));
        }
        return LMoments.of(
                location + scale / (1 + k),
                scale / ((1 + k) * (2 + k)),
                (1 - k) / (3 + k),
                (1 - k) * (2 - k) / ((3 + k) * (4 + k)));
    }

    @Override
    public final double mean() {
        return shape <= -1 ? Double.POSITIVE_INFINITY : location + scale / (1 + shape);
    }

    @Override
    public final double variance() {
        double ratio = scale / (1 + shape);
        return shape <= -0.5 ? Double.POSITIVE_INFINITY : ratio * ratio / (1 + 2 * shape);
    }
}
