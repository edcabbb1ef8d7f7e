package dev.runnel.timeseries.baseline;

import dev.runnel.internal.Moments;
import dev.runnel.internal.Require;
import dev.runnel.internal.Selection;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import java.util.Arrays;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;
import org.apiguardian.api.API;

/**
 * The usual course of a quantity over the day as a smooth curve: a level, four harmonics of the day (or as many as are asked
 * for), and on days of rest a level and two harmonics more. Immutable and thread-safe.
 *
 * <pre>
 * x(h) = a₀ + Σ₁ᴷ (aₖ cos kωh + bₖ sin kωh) + rest · (c₀ + Σ₁² (cₖ cos kωh + dₖ sin kωh)),   ω = 2π / 24 h, K = 4
 * </pre>
 *
 * <p>Two weeks hold four days of rest: too few for medians by the hour, enough for five figures. The fit is by least squares
 * with weights after Huber (tuning constant 1.5 times the robust scatter), so that odd hours bend it little, and a ridge of
 * 0.3 on every figure but a₀, so that hours that were not seen do not let it run away.
 *
 * <p>What this is not: a profile of sharp pump cycles, or of a day whose shape follows the tide.
 *
 * <p>Source of the weights: P. J. Huber (1964), Robust estimation of a location parameter, Annals of Mathematical Statistics
 * 35, 73-101 (from memory). Numbers of harmonics, ridge and constant: chosen here.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DayCurve {
    private static final int DAY_HARMONICS = 4;
    private static final int REST_HARMONICS = 2;

    /** Figures beside the harmonics of the day. */
    private static final int OTHER_FIGURES = 2 + 2 * REST_HARMONICS;

    /** Hours cannot tell more. */
    private static final int MOST_HARMONICS = 11;

    private static final double RIDGE = 0.3;
    private static final double HUBER = 1.5;
    private static final int ROUNDS = 8;
    private static final double NORMAL_MAD = 0.6744897501960817;
    private static final double HOURS = 24;

    /** Hours of the day that are asked for again and again: clocks stand apart from UTC by quarters of an hour. */
    private static final int QUARTERS = 4;

    private static final double[][] WAVES = new double[(int) (HOURS * QUARTERS)][];

    static {
        for (int i = 0; i < WAVES.length; i++) {
            WAVES[i] = computed((double) i / QUARTERS, MOST_HARMONICS);
        }
    }

    /** Squares of larger values would leave the range of a number; chosen here. */
    private static final double LARGEST = 1e100;

    /** No fit of such values has larger figures, and their sum stays a number; chosen here. */
    private static final double LARGEST_FIGURE = 1e200;

    private final double[] figures;
    private final int count;
    private final double scatter;
    private final double explained;

    private DayCurve(double[] figures, int count, double scatter, double explained) {
        this.figures = figures;
        this.count = count;
        this.scatter = scatter;
        this.explained = explained;
    }

    /**
     * Fits a curve.
     *
     * @param hours hour of the local day of each value, in [0, 24); not modified
     * @param rest whether the day of each value is a day of rest; not modified
     * @param values the values, in [-1e100, 1e100]; not modified
     * @return the curve
     * @throws IllegalArgumentException if the lengths differ, there are fewer than 14 values, an hour or a
     *     value is out of range
     */
    public static DayCurve fit(double[] hours, boolean[] rest, double[] values) {
        return fit(hours, rest, values, DAY_HARMONICS);
    }

    /**
     * Fits a curve with another number of harmonics of the day: more of them follow a steep morning, and need more days.
     *
     * @param hours hour of the local day of each value, in [0, 24); not modified
     * @param rest whether the day of each value is a day of rest; not modified
     * @param values the values, in [-1e100, 1e100]; not modified
     * @param harmonics number of harmonics of the day K, from 1 to 11
     * @return the curve
     * @throws IllegalArgumentException if the lengths differ, there are fewer than 2 K + 6 values, or an hour, a value or the
     *     number of harmonics is out of range
     */
    public static DayCurve fit(double[] hours, boolean[] rest, double[] values, int harmonics) {
        Require.inRange("harmonics", harmonics, 1, MOST_HARMONICS, "");
        int size = 2 * harmonics + OTHER_FIGURES;
        Require.sameLength("hours", values.length, hours.length);
        Require.sameLength("rest", values.length, rest.length);
        Require.atLeast("number of values", values.length, size);
        DayColumns columns = new DayColumns(size - 2 * REST_HARMONICS - 1, size, rest);
        for (int i = 0; i < values.length; i++) {
            require(i, hours[i], values[i]);
            columns.put(i, row(hours[i], rest[i], size));
        }
        double[] weights = new double[values.length];
        Arrays.fill(weights, 1);
        double[] figures = new double[0];
        double[] residuals = values.clone();
        double scatter = 0;
        for (int round = 0; round < ROUNDS; round++) {
            figures = solve(columns, weights, values);
            columns.residuals(figures, values, residuals);
            scatter = medianOfAbsolute(residuals) / NORMAL_MAD;
            for (int i = 0; i < values.length; i++) {
                double distance = Math.abs(residuals[i]);
                weights[i] = distance <= HUBER * scatter ? 1 : HUBER * scatter / distance;
            }
        }
        return new DayCurve(figures, values.length, scatter, explained(values, residuals));
    }

    private static void require(int i, double hour, double value) {
        // Names are made only for complaints.
        if (!(Math.abs(value) <= LARGEST)) {
            Require.inRange("values[" + i + "]", value, -LARGEST, LARGEST, "");
        }
        if (!isHour(hour)) {
            throw noHour("hours[" + i + "]", hour);
        }
    }

    private static boolean isHour(double hour) {
        return hour >= 0 && hour < HOURS;
    }

    private static IllegalArgumentException noHour(String name, double hour) {
        return new IllegalArgumentException(name + " must be in [0, 24) h, was " + Text.number(hour));
    }

    /** Cosine and sine of so many harmonics or more, those of days of rest among them. */
    private static double[] waves(double hour, int harmonics) {
        int quarter = (int) (hour * QUARTERS);
        return quarter == hour * QUARTERS ? WAVES[quarter] : computed(hour, Math.max(REST_HARMONICS, harmonics));
    }

    private static double[] computed(double hour, int harmonics) {
        double[] waves = new double[2 * harmonics];
        for (int k = 1; k <= harmonics; k++) {
            waves[2 * k - 2] = Math.cos(2 * Math.PI / HOURS * k * hour);
            waves[2 * k - 1] = Math.sin(2 * Math.PI / HOURS * k * hour);
        }
        return waves;
    }

    private static double[] row(double hour, boolean rest, int size) {
        double[] row = new double[size];
        int harmonics = (size - OTHER_FIGURES) / 2;
        double[] waves = waves(hour, harmonics);
        row[0] = 1;
        System.arraycopy(waves, 0, row, 1, 2 * harmonics);
        int at = 1 + 2 * harmonics;
        if (rest) {
            row[at] = 1;
            System.arraycopy(waves, 0, row, at + 1, 2 * REST_HARMONICS);
        }
        return row;
    }

    private static double[] solve(DayColumns columns, double[] weights, double[] values) {
        double[][] normal = columns.products(weights);
        for (int a = 0; a < normal.length; a++) {
            normal[a][a] += a == 0 ? 0 : RIDGE;
            for (int b = 0; b < a; b++) {
                normal[b][a] = normal[a][b];
            }
        }
        return new CholeskyDecomposition(new Array2DRowRealMatrix(normal, false))
                .getSolver()
                .solve(new ArrayRealVector(columns.products(weights, values), false))
                .toArray();
    }

    private static double medianOfAbsolute(double[] values) {
        double[] parted = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            parted[i] = Math.abs(values[i]);
        }
        int below = (parted.length - 1) / 2;
        double lower = Selection.part(parted, below);
        return parted.length % 2 == 1 ? lower : (lower + Selection.least(parted, below + 1)) / 2;
    }

    private static double explained(double[] values, double[] residuals) {
        double total = Moments.squares(values);
        return total > 0 ? Math.max(0, 1 - Moments.squares(residuals) / total) : 0;
    }

    /**
     * Returns what is usual at an hour of the day.
     *
     * @param hour hour of the local day, in [0, 24)
     * @param rest whether it is a day of rest
     * @return the value of the curve, in the unit of the values
     * @throws IllegalArgumentException if the hour is out of range
     */
    public double value(double hour, boolean rest) {
        if (!isHour(hour)) {
            throw noHour("hour", hour);
        }
        int size = figures.length - OTHER_FIGURES;
        double[] waves = waves(hour, size / 2);
        double sum = figures[0];
        for (int i = 0; i < size; i++) {
            sum += figures[i + 1] * waves[i];
        }
        if (rest) {
            sum += figures[size + 1];
            for (int i = 0; i < 2 * REST_HARMONICS; i++) {
                sum += figures[size + 2 + i] * waves[i];
            }
        }
        return sum;
    }

    /**
     * Returns the number of values that made the curve.
     *
     * @return count
     */
    public int count() {
        return count;
    }

    /**
     * Returns the robust scatter of the values about the curve, the median of their distances over 0.6745.
     *
     * @return scatter, in the unit of the values
     */
    public double scatter() {
        return scatter;
    }

    /**
     * Returns the share of the variance of the values that the curve explains.
     *
     * @return share, in [0, 1]
     */
    public double explained() {
        return explained;
    }

    /**
     * Returns the curve as one line of text, which {@link #parse} reads back to an equal curve.
     *
     * @return the text
     */
    public String toText() {
        return StateText.of("day-curve", 1)
                .with("figures", figures)
                .with("count", count)
                .with("scatter", scatter)
                .with("explained", explained)
                .toString();
    }

    /**
     * Reads a curve from its text.
     *
     * @param text a text made by {@link #toText}
     * @return the curve
     * @throws IllegalArgumentException if the text is not one of a curve
     */
    public static DayCurve parse(String text) {
        StateText state = StateText.parse("day-curve", 1, text);
        double[] figures = state.numbers("figures");
        int harmonics = (figures.length - OTHER_FIGURES) / 2;
        if (figures.length % 2 != 0 || harmonics < 1 || harmonics > MOST_HARMONICS) {
            throw new IllegalArgumentException("figures must be 2 K + " + OTHER_FIGURES + " with K in [1, "
                    + MOST_HARMONICS + "], were " + figures.length);
        }
        for (double figure : figures) {
            Require.inRange("figure", figure, -LARGEST_FIGURE, LARGEST_FIGURE, "");
        }
        return new DayCurve(
                figures,
                Require.atLeast("count", state.index("count"), figures.length),
                Require.nonNegative("scatter", state.number("scatter"), ""),
                Require.inRange("explained", state.number("explained"), 0, 1, ""));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DayCurve that
                && Arrays.equals(figures, that.figures)
                && count == that.count
                && Double.compare(scatter, that.scatter) == 0
                && Double.compare(explained, that.explained) == 0;
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(figures);
    }

    @Override
    public String toString() {
        return "DayCurve[" + count + " values, " + Text.fixed(100 * explained, 0)
                + " % of their variance explained, scatter " + Text.significant(scatter, 2) + "]";
    }
}
