package dev.runnel.rainfall.areal;

import dev.runnel.base.Require;
import dev.runnel.base.Text;
import java.util.ArrayList;
import java.util.List;
import org.apiguardian.api.API;

/**
 * A catchment as a simple polygon, convex or not, without holes. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Catchment {
    private final List<Location> corners;
    private final double area;

    private Catchment(List<Location> corners) {
        this.corners = corners;
        this.area = Math.abs(signedArea(corners));
    }

    /**
     * Returns the catchment inside a boundary.
     *
     * @param corners corners in order, either way round, the first not repeated; at least three; the boundary must not
     *     cross itself, which is not checked
     * @return the catchment
     * @throws IllegalArgumentException if there are fewer than three or they enclose no area
     */
    public static Catchment of(List<Location> corners) {
        Require.atLeast("corners", corners.size(), 3);
        Catchment catchment = new Catchment(List.copyOf(corners));
        Require.positive("area inside the corners", catchment.area, "m2");
        return catchment;
    }

    /**
     * Returns the area in m²; {@link #areaKm2()} is what areal reduction takes.
     *
     * @return area, m²
     */
    public double area() {
        return area;
    }

    /**
     * Returns the area in km², for {@link ArealReduction#factor(double, java.time.Duration)}.
     *
     * @return area, km²
     */
    public double areaKm2() {
        return area / 1e6;
    }

    /**
     * Returns the area of the part that is nearer to one place than to any of the others.
     *
     * <p>The polygon is cut by the line half way to each other place in turn. A polygon that is not convex may fall into
     * pieces joined by edges that run there and back along the line; they enclose nothing and leave the area right.
     */
    double areaNearestTo(Location place, List<Location> others) {
        List<Location> part = corners;
        for (Location other : others) {
            part = nearer(part, place, other);
        }
        return Math.abs(signedArea(part));
    }

    private static List<Location> nearer(List<Location> polygon, Location place, Location other) {
        List<Location> kept = new ArrayList<>();
        for (int i = 0; i < polygon.size(); i++) {
            Location from = polygon.get(i);
            Location to = polygon.get((i + 1) % polygon.size());
            double a = beyondMiddle(from, place, other);
            double b = beyondMiddle(to, place, other);
            if (a <= 0) {
                kept.add(from);
            }
            if ((a < 0 && b > 0) || (a > 0 && b < 0)) {
                double share = a / (a - b);
                kept.add(new Location(from.x() + share * (to.x() - from.x()), from.y() + share * (to.y() - from.y())));
            }
        }
        return kept;
    }

    /** Below 0 on the side of the place, above 0 on the side of the other. */
    private static double beyondMiddle(Location point, Location place, Location other) {
        double middleX = (place.x() + other.x()) / 2;
        double middleY = (place.y() + other.y()) / 2;
        return (point.x() - middleX) * (other.x() - place.x()) + (point.y() - middleY) * (other.y() - place.y());
    }

    private static double signedArea(List<Location> polygon) {
        if (polygon.isEmpty()) {
            return 0;
        }
        // Relative to a corner, so that grid coordinates of millions of metres cost no digits.
        Location origin = polygon.get(0);
        double twice = 0;
        for (int i = 0; i < polygon.size(); i++) {
            Location a = polygon.get(i);
            Location b = polygon.get((i + 1) % polygon.size());
            twice += (a.x() - origin.x()) * (b.y() - origin.y()) - (b.x() - origin.x()) * (a.y() - origin.y());
        }
        return twice / 2;
    }

    @Override
    public String toString() {
        return "Catchment[" + corners.size() + " corners, " + Text.significant(area, 6) + " m2]";
    }
}
