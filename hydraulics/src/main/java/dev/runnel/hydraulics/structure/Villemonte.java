package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import org.apiguardian.api.API;

/**
 * The law of Villemonte for thin plates that are drowned from below.
 *
 * <p>Q/Q₁ = (1 − (h₂/h₁)ⁿ)^0.385, where Q₁ is the free discharge at the upstream head h₁ (m), h₂ the tailwater level
 * above the crest (m) and n the exponent of the free weir: 1.5 for a rectangular or Cipolletti weir, 2.5 for a V-notch.
 * (h₂/h₁)ⁿ is the ratio of the free discharges at the two heads, and so it is taken for a trapezoid.
 *
 * <p>Source: J. R. Villemonte (1947), Submerged-weir discharge studies, Engineering News-Record, 866-869; stated accuracy
 * about 5 % (from memory), worse as h₂/h₁ nears 1, where both levels must be known to the millimetre.
 *
 * <p>What it is not: a law for broad crests or flumes, which stay modular to a much higher tailwater.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Villemonte {
    /** Exponent of a rectangular crest. */
    static final double CREST = 1.5;

    /** Exponent of a triangular notch. */
    static final double NOTCH = 2.5;

    /** The source, as limits name it. */
    static final String SOURCE = "Villemonte 1947";

    /** Exponent of the drowned share: Villemonte 1947. */
    private static final double POWER = 0.385;

    private Villemonte() {}

    /**
     * Returns the reduction (1 − (h₂/h₁)ⁿ)^0.385.
     *
     * @param submergence h₂/h₁, in [0, 1]
     * @param exponent exponent n of the free weir; greater than 0, finite
     * @return share of the free discharge, 1 (free) to 0 (level)
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static double reduction(double submergence, double exponent) {
        Require.inRange("submergence", submergence, 0, 1, "");
        Require.positive("exponent", exponent, "");
        // 1 - r^n without loss where the two levels are nearly equal
        return submergence == 0 ? 1 : Math.pow(-Math.expm1(exponent * Math.log(submergence)), POWER);
    }

    /** Returns the reduction from the ratio of the free discharges at the two heads. */
    static double byDischarges(double ratio) {
        return Math.pow(1 - ratio, POWER);
    }
}
