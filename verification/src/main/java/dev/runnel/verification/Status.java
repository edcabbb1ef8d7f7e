package dev.runnel.verification;

import java.util.Locale;
import org.apiguardian.api.API;

/**
 * The outcome of a check.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum Status {
    /** The deviation is within the tolerance. */
    PASS,
    /** The deviation is larger, or the calculation refused the printed input. */
    FAIL,
    /** The row is known to be wrong in the source, with the reason given: shown, not judged. */
    EXCLUDED;

    /**
     * Returns the word the reports use.
     *
     * @return {@code pass}, {@code fail} or {@code excluded}
     */
    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
