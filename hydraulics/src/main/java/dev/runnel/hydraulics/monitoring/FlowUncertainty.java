package dev.runnel.hydraulics.monitoring;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The standard uncertainty of a flow and the part each input has in it. Immutable and thread-safe.
 *
 * <p>The law of propagation of uncertainty for independent inputs, JCGM 100:2008 (GUM), equation 10: each part is
 * |∂Q/∂x| u(x), and u(Q) is the root of the sum of their squares. With Q = f v (A(y) − A(b)), T the top width and H the
 * height of the section,
 *
 * <pre>
 * ∂Q/∂y = f v T(y)       ∂Q/∂v = f (A(y) − A(b))       ∂Q/∂f = v (A(y) − A(b))
 * ∂Q/∂H = f v [2 A(y) − y T(y) − 2 A(b) + b T(b)] / H
 * </pre>
 *
 * <p>The last holds for a section of any shape that keeps its shape as it grows, at a fixed level and bed. Above the soffit
 * the level plays no part; an open section has no height and its size counts as exact.
 *
 * <p>What this is not: valid where the flow area bends within the uncertainty of the depth: very near the invert, the bed
 * or the soffit the first-order law is only a hint. Errors that all readings share (an offset, a factor) do not average out
 * in a daily volume.
 *
 * @param discharge the flow Q, m³/s
 * @param depth part of the depth, m³/s
 * @param velocity part of the velocity reading, m³/s
 * @param height part of the height of the section, m³/s
 * @param velocityFactor part of the velocity factor, m³/s
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record FlowUncertainty(double discharge, double depth, double velocity, double height, double velocityFactor) {
    /** Pairs that are worked on at once: their areas stay in the first cache. */
    private static final int BLOCK = 512;

    /**
     * Checks the range.
     *
     * @param discharge the flow, m³/s; finite
     * @param depth part of the depth, m³/s; 0 or greater
     * @param velocity part of the velocity reading, m³/s; 0 or greater
     * @param height part of the height of the section, m³/s; 0 or greater
     * @param velocityFactor part of the velocity factor, m³/s; 0 or greater
     * @throws IllegalArgumentException if one is out of range
     */
    public FlowUncertainty {
        Require.finite("discharge", discharge, "m3/s");
        Require.nonNegative("depth", depth, "m3/s");
        Require.nonNegative("velocity", velocity, "m3/s");
        Require.nonNegative("height", height, "m3/s");
        Require.nonNegative("velocityFactor", velocityFactor, "m3/s");
    }

    /** For a level above the bed. */
    static FlowUncertainty of(PipeMonitor monitor, double level, double velocityReading, SensorUncertainty inputs) {
        double factor = monitor.velocityFactor();
        double speed = Math.abs(velocityReading);
        CrossSection clean = monitor.conduit().section().withoutSediment();
        double area = monitor.flowArea(level);
        double growth = growthWithHeight(clean, level) - growthWithHeight(clean, monitor.bedAboveInvert());
        return new FlowUncertainty(
                factor * velocityReading * area + 0.0,
                factor * speed * (level > clean.height() ? 0 : clean.topWidth(level)) * inputs.depth(),
                factor * area * inputs.velocity(),
                factor * speed * Math.abs(growth) * inputs.height(),
                speed * area * inputs.velocityFactor());
    }

    /**
     * The same for many pairs, u(Q) alone: areas and widths of many levels cost less than one by one.
     *
     * @param levels levels above the bed, m; NaN for missing
     * @param velocities readings times the velocity factor, m/s
     * @param standard u(Q) from a place on and to another, overwritten
     */
    static void standard(
            PipeMonitor monitor,
            SensorUncertainty inputs,
            double[] levels,
            double[] velocities,
            int first,
            int end,
            double[] standard) {
        CrossSection section = monitor.conduit().section();
        CrossSection clean = section.withoutSediment();
        double factor = monitor.velocityFactor();
        double height = clean.height();
        double ofBed = growthWithHeight(clean, monitor.bedAboveInvert());
        double[] depth = new double[0];
        double[] whole = depth;
        double[] area = depth;
        double[] width = depth;
        double[] aboveBed = depth;
        for (int from = first; from < end; from += BLOCK) {
            int count = Math.min(BLOCK, end - from);
            if (depth.length != count) {
                // At the beginning, and for what is left at the end.
                depth = new double[count];
                whole = new double[count];
                area = section == clean ? whole : new double[count];
                width = new double[count];
                aboveBed = section == clean ? whole : new double[count];
            }
            for (int i = 0; i < count; i++) {
                depth[i] = Math.min(levels[from + i], height);
            }
            clean.area(depth, whole);
            clean.topWidth(depth, width);
            if (section != clean) {
                for (int i = 0; i < count; i++) {
                    aboveBed[i] = Math.min(section.depthAboveBed(levels[from + i]), section.height());
                }
                section.area(aboveBed, area);
            }
            for (int i = 0; i < count; i++) {
                double speed = Math.abs(velocities[from + i] / factor);
                double surface = levels[from + i] > height ? 0 : width[i];
                double growth = (2 * whole[i] - depth[i] * surface) / height - ofBed;
                standard[from + i] = standard(
                        factor * speed * surface * inputs.depth(),
                        factor * area[i] * inputs.velocity(),
                        factor * speed * Math.abs(growth) * inputs.height(),
                        speed * area[i] * inputs.velocityFactor());
            }
        }
    }

    private static double standard(double depth, double velocity, double height, double velocityFactor) {
        return Math.sqrt(depth * depth + velocity * velocity + height * height + velocityFactor * velocityFactor);
    }

    /**
     * How the area up to a level grows when the whole section grows in proportion and the level stays, m: from
     * A = H² a(y/H) follows ∂A/∂H = (2 A − y T) / H.
     */
    private static double growthWithHeight(CrossSection clean, double level) {
        double height = clean.height();
        double depth = Math.min(level, height);
        double width = level > height ? 0 : clean.topWidth(depth);
        return (2 * clean.area(depth) - depth * width) / height;
    }

    /**
     * Returns the standard uncertainty of the flow.
     *
     * @return u(Q), m³/s
     */
    public double standard() {
        return standard(depth, velocity, height, velocityFactor);
    }

    /**
     * Returns the standard uncertainty over the flow.
     *
     * @return u(Q)/|Q|; infinite or NaN if the flow is 0
     */
    public double relative() {
        return standard() / Math.abs(discharge);
    }

    /**
     * Returns the expanded uncertainty.
     *
     * @param coverageFactor k, for example 2 for about 95 % if the errors are normal; greater than 0
     * @return k u(Q), m³/s
     * @throws IllegalArgumentException if {@code coverageFactor} is not greater than 0
     */
    public double expanded(double coverageFactor) {
        return Require.positive("coverageFactor", coverageFactor, "") * standard();
    }

    @Override
    public String toString() {
        return "FlowUncertainty[" + Text.significant(discharge, 4) + " m3/s, standard uncertainty "
                + Text.significant(standard(), 3) + " m3/s (" + Text.fixed(100 * relative(), 1) + " %): depth "
                + Text.significant(depth, 3) + ", velocity " + Text.significant(velocity, 3) + ", height "
                + Text.significant(height, 3) + ", velocity factor " + Text.significant(velocityFactor, 3) + "]";
    }
}
