package dev.runnel.verification.sweep;

import dev.runnel.internal.Text;
import java.util.Locale;

/**
 * What became of the cases of one sweep.
 *
 * @param name what was swept
 * @param cases how many were drawn
 * @param refused how many the library refused with a reason, as its documentation says it may
 * @param errors how many ended in another exception, in NaN, or beyond the bound
 * @param worst the greatest error of a case that was answered
 * @param bound the error that is promised
 * @param worstCase the case of the greatest error, or the first that failed
 */
record Line(String name, long cases, long refused, long errors, double worst, double bound, String worstCase) {
    static final String HEADER = "    cases  refused   errors     worst     bound  what";

    boolean failed() {
        // A sweep of which nearly everything is refused shows nothing.
        return errors > 0 || refused > 0.9 * cases;
    }

    Line and(Line other) {
        boolean mine = errors > 0 || (other.errors == 0 && worst >= other.worst);
        return new Line(
                name,
                cases + other.cases,
                refused + other.refused,
                errors + other.errors,
                Math.max(worst, other.worst),
                bound,
                mine ? worstCase : other.worstCase);
    }

    String toText() {
        return String.format(
                        Locale.ROOT,
                        "%9d%9d%9d%10s%10s  %s",
                        cases,
                        refused,
                        errors,
                        Text.significant(worst, 2),
                        Text.significant(bound, 2),
                        name)
                + (failed() ? System.lineSeparator() + "        FAILED: " + worstCase : "");
    }
}
