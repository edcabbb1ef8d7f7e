package dev.runnel.rainfall.distribution;

/** The normal variate z, which the normal and the generalised normal (three-parameter lognormal) share. */
abstract class NormalVariateDistribution extends ShapedDistribution {
    NormalVariateDistribution(double location, double scale, double shape) {
        super(location, scale, shape);
    }

    @Override
    final double variate(double nonExceedance) {
        return StandardNormal.quantile(nonExceedance);
    }

    @Override
    final double variateOfExceedance(double exceedance) {
        return StandardNormal.quantileOfExceedance(exceedance);
    }

    @Override
    final double cdfOfVariate(double s) {
        return StandardNormal.cdf(s);
    }

    @Override
    final double exceedanceOfVariate(double s) {
        return StandardNormal.exceedance(s);
    }

    @Override
    final double logDensityOfVariate(double s) {
        return StandardNormal.logDensity(s);
    }
}
