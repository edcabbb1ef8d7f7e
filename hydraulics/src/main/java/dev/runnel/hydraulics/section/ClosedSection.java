package dev.runnel.hydraulics.section;

import org.apiguardian.api.API;

/**
 * A section with a soffit: it can run full. Implementations are immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public interface ClosedSection extends CrossSection {
    /**
     * Returns the area of the full section.
     *
     * @return area, m²
     */
    default double fullArea() {
        return area(height());
    }

    /**
     * Returns the perimeter of the full section.
     *
     * @return perimeter, m
     */
    default double fullPerimeter() {
        return wettedPerimeter(height());
    }

    /**
     * Returns the section above a level bed of sediment; depths then count from the bed.
     *
     * @param depth depth of the sediment above the invert, m; in (0, height)
     * @return the section above the bed
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    default SedimentSection withSediment(double depth) {
        return SedimentSection.of(this, depth);
    }
}
