package dev.runnel.rainfall.distribution;

import org.apache.commons.numbers.gamma.GammaRatio;
import org.apache.commons.numbers.gamma.LogGamma;
import org.apache.commons.numbers.gamma.RegularizedBeta;
import org.apache.commons.numbers.gamma.RegularizedGamma;

/**
 * The Pearson type III variate of mean 0 and standard deviation 1 for a skew above 0: K = (g - a)/sqrt(a) with g of the
 * gamma distribution of shape a = 4/skew&sup2;. A negative skew is its mirror image; the callers turn it.
 */
final class StandardPearson {
    private static final double SMALL_SKEW = NearNormalPearson.SMALL_SKEW;

    /** Above it ln f is taken by Stirling's formula, since the large terms of the gamma density would cancel. */
    private static final double LARGE_SHAPE = 100;

    /** Below it the L-skewness is taken by its series. */
    private static final double SERIES_BELOW = 0.02;

    private static final int MOST_STEPS = 200;

    /** What a Newton step of that size leaves over is about its square, far below rounding. */
    private static final double LAST_STEP = 1e-9;

    private StandardPearson() {}

    static double cdf(double k, double skew) {
        if (skew < SMALL_SKEW) {
            return StandardNormal.cdf(NearNormalPearson.normalOf(k, skew));
        }
        double g = gammaOf(k, skew);
        return g <= 0 ? 0 : RegularizedGamma.P.value(shape(skew), g);
    }

    static double exceedance(double k, double skew) {
        if (skew < SMALL_SKEW) {
            return StandardNormal.exceedance(NearNormalPearson.normalOf(k, skew));
        }
        double g = gammaOf(k, skew);
        return g <= 0 ? 1 : RegularizedGamma.Q.value(shape(skew), g);
    }

    static double logDensity(double k, double skew) {
        double a = shape(skew);
        if (a > LARGE_SHAPE) {
            return NearNormalPearson.logDensity(k, skew);
        }
        double g = gammaOf(k, skew);
        return g <= 0 ? Double.NEGATIVE_INFINITY : (a - 1) * Math.log(g) - g - LogGamma.value(a) + 0.5 * Math.log(a);
    }

    static double quantile(double nonExceedance, double skew) {
        return skew < SMALL_SKEW
                ? NearNormalPearson.valueOf(StandardNormal.quantile(nonExceedance), skew)
                : gammaQuantile(nonExceedance, true, skew);
    }

    static double quantileOfExceedance(double exceedance, double skew) {
        return skew < SMALL_SKEW
                ? NearNormalPearson.valueOf(StandardNormal.quantileOfExceedance(exceedance), skew)
                : gammaQuantile(exceedance, false, skew);
    }

    /** Returns &lambda;<sub>2</sub> = &Gamma;(a + 1/2)/(&Gamma;(a) sqrt(&pi; a)), by its series in the skew if small. */
    static double lScale(double skew) {
        if (skew < SERIES_BELOW) {
            double b = skew * skew / 4;
            return (1 - b / 8 * (1 - b / 16 * (1 + b * 0.625))) / Math.sqrt(Math.PI);
        }
        double a = shape(skew);
        return 1 / (GammaRatio.delta(a, 0.5) * Math.sqrt(Math.PI * a));
    }

    /**
     * Returns &tau;<sub>3</sub> = 6 I<sub>1/3</sub>(a, 2a) - 3, with I the regularised incomplete beta function. A small
     * skew makes a too large for it; there its own series in the skew (coefficients computed to 40 digits) is exact to
     * rounding.
     */
    static double lSkewness(double skew) {
        if (skew < SERIES_BELOW) {
            double square = skew * skew;
            return skew / (2 * Math.sqrt(3 * Math.PI)) * (1 + square * (11.0 / 864 - square * 0.001633632));
        }
        double a = shape(skew);
        return 6 * RegularizedBeta.value(1.0 / 3, a, 2 * a) - 3;
    }

    private static double shape(double skew) {
        return 4 / (skew * skew);
    }

    private static double gammaOf(double k, double skew) {
        double a = shape(skew);
        return a + k * Math.sqrt(a);
    }

    /** Returns the value of the nearer tail: a probability close to 1 has too few digits to be solved for. */
    private static double gammaQuantile(double probability, boolean lowerTail, double skew) {
        double a = shape(skew);
        double g = probability > 0.5
                ? gammaOfProbability(a, 1 - probability, !lowerTail)
                : gammaOfProbability(a, probability, lowerTail);
        return (g - a) / Math.sqrt(a);
    }

    /**
     * Solves P(a, g) = p or Q(a, g) = p by Newton steps on ln g. The logarithms of both are concave in it, so that steps from where the
     * probability is smaller never pass the solution. Such a place is given by P &le; g<sup>a</sup>/&Gamma;(a + 1), and for the upper
     * tail by Q(a, a + &radic;(2 a t) + t) &le; exp(-t). Source of the latter: Boucheron, Lugosi and Massart (2013), Concentration
     * inequalities, Oxford University Press, section 2.4, from memory.
     */
    private static double gammaOfProbability(double a, double probability, boolean lowerTail) {
        double lnGamma = LogGamma.value(a);
        double t = -Math.log(probability);
        double logG = lowerTail ? (LogGamma.value(a + 1) - t) / a : Math.log(a + Math.sqrt(2 * a * t) + t);
        double step = Double.POSITIVE_INFINITY;
        for (int i = 0; i < MOST_STEPS && Math.abs(step) > LAST_STEP; i++) {
            double g = Math.exp(logG);
            double reached = lowerTail ? RegularizedGamma.P.value(a, g) : RegularizedGamma.Q.value(a, g);
            double density = Math.exp(a * logG - g - lnGamma);
            // Where the probability is lost it says nothing: half way to the mean.
            step = reached == 0
                    ? (Math.log(a) - logG) / 2
                    : Math.log(probability / reached) * reached / (lowerTail ? density : -density);
            logG += step;
        }
        return Math.exp(logG);
    }
}
