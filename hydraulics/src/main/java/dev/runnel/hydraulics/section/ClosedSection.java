package dev.runnel.hydraulics.section;

import org.apiguardian.api.API;

/**
 * A section with a soffit: it can run full. Implementations are immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
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

    @Override
    default ClosedSection withSediment(double bedAboveInvert) {
        return (ClosedSection) SedimentSection.of(this, bedAboveInvert);
    }

    @Override
    default ClosedSection withoutSediment() {
        return this;
    }
}
