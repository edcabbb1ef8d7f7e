package dev.runnel.hydraulics.section;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * A circular section, invert at level 0. Immutable and thread-safe.
 *
 * <p>All functions keep full <em>relative</em> accuracy down to the thinnest film and up to the last film of air under
 * the soffit: the angle comes from φ = 2 asin √(y/D) instead of acos(1 − 2y/D), whichever part of the bore is smaller
 * (water or air) is computed and the other is the difference, and small segments are summed as a series instead of the
 * difference φ − sin φ cos φ. A uniform pipe in everything: no joint, no deposit, no ovality.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class CircularSection implements ClosedSection {
    private final double diameter;

    private CircularSection(double diameter) {
        this.diameter = diameter;
    }

    /**
     * Returns the section with the given bore.
     *
     * @param diameter internal diameter D, m; greater than 0, finite
     * @return the section
     * @throws IllegalArgumentException if {@code diameter} is not
     */
    public static CircularSection ofDiameter(double diameter) {
        return new CircularSection(Require.positive("diameter", diameter, "m"));
    }

    /**
     * Returns the internal diameter.
     *
     * @return diameter D, m
     */
    public double diameter() {
        return diameter;
    }

    @Override
    public double height() {
        return diameter;
    }

    /**
     * {@inheritDoc}
     *
     * <p>A = D²/4 (φ − sin φ cos φ). Relative error below 1.5e-15.
     */
    @Override
    public double area(double depth) {
        double y = Depths.checked(depth, diameter);
        double square = diameter * diameter;
        if (y <= diameter / 2) {
            return square * Segment.area(y / diameter);
        }
        return square * (Math.PI / 4 - Segment.area((diameter - y) / diameter));
    }

    /**
     * {@inheritDoc}
     *
     * <p>P = D φ. Relative error below 6e-16.
     */
    @Override
    public double wettedPerimeter(double depth) {
        double y = Depths.checked(depth, diameter);
        if (y <= diameter / 2) {
            return diameter * Segment.halfAngle(y / diameter);
        }
        return diameter * (Math.PI - Segment.halfAngle((diameter - y) / diameter));
    }

    /**
     * {@inheritDoc}
     *
     * <p>T = 2 √(y (D − y)). Relative error below 6e-16.
     */
    @Override
    public double topWidth(double depth) {
        double y = Depths.checked(depth, diameter);
        // Two roots, so that neither a tiny nor a huge bore leaves the range of double.
        return 2 * Math.sqrt(y) * Math.sqrt(diameter - y);
    }

    /**
     * {@inheritDoc}
     *
     * <p>z̄ = y − D/2 + T³/(12 A), for shallow water summed as a series. Relative error below 1e-14.
     */
    @Override
    public double centroidDepth(double depth) {
        double y = Depths.checked(depth, diameter);
        if (y == 0) {
            return 0;
        }
        double x = y / diameter;
        if (x <= Segment.SERIES_LIMIT) {
            return diameter * (Segment.moment(x) / Segment.area(x));
        }
        double width = topWidth(y) / diameter;
        double unitArea = area(y) / (diameter * diameter);
        return diameter * ((x - 0.5) + width * width * width / (12 * unitArea));
    }

    /**
     * {@inheritDoc}
     *
     * <p>Closes the round trip: {@code area(depthForArea(a))} is {@code a} within 1e-14 relative. Close to full the
     * depth itself is known less well than the area, as the surface narrows to nothing: one unit in the last place of the
     * full area is a film of air of 1e-11 D.
     */
    @Override
    public double depthForArea(double area) {
        double square = diameter * diameter;
        double full = square * (Math.PI / 4);
        double a = Depths.checkedArea(area, full);
        if (a <= full / 2) {
            return diameter * Segment.depthForArea(a / square);
        }
        return diameter - diameter * Segment.depthForArea((full - a) / square);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof CircularSection && Double.compare(diameter, ((CircularSection) other).diameter) == 0;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(diameter);
    }

    @Override
    public String toString() {
        return "CircularSection[D = " + Text.number(diameter) + " m]";
    }
}
