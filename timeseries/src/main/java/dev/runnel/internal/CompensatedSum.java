package dev.runnel.internal;

import org.apiguardian.api.API;

/**
 * Neumaier's sum: the rounding of each addition is kept beside the sum and added at the end. Source: Neumaier (1974),
 * Zeitschrift für angewandte Mathematik und Mechanik 54, 39-51.
 */
@API(status = API.Status.INTERNAL)
public final class CompensatedSum {
    private double sum;
    private double lost;

    /** Makes a sum of nothing. */
    public CompensatedSum() {}

    /**
     * Makes a sum that goes on where another one stood.
     *
     * @param sum its {@link #sum}
     * @param lost its {@link #lost}
     * @return a sum to which the same additions give the same value, bit for bit
     */
    public static CompensatedSum ofParts(double sum, double lost) {
        CompensatedSum parts = new CompensatedSum();
        parts.sum = sum;
        parts.lost = lost;
        return parts;
    }

    /**
     * Returns the sum of a part of an array.
     *
     * @param values values; NaN counts as 0
     * @param from first index
     * @param to index after the last
     * @return the sum
     */
    public static double of(double[] values, int from, int to) {
        CompensatedSum sum = new CompensatedSum();
        for (int i = from; i < to; i++) {
            if (!Double.isNaN(values[i])) {
                sum.add(values[i]);
            }
        }
        return sum.value();
    }

    /**
     * Adds a value.
     *
     * @param value the value
     */
    public void add(double value) {
        double next = sum + value;
        lost += Math.abs(sum) >= Math.abs(value) ? (sum - next) + value : (value - next) + sum;
        sum = next;
    }

    /**
     * Returns the sum so far.
     *
     * @return the sum
     */
    public double value() {
        return sum + lost;
    }

    /**
     * Returns the sum without the rounding kept beside it.
     *
     * @return the first part
     */
    public double sum() {
        return sum;
    }

    /**
     * Returns the rounding kept beside the sum.
     *
     * @return the second part
     */
    public double lost() {
        return lost;
    }

    /** Starts again from 0. */
    public void reset() {
        sum = 0;
        lost = 0;
    }
}
