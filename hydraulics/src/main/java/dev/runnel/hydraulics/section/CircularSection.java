package dev.runnel.hydraulics.section;

import dev.runnel.hydraulics.internal.Bulk;
import dev.runnel.hydraulics.internal.CircleLoops;
import dev.runnel.hydraulics.internal.Segment;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A circular section, invert at level 0. Immutable and thread-safe.
 *
 * <p>All functions keep full <em>relative</em> accuracy down to the thinnest film and up to the last film of air under
 * the soffit: whichever part of the bore is smaller (water or air) is computed and the other is the difference, and the
 * smaller one is a power of its height times a polynomial, instead of the difference φ − sin φ cos φ. A uniform pipe in
 * everything: no joint, no deposit, no ovality.
 *
 * <p>The forms for many depths are the same operations in loops that the compiler turns into vector instructions; they
 * allocate nothing.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class CircularSection implements ClosedSection {
    /** Depths that are worked on at once: they and their results stay in the first cache, and the ends of loops count little. */
    private static final int BLOCK = 2048;

    private final double diameter;
    private final double inverse;
    private final double square;

    private CircularSection(double diameter) {
        this.diameter = diameter;
        this.inverse = 1 / diameter;
        this.square = diameter * diameter;
    }

    /**
     * Returns the section with the given bore.
     *
     * @param diameter internal diameter D, m; greater than 0, in [1e-6, 50]
     * @return the section
     * @throws IllegalArgumentException if {@code diameter} is not
     */
    public static CircularSection ofDiameter(double diameter) {
        return new CircularSection(
                Sizes.closed("diameter", diameter, ": for millimetres use CircularSection.ofDiameterMm"));
    }

    /**
     * Returns the section with the given bore in millimetres.
     *
     * @param diameterMm internal diameter D, mm; in [0.001, 50000]
     * @return the section
     * @throws IllegalArgumentException if {@code diameterMm} is not
     */
    public static CircularSection ofDiameterMm(double diameterMm) {
        return ofDiameter(Require.positive("diameterMm", diameterMm, "mm") / 1000);
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
     * <p>A = D²/4 (φ − sin φ cos φ). Relative error below 1e-15.
     */
    @Override
    public double area(double depth) {
        return CircleLoops.area(Depths.checked(depth, diameter), diameter, inverse, square);
    }

    /**
     * {@inheritDoc}
     *
     * <p>P = D φ, found as 4 A/D + T (1 − 2y/D). Relative error below 7e-16.
     */
    @Override
    public double wettedPerimeter(double depth) {
        return CircleLoops.perimeter(Depths.checked(depth, diameter), diameter, inverse);
    }

    /**
     * {@inheritDoc}
     *
     * <p>T = 2 √(y (D − y)). Relative error below 3e-16.
     */
    @Override
    public double topWidth(double depth) {
        return CircleLoops.width(Depths.checked(depth, diameter), diameter);
    }

    @Override
    public void area(double[] depth, double[] area) {
        Require.sameLength("area", depth.length, area.length);
        for (int from = 0; from < depth.length; from += BLOCK) {
            int to = end(from, depth);
            if (depth != area) {
                CircleLoops.area(depth, area, from, to, diameter, inverse, square);
            }
            if (depth == area || Double.isNaN(CircleLoops.sum(area, from, to))) {
                Bulk.mend("depth", depth, area, from, to, this::area);
            }
        }
    }

    @Override
    public void wettedPerimeter(double[] depth, double[] perimeter) {
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(perimeter, "perimeter");
        Require.sameLength("perimeter", depth.length, perimeter.length);
        for (int from = 0; from < depth.length; from += BLOCK) {
            int to = end(from, depth);
            if (depth != perimeter) {
                CircleLoops.perimeter(depth, perimeter, from, to, diameter, inverse);
            }
            if (depth == perimeter || Double.isNaN(CircleLoops.sum(perimeter, from, to))) {
                Bulk.mend("depth", depth, perimeter, from, to, this::wettedPerimeter);
            }
        }
    }

    @Override
    public void topWidth(double[] depth, double[] width) {
        Require.sameLength("width", depth.length, width.length);
        for (int from = 0; from < depth.length; from += BLOCK) {
            int to = end(from, depth);
            if (depth != width) {
                CircleLoops.width(depth, width, from, to, diameter);
            }
            if (depth == width || Double.isNaN(CircleLoops.sum(width, from, to))) {
                Bulk.mend("depth", depth, width, from, to, this::topWidth);
            }
        }
    }

    @Override
    public void hydraulicRadius(double[] depth, double[] radius) {
        Require.sameLength("radius", depth.length, radius.length);
        for (int from = 0; from < depth.length; from += BLOCK) {
            int to = end(from, depth);
            if (depth != radius) {
                CircleLoops.radius(depth, radius, from, to, diameter, inverse, square);
            }
            if (depth == radius || Double.isNaN(CircleLoops.sum(radius, from, to))) {
                Bulk.mend("depth", depth, radius, from, to, this::hydraulicRadius);
            }
        }
    }

    /**
     * Writes area, wetted perimeter, hydraulic radius and surface width of each depth, bit for bit as the methods for one
     * depth, in half the time of four calls.
     *
     * @param depth depths above the invert, m; NaN for missing; not modified
     * @param area flow areas, m²; same length, overwritten; none of the five arrays may be another of them
     * @param wettedPerimeter wetted perimeters, m; same length, overwritten
     * @param hydraulicRadius hydraulic radii, m; same length, overwritten
     * @param topWidth surface widths, m; same length, overwritten
     * @throws IllegalArgumentException if the lengths differ, two arrays are one, or a depth is out of range; names the index
     */
    public void properties(
            double[] depth, double[] area, double[] wettedPerimeter, double[] hydraulicRadius, double[] topWidth) {
        double[][] all = {depth, area, wettedPerimeter, hydraulicRadius, topWidth};
        String[] names = {"depth", "area", "wettedPerimeter", "hydraulicRadius", "topWidth"};
        for (int i = 0; i < all.length; i++) {
            Objects.requireNonNull(all[i], names[i]);
            Require.sameLength(names[i], depth.length, all[i].length);
            for (int j = 0; j < i; j++) {
                if (all[i] == all[j]) {
                    throw new IllegalArgumentException(names[i] + " must be another array than " + names[j]);
                }
            }
        }
        for (int from = 0; from < depth.length; from += BLOCK) {
            int to = end(from, depth);
            CircleLoops.all(
                    depth, area, wettedPerimeter, hydraulicRadius, topWidth, from, to, diameter, inverse, square);
            // Whatever has no area or no perimeter has no radius.
            if (Double.isNaN(CircleLoops.sum(hydraulicRadius, from, to))) {
                Bulk.mend("depth", depth, area, from, to, this::area);
                Bulk.mend("depth", depth, wettedPerimeter, from, to, this::wettedPerimeter);
                Bulk.mend("depth", depth, hydraulicRadius, from, to, this::hydraulicRadius);
                Bulk.mend("depth", depth, topWidth, from, to, this::topWidth);
            }
        }
    }

    private static int end(int from, double[] depth) {
        return from + Math.min(BLOCK, depth.length - from);
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
        return "CircularSection[D = " + Text.significant(diameter, 6) + " m]";
    }
}
