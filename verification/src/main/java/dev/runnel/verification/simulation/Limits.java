package dev.runnel.verification.simulation;

import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.stat.interval.ConfidenceInterval;
import org.apache.commons.math3.stat.interval.WilsonScoreInterval;

/**
 * A two-sided interval of 95 %.
 *
 * @param lower lower limit
 * @param upper upper limit
 */
record Limits(double lower, double upper) {
    private static final double LEVEL = 0.95;

    /** For a share, {@code hits} of {@code trials}; Wilson's score interval. [0, 1] without trials. */
    static Limits ofShare(int hits, int trials) {
        if (trials == 0) {
            return new Limits(0, 1);
        }
        ConfidenceInterval interval = new WilsonScoreInterval().createInterval(trials, hits, LEVEL);
        return new Limits(Math.max(0, interval.getLowerBound()), Math.min(1, interval.getUpperBound()));
    }

    /**
     * For a rate, {@code count} in {@code exposure}; Garwood's exact interval of a Poisson mean, ½χ²(α/2; 2n) and
     * ½χ²(1 − α/2; 2n + 2).
     */
    static Limits ofRate(int count, double exposure) {
        double tail = (1 - LEVEL) / 2;
        double lower = count == 0 ? 0 : new ChiSquaredDistribution(2.0 * count).inverseCumulativeProbability(tail) / 2;
        double upper = new ChiSquaredDistribution(2.0 * count + 2).inverseCumulativeProbability(1 - tail) / 2;
        return new Limits(lower / exposure, upper / exposure);
    }
}
