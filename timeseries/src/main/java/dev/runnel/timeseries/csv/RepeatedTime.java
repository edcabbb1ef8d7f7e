package dev.runnel.timeseries.csv;

import org.apiguardian.api.API;

/**
 * What to do with several lines of one instant. It depends on what a line is: a reading of a state, such as a depth of water, stands
 * once; an amount, such as the rain of a tip or a count of tips, stands as often as it is written, and a logger with a coarse clock
 * writes the tips of a downpour on one instant.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum RepeatedTime {
    /** Reject the later lines of values; bare instants are kept, each on its own. */
    REJECT,
    /**
     * Add the values of the later lines to those of the first, column by column; each such line counts as altered. A value that is
     * missing in one of the lines leaves the sum of the others suspect. Bare instants are kept.
     */
    ADD,
    /**
     * As {@link #ADD}, but a line that is the same as another one of its instant, letter by letter, is rejected as a duplicate. Right
     * where a line holds something that tells two tips apart, such as a running count; wrong where it does not.
     */
    ADD_UNLESS_SAME_LINE
}
