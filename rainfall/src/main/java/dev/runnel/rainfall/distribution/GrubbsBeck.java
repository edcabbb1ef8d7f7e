package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.ResourceText;
import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * The one-sided test of Grubbs and Beck for outliers of a series of annual maxima, at 10 %: values outside
 * 10<sup>m &plusmn; K s</sup>, m and s mean and standard deviation of log10, K the printed deviate for N values. The print
 * lies within 0.001 of the exact 10 % points of the largest studentised deviate. Source: Interagency Advisory Committee on Water
 * Data (1982), Guidelines for determining flood flow frequency, Bulletin 17B, appendix 4.
 *
 * <p>It finds one outlier, seldom several, which hide each other in s: see {@link LowOutliers}. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class GrubbsBeck {
    private static final int FEWEST = 10;
    private static final int MOST = 149;

    /** Read when first asked for. */
    private static final class Deviates {
        static final double[] PRINTED = ResourceText.column(GrubbsBeck.class, "outlier-deviates.csv", "k");
    }

    private final double[] sorted;
    private final double lowThreshold;
    private final double highThreshold;

    private GrubbsBeck(double[] sorted, double lowThreshold, double highThreshold) {
        this.sorted = sorted;
        this.lowThreshold = lowThreshold;
        this.highThreshold = highThreshold;
    }

    /**
     * Tests a sample.
     *
     * @param sample 10 to 149 values greater than 0, not all equal, in any order; not modified
     * @return the test
     * @throws IllegalArgumentException if the size or a value is out of range
     */
    public static GrubbsBeck of(double... sample) {
        double k = criticalDeviate(sample.length);
        SampleMoments logs = SampleMoments.of(Logarithms.decimal(sample));
        double[] sorted = sample.clone();
        Arrays.sort(sorted);
        return new GrubbsBeck(
                sorted,
                Math.pow(10, logs.mean() - k * logs.standardDeviation()),
                Math.pow(10, logs.mean() + k * logs.standardDeviation()));
    }

    /**
     * Returns K for a size of sample.
     *
     * @param size N; in [10, 149]
     * @return one-sided 10 % point of the outlier deviate, as printed: to 0.001
     * @throws IllegalArgumentException if the size is out of range
     */
    public static double criticalDeviate(int size) {
        Require.inRange("size", size, FEWEST, MOST, "values");
        return Deviates.PRINTED[size - FEWEST];
    }

    /**
     * Returns the threshold of low outliers.
     *
     * @return 10<sup>m - K s</sup>, in the unit of the sample
     */
    public double lowThreshold() {
        return lowThreshold;
    }

    /**
     * Returns the threshold of high outliers, which call for a look at the record and are never dropped for being high.
     *
     * @return 10<sup>m + K s</sup>, in the unit of the sample
     */
    public double highThreshold() {
        return highThreshold;
    }

    /**
     * Returns the values below the lower threshold.
     *
     * @return rising; a copy
     */
    public double[] lowOutliers() {
        return Arrays.stream(sorted).filter(x -> x < lowThreshold).toArray();
    }

    /**
     * Returns the values above the upper threshold.
     *
     * @return rising; a copy
     */
    public double[] highOutliers() {
        return Arrays.stream(sorted).filter(x -> x > highThreshold).toArray();
    }

    @Override
    public String toString() {
        return "GrubbsBeck[" + lowOutliers().length + " below " + Text.significant(lowThreshold, 4) + ", "
                + highOutliers().length + " above " + Text.significant(highThreshold, 4) + "]";
    }
}
