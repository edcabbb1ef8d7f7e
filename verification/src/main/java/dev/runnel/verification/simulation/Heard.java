package dev.runnel.verification.simulation;

import java.util.List;

/**
 * All that a watch said of a site.
 *
 * @param said the findings, in the order in which they were told
 * @param learned whether there was a baseline to judge against
 * @param refused readings that the watch would not take
 * @param note what was said of the baseline
 * @param broken whether the watch ended with an exception, which the note holds
 */
record Heard(List<Said> said, boolean learned, int refused, String note, boolean broken) {
    Heard(List<Said> said, boolean learned, int refused, String note) {
        this(said, learned, refused, note, false);
    }

    /** A watch that says nothing, for want of a baseline. */
    static Heard nothing(String why) {
        return new Heard(List.of(), false, 0, why);
    }

    /** A watch that broke. */
    static Heard broken(RuntimeException e) {
        StackTraceElement[] trace = e.getStackTrace();
        return new Heard(List.of(), false, 0, e + (trace.length > 1 ? " at " + trace[0] + ", " + trace[1] : ""), true);
    }
}
