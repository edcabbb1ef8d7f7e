package dev.runnel.timeseries.csv;

import dev.runnel.internal.SeriesArrays;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** Collects rows of values in order of time; late rows wait aside until all is read. */
final class RecordTable {
    /** The values of one line. */
    record Row(double[] values, byte[] qualities) {
        static Row ofSize(int columns) {
            return new Row(new double[columns], new byte[columns]);
        }

        Row copy() {
            return new Row(values.clone(), qualities.clone());
        }

        boolean isSameAs(Row other) {
            return Arrays.equals(values, other.values) && Arrays.equals(qualities, other.qualities);
        }
    }

    private static final byte UNCHECKED = Quality.UNCHECKED.toCode();
    private static final byte MISSING = Quality.MISSING.toCode();
    private static final int FIRST_ROOM = 1024;
    private static final int MOST_GUESSED = 1 << 21;

    /** Rows by the column, with room for more; whoever fills them in keeps them in order of time. */
    static final class Rows {
        long[] times;
        final double[][] values;
        final byte[][] qualities;
        int size;

        Rows(int columns, int room) {
            times = new long[room];
            values = new double[columns][room];
            qualities = new byte[columns][room];
        }

        /** Gives the rows from one on their qualities: unchecked, or missing where there is no value, if that may be. */
        void judge(int first, boolean hasGaps) {
            for (int i = 0; i < values.length; i++) {
                double[] ofColumn = values[i];
                byte[] judged = qualities[i];
                Arrays.fill(judged, first, size, UNCHECKED);
                for (int row = first; hasGaps && row < size; row++) {
                    judged[row] = Double.isNaN(ofColumn[row]) ? MISSING : UNCHECKED;
                }
            }
        }

        private void grow(int room) {
            times = Arrays.copyOf(times, room);
            for (int i = 0; i < values.length; i++) {
                values[i] = Arrays.copyOf(values[i], room);
                qualities[i] = Arrays.copyOf(qualities[i], room);
            }
        }

        /** Takes away the room that is left. */
        private void fit() {
            if (times.length > size) {
                grow(size);
            }
        }

        private Row row(int at) {
            Row row = Row.ofSize(values.length);
            copy(at, row);
            return row;
        }

        /** Copies a row out. */
        void copy(int at, Row row) {
            for (int i = 0; i < values.length; i++) {
                row.values[i] = values[i][at];
                row.qualities[i] = qualities[i][at];
            }
        }

        private void set(int at, long time, Row row) {
            times[at] = time;
            for (int i = 0; i < values.length; i++) {
                values[i][at] = row.values[i];
                qualities[i][at] = row.qualities[i];
            }
        }
    }

    private final List<CsvColumn> columns;
    private final TreeMap<Long, Row> late = new TreeMap<>();
    private final Rows rows;

    RecordTable(List<CsvColumn> columns) {
        this.columns = columns;
        rows = new Rows(columns.size(), FIRST_ROOM);
    }

    boolean isEmpty() {
        return rows.size == 0;
    }

    int size() {
        return rows.size;
    }

    long lastTime() {
        return rows.times[rows.size - 1];
    }

    void append(long time, Row row) {
        if (rows.size == rows.times.length) {
            rows.grow(rows.size + (rows.size >> 1));
        }
        rows.set(rows.size, time, row);
        rows.size++;
    }

    /**
     * Returns the rows with room for some more to be filled in by the caller, for one at the least; makes room for as many as
     * are expected, so that arrays of just that length need not be copied at the end.
     */
    Rows room(int least, int expected) {
        int needed = rows.size + Math.max(1, Math.min(least, expected - rows.size));
        if (needed > rows.times.length) {
            // A guess, by which no more than a bounded part of the memory is taken.
            rows.grow(Math.max(needed + (needed >> 1), Math.min(expected, Math.max(MOST_GUESSED, (int)
                    Math.min(8L * rows.size, Integer.MAX_VALUE / 2)))));
        }
        return rows;
    }

    /** Adds a row to the one at exactly that time, column by column. */
    void addTo(long time, Row row) {
        int at = Arrays.binarySearch(rows.times, 0, rows.size, time);
        Row present = at >= 0 ? rows.row(at) : late.get(time);
        for (int i = 0; i < columns.size() && present != null; i++) {
            present.qualities[i] = joined(present.values[i], present.qualities[i], row, i);
            present.values[i] = sum(present.values[i], row.values[i]);
        }
        if (at >= 0 && present != null) {
            rows.set(at, time, present);
        }
    }

    private static double sum(double one, double other) {
        return Double.isNaN(one) ? other : Double.isNaN(other) ? one : one + other;
    }

    /** The worse of two qualities; a sum of which a part is missing is suspect. */
    private static byte joined(double value, byte quality, Row row, int column) {
        boolean isMissing = Double.isNaN(value);
        if (isMissing != Double.isNaN(row.values[column])) {
            return Quality.SUSPECT.toCode();
        }
        return Quality.ofCode(quality)
                .worst(Quality.ofCode(row.qualities[column]))
                .toCode();
    }

    void insertLate(long time, Row row) {
        late.put(time, row.copy());
    }

    /** Returns the row at exactly that time, as a list of one or none. */
    List<Row> find(long time) {
        int at = Arrays.binarySearch(rows.times, 0, rows.size, time);
        if (at >= 0) {
            return List.of(rows.row(at));
        }
        Row row = late.get(time);
        return row == null ? List.of() : List.of(row);
    }

    Map<String, Series> toSeries() {
        mergeLate();
        Map<String, Series> series = new LinkedHashMap<>();
        Series.empty(); // loads the keeper
        rows.fit();
        // Rows are in order of time, and what a cell holds is a number or missing: nothing is left to check.
        for (int i = 0; i < columns.size(); i++) {
            Object right = SeriesArrays.keeper().ofRightReadings(rows.times, rows.values[i], rows.qualities[i]);
            series.put(columns.get(i).name(), (Series) right);
        }
        return series;
    }

    /** Moves rows from the back, so that each moves once. */
    private void mergeLate() {
        int from = rows.size - 1;
        int to = rows.size + late.size() - 1;
        if (to >= rows.times.length) {
            rows.grow(to + 1);
        }
        rows.size += late.size();
        while (!late.isEmpty()) {
            if (from >= 0 && rows.times[from] > late.lastKey()) {
                rows.set(to, rows.times[from], rows.row(from));
                from--;
            } else {
                Map.Entry<Long, Row> last = late.pollLastEntry();
                rows.set(to, last.getKey(), last.getValue());
            }
            to--;
        }
    }
}
