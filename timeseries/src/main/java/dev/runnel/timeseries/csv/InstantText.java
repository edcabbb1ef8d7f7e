package dev.runnel.timeseries.csv;

import dev.runnel.timeseries.EpochNanos;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Arrays;

/** Writes instants as {@link java.time.Instant#toString()} does; the day, which hardly ever changes, is kept. */
final class InstantText {
    private static final long SECOND = 1_000_000_000L;
    private static final int DAY = 86_400;
    private static final int DATE = 10;

    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

    /** "00:00:00". */
    private static final long ZERO_TIME = 0x30303A30_303A3030L;

    /** The first eight letters of the date, and the last eight with the T behind it. */
    private long dateLetters;

    private long lastDateLetters;
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
                byte[] letters = Arrays.copyOf(newDate, DATE + 1);
                letters[DATE] = 'T';
                dateLetters = (long) EIGHT.get(letters, 0);
                lastDateLetters = (long) EIGHT.get(letters, DATE + 1 - Long.BYTES);
            }
        }
        if (!plain) {
            return other(text, at, epochNanos);
        }
        EIGHT.set(text, at, dateLetters);
        EIGHT.set(text, at + DATE + 1 - Long.BYTES, lastDateLetters);
        int second = (int) (seconds - newDay * DAY);
        int minute = second / 60;
        int hour = minute / 60;
        EIGHT.set(text, at + DATE + 1, clock(hour, minute - 60 * hour, second - 60 * minute));
        text[at + 19] = 'Z';
        return at + 20;
    }

    /** Hour, minute and second as eight letters, two colons among them. */
    private static long clock(int hour, int minute, int second) {
        long all = hour | (long) minute << 24 | (long) second << 48;
        long tens = all * 103 >>> 10 & 0x000F00_000F00_000FL;
        return (tens | all - 10 * tens << 8) + ZERO_TIME;
    }

    private static int other(byte[] text, int at, long epochNanos) {
        byte[] written = EpochNanos.toInstant(epochNanos).toString().getBytes(StandardCharsets.US_ASCII);
        System.arraycopy(written, 0, text, at, written.length);
        return at + written.length;
    }
}
