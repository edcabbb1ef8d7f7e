package dev.runnel.rainfall.distribution;

/** The Gumbel variate s = -ln(-ln F), which the Gumbel and the generalised extreme value distribution share. */
abstract class GumbelVariateDistribution extends ShapedDistribution {
    /** Euler's constant. */
    static final double EULER = 0.577215664901532860606512090082;

    GumbelVariateDistribution(double location, double scale, double shape) {
        super(location, scale, shape);
    }

    @Override
    final double variate(double nonExceedance) {
        return -Math.log(-Math.log(nonExceedance));
    }

    @Override
    final double variateOfExceedance(double exceedance) {
        return -Math.log(-Math.log1p(-exceedance));
    }

    @Override
    final double cdfOfVariate(double s) {
        return Math.exp(-Math.exp(-s));
    }

    @Override
    final double exceedanceOfVariate(double s) {
        return -Math.expm1(-Math.exp(-s));
    }

    @Override
    final double logDensityOfVariate(double s) {
        return -s - Math.exp(-s);
    }
}
