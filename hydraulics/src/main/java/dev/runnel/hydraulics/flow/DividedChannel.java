package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * A surveyed channel divided by verticals where its roughness changes: a main channel and its flood plains. Each part has its
 * own hydraulic radius, and discharges add up. Immutable and thread-safe.
 *
 * <pre>
 * Q = √S Σ A_i R_i^(2/3) / n_i
 * </pre>
 *
 * <p>Source: Ven Te Chow, Open-Channel Hydraulics, 1959, section 6-5 (Lotter) and 6-6. Whether the verticals between parts
 * count as wetted is a matter of judgement: without them the method overestimates somewhat, with them less. Parts exchange
 * no momentum here; in a river they do.
 *
 * <p>The ends of the survey go up as vertical walls. It is not a {@link dev.runnel.hydraulics.section.CrossSection}: use it
 * for flow at a level, not for profiles.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DividedChannel {
    private final double[] places;
    private final double[] levels;
    private final double[] n;
    private final boolean wettedInterfaces;

    private DividedChannel(double[] places, double[] levels, double[] n, boolean wettedInterfaces) {
        this.places = places;
        this.levels = levels;
        this.n = n;
        this.wettedInterfaces = wettedInterfaces;
    }

    /**
     * Returns the channel of a survey, its interfaces not wetted.
     *
     * @param places distances across the channel, m; at least two, not falling (two equal ones make a wall); not modified
     * @param levels level of the ground at each, m above any datum; as many; not modified
     * @param n Manning's n of the ground between one point and the next, s/m^(1/3); one fewer; not modified
     * @return the channel
     * @throws IllegalArgumentException if the lengths do not match or a value is out of range; names the index
     */
    public static DividedChannel ofSurvey(double[] places, double[] levels, double[] n) {
        Require.atLeast("number of places", places.length, 2);
        Require.sameLength("levels", places.length, levels.length);
        Require.sameLength("n", places.length - 1, n.length);
        for (int i = 0; i < places.length; i++) {
            Require.inRange("places[" + i + "]", places[i], -1e6, 1e6, "m");
            Require.inRange("levels[" + i + "]", levels[i], -1e6, 1e6, "m");
            if (i > 0) {
                Manning.checkedN("n[" + (i - 1) + "]", n[i - 1]);
                if (places[i] < places[i - 1]) {
                    throw new IllegalArgumentException("places[" + i + "] must be at least places[" + (i - 1) + "] = "
                            + Text.number(places[i - 1]) + " m, was " + Text.number(places[i]));
                }
            }
        }
        return new DividedChannel(places.clone(), levels.clone(), n.clone(), false);
    }

    /**
     * Returns a copy in which the water in the verticals between parts counts as wetted perimeter of both.
     *
     * @return the copy
     */
    public DividedChannel withWettedInterfaces() {
        return new DividedChannel(places, levels, n, true);
    }

    /**
     * Returns the wetted area.
     *
     * @param level level of the water, m above the datum of the survey; finite
     * @return area, m²; 0 below the lowest ground
     * @throws IllegalArgumentException if {@code level} is not finite
     */
    public double area(double level) {
        Require.finite("level", level, "m");
        double sum = 0;
        for (int i = 0; i < n.length; i++) {
            sum += area(i, level);
        }
        return sum;
    }

    /**
     * Returns the conveyance, K = Σ A_i R_i^(2/3) / n_i.
     *
     * @param level level of the water, m above the datum of the survey; finite
     * @return conveyance, m³/s
     * @throws IllegalArgumentException if {@code level} is not finite
     */
    public double conveyance(double level) {
        Require.finite("level", level, "m");
        double sum = 0;
        int from = 0;
        for (int i = 1; i <= n.length; i++) {
            if (i == n.length || n[i] != n[from]) {
                sum += conveyance(from, i, level);
                from = i;
            }
        }
        return sum;
    }

    /**
     * Returns the discharge of uniform flow, Q = K √S.
     *
     * @param level level of the water, m above the datum of the survey; finite
     * @param gradient the fall; 0 or greater
     * @return discharge, m³/s
     * @throws IllegalArgumentException if {@code level} is not finite or the gradient is adverse
     */
    public double discharge(double level, Gradient gradient) {
        Require.nonNegative("gradient", gradient.value(), "m/m");
        return conveyance(level) * Math.sqrt(gradient.value());
    }

    /** Of the part between two points of the survey, stretches {@code from} to {@code to − 1}. */
    private double conveyance(int from, int to, double level) {
        double area = 0;
        double perimeter = upright(from, level, from == 0) + upright(to, level, to == n.length);
        for (int i = from; i < to; i++) {
            area += area(i, level);
            perimeter += wetted(i, level);
        }
        if (area == 0) {
            return 0;
        }
        double root = Math.cbrt(area / perimeter);
        return area * root * root / n[from];
    }

    /** Wetted length of the vertical over a point: the wall at an end, or the water of the next part. */
    private double upright(int point, double level, boolean wall) {
        return wall || wettedInterfaces ? Math.max(level - levels[point], 0) : 0;
    }

    private double area(int stretch, double level) {
        double a = level - levels[stretch];
        double b = level - levels[stretch + 1];
        double width = places[stretch + 1] - places[stretch];
        if (a <= 0 && b <= 0) {
            return 0;
        }
        return a >= 0 && b >= 0 ? width * (a + b) / 2 : width * sq(Math.max(a, b)) / (2 * Math.abs(a - b));
    }

    private double wetted(int stretch, double level) {
        double a = Math.max(level - levels[stretch], 0);
        double b = Math.max(level - levels[stretch + 1], 0);
        double rise = Math.abs(levels[stretch + 1] - levels[stretch]);
        double whole = Math.hypot(places[stretch + 1] - places[stretch], rise);
        if (rise == 0) {
            return a > 0 ? whole : 0;
        }
        return whole * Math.abs(a - b) / rise;
    }

    private static double sq(double x) {
        return x * x;
    }

    @Override
    public String toString() {
        return "DividedChannel[" + places.length + " points, "
                + Text.significant(places[places.length - 1] - places[0], 6) + " m wide"
                + (wettedInterfaces ? ", interfaces wetted]" : "]");
    }
}
