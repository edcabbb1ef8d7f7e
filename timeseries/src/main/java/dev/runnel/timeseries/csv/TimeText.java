package dev.runnel.timeseries.csv;

/** What a text of time says, before any zone is asked: a local date and time, and perhaps an offset. */
abstract sealed class TimeText permits IsoTime, NumberTime, PatternTime {
    /** Seconds from 1970-01-01T00:00 to the local date and time, as if every day had 86 400. */
    long localSecond;

    /** Nanosecond within the second. */
    int nano;

    /** Whether the text has an offset. */
    boolean hasOffset;

    /** The offset from UTC, s. */
    int offset;

    /** Reads; false if the text is not a time in this form. */
    abstract boolean parse(char[] text, int from, int to);

    /** What a time in this form looks like, for messages. */
    abstract String form();
}
