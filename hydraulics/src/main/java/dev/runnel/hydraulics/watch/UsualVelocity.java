package dev.runnel.hydraulics.watch;

import dev.runnel.internal.Interpolation;
import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * The velocity that is usual at a depth of one site, learned from its baseline. Immutable and thread-safe.
 *
 * <pre>
 * ln v(y) = a + b ln y + 0.8 x(ln y)
 * </pre>
 *
 * <p>The hourly medians are put into 3 to 12 classes of equal count by depth. b is the median of the slopes between the
 * class medians (Theil and Sen), kept in [-0.2, 1.2]; x goes in straight lines between what the class medians leave over and
 * is shrunk to 0.8 of it. Nothing is said of depths that the baseline did not see.
 *
 * <p>What this is not: the law of resistance. It follows what the site does, and says nothing about why.
 *
 * <p>Source of the slope: P. K. Sen (1968), Estimates of the regression coefficient based on Kendall's tau, Journal of the
 * American Statistical Association 63, 1379-1389. Classes, limits and shrinkage: chosen here.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class UsualVelocity {
    /** Fewest classes that make a slope; chosen here. */
    private static final int LEAST_CLASSES = 3;

    /** Most classes; chosen here. */
    private static final int MOST_CLASSES = 12;

    /** Hours of a class, those of a day; chosen here. */
    private static final int HOURS_OF_CLASS = 24;

    /** Slopes of ln v over ln y between these bounds; chosen here, around the 2/3 of a wide channel. */
    private static final double LEAST_SLOPE = -0.2;

    private static final double LARGEST_SLOPE = 1.2;

    /** What a class of some hours leaves over is believed to this share; chosen here. */
    private static final double SHRINK = 0.8;
    /** A class of a day's hours knows its scatter to a fifth or so; less than that above the others is no difference. */
    private static final double SURE = 0.75;

    /** Depths seen reach from this quantile to the next; chosen here, so that one wild hour widens nothing. */
    private static final double LOWEST_QUANTILE = 0.005;

    private static final double HIGHEST_QUANTILE = 0.99;

    private final double level;
    private final double slope;
    private final double[] lnDepths;
    private final double[] left;
    private final double[] scatters;

    /** Median of the scatters: each hour asks for it. */
    private final double usualScatter;

    private final double lowest;
    private final double highest;

    private UsualVelocity(
            double level,
            double slope,
            double[] lnDepths,
            double[] left,
            double[] scatters,
            double lowest,
            double highest) {
        this.level = level;
        this.slope = slope;
        this.lnDepths = lnDepths;
        this.left = left;
        this.scatters = scatters;
        this.usualScatter = Medians.of(scatters);
        this.lowest = lowest;
        this.highest = highest;
    }

    static int leastHours() {
        return LEAST_CLASSES * HOURS_OF_CLASS;
    }

    /** Learns from hourly medians of ln y and ln v, at least {@link #leastHours()} of them. */
    static UsualVelocity learn(double[] lnDepth, double[] lnVelocity) {
        int n = lnDepth.length;
        int classes = Math.min(MOST_CLASSES, n / HOURS_OF_CLASS);
        double[][] pairs = new double[n][];
        for (int i = 0; i < n; i++) {
            pairs[i] = new double[] {lnDepth[i], lnVelocity[i]};
        }
        Arrays.sort(pairs, (a, b) -> Double.compare(a[0], b[0]));
        double[] x = new double[classes];
        double[] y = new double[classes];
        for (int k = 0; k < classes; k++) {
            int from = (int) ((long) k * n / classes);
            int to = (int) ((long) (k + 1) * n / classes);
            x[k] = Medians.of(column(pairs, from, to, 0));
            y[k] = Medians.of(column(pairs, from, to, 1));
        }
        double[] sorted = column(pairs, 0, n, 0);
        double slope = slope(x, y);
        double level = Medians.of(minus(y, x, slope));
        double[] left = minus(y, x, slope);
        for (int k = 0; k < classes; k++) {
            left[k] = SHRINK * (left[k] - level);
        }
        UsualVelocity smooth = new UsualVelocity(
                level,
                slope,
                x,
                left,
                new double[classes],
                Medians.quantile(sorted, LOWEST_QUANTILE),
                Medians.quantile(sorted, HIGHEST_QUANTILE));
        double[] scatters = new double[classes];
        for (int k = 0; k < classes; k++) {
            int from = (int) ((long) k * n / classes);
            int to = (int) ((long) (k + 1) * n / classes);
            double[] residuals = new double[to - from];
            for (int i = from; i < to; i++) {
                residuals[i - from] = pairs[i][1] - smooth.lnVelocity(pairs[i][0]);
            }
            scatters[k] = Medians.scatter(residuals);
        }
        return new UsualVelocity(level, slope, x, left, scatters, smooth.lowest, smooth.highest);
    }

    private static double[] column(double[][] pairs, int from, int to, int column) {
        double[] values = new double[to - from];
        for (int i = from; i < to; i++) {
            values[i - from] = pairs[i][column];
        }
        return values;
    }

    private static double slope(double[] x, double[] y) {
        double[] slopes = new double[x.length * (x.length - 1) / 2];
        int used = 0;
        for (int i = 0; i < x.length; i++) {
            for (int j = i + 1; j < x.length; j++) {
                if (x[j] > x[i]) {
                    slopes[used++] = (y[j] - y[i]) / (x[j] - x[i]);
                }
            }
        }
        double median = used == 0 ? 0 : Medians.of(Arrays.copyOf(slopes, used));
        return Math.min(LARGEST_SLOPE, Math.max(LEAST_SLOPE, median));
    }

    private static double[] minus(double[] y, double[] x, double slope) {
        double[] left = new double[y.length];
        for (int k = 0; k < y.length; k++) {
            left[k] = y[k] - slope * x[k];
        }
        return left;
    }

    double lnVelocity(double lnDepth) {
        return level + slope * lnDepth + between(left, lnDepth);
    }

    /** Scatter of the hours at a depth over the median scatter of all classes; never below 1. */
    double relativeScatter(double lnDepth) {
        return usualScatter > 0 ? Math.max(1, SURE * between(scatters, lnDepth) / usualScatter) : 1;
    }

    private double between(double[] values, double lnDepth) {
        int last = lnDepths.length - 1;
        if (lnDepth <= lnDepths[0]) {
            return values[0];
        }
        if (lnDepth >= lnDepths[last]) {
            return values[last];
        }
        // Classes may have the same median depth, so that the places of this table need not rise.
        int above = 1;
        while (lnDepths[above] < lnDepth) {
            above++;
        }
        return Interpolation.between(lnDepth, lnDepths[above - 1], values[above - 1], lnDepths[above], values[above]);
    }

    double lowest() {
        return lowest;
    }

    double highest() {
        return highest;
    }

    /**
     * Returns the velocity that is usual at a level.
     *
     * @param level level above the invert, m; greater than 0
     * @return velocity, m/s; outside of the learned depths a guess along the slope
     * @throws IllegalArgumentException if the level is not greater than 0
     */
    public double velocity(double level) {
        return Math.exp(lnVelocity(Math.log(Require.positive("level", level, "m"))));
    }

    /**
     * Returns how fast the velocity grows with the depth, b = d ln v / d ln y over the classes.
     *
     * @return exponent, in [-0.2, 1.2]; about 0.5 to 0.7 where resistance rules
     */
    public double exponent() {
        return slope;
    }

    /**
     * Returns the lowest level that was learned, exceeded by 99.5 % of the hours.
     *
     * @return level, m
     */
    public double lowestLevel() {
        return Math.exp(lowest);
    }

    /**
     * Returns the highest level that was learned, exceeded by 1 % of the hours.
     *
     * @return level, m
     */
    public double highestLevel() {
        return Math.exp(highest);
    }

    /**
     * Returns the robust scatter of ln v about the curve, the median of the classes.
     *
     * @return scatter, as a share of the velocity
     */
    public double scatter() {
        return usualScatter;
    }

    /**
     * Returns the median levels of the depth classes.
     *
     * @return levels above the invert, m, rising; a new array
     */
    public double[] classLevels() {
        return Arrays.stream(lnDepths).map(Math::exp).toArray();
    }

    /**
     * Returns the robust scatter of ln v about the curve in each of the depth classes.
     *
     * @return scatters, as shares of the velocity; a new array
     */
    public double[] classScatters() {
        return scatters.clone();
    }

    String toText() {
        return StateText.of("usual-velocity", 1)
                .with("level", level)
                .with("slope", slope)
                .with("depths", lnDepths)
                .with("left", left)
                .with("scatters", scatters)
                .with("lowest", lowest)
                .with("highest", highest)
                .toString();
    }

    static UsualVelocity parse(String text) {
        StateText state = StateText.parse("usual-velocity", 1, text);
        double[] depths = state.numbers("depths");
        Require.atLeast("number of classes", depths.length, LEAST_CLASSES);
        double[] left = state.numbers("left");
        Require.sameLength("left", depths.length, left.length);
        double[] scatters = state.numbers("scatters");
        Require.sameLength("scatters", depths.length, scatters.length);
        return new UsualVelocity(
                Require.finite("level", state.number("level"), ""),
                Require.finite("slope", state.number("slope"), ""),
                depths,
                left,
                scatters,
                Require.finite("lowest", state.number("lowest"), ""),
                Require.finite("highest", state.number("highest"), ""));
    }

    @Override
    public String toString() {
        return "UsualVelocity[" + lnDepths.length + " classes from " + Text.fixed(lowestLevel(), 3) + " to "
                + Text.fixed(highestLevel(), 3) + " m, exponent " + Text.fixed(slope, 2) + ", scatter "
                + Text.fixed(100 * scatter(), 1) + " %]";
    }
}
