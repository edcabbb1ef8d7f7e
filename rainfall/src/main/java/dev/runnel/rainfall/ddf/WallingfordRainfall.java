package dev.runnel.rainfall.ddf;

import dev.runnel.base.Require;
import dev.runnel.base.Text;
import dev.runnel.rainfall.areal.ArealReduction;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;
import org.apiguardian.api.API;

/**
 * Rainfall of England and Wales from two figures read off a map, as in the Flood Studies Report and the Wallingford
 * Procedure: M5-60, the five-year depth in 60 minutes, and r, its ratio to that in two days.
 *
 * <blockquote>M5-D = Z1(D, r) · M5-60, MT-D = Z2(T, M5-D) · M5-D</blockquote>
 *
 * <p>Z1 is read linearly in r, Z2 linearly in M5-D; the result is a {@link DdfTable} with the durations 5 min to 24 h of
 * Z1 and the return periods 1 to 100 years of Z2. Z2 is above 1 at five years: its return periods count peaks over
 * threshold, while M5-60 is of annual maxima.
 *
 * <p>Sources: NERC (1975), Flood Studies Report, volume II; National Water Council (1981), Wallingford Procedure; BRE
 * (1991), Digest 365. <b>The factors of both tables are from memory, unconfirmed</b> but for this: two published calculation
 * sheets confirm Z1 for r 0.35 and 0.40
 * to 0.005 and the ten-year column of Z2 to 0.01 between 7 and 53 mm. Superseded for design in
 * the United Kingdom: for the checking of older work only.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class WallingfordRainfall {
    private static final double LEAST_M5_60 = 10;
    private static final double GREATEST_M5_60 = 25;

    private final double m560Mm;
    private final double ratio;
    private final FactorTable z1;
    private final FactorTable z2;

    private WallingfordRainfall(double m560Mm, double ratio) {
        this.z1 = FactorTable.read("wallingford-z1.csv");
        this.z2 = FactorTable.read("wallingford-z2-england-wales.csv");
        this.m560Mm = Require.inRange("m560Mm", m560Mm, LEAST_M5_60, GREATEST_M5_60, "mm");
        this.ratio = Require.inRange("ratio", ratio, z1.firstRow(), z1.lastRow(), "");
    }

    /**
     * Returns the rainfall of a place. Reads its two tables; make it once.
     *
     * @param m560Mm five-year depth in 60 min, mm; in [10, 25], the range of the map (from memory)
     * @param ratio r, M5-60 over the five-year depth in two days; in [0.12, 0.45], the range of the table
     * @return the rainfall
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static WallingfordRainfall of(double m560Mm, double ratio) {
        return new WallingfordRainfall(m560Mm, ratio);
    }

    /**
     * Returns the five-year depth at one of the durations of the table.
     *
     * @param duration 5, 10, 15, 30 or 60 min, 2, 4, 6, 10 or 24 h
     * @return M5-D, mm
     * @throws IllegalArgumentException if the table has no such duration
     */
    public double m5Mm(Duration duration) {
        return m560Mm * z1.value(ratio, z1.column("duration, min", IntensityFormula.minutes(duration)));
    }

    /**
     * Returns the growth factor at one of the return periods of the table.
     *
     * @param years 1, 2, 3, 4, 5, 10, 20, 50 or 100
     * @param m5Mm five-year depth, mm; in [5, 200]
     * @return Z2
     * @throws IllegalArgumentException if the table has no such return period or the depth is out of range
     */
    public double growthFactor(double years, double m5Mm) {
        Require.inRange("m5Mm", m5Mm, z2.firstRow(), z2.lastRow(), "mm");
        return z2.value(m5Mm, z2.column("return period, years", years));
    }

    /**
     * Returns the relation at a point. Durations whose five-year depth lies below the table of Z2, 5 mm, are left out.
     *
     * @return the table
     */
    public DdfTable atPoint() {
        return table(duration -> 1);
    }

    /**
     * Returns the relation for an area, every depth reduced.
     *
     * @param reduction areal reduction, such as {@link ArealReduction#keersWescott}
     * @param areaKm2 area, km²; in the range of the reduction
     * @return the table
     * @throws IllegalArgumentException if area and duration are out of the range of the reduction
     */
    public DdfTable overArea(ArealReduction reduction, double areaKm2) {
        return table(duration -> reduction.factor(areaKm2, duration));
    }

    private DdfTable table(ToDoubleFunction<Duration> reduction) {
        List<Duration> durations = new ArrayList<>();
        List<double[]> depths = new ArrayList<>();
        double[] years = z2.columns();
        for (double minutes : z1.columns()) {
            Duration duration = Duration.ofSeconds(Math.round(60 * minutes));
            double m5 = m5Mm(duration);
            if (m5 >= z2.firstRow()) {
                double[] row = new double[years.length];
                for (int i = 0; i < row.length; i++) {
                    row[i] = m5 * z2.value(m5, i) * reduction.applyAsDouble(duration);
                }
                durations.add(duration);
                depths.add(row);
            }
        }
        return DdfTable.of(ReturnPeriodBasis.PEAKS_OVER_THRESHOLD, durations, years, depths.toArray(double[][]::new));
    }

    @Override
    public String toString() {
        return "WallingfordRainfall[M5-60 " + Text.number(m560Mm) + " mm, r " + Text.number(ratio)
                + ", England and Wales, factors from memory, unconfirmed]";
    }
}
