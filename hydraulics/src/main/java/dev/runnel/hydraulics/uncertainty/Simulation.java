package dev.runnel.hydraulics.uncertainty;

import dev.runnel.internal.Moments;
import dev.runnel.internal.Text;
import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * A result with its distribution by simulation. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Simulation {
    private final double[] sorted;
    private final double mean;
    private final double standardUncertainty;

    private Simulation(double[] sorted, double mean, double standardUncertainty) {
        this.sorted = sorted;
        this.mean = mean;
        this.standardUncertainty = standardUncertainty;
    }

    /** Takes the array over and sorts it. */
    static Simulation of(double[] results) {
        double mean = Moments.mean(results);
        double deviation = Moments.deviation(results);
        Arrays.sort(results);
        return new Simulation(results, mean, deviation);
    }

    /**
     * Returns the mean.
     *
     * @return y
     */
    public double mean() {
        return mean;
    }

    /**
     * Returns the standard deviation.
     *
     * @return u(y)
     */
    public double standardUncertainty() {
        return standardUncertainty;
    }

    /**
     * Returns the count of trials.
     *
     * @return trials
     */
    public int trials() {
        return sorted.length;
    }

    /**
     * Returns a quantile.
     *
     * @param probability share of the trials below; in [0, 1]
     * @return the value
     * @throws IllegalArgumentException if {@code probability} is outside its range
     */
    public double quantile(double probability) {
        if (!(probability >= 0 && probability <= 1)) {
            throw new IllegalArgumentException("probability must be in [0, 1], was " + Text.number(probability));
        }
        int i = (int) Math.min(sorted.length - 1, Math.floor(probability * sorted.length));
        return sorted[i];
    }

    /**
     * Returns the interval with equal shares left out at both ends (JCGM 101, 7.7.2).
     *
     * @param probability coverage probability, such as 0.95; greater than 0, less than 1
     * @return lower and upper end; a new array
     * @throws IllegalArgumentException if {@code probability} is outside its range
     */
    public double[] interval(double probability) {
        checked(probability);
        return new double[] {quantile((1 - probability) / 2), quantile((1 + probability) / 2)};
    }

    /**
     * Returns the shortest interval (JCGM 101, 7.7.4).
     *
     * @param probability coverage probability, such as 0.95; greater than 0, less than 1
     * @return lower and upper end; a new array
     * @throws IllegalArgumentException if {@code probability} is outside its range
     */
    public double[] shortestInterval(double probability) {
        checked(probability);
        int covered = (int) Math.min(sorted.length - 1, Math.round(probability * sorted.length));
        int best = 0;
        for (int i = 0; i + covered < sorted.length; i++) {
            if (sorted[i + covered] - sorted[i] < sorted[best + covered] - sorted[best]) {
                best = i;
            }
        }
        return new double[] {sorted[best], sorted[best + covered]};
    }

    private static void checked(double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException(
                    "probability must be greater than 0 and less than 1, was " + Text.number(probability));
        }
    }

    @Override
    public String toString() {
        double[] ends = interval(0.95);
        return "Simulation[" + Text.significant(mean, 5) + ", u " + Text.significant(standardUncertainty, 2) + ", 95 % "
                + Text.significant(ends[0], 4) + " to " + Text.significant(ends[1], 4) + ", " + sorted.length
                + " trials]";
    }
}
