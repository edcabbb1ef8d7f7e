package dev.runnel.rainfall.areal;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The one factor by which a gridded product misses its gauges over a time, F = ΣG/ΣR over the gauges and the cells they stand in. A storm of
 * a few hours at several gauges makes it steady; a single pair does not.
 *
 * <p>Source: Wilson and Brandes (1979), Radar measurement of rainfall: a summary, Bulletin of the American Meteorological Society 60,
 * 1048-1058.
 *
 * @param factor ΣG/ΣR
 * @param pairs pairs used
 * @param leftOut pairs left out because gauge or cell is missing or both are below the limit
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record MeanFieldBias(double factor, int pairs, int leftOut) {
    /**
     * Returns the bias of a product.
     *
     * @param gaugeMm depth of each gauge, mm; 0 or greater, NaN for missing
     * @param gridMm depth of the cell in which it stands, mm; 0 or greater, NaN for missing
     * @param leastMm pairs of which neither has that depth are left out, mm; 0 or greater
     * @return the bias
     * @throws IllegalArgumentException if the lengths differ, a depth is negative or infinite, or the cells of the pairs have no rain
     */
    public static MeanFieldBias of(double[] gaugeMm, double[] gridMm, double leastMm) {
        Require.sameLength("gridMm", gaugeMm.length, gridMm.length);
        Require.nonNegative("leastMm", leastMm, "mm");
        CompensatedSum gauges = new CompensatedSum();
        CompensatedSum cells = new CompensatedSum();
        int pairs = 0;
        for (int i = 0; i < gaugeMm.length; i++) {
            if (Double.isNaN(gaugeMm[i]) || Double.isNaN(gridMm[i])) {
                continue;
            }
            Require.nonNegative("gaugeMm at index " + i, gaugeMm[i], "mm");
            Require.nonNegative("gridMm at index " + i, gridMm[i], "mm");
            if (Math.max(gaugeMm[i], gridMm[i]) >= leastMm) {
                gauges.add(gaugeMm[i]);
                cells.add(gridMm[i]);
                pairs++;
            }
        }
        Require.positive("sum of gridMm", cells.value(), "mm");
        return new MeanFieldBias(gauges.value() / cells.value(), pairs, gaugeMm.length - pairs);
    }

    /**
     * Returns the product without the bias.
     *
     * @param gridMm depths of cells, mm; NaN for missing; not modified
     * @return depths times the factor, mm; a new array
     */
    public double[] corrected(double[] gridMm) {
        double[] corrected = new double[gridMm.length];
        for (int i = 0; i < corrected.length; i++) {
            corrected[i] = factor * gridMm[i];
        }
        return corrected;
    }

    @Override
    public String toString() {
        return "MeanFieldBias[" + Text.significant(factor, 4) + " from " + pairs + " pairs, " + leftOut + " left out]";
    }
}
