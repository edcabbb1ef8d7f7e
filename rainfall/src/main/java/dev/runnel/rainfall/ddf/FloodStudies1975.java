package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.areal.ArealReduction;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.apiguardian.api.API;

/**
 * Rainfall of the United Kingdom from two figures read off a map, as in the Flood Studies Report and the Wallingford
 * Procedure: M5-60, the five-year depth in 60 minutes, and r, its ratio to that in two days.
 *
 * <blockquote>M5-D = Z1(D, r) · M5-60, MT-D = Z2(T, M5-D) · M5-D</blockquote>
 *
 * <p>Z1 are {@link DurationFactors}, Z2 {@link GrowthFactors}: those of the Wallingford Procedure for England and Wales unless
 * you say otherwise. The result is a {@link DdfTable} with the durations of Z1 and the return periods of Z2. M5-60 is of annual
 * maxima; the return periods of the result count peaks over threshold.
 *
 * <p><b>The factors that come with this library are from memory, unconfirmed</b> but for this: two published calculation
 * sheets confirm Z1 for r 0.35 and 0.40 to 0.005 and the ten-year column of Z2 to 0.01 between 7 and 53 mm. Replace them by the
 * printed ones if you own them. Superseded for design in the United Kingdom: for the checking of older work only.
 *
 * <p><b>Beyond 24 hours</b> the map itself gives one figure, {@link #m5TwoDaysMm}. It is of two rainfall days, read once a
 * day; 48 hours at any time hold more, 1.06 times as much from memory, 1.05 in the one published sheet that goes so far. That
 * is too little to build on, so 48 hours need {@link DurationFactors} of your own.
 *
 * <p>Sources: NERC (1975), Flood Studies Report, volume II; National Water Council (1981), Wallingford Procedure; BRE
 * (1991), Digest 365.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class FloodStudies1975 {
    private static final double LEAST_M5_60 = 10;
    private static final double GREATEST_M5_60 = 25;

    private final double m560Mm;
    private final double ratio;
    private final DurationFactors z1;
    private final GrowthFactors z2;

    private FloodStudies1975(double m560Mm, double ratio, DurationFactors z1, GrowthFactors z2) {
        this.m560Mm = Require.inRange("m560Mm", m560Mm, LEAST_M5_60, GREATEST_M5_60, "mm");
        this.ratio = z1.requireRatio(ratio);
        this.z1 = z1;
        this.z2 = z2;
    }

    /**
     * Returns the rainfall of a place in England or Wales by the factors of the Wallingford Procedure. Reads its two tables;
     * make it once.
     *
     * @param m560Mm five-year depth in 60 min, mm; in [10, 25], the range of the map (from memory)
     * @param ratio r, M5-60 over the five-year depth in two days; in [0.12, 0.45], the range of the table
     * @return the rainfall
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static FloodStudies1975 of(double m560Mm, double ratio) {
        return new FloodStudies1975(
                m560Mm, ratio, DurationFactors.floodStudies1975(), GrowthFactors.floodStudiesEnglandAndWalesShort());
    }

    /**
     * Returns the rainfall of the place by other growth factors.
     *
     * @param factors such as {@link GrowthFactors#floodStudiesScotlandAndNorthernIreland}, or your own
     * @return the rainfall
     */
    public FloodStudies1975 withGrowthFactors(GrowthFactors factors) {
        Objects.requireNonNull(factors, "factors");
        return new FloodStudies1975(m560Mm, ratio, z1, factors);
    }

    /**
     * Returns the rainfall of the place by other factors of duration.
     *
     * @param factors your own
     * @return the rainfall
     * @throws IllegalArgumentException if r is out of their range
     */
    public FloodStudies1975 withDurationFactors(DurationFactors factors) {
        Objects.requireNonNull(factors, "factors");
        return new FloodStudies1975(m560Mm, ratio, factors, z2);
    }

    /**
     * Returns the five-year depth at one of the durations of the table.
     *
     * @param duration 5, 10, 15, 30 or 60 min, 2, 4, 6, 10 or 24 h, or one of your own factors
     * @return M5-D, mm
     * @throws IllegalArgumentException if the table has no such duration
     */
    public double m5Mm(Duration duration) {
        Objects.requireNonNull(duration, "duration");
        return m560Mm * z1.factor(ratio, duration);
    }

    /**
     * Returns the five-year depth in two rainfall days, which is what r is a ratio to. Less than that in 48 hours.
     *
     * @return M5-60/r, mm
     */
    public double m5TwoDaysMm() {
        return m560Mm / ratio;
    }

    /**
     * Returns how depth grows with return period from a five-year depth.
     *
     * @param m5Mm five-year depth M5, mm; in the range of the growth factors
     * @return the curve, which is asked for years
     * @throws IllegalArgumentException if the depth is out of range
     */
    public GrowthCurve growthFromM5(double m5Mm) {
        return z2.fromM5(m5Mm);
    }

    /**
     * Returns the relation at a point. Durations whose five-year depth lies outside the table of Z2 are left out, and the
     * table names them in its provenance; so are return periods for which Z2 is blank at one of the others.
     *
     * @return the table, peaks over threshold
     * @throws IllegalArgumentException if no duration is left, or factors of your own make depths that fall with duration
     */
    public DdfTable atPoint() {
        return table(z1.durations().stream().collect(Collectors.toMap(each -> each, each -> 1.0)), "at a point");
    }

    /**
     * Returns the relation for an area, every depth reduced. Durations that the reduction refuses for so great an area are left
     * out, and the table names them in its provenance.
     *
     * @param reduction areal reduction, such as {@link ArealReduction#keersWescott}
     * @param areaKm2 area, km²; in the range of the reduction
     * @return the table, peaks over threshold
     * @throws IllegalArgumentException if the reduction refuses every duration, for its own reason, or as for {@link #atPoint}
     */
    public DdfTable overArea(ArealReduction reduction, double areaKm2) {
        Map<Duration, Double> factors = new HashMap<>();
        List<Duration> refused = new ArrayList<>();
        IllegalArgumentException reason = null;
        for (Duration duration : z1.durations()) {
            try {
                factors.put(duration, reduction.factor(areaKm2, duration));
            } catch (IllegalArgumentException e) {
                refused.add(duration);
                reason = e;
            }
        }
        if (reason != null && factors.isEmpty()) {
            throw reason;
        }
        return table(
                factors,
                "over " + Text.number(areaKm2) + " km2, " + reduction
                        + (refused.isEmpty() ? "" : ", which refuses " + texts(refused)));
    }

    /** The relation for the durations that have a factor. */
    private DdfTable table(Map<Duration, Double> reduction, String where) {
        List<Duration> durations = new ArrayList<>();
        List<Duration> outside = new ArrayList<>();
        List<double[]> depths = new ArrayList<>();
        for (Duration duration : z1.durations()) {
            double m5 = m5Mm(duration);
            if (!(m5 >= z2.smallestM5Mm() && m5 <= z2.greatestM5Mm())) {
                outside.add(duration);
            } else if (reduction.containsKey(duration)) {
                double factor = m5 * reduction.get(duration);
                durations.add(duration);
                depths.add(
                        DoubleStream.of(z2.row(m5)).map(each -> factor * each).toArray());
            }
        }
        double[] years = z2.years();
        int[] known = IntStream.range(0, years.length)
                .filter(i -> depths.stream().noneMatch(row -> Double.isNaN(row[i])))
                .toArray();
        return DdfTable.of(
                        ReturnPeriodBasis.PEAKS_OVER_THRESHOLD,
                        durations,
                        picked(years, known),
                        depths.stream().map(row -> picked(row, known)).toArray(double[][]::new))
                .withProvenance(this + " " + where
                        + (outside.isEmpty()
                                ? ""
                                : ", without " + texts(outside) + ", whose M5 has no growth factors"));
    }

    private static double[] picked(double[] values, int[] at) {
        return IntStream.of(at).mapToDouble(i -> values[i]).toArray();
    }

    @Override
    public String toString() {
        return "FloodStudies1975[M5-60 " + Text.significant(m560Mm, 6) + " mm, r " + Text.significant(ratio, 6) + ", "
                + z1.provenance() + "; " + z2.provenance() + "]";
    }

    private static List<String> texts(List<Duration> durations) {
        return durations.stream().map(Text::duration).toList();
    }
}
