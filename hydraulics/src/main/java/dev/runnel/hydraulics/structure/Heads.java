package dev.runnel.hydraulics.structure;

/** What the formulas need below the least head and above the greatest, where no source says anything. */
final class Heads {
    /** Greatest head where nothing but reason bounds it, m; chosen here: no dam is as high. */
    static final double HIGHEST = 1e4;

    /** Head below which corrections fade, m; chosen here, a third of the least head of any standard. */
    private static final double FADING = 0.01;

    private Heads() {}

    /**
     * Returns head plus the correction of a standard. Below 1 cm, where the standard says nothing, the correction fades in
     * proportion, so that an empty weir carries nothing and every discharge has a head.
     */
    static double corrected(double head, double correction) {
        return head >= FADING ? head + correction : head * (1 + correction / FADING);
    }

    /**
     * Returns the share 1 − δ/h of the head that a boundary layer leaves. Below h = 2δ, far outside all limits, the tangent
     * h/4δ takes over, so that the share stays above 0 and rises.
     */
    static double share(double head, double displacement) {
        return head >= 2 * displacement ? 1 - displacement / head : head / (4 * displacement);
    }
}
