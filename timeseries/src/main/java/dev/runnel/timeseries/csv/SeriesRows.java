package dev.runnel.timeseries.csv;

import dev.runnel.internal.SeriesArrays;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import java.io.IOException;
import java.io.OutputStream;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;

/** Writes the rows of series: times, numbers and words, all of them ASCII, so that bytes are put down as they are found. */
final class SeriesRows {
    private static final int ROOM = 1 << 16;

    /** No number or instant is longer. */
    private static final int LONGEST = 400;

    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);

    /** A comma and the word of a quality, by its code, as two times eight letters, and how many of them count. */
    private static final long[] FIRST_LETTERS = new long[Quality.values().length];

    private static final long[] NEXT_LETTERS = new long[FIRST_LETTERS.length];
    private static final int[] LENGTHS = new int[FIRST_LETTERS.length];

    static {
        for (Quality each : Quality.values()) {
            byte[] word = ascii("," + each.toText());
            byte[] padded = Arrays.copyOf(word, 2 * Long.BYTES);
            FIRST_LETTERS[each.toCode()] = (long) EIGHT.get(padded, 0);
            NEXT_LETTERS[each.toCode()] = (long) EIGHT.get(padded, Long.BYTES);
            LENGTHS[each.toCode()] = word.length;
        }
    }

    private final int decimals;
    private final boolean quality;
    private final long[][] times;
    private final double[][] values;
    private final byte[][] qualities;
    private final KnownNumbers[] known;
    private final InstantText clock = new InstantText();
    private final byte[] text = new byte[ROOM];
    private int size;

    SeriesRows(int decimals, boolean quality, Collection<Series> series) {
        this.decimals = decimals;
        this.quality = quality;
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        this.times = series.stream().map(keeper::times).toArray(long[][]::new);
        this.values = series.stream().map(keeper::values).toArray(double[][]::new);
        this.known = series.stream().map(each -> new KnownNumbers()).toArray(KnownNumbers[]::new);
        this.qualities = series.stream().map(keeper::qualities).toArray(byte[][]::new);
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    void writeTo(OutputStream out) throws IOException {
        int[] next = new int[times.length];
        boolean together = share();
        int first = earliest(next);
        while (first >= 0) {
            row(out, times[first][next[first]], next, together);
            first = together ? next[0] < times[0].length ? 0 : -1 : earliest(next);
        }
        out.write(text, 0, size);
        size = 0;
    }

    private void row(OutputStream out, long now, int[] next, boolean together) throws IOException {
        room(out);
        int place = clock.write(text, size, now);
        for (int i = 0; i < times.length; i++) {
            int at = next[i];
            text[place++] = ',';
            if (together || at < times[i].length && times[i][at] == now) {
                place = number(known[i], values[i][at], place);
                if (quality) {
                    place = word(qualities[i][at], place);
                }
                next[i]++;
            } else if (quality) {
                text[place++] = ',';
            }
            size = place;
            room(out);
            place = size;
        }
        text[place] = '\n';
        size = place + 1;
    }

    /** Whether all columns have the same instants, as those of a record have. */
    private boolean share() {
        for (long[] each : times) {
            if (each != times[0]) {
                return false;
            }
        }
        return times.length > 0;
    }

    /** Returns the column whose next reading comes first, or -1 if all are at their ends. */
    private int earliest(int[] next) {
        int first = -1;
        for (int i = 0; i < next.length; i++) {
            if (next[i] < times[i].length && (first < 0 || times[i][next[i]] < times[first][next[first]])) {
                first = i;
            }
        }
        return first;
    }

    /** Makes room for the next piece. */
    private void room(OutputStream out) throws IOException {
        if (size > ROOM - 2 * LONGEST) {
            out.write(text, 0, size);
            size = 0;
        }
    }

    private int number(KnownNumbers written, double value, int at) {
        int known = written.write(value, text, at);
        if (known >= 0) {
            return known;
        }
        int end = put(value, at);
        written.learn(value, text, at, end);
        return end;
    }

    private int put(double value, int at) {
        if (Double.isNaN(value)) {
            return at;
        }
        int end = decimals == CsvWriter.SHORTEST ? -1 : Text.fixed(value, decimals, text, at);
        if (end >= 0) {
            return end;
        }
        byte[] number = ascii(decimals == CsvWriter.SHORTEST ? Text.number(value) : Text.fixed(value, decimals));
        System.arraycopy(number, 0, text, at, number.length);
        return at + number.length;
    }

    private int word(byte code, int at) {
        EIGHT.set(text, at, FIRST_LETTERS[code]);
        EIGHT.set(text, at + Long.BYTES, NEXT_LETTERS[code]);
        return at + LENGTHS[code];
    }
}
