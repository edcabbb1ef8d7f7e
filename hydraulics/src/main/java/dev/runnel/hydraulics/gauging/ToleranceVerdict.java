package dev.runnel.hydraulics.gauging;

import org.apiguardian.api.API;

/**
 * Whether an error lies within a stated tolerance, with regard to the uncertainty of the check.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum ToleranceVerdict {
    /** Within the tolerance even with the expanded uncertainty added. */
    WITHIN,
    /** Outside the tolerance even with the expanded uncertainty taken off. */
    OUTSIDE,
    /** The uncertainty of the check does not let one say. */
    UNDECIDED;

    static ToleranceVerdict of(double error, double uncertainty, double tolerance) {
        return Math.abs(error) + uncertainty <= tolerance
                ? WITHIN
                : Math.abs(error) - uncertainty > tolerance ? OUTSIDE : UNDECIDED;
    }
}
