package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import org.apiguardian.api.API;

/**
 * The probability of non-exceedance given to the i-th smallest of n values, F = (i - a)/(n + 1 - 2a). Source: Cunnane
 * (1978), Unbiased plotting positions: a review, Journal of Hydrology 37, 205-222.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum PlottingPosition {
    /** a = 0, unbiased in probability. */
    WEIBULL(0),
    /** a = 0.25. */
    ADAMOWSKI(0.25),
    /** a = 0.3, near the median of the probability. */
    CHEGODAYEV(0.3),
    /** a = 1/3. */
    TUKEY(1.0 / 3),
    /** a = 0.375, for the normal. */
    BLOM(0.375),
    /** a = 0.4, a compromise between families. */
    CUNNANE(0.4),
    /** a = 0.44, for the Gumbel. */
    GRINGORTEN(0.44),
    /** a = 0.5. */
    HAZEN(0.5),
    /**
     * a = 0.3175, but 0.5<sup>1/n</sup> for the largest value and 1 minus that for the smallest: the median of the
     * probability. Source: Filliben (1975), The probability plot correlation coefficient test for normality,
     * Technometrics 17(1).
     */
    FILLIBEN(0.3175);

    private final double a;

    PlottingPosition(double a) {
        this.a = a;
    }

    /**
     * Returns the probability of non-exceedance of one value.
     *
     * @param rank i, 1 for the smallest value to n for the largest
     * @param size n, number of values; at least 1
     * @return F, in (0, 1)
     * @throws IllegalArgumentException if the rank is not in [1, n] or the size is below 1
     */
    public double nonExceedance(int rank, int size) {
        Require.atLeast("size", size, 1);
        if (rank < 1 || rank > size) {
            throw new IllegalArgumentException("rank must be in [1, " + size + "], was " + rank);
        }
        if (this == FILLIBEN && (rank == 1 || rank == size)) {
            double largest = Math.pow(0.5, 1.0 / size);
            return rank == size ? largest : 1 - largest;
        }
        return (rank - a) / (size + 1.0 - 2 * a);
    }

    /**
     * Returns the probabilities of all ranks, smallest value first.
     *
     * @param size n, number of values; in [1, 100,000,000]
     * @return F for rank 1 to n
     * @throws IllegalArgumentException if the size is out of range
     */
    public double[] nonExceedances(int size) {
        Limits.within("size", size, 1, Limits.MOST_VALUES);
        double[] all = new double[size];
        for (int i = 0; i < size; i++) {
            all[i] = nonExceedance(i + 1, size);
        }
        return all;
    }
}
