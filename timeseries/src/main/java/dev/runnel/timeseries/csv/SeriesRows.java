package dev.runnel.timeseries.csv;

import dev.runnel.internal.SeriesArrays;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Collection;

/** Writes the rows of series: times, numbers and words, all of them ASCII, so that bytes are put down as they are found. */
final class SeriesRows {
    private static final int ROOM = 1 << 16;

    /** No number or instant is longer. */
    private static final int LONGEST = 400;

    /** By their codes. */
    private static final byte[][] QUALITIES =
            Arrays.stream(Quality.values()).map(each -> ascii(each.toText())).toArray(byte[][]::new);

    private final int decimals;
    private final boolean quality;
    private final long[][] times;
    private final double[][] values;
    private final byte[][] qualities;
    private final InstantText clock = new InstantText();
    private final byte[] text = new byte[ROOM];
    private int size;

    SeriesRows(int decimals, boolean quality, Collection<Series> series) {
        this.decimals = decimals;
        this.quality = quality;
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        this.times = series.stream().map(keeper::times).toArray(long[][]::new);
        this.values = series.stream().map(keeper::values).toArray(double[][]::new);
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
            long now = times[first][next[first]];
            room(out);
            size = clock.write(text, size, now);
            for (int i = 0; i < times.length; i++) {
                int at = next[i];
                boolean here = together || at < times[i].length && times[i][at] == now;
                text[size++] = ',';
                if (here) {
                    number(values[i][at]);
                    next[i]++;
                }
                if (quality) {
                    text[size++] = ',';
                    if (here) {
                        word(QUALITIES[qualities[i][at]]);
                    }
                }
                room(out);
            }
            text[size++] = '\n';
            first = together ? next[0] < times[0].length ? 0 : -1 : earliest(next);
        }
        out.write(text, 0, size);
        size = 0;
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

    private void number(double value) {
        if (Double.isNaN(value)) {
            return;
        }
        int end = decimals == CsvWriter.SHORTEST ? -1 : Text.fixed(value, decimals, text, size);
        if (end >= 0) {
            size = end;
        } else {
            word(ascii(decimals == CsvWriter.SHORTEST ? Text.number(value) : Text.fixed(value, decimals)));
        }
    }

    private void word(byte[] word) {
        System.arraycopy(word, 0, text, size, word.length);
        size += word.length;
    }
}
