package dev.runnel.hydraulics.structure;

import org.apiguardian.api.API;

/**
 * Cross-section of the bars of a screen, with Kirschmer's factor β. O. Kirschmer (1926), Untersuchungen über den
 * Gefällsverlust an Rechen, Mitteilungen des Hydraulischen Instituts der TH München 1; the factors as handbooks carry
 * them, from memory, 1.83 confirmed by a published intake design sheet.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum BarShape {
    /** Rectangular with sharp edges, β = 2.42. */
    RECTANGULAR(2.42),
    /** Rectangular with a semicircular upstream face, β = 1.83. */
    ROUNDED_UPSTREAM(1.83),
    /** Rectangular with both faces semicircular, β = 1.67. */
    ROUNDED_BOTH(1.67),
    /** Circular, β = 1.79. */
    CIRCULAR(1.79),
    /** Semicircular upstream face and tapering downstream, β = 1.035. */
    TAPERED(1.035),
    /** Semicircular at both ends and tapering downstream, β = 0.92. */
    TAPERED_ROUNDED(0.92),
    /** Drop shape, β = 0.76. */
    STREAMLINED(0.76);

    private final double factor;

    BarShape(double factor) {
        this.factor = factor;
    }

    /**
     * Returns Kirschmer's factor.
     *
     * @return β, a pure number
     */
    public double factor() {
        return factor;
    }
}
