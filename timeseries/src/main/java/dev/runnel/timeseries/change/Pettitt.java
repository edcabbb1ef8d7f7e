package dev.runnel.timeseries.change;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The test of Pettitt for one change of level at an unknown place. Immutable and thread-safe.
 *
 * <pre>
 * Uₜ = Σᵢ≤ₜ Σⱼ&gt;ₜ sgn(xᵢ − xⱼ),   K = max |Uₜ|,   p ≈ 2 exp(−6 K² / (n³ + n²))
 * </pre>
 *
 * <p>The last value of the first part is the t at which |Uₜ| is largest, the first of several. The p-value is an
 * approximation, good to about two figures for p up to 0.5; above 1 it is called 1.
 *
 * <p>What this is not: a test for values that follow each other, for a trend (which it calls a change in the middle), or for
 * more than one change: cut the record and test the parts.
 *
 * <p>Source: A. N. Pettitt (1979), A non-parametric approach to the change-point problem, Applied Statistics 28, 126-135.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Pettitt {
    /** More values would take minutes: the work grows with their square. */
    private static final int MOST = 50_000;

    private final int count;
    private final long statistic;
    private final int last;
    private final double pValue;

    private Pettitt(int count, long statistic, int last, double pValue) {
        this.count = count;
        this.statistic = statistic;
        this.last = last;
        this.pValue = pValue;
    }

    /**
     * Tests values.
     *
     * @param values finite values in the order of time, from 2 to 50000 of them; not modified
     * @return the result
     * @throws IllegalArgumentException if there are fewer or more, or a value is not finite
     */
    public static Pettitt of(double... values) {
        int n = values.length;
        Require.inRange("number of values", n, 2, MOST, "");
        for (int i = 0; i < n; i++) {
            Require.finite("values[" + i + "]", values[i], "");
        }
        long sum = 0;
        long largest = 0;
        int at = 0;
        for (int t = 0; t < n - 1; t++) {
            // Uₜ = Uₜ₋₁ + Σⱼ sgn(xₜ − xⱼ) over all j.
            for (double other : values) {
                sum += (int) Math.signum(values[t] - other);
            }
            if (Math.abs(sum) > largest) {
                largest = Math.abs(sum);
                at = t;
            }
        }
        double size = n;
        double p = 2 * Math.exp(-6.0 * largest * largest / (size * size * size + size * size));
        return new Pettitt(n, largest, at, Math.min(1, p));
    }

    /**
     * Returns the number of values.
     *
     * @return count
     */
    public int count() {
        return count;
    }

    /**
     * Returns the statistic K.
     *
     * @return K, 0 or greater
     */
    public long statistic() {
        return statistic;
    }

    /**
     * Returns how many values come before the change.
     *
     * @return count of the first part, from 1
     */
    public int before() {
        return last + 1;
    }

    /**
     * Returns the approximate probability of so large a K without a change.
     *
     * @return p-value, in (0, 1]
     */
    public double pValue() {
        return pValue;
    }

    @Override
    public String toString() {
        return "Pettitt[" + count + " values, change after " + before() + ", K = " + statistic + ", p = "
                + Text.significant(pValue, 3) + "]";
    }
}
