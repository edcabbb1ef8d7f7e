package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * How the depth of a duration grows with return period, MT/M5, from one five-year depth. Made by
 * {@link GrowthFactors#fromM5}. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class GrowthCurve {
    private final double m5Mm;
    private final ReturnPeriodColumns columns;
    private final double[] factors;

    GrowthCurve(double m5Mm, ReturnPeriodColumns columns, double[] factors) {
        this.m5Mm = m5Mm;
        this.columns = columns;
        this.factors = factors;
    }

    /**
     * Returns the five-year depth.
     *
     * @return M5, mm
     */
    public double m5Mm() {
        return m5Mm;
    }

    /**
     * Returns a growth factor.
     *
     * @param years return period T of peaks over threshold, years; in the range of the table
     * @return MT/M5
     * @throws IllegalArgumentException if the return period is out of range, or the table is blank there
     */
    public double factor(double years) {
        return factor(years, ReturnPeriodBasis.PEAKS_OVER_THRESHOLD);
    }

    /**
     * Returns a growth factor.
     *
     * @param years return period T, years; in the range of the table
     * @param basis what it counts
     * @return MT/M5
     * @throws IllegalArgumentException if the return period is out of range, or the table is blank there
     */
    public double factor(double years, ReturnPeriodBasis basis) {
        double factor = columns.depthMm(factors, basis.convert(years, ReturnPeriodBasis.PEAKS_OVER_THRESHOLD));
        if (Double.isNaN(factor)) {
            throw new IllegalArgumentException("growth factor must not be blank in the table, is for "
                    + Text.number(years) + " years, " + basis.toText() + ", and M5 of " + Text.number(m5Mm) + " mm");
        }
        return factor;
    }

    @Override
    public String toString() {
        return "GrowthCurve[M5 " + Text.significant(m5Mm, 6) + " mm]";
    }
}
