package dev.runnel.timeseries.csv;

import dev.runnel.timeseries.EpochNanos;
import java.io.IOException;
import java.io.Writer;
import java.time.LocalDate;

/** Writes instants as {@link java.time.Instant#toString()} does; the day, which hardly ever changes, is kept. */
final class InstantText {
    private static final long SECOND = 1_000_000_000L;
    private static final int DAY = 86_400;
    private static final int DATE = 10;

    /** {@code yyyy-MM-ddThh:mm:ssZ}. */
    private final char[] text = new char[20];

    private long day = Long.MIN_VALUE;
    private boolean plain;

    void write(Writer out, long epochNanos) throws IOException {
        long seconds = Math.floorDiv(epochNanos, SECOND);
        if (seconds * SECOND != epochNanos) {
            out.write(EpochNanos.toInstant(epochNanos).toString());
            return;
        }
        long newDay = Math.floorDiv(seconds, DAY);
        if (newDay != day) {
            day = newDay;
            String date = LocalDate.ofEpochDay(newDay).toString();
            plain = date.length() == DATE;
            if (plain) {
                date.getChars(0, DATE, text, 0);
            }
        }
        if (!plain) {
            out.write(EpochNanos.toInstant(epochNanos).toString());
            return;
        }
        int second = (int) (seconds - newDay * DAY);
        text[DATE] = 'T';
        two(11, second / 3600);
        text[13] = ':';
        two(14, second / 60 % 60);
        text[16] = ':';
        two(17, second % 60);
        text[19] = 'Z';
        out.write(text);
    }

    private void two(int at, int number) {
        text[at] = (char) ('0' + number / 10);
        text[at + 1] = (char) ('0' + number % 10);
    }
}
