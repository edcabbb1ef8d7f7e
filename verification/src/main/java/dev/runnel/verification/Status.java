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
    /** Shown but not judged, with the reason given: a misprint, a slip of the source, or a known deviation. */
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
