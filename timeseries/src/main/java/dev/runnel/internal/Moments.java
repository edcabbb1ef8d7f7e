package dev.runnel.internal;

import org.apiguardian.api.API;

/** Mean and scatter of a sample: the one place where they are summed. */
@API(status = API.Status.INTERNAL)
public final class Moments {
    private Moments() {}

    /**
     * Returns the mean.
     *
     * @param values values; at least one; not modified
     * @return mean, from a compensated sum; NaN if a value is
     */
    public static double mean(double... values) {
        CompensatedSum sum = new CompensatedSum();
        for (double value : values) {
            sum.add(value);
        }
        return sum.value() / values.length;
    }

    /**
     * Returns the sum of the squares of the deviations from the mean.
     *
     * @param values values; at least one; not modified
     * @return sum, in two passes, so that a mean far from 0 costs no digits
     */
    public static double squares(double... values) {
        double mean = mean(values);
        CompensatedSum sum = new CompensatedSum();
        for (double value : values) {
            sum.add((value - mean) * (value - mean));
        }
        return sum.value();
    }

    /**
     * Returns the variance with divisor n − 1.
     *
     * @param values values; at least two; not modified
     * @return variance
     */
    public static double variance(double... values) {
        return squares(values) / (values.length - 1);
    }

    /**
     * Returns the standard deviation with divisor n − 1.
     *
     * @param values values; at least two; not modified
     * @return standard deviation
     */
    public static double deviation(double... values) {
        return Math.sqrt(variance(values));
    }
}
