package dev.runnel.hydraulics.section;

import dev.runnel.hydraulics.internal.Bulk;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The shape of a sewer or channel across the flow, invert at level 0. Implementations are immutable and thread-safe.
 *
 * <p>Depths count from the lowest point of the section. Over a bed of sediment that is the bed, not the invert;
 * {@link #levelAboveInvert} and {@link #depthAboveBed} convert.
 *
 * <p>Depths lie in [0, {@link #height()}]; a depth outside by no more than 1e-12 of the height counts as the limit, any
 * other is refused. In the bulk forms NaN is a missing reading and stays NaN.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public interface CrossSection {
    /**
     * Returns the height of the soffit above the invert.
     *
     * @return height, m; +∞ for an open section
     */
    double height();

    /**
     * Returns the wetted area.
     *
     * @param depth depth above the invert, m; in [0, height]
     * @return area A, m²
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    double area(double depth);

    /**
     * Returns the wetted perimeter, the surface of the water not included. Where the boundary has a level stretch (a
     * bench, a flat soffit), the stretch is wet as soon as the water is above it, and a flat soffit at full depth.
     *
     * @param depth depth above the invert, m; in [0, height]
     * @return wetted perimeter P, m
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    double wettedPerimeter(double depth);

    /**
     * Returns the width of the water surface, T = dA/dy.
     *
     * @param depth depth above the invert, m; in [0, height]
     * @return top width T, m; 0 at the soffit of a round crown
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    double topWidth(double depth);

    /**
     * Returns the depth of the centroid of the wetted area below the water surface.
     *
     * @param depth depth above the invert, m; in [0, height]
     * @return depth of the centroid z̄, m; 0 at depth 0
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    double centroidDepth(double depth);

    /**
     * Returns the depth at which the section has a wetted area.
     *
     * @param area area, m²; in [0, area at the soffit]
     * @return depth above the invert, m
     * @throws IllegalArgumentException if {@code area} is outside or NaN
     */
    double depthForArea(double area);

    /**
     * Returns the hydraulic radius, R = A/P.
     *
     * @param depth depth above the invert, m; in [0, height]
     * @return hydraulic radius R, m; 0 at depth 0
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    default double hydraulicRadius(double depth) {
        double area = area(depth);
        return area == 0 ? 0 : area / wettedPerimeter(depth);
    }

    /**
     * Returns the hydraulic depth, A/T.
     *
     * @param depth depth above the invert, m; in [0, height]
     * @return hydraulic depth, m; 0 at depth 0, +∞ at the soffit of a round crown, where there is no surface
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    default double hydraulicDepth(double depth) {
        double area = area(depth);
        return area == 0 ? 0 : area / topWidth(depth);
    }

    /**
     * Returns the depths where the boundary passes from one smooth piece to the next, so that searches for a maximum
     * know where a curve may have a corner.
     *
     * @return depths, m, ascending; the first is 0, the last is {@link #height()} if that is finite; a new array
     */
    default double[] breakDepths() {
        return Double.isInfinite(height()) ? new double[] {0} : new double[] {0, height()};
    }

    /**
     * Returns what is left of the section above a level bed of sediment. <b>Its depths count from the bed</b>; the bed
     * belongs to the wetted perimeter. It does not move, slope or let water through.
     *
     * @param bedAboveInvert top of the sediment above the invert of the clean section, m; in [0, height); 0 for none
     * @return the section above the bed
     * @throws IllegalArgumentException if {@code bedAboveInvert} is outside or NaN
     * @throws IllegalStateException if this section lies above a bed already
     */
    default CrossSection withSediment(double bedAboveInvert) {
        return SedimentSection.of(this, bedAboveInvert);
    }

    /**
     * Returns the section without its bed of sediment.
     *
     * @return the clean section; this one if it has no bed
     */
    default CrossSection withoutSediment() {
        return this;
    }

    /**
     * Returns the top of the sediment above the invert of the clean section: depth 0 of this section.
     *
     * @return level of the bed, m; 0 without sediment
     */
    default double bedAboveInvert() {
        return 0;
    }

    /**
     * Returns the depth, as this section counts it, of a level above the invert of the clean section.
     *
     * @param levelAboveInvert level above the invert of the clean section, m
     * @return depth above the bed, m; negative below the bed; the level itself without sediment
     */
    default double depthAboveBed(double levelAboveInvert) {
        return levelAboveInvert - bedAboveInvert();
    }

    /**
     * Returns the level above the invert of the clean section of a depth, as this section counts it.
     *
     * @param depthAboveBed depth above the bed, m
     * @return level above the invert, m; the depth itself without sediment
     */
    default double levelAboveInvert(double depthAboveBed) {
        return depthAboveBed + bedAboveInvert();
    }

    /**
     * Writes the wetted area for each depth, bit for bit as {@link #area(double)}.
     *
     * @param depth depths, m; NaN for missing; not modified
     * @param area results, m²; same length, overwritten
     * @throws IllegalArgumentException if the lengths differ or a depth is out of range; names the index
     */
    default void area(double[] depth, double[] area) {
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(area, "area");
        Bulk.apply("depth", depth, "area", area, this::area);
    }

    /**
     * Writes the wetted perimeter for each depth, bit for bit as {@link #wettedPerimeter(double)}.
     *
     * @param depth depths, m; NaN for missing; not modified
     * @param perimeter results, m; same length, overwritten
     * @throws IllegalArgumentException if the lengths differ or a depth is out of range; names the index
     */
    default void wettedPerimeter(double[] depth, double[] perimeter) {
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(perimeter, "perimeter");
        Bulk.apply("depth", depth, "perimeter", perimeter, this::wettedPerimeter);
    }

    /**
     * Writes the hydraulic radius for each depth, bit for bit as {@link #hydraulicRadius(double)}.
     *
     * @param depth depths, m; NaN for missing; not modified
     * @param radius results, m; same length, overwritten
     * @throws IllegalArgumentException if the lengths differ or a depth is out of range; names the index
     */
    default void hydraulicRadius(double[] depth, double[] radius) {
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(radius, "radius");
        Bulk.apply("depth", depth, "radius", radius, this::hydraulicRadius);
    }

    /**
     * Writes the top width for each depth, bit for bit as {@link #topWidth(double)}.
     *
     * @param depth depths, m; NaN for missing; not modified
     * @param width results, m; same length, overwritten
     * @throws IllegalArgumentException if the lengths differ or a depth is out of range; names the index
     */
    default void topWidth(double[] depth, double[] width) {
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(width, "width");
        Bulk.apply("depth", depth, "width", width, this::topWidth);
    }

    /**
     * Writes the depth for each area, bit for bit as {@link #depthForArea(double)}.
     *
     * @param area areas, m²; NaN for missing; not modified
     * @param depth results, m; same length, overwritten
     * @throws IllegalArgumentException if the lengths differ or an area is out of range; names the index
     */
    default void depthForArea(double[] area, double[] depth) {
        Objects.requireNonNull(area, "area");
        Objects.requireNonNull(depth, "depth");
        Bulk.apply("area", area, "depth", depth, this::depthForArea);
    }
}
