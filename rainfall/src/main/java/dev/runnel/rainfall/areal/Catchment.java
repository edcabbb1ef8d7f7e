package dev.runnel.rainfall.areal;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.function.Supplier;
import org.apiguardian.api.API;

/**
 * A catchment on a plane grid: one polygon or several, convex or not, with or without holes. Immutable and thread-safe.
 *
 * <p><b>Needs a library that does not come with this one</b>: {@code org.locationtech.jts:jts-core}, which is optional. Without
 * it on the class path a catchment cannot be made, and says so; nothing else here needs it.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Catchment {
    private static final String LIBRARY = "org.locationtech.jts:jts-core";

    private final Polygons polygons;
    private final double area;

    private Catchment(Polygons polygons) {
        this.polygons = polygons;
        this.area = polygons.area();
    }

    /**
     * Returns the catchment inside a boundary.
     *
     * @param corners corners in order, either way round, the first not repeated; at least three
     * @return the catchment
     * @throws IllegalArgumentException if there are fewer than three, they enclose no area, or the boundary crosses or touches
     *     itself
     * @throws IllegalStateException if jts-core is not on the class path
     */
    public static Catchment of(List<Location> corners) {
        Require.atLeast("corners", corners.size(), 3);
        List<Location> copy = List.copyOf(corners);
        return withLibrary(() -> new Catchment(Polygons.inside(copy)));
    }

    /**
     * Returns the catchment of polygons in well-known text (OGC Simple Features, ISO 19125), coordinates in m.
     *
     * <pre>
     * POLYGON ((0 0, 400 0, 400 300, 0 300, 0 0), (100 100, 200 100, 200 200, 100 200, 100 100))
     * MULTIPOLYGON (((0 0, 400 0, 400 300, 0 0)), ((500 0, 600 0, 600 100, 500 0)))
     * </pre>
     *
     * <p>The second ring of a polygon and those after it are holes. Heights, if there are any, are passed over.
     *
     * @param text a {@code POLYGON} or {@code MULTIPOLYGON}
     * @return the catchment
     * @throws IllegalArgumentException if the text is no such thing, the polygons enclose no area, or a boundary crosses or
     *     touches itself or another
     * @throws IllegalStateException if jts-core is not on the class path
     */
    public static Catchment parse(String text) {
        return withLibrary(() -> new Catchment(Polygons.parse(text)));
    }

    private static Catchment withLibrary(Supplier<Catchment> made) {
        try {
            return made.get();
        } catch (NoClassDefFoundError e) {
            // The second time the JVM names only our class, which it could not make ready the first time.
            String missing = String.valueOf(e.getMessage());
            if (missing.contains("org/locationtech/jts") || missing.contains(Polygons.class.getName())) {
                throw new IllegalStateException(
                        "a Catchment needs " + LIBRARY + " on the class path, which is lacking", e);
            }
            throw e;
        }
    }

    /**
     * Returns the area in m²; {@link #areaKm2()} is what areal reduction takes.
     *
     * @return area without holes, m²
     */
    public double area() {
        return area;
    }

    /**
     * Returns the area in km², for {@link ArealReduction#factor(double, java.time.Duration)}.
     *
     * @return area without holes, km²
     */
    public double areaKm2() {
        return area / 1e6;
    }

    /** The area of the part that is nearer to one place than to any of the others. */
    double areaWithin(double fromX, double fromY, double toX, double toY) {
        return polygons.areaWithin(fromX, fromY, toX, toY);
    }

    double areaNearestTo(Location place, List<Location> others) {
        return polygons.areaNearestTo(place, others);
    }

    @Override
    public String toString() {
        return "Catchment[" + polygons + ", " + Text.significant(area, 6) + " m2]";
    }
}
