package dev.runnel.rainfall.distribution;

import org.apache.commons.numbers.gamma.LogGamma;

/**
 * P(&Omega;<sub>r</sub> &lt; &omega;) of the multiple Grubbs-Beck test, integrated over the r-th order statistic z and the standard
 * deviation S of the n - r values above it:
 *
 * <blockquote>P = E<sub>z</sub> E<sub>S</sub> &Phi;((E M + &lambda; (S - E S) + &omega; S - z)/&sigma;)</blockquote>
 *
 * <p>Given z the values above are independent truncated normal ones, with moments that give mean and variance of their mean M
 * and of S&sup2;, and the covariance of the two; S&sup2; is taken as of a gamma distribution, M as normal given S, with
 * &lambda; = Cov(M, S)/Var S and &sigma;&sup2; = Var M - &lambda; Cov(M, S). Both integrands vanish at their ends, so that the
 * trapezoidal rule is accurate.
 */
final class GrubbsBeckProbability {
    private static final double STEP = 0.05;
    private static final int POINTS = 96;
    private static final double REACH = 8;
    private static final double NEGLIGIBLE = -45;

    private GrubbsBeckProbability() {}

    static double of(int n, int r, double omega) {
        if (omega == Double.NEGATIVE_INFINITY) {
            return 0;
        }
        // The density of z, left without its constant, at most 0 in logarithm near its mode.
        double share = (double) r / n;
        double mode = r * Math.log(share) + (n - r) * Math.log1p(-share);
        double sum = 0;
        double weights = 0;
        for (double z = -10; z < 6; z += STEP) {
            double log = (r - 1) * Math.log(StandardNormal.cdf(z))
                    + (n - r) * Math.log(StandardNormal.exceedance(z))
                    + StandardNormal.logDensity(z)
                    - mode;
            if (log > NEGLIGIBLE) {
                double weight = Math.exp(log);
                sum += weight * given(z, n - r, omega);
                weights += weight;
            }
        }
        return sum / weights;
    }

    /** Returns the probability for an order statistic. */
    private static double given(double z, double above, double omega) {
        // Moments of the normal distribution above z, by the ratio of density and tail.
        double h = Math.exp(StandardNormal.logDensity(z)) / StandardNormal.exceedance(z);
        double m2 = 1 + z * h;
        double m3 = (z * z + 2) * h;
        double m4 = 3 + (z * z + 3) * z * h;
        double variance = m2 - h * h;
        double third = m3 - 3 * h * m2 + 2 * h * h * h;
        double fourth = m4 - 4 * h * m3 + 6 * h * h * m2 - 3 * h * h * h * h;
        double ofSquare = (fourth - variance * variance * (above - 3) / (above - 1)) / above;
        double shape = variance * variance / ofSquare;
        double scale = ofSquare / variance;
        double meanS = Math.sqrt(scale) * Math.exp(LogGamma.value(shape + 0.5) - LogGamma.value(shape));
        double varianceS = Math.max(variance - meanS * meanS, Double.MIN_NORMAL);
        double covariance = third / above * meanS / (2 * variance);
        double lambda = covariance / varianceS;
        double sigma = Math.sqrt(variance / above - lambda * covariance);
        double reach = REACH * Math.sqrt(varianceS);
        double from = Math.max(0, meanS - reach);
        double step = (meanS + reach - from) / POINTS;
        double sum = 0;
        double weights = 0;
        for (int i = 1; i < POINTS; i++) {
            double s = from + i * step;
            double square = s * s / scale;
            double weight = Math.exp((2 * shape - 1) * Math.log(s / meanS) - square + meanS * meanS / scale);
            sum += weight * StandardNormal.cdf((h + lambda * (s - meanS) + omega * s - z) / sigma);
            weights += weight;
        }
        return sum / weights;
    }
}
