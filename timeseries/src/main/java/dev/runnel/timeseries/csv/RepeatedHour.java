package dev.runnel.timeseries.csv;

import org.apiguardian.api.API;

/**
 * What to do with a local time that occurs twice, because clocks went back.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum RepeatedHour {
    /** Reject the line: which of the two was meant is not written there. */
    REJECT,
    /** Take the first pass; the line counts as altered. */
    EARLIER,
    /** Take the second pass; the line counts as altered. */
    LATER,
    /**
     * Take the first pass while time goes forward, the second once it has gone back; the line counts as altered. Right
     * for a complete record in the order in which it was logged; wrong where the first pass is missing.
     */
    BY_ORDER
}
