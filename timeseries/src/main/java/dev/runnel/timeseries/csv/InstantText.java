package dev.runnel.timeseries.csv;

import dev.runnel.timeseries.EpochNanos;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;

/** Writes instants as {@link java.time.Instant#toString()} does; the day, which hardly ever changes, is kept. */
final class InstantText {
    private static final long SECOND = 1_000_000_000L;
    private static final int DAY = 86_400;
    private static final int DATE = 10;

    private final byte[] date = new byte[DATE];
    private long day = Long.MIN_VALUE;
    private boolean plain;

    /** Puts an instant into a text that has room for it, and returns the place behind it. */
    int write(byte[] text, int at, long epochNanos) {
        long seconds = Math.floorDiv(epochNanos, SECOND);
        if (seconds * SECOND != epochNanos) {
            return other(text, at, epochNanos);
        }
        long newDay = Math.floorDiv(seconds, DAY);
        if (newDay != day) {
            day = newDay;
            byte[] newDate = LocalDate.ofEpochDay(newDay).toString().getBytes(StandardCharsets.US_ASCII);
            plain = newDate.length == DATE;
            if (plain) {
                System.arraycopy(newDate, 0, date, 0, DATE);
            }
        }
        if (!plain) {
            return other(text, at, epochNanos);
        }
        System.arraycopy(date, 0, text, at, DATE);
        int second = (int) (seconds - newDay * DAY);
        int minute = second / 60;
        int hour = minute / 60;
        text[at + DATE] = 'T';
        two(text, at + 11, hour);
        text[at + 13] = ':';
        two(text, at + 14, minute - 60 * hour);
        text[at + 16] = ':';
        two(text, at + 17, second - 60 * minute);
        text[at + 19] = 'Z';
        return at + 20;
    }

    private static int other(byte[] text, int at, long epochNanos) {
        byte[] written = EpochNanos.toInstant(epochNanos).toString().getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(written, 0, text, at, written.length);
        return at + written.length;
    }

    private static void two(byte[] text, int at, int number) {
        int tens = number / 10;
        text[at] = (byte) ('0' + tens);
        text[at + 1] = (byte) ('0' + number - 10 * tens);
    }
}
