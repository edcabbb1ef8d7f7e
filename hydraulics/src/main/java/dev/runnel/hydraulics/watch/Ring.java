package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;

/** The last rows of a table of numbers, each with a number of its own that rises. */
final class Ring {
    private final int capacity;
    private final int columns;
    private final long[] numbers;
    private final double[] values;
    private int first;
    private int size;

    Ring(int capacity, int columns) {
        this.capacity = capacity;
        this.columns = columns;
        this.numbers = new long[capacity];
        this.values = new double[capacity * columns];
    }

    void add(long number, double... row) {
        int at = (first + size) % capacity;
        if (size == capacity) {
            first = (first + 1) % capacity;
        } else {
            size++;
        }
        numbers[at] = number;
        System.arraycopy(row, 0, values, at * columns, columns);
    }

    int size() {
        return size;
    }

    long number(int index) {
        return numbers[place(index)];
    }

    double value(int index, int column) {
        return values[place(index) * columns + column];
    }

    /** Where a row lies; a division would take most of the time of a sum. */
    private int place(int index) {
        int place = first + index;
        return place < capacity ? place : place - capacity;
    }

    /** Index of the first row whose number is not less. */
    int from(long number) {
        int low = 0;
        int high = size;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (number(middle) < number) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }

    /** The values of a column from an index on. */
    double[] column(int from, int column) {
        return column(from, size, column);
    }

    /** The values of a column from one index up to another. */
    double[] column(int from, int to, int column) {
        double[] found = new double[to - from];
        for (int i = 0; i < found.length; i++) {
            found[i] = value(from + i, column);
        }
        return found;
    }

    void dropBefore(long number) {
        int drop = from(number);
        first = (first + drop) % capacity;
        size -= drop;
    }

    /** Drops all rows whose number is not less. */
    void dropFrom(long number) {
        size = from(number);
    }

    void dropLast() {
        size--;
    }

    void clear() {
        size = 0;
    }

    void write(StateText text, String key) {
        long[] rows = new long[size];
        double[] cells = new double[size * columns];
        for (int i = 0; i < size; i++) {
            rows[i] = number(i);
            for (int c = 0; c < columns; c++) {
                cells[i * columns + c] = value(i, c);
            }
        }
        text.with(key + "Numbers", rows).with(key + "Values", cells);
    }

    void read(StateText text, String key) {
        long[] rows = text.counts(key + "Numbers");
        double[] cells = text.numbers(key + "Values");
        if (rows.length > capacity || cells.length != rows.length * columns) {
            throw new IllegalArgumentException("state " + key + " must hold up to " + capacity + " rows of " + columns
                    + " values, was " + rows.length + " rows and " + cells.length + " values");
        }
        first = 0;
        size = rows.length;
        System.arraycopy(rows, 0, numbers, 0, size);
        System.arraycopy(cells, 0, values, 0, cells.length);
    }
}
