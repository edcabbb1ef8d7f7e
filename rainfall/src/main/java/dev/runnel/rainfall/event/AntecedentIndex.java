package dev.runnel.rainfall.event;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.RegularSeries;
import org.apiguardian.api.API;

/**
 * Antecedent precipitation index: how wet the ground is from the rain of the days before. Immutable and thread-safe.
 *
 * <blockquote>API = Σ k<sup>n−s</sup> P<sub>−n</sub>, n = 1 … N</blockquote>
 *
 * <p>with P<sub>−n</sub> the rain n days before [mm], k the share that is left after a day and s the part of a day by
 * which rain is taken to fall before the day ends. Source: Kohler and Linsley (1951), Predicting the runoff from storm
 * rainfall, US Weather Bureau Research Paper 34, with s = 0; the five-day form with k = 0.5, s = 0.5 is that of NERC
 * (1975), Flood Studies Report, and of the Wallingford Procedure (1981), from memory.
 *
 * <p>What this is not: soil moisture. k follows season and soil; 0.85 to 0.98 a day are in use (common practice).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class AntecedentIndex {
    private final double recession;
    private final int days;
    private final double shift;

    private AntecedentIndex(double recession, int days, double shift) {
        this.recession = recession;
        this.days = days;
        this.shift = shift;
    }

    /**
     * Returns the index over a number of days.
     *
     * @param recession share left after a day k; above 0, below 1
     * @param days number of days N; 1 or more
     * @return the index
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static AntecedentIndex of(double recession, int days) {
        if (!(recession > 0 && recession < 1)) {
            throw new IllegalArgumentException("recession must be above 0 and below 1, was " + Text.number(recession));
        }
        return new AntecedentIndex(recession, Require.atLeast("days", days, 1), 0);
    }

    /**
     * Returns the five-day index of the British methods, Σ 0.5<sup>n−0.5</sup> P<sub>−n</sub> (from memory).
     *
     * @return the index
     */
    public static AntecedentIndex fiveDays() {
        return new AntecedentIndex(0.5, 5, 0.5);
    }

    /**
     * Returns the index from the rain of the days before.
     *
     * @param depthsMm rain of the day before, of the day before that, and so on, mm; as many as the index has days
     * @return index, mm
     * @throws IllegalArgumentException if the number of days differs, or a depth is negative or NaN
     */
    public double indexMm(double... depthsMm) {
        Require.sameLength("depthsMm", days, depthsMm.length);
        CompensatedSum sum = new CompensatedSum();
        for (int n = 1; n <= days; n++) {
            Require.nonNegative("depthsMm of day -" + n, depthsMm[n - 1], "mm");
            sum.add(weight(n) * depthsMm[n - 1]);
        }
        return sum.value();
    }

    /**
     * Returns the index before each day of a record of daily rain.
     *
     * @param daily depth in each day, mm; a step of 24 h, NaN for missing
     * @return index at the start of each day, without the rain of that day, mm; missing where one of the days before is
     *     missing or lies before the record
     * @throws IllegalArgumentException if the step is not 24 h or a depth is negative
     */
    public RegularSeries before(RegularSeries daily) {
        if (daily.step().toHours() != 24 || daily.step().toNanos() % 3_600_000_000_000L != 0) {
            throw new IllegalArgumentException(
                    "daily must have a step of 1 d, had " + Text.exactDuration(daily.step()));
        }
        Rain.requireNonNegative("daily", daily, "mm");
        double[] index = new double[daily.size()];
        for (int i = 0; i < index.length; i++) {
            index[i] = before(daily, i);
        }
        return RegularSeries.of(daily.start(), daily.step(), index);
    }

    private double before(RegularSeries daily, int day) {
        if (day < days) {
            return Double.NaN;
        }
        CompensatedSum sum = new CompensatedSum();
        for (int n = 1; n <= days; n++) {
            sum.add(weight(n) * daily.value(day - n));
        }
        return sum.value();
    }

    private double weight(int n) {
        return Math.pow(recession, n - shift);
    }

    /**
     * Returns the catchment wetness index, CWI = 125 + API5 − SMD. Source: NERC (1975), Flood Studies Report, from
     * memory.
     *
     * @param fiveDayIndexMm API5, mm; 0 or greater
     * @param soilMoistureDeficitMm SMD, mm; 0 or greater, and not so great that the index is below 0
     * @return index, mm
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static double catchmentWetnessOfIndexAndDeficit(double fiveDayIndexMm, double soilMoistureDeficitMm) {
        Require.nonNegative("fiveDayIndexMm", fiveDayIndexMm, "mm");
        return wetness(125 + fiveDayIndexMm, soilMoistureDeficitMm);
    }

    /**
     * Returns the urban catchment wetness index, UCWI = 125 + 8 API5 − SMD. Source: Wallingford Procedure (1981), from
     * memory.
     *
     * @param fiveDayIndexMm API5, mm; 0 or greater
     * @param soilMoistureDeficitMm SMD, mm; 0 or greater, and not so great that the index is below 0
     * @return index, mm
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static double urbanCatchmentWetnessOfIndexAndDeficit(double fiveDayIndexMm, double soilMoistureDeficitMm) {
        Require.nonNegative("fiveDayIndexMm", fiveDayIndexMm, "mm");
        return wetness(125 + 8 * fiveDayIndexMm, soilMoistureDeficitMm);
    }

    private static double wetness(double withoutDeficit, double soilMoistureDeficitMm) {
        return withoutDeficit
                - Require.inRange("soilMoistureDeficitMm", soilMoistureDeficitMm, 0, withoutDeficit, "mm");
    }

    @Override
    public String toString() {
        return "AntecedentIndex[" + days + " days, " + Text.significant(recession, 6) + " left after a day]";
    }
}
