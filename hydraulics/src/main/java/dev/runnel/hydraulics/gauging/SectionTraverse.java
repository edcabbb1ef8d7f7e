package dev.runnel.hydraulics.gauging;

import dev.runnel.hydraulics.internal.Gauss;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The mean velocity of a section from a traverse: velocities at several heights of one vertical, integrated over the width,
 *
 * <pre>  V = k ∫ u(z) T(z) dz / A</pre>
 *
 * <p>z height above the lowest point (m), T width of the section at z (m), A wetted area (m²), u a straight line between the
 * points, a power law 1/m to 0 at the bed below the lowest point, and the velocity of the highest point above it. k is the mean over
 * the width in relation to the vertical that was measured; 1 where the readings are means over the width already. Immutable and
 * thread-safe. Any section: circle, egg, box.
 *
 * <p>Source: the integral itself; the power law of {@link PowerLaw}. What it is not: right beside a bend or a joining pipe, where one
 * vertical does not stand for the width.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SectionTraverse {
    private final CrossSection section;
    private final double depth;
    private final double m;
    private final double widthFactor;

    private SectionTraverse(CrossSection section, double depth, double m, double widthFactor) {
        this.section = section;
        this.depth = depth;
        this.m = m;
        this.widthFactor = widthFactor;
    }

    /**
     * Returns a traverse at a depth.
     *
     * @param section the section
     * @param depth depth of the water, m; greater than 0, at most the height of the section
     * @return the traverse with m = 7 and a width factor of 1
     * @throws IllegalArgumentException if {@code depth} is outside its range
     */
    public static SectionTraverse of(CrossSection section, double depth) {
        Objects.requireNonNull(section, "section");
        if (!(depth > 0 && depth <= section.height() && depth < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("depth must be greater than 0 and at most the height of the section "
                    + Text.number(section.height()) + " m, was " + Text.number(depth));
        }
        return new SectionTraverse(section, depth, 7, 1);
    }

    /**
     * Returns a copy with another power law at the bed.
     *
     * @param law the law
     * @return the copy
     */
    public SectionTraverse withBedLaw(PowerLaw law) {
        return new SectionTraverse(section, depth, law.m(), widthFactor);
    }

    /**
     * Returns a copy for readings on the middle vertical.
     *
     * @param newWidthFactor mean over the width in relation to the middle, k; in [0.5, 1.2]: m/(m + 1) where a power law runs to both
     *     walls
     * @return the copy
     * @throws IllegalArgumentException if {@code newWidthFactor} is outside its range
     */
    public SectionTraverse withWidthFactor(double newWidthFactor) {
        return new SectionTraverse(section, depth, m, Require.inRange("newWidthFactor", newWidthFactor, 0.5, 1.2, ""));
    }

    /**
     * Returns the mean velocity.
     *
     * @param heights heights of the points above the lowest point of the section, m; greater than 0, ascending, at most the depth
     * @param velocities velocities at the points, m/s; same length; in [-20, 20]
     * @return mean velocity, m/s; the integral of the stated profile to 1e-9
     * @throws IllegalArgumentException if an array is empty, of another length or outside its range
     */
    public double mean(double[] heights, double[] velocities) {
        Require.atLeast("count of points", heights.length, 1);
        Require.sameLength("velocities", heights.length, velocities.length);
        double last = 0;
        for (int i = 0; i < heights.length; i++) {
            if (!(heights[i] > last && heights[i] <= depth)) {
                throw new IllegalArgumentException("heights[" + i + "] must be above " + Text.number(last)
                        + " m and at most the depth " + Text.number(depth) + " m, was " + Text.number(heights[i]));
            }
            Require.inRange("velocities[" + i + "]", velocities[i], -20, 20, "m/s");
            last = heights[i];
        }
        int n = heights.length - 1;
        double low = heights[0];
        // by parts: the integral of u T is u A less that of A u', and A has no corner where the width has one
        double sum =
                velocities[0] * (section.area(low) - Gauss.integrate(t -> section.area(low * Math.pow(t, m)), 0, 1));
        for (int i = 0; i < n; i++) {
            double slope = (velocities[i + 1] - velocities[i]) / (heights[i + 1] - heights[i]);
            sum += velocities[i + 1] * section.area(heights[i + 1])
                    - velocities[i] * section.area(heights[i])
                    - slope * (areaIntegral(heights[i + 1]) - areaIntegral(heights[i]));
        }
        sum += velocities[n] * (section.area(depth) - section.area(heights[n]));
        return widthFactor * sum / section.area(depth);
    }

    /** Returns the integral of the area over the depth, which is its first moment below the surface. */
    private double areaIntegral(double z) {
        return section.area(z) * section.centroidDepth(z);
    }

    /**
     * Returns the factor of a sensor that reads the greatest of the velocities of a traverse.
     *
     * @param heights heights of the points, m, as for {@link #mean}
     * @param velocities velocities at the points, m/s
     * @return mean over greatest velocity
     * @throws IllegalArgumentException as {@link #mean}, or if no velocity is above 0
     */
    public double meanToGreatest(double[] heights, double[] velocities) {
        double mean = mean(heights, velocities);
        double greatest = Arrays.stream(velocities).max().orElseThrow();
        if (!(greatest > 0)) {
            throw new IllegalArgumentException("velocities must have one above 0 m/s, was " + Text.number(greatest));
        }
        return mean / greatest;
    }

    @Override
    public String toString() {
        return "SectionTraverse[" + section + " at " + Text.significant(depth, 6) + " m]";
    }
}
