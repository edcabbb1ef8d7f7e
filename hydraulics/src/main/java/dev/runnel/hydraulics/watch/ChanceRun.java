package dev.runnel.hydraulics.watch;

import org.apache.commons.math3.special.Erf;

/**
 * How many readings in a row a sound velocity sensor may repeat by chance: where it reads in coarse steps and the water is slow,
 * its scatter does not leave a step, and equal readings say nothing of the sensor.
 *
 * @param step smallest step from one reading to the next that it showed, m/s; 0 if none is known
 * @param scatter relative scatter of a reading, by the mean step; 0 if none is known
 */
record ChanceRun(double step, double scatter) {
    /** Chance of a run that is none: of readings of five minutes, about one in ten years; chosen here. */
    private static final double CHANCE = 1e-6;

    /** Mean distance of two readings over the standard deviation of one, 2/√π. */
    private static final double MEAN_STEP = 2 / Math.sqrt(Math.PI);

    /** Learns from the sums of hours: of steps and of the readings before them. */
    static ChanceRun of(double step, double steps, double readings) {
        return Double.isFinite(step) && readings > 0
                ? new ChanceRun(step, steps / readings / MEAN_STEP)
                : new ChanceRun(0, 0);
    }

    /** Most readings of one value that chance gives at a speed; infinite where the scatter never leaves a step. */
    double most(double speed) {
        if (!(step > 0 && scatter > 0)) {
            return 1;
        }
        // Chance that the next reading is another, if the water stands in the middle of a step; in slow water it is
        // next to none.
        double other = Erf.erfc(step / (2 * Math.sqrt(2) * scatter * speed));
        return 1 + Math.log(CHANCE) / Math.log1p(-other);
    }
}
