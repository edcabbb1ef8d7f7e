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

    private static final int MOST_GROWTH = 8;

    private final List<CsvColumn> columns;
    private final TreeMap<Long, Row> late = new TreeMap<>();
    private final double[][] values;
    private final byte[][] qualities;
    private long[] times = new long[1024];
    private int size;

    RecordTable(List<CsvColumn> columns) {
        this.columns = columns;
        this.values = new double[columns.size()][times.length];
        this.qualities = new byte[columns.size()][times.length];
    }

    boolean isEmpty() {
        return size == 0;
    }

    int size() {
        return size;
    }

    boolean isFull() {
        return size == times.length;
    }

    long lastTime() {
        return times[size - 1];
    }

    void append(long time, Row row) {
        if (isFull()) {
            grow(size + (size >> 1));
        }
        times[size] = time;
        for (int i = 0; i < values.length; i++) {
            values[i][size] = row.values[i];
            qualities[i][size] = row.qualities[i];
        }
        size++;
    }

    /** Adds a row to the one at exactly that time, column by column. */
    void addTo(long time, Row row) {
        int at = Arrays.binarySearch(times, 0, size, time);
        if (at < 0) {
            Row present = late.get(time);
            for (int i = 0; i < values.length && present != null; i++) {
                present.qualities[i] = joined(present.values[i], present.qualities[i], row, i);
                present.values[i] = sum(present.values[i], row.values[i]);
            }
            return;
        }
        for (int i = 0; i < values.length; i++) {
            qualities[i][at] = joined(values[i][at], qualities[i][at], row, i);
            values[i][at] = sum(values[i][at], row.values[i]);
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
        int at = Arrays.binarySearch(times, 0, size, time);
        if (at >= 0) {
            return List.of(row(at));
        }
        Row row = late.get(time);
        return row == null ? List.of() : List.of(row);
    }

    private Row row(int at) {
        Row row = Row.ofSize(values.length);
        for (int i = 0; i < values.length; i++) {
            row.values[i] = values[i][at];
            row.qualities[i] = qualities[i][at];
        }
        return row;
    }

    /** Makes room for so many rows, though for no more than eight times those there are: it is a guess. */
    void growTo(int rows) {
        grow(Math.max(size + (size >> 1), (int) Math.min(rows, MOST_GROWTH * (long) size)));
    }

    private void grow(int capacity) {
        times = Arrays.copyOf(times, capacity);
        for (int i = 0; i < values.length; i++) {
            values[i] = Arrays.copyOf(values[i], capacity);
            qualities[i] = Arrays.copyOf(qualities[i], capacity);
        }
    }

    Map<String, Series> toSeries() {
        mergeLate();
        Map<String, Series> series = new LinkedHashMap<>();
        Series.empty(); // loads the keeper
        long[] exact = Arrays.copyOf(times, size);
        // Rows are in order of time, and what a cell holds is a number or missing: nothing is left to check.
        for (int i = 0; i < values.length; i++) {
            Object right = SeriesArrays.keeper()
                    .ofRightReadings(exact, Arrays.copyOf(values[i], size), Arrays.copyOf(qualities[i], size));
            series.put(columns.get(i).name(), (Series) right);
        }
        return series;
    }

    /** Moves rows from the back, so that each moves once. */
    private void mergeLate() {
        int from = size - 1;
        int to = size + late.size() - 1;
        if (to >= times.length) {
            grow(to + 1);
        }
        size += late.size();
        while (!late.isEmpty()) {
            if (from >= 0 && times[from] > late.lastKey()) {
                times[to] = times[from];
                for (int i = 0; i < values.length; i++) {
                    values[i][to] = values[i][from];
                    qualities[i][to] = qualities[i][from];
                }
                from--;
            } else {
                Map.Entry<Long, Row> last = late.pollLastEntry();
                times[to] = last.getKey();
                for (int i = 0; i < values.length; i++) {
                    values[i][to] = last.getValue().values[i];
                    qualities[i][to] = last.getValue().qualities[i];
                }
            }
            to--;
        }
    }
}
