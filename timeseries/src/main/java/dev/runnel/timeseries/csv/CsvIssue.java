package dev.runnel.timeseries.csv;

import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Something about one line that was not as it should be, and what was done about it. Immutable and thread-safe.
 *
 * @param line line in the file, the first is 1
 * @param column position in the line, the first is 1; 0 for the line as a whole
 * @param kind what it is
 * @param text what stands there and what was done, for a person
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record CsvIssue(long line, int column, Kind kind, String text) {
    /**
     * Checks that nothing is missing.
     *
     * @param line line in the file, the first is 1
     * @param column position in the line, the first is 1; 0 for the line as a whole
     * @param kind what it is
     * @param text what stands there and what was done, for a person
     */
    public CsvIssue {
        Objects.requireNonNull(kind, "kind");
        Objects.requireNonNull(text, "text");
    }

    /**
     * What can be wrong with a line.
     *
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public enum Kind {
        /** A quote is not closed on the line, or something follows a closed quote; rejected. */
        UNREADABLE_LINE("unreadable line"),
        /** The line ends before a column that is wanted; rejected. */
        TOO_FEW_COLUMNS("too few columns"),
        /** The line has something beyond the last column of the header, as a decimal comma makes it; rejected. */
        TOO_MANY_COLUMNS("too many columns"),
        /** The time is not in the form the layout states, or not in the calendar; rejected. */
        UNREADABLE_TIME("unreadable time"),
        /** The local time occurred twice at a clock change; rejected, or decided as the layout says and altered. */
        AMBIGUOUS_TIME("ambiguous time"),
        /** The local time never occurred, because clocks went forward over it; rejected. */
        SKIPPED_TIME("skipped time"),
        /** The time is before that of an earlier line; rejected, or sorted as the layout says and altered. */
        OUT_OF_ORDER("out of order"),
        /** The stamp is one of another time than the lines before and after; rejected, where the layout says so. */
        DISPLACED_STAMP("stamp out of place"),
        /** Time and values of an earlier line again; rejected. */
        DUPLICATE("duplicate"),
        /** Time of an earlier line with other values; rejected, the earlier line stands. */
        CONFLICTING_DUPLICATE("conflicting duplicate"),
        /** The same instant again, in a file of bare instants, or of amounts that the layout says are added; accepted. */
        REPEATED_INSTANT("repeated instant"),
        /** A value is not a number; the reading is taken as missing, the line altered. */
        UNREADABLE_NUMBER("unreadable number"),
        /** A quality is not one of the words, or does not fit the value; taken as suspect, the line altered. */
        UNREADABLE_QUALITY("unreadable quality");

        private final String text;

        Kind(String text) {
            this.text = text;
        }

        /**
         * Returns the kind in words.
         *
         * @return for example {@code conflicting duplicate}
         */
        public String toText() {
            return text;
        }
    }

    @Override
    public String toString() {
        return "line " + line + (column > 0 ? ", column " + column : "") + ": " + kind.toText() + ", " + text;
    }
}
