package dev.runnel.verification.simulation;

import org.apache.commons.math3.util.FastMath;

/**
 * Groundwater of one winter: at its highest 10 to 90 % of the usual flow, within half a year of the first reading.
 *
 * @param share highest flow, as a share of the usual one
 * @param peak days from the start of the record
 * @param width days from there to where 0.61 of it is left
 */
record Season(double share, double peak, double width) {
    /** The season of a site. */
    static Season of(long seed) {
        Draws draws = Draws.of(seed, "season");
        return new Season(draws.uniform(0.1, 0.9), draws.uniform(165, 205), draws.uniform(30, 50));
    }

    /** What seeps in on a day, as a share of the usual flow. */
    double at(double day) {
        double away = (day - peak) / width;
        return share * FastMath.exp(-away * away / 2);
    }

    /** A day on which the water has risen for weeks: from one width before the highest to it. */
    double within(Draws draws) {
        return peak - width * draws.uniform(0, 1);
    }
}
