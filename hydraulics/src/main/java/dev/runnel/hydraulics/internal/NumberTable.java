package dev.runnel.hydraulics.internal;

import dev.runnel.internal.Interpolation;
import java.util.Arrays;
import java.util.List;
import org.apiguardian.api.API;

/** A small published table of numbers kept as a resource, and straight-line interpolation in it. */
@API(status = API.Status.INTERNAL)
public final class NumberTable {
    private final double[][] rows;

    private NumberTable(double[][] rows) {
        this.rows = rows;
    }

    /**
     * Reads a table of numbers.
     *
     * @param owner class beside which the file lies
     * @param file its name
     * @return the table
     */
    public static NumberTable read(Class<?> owner, String file) {
        return new NumberTable(Table.read(owner, file).numbers());
    }

    /**
     * Returns the rows whose first column has a value, without that column.
     *
     * @param first the value
     * @return the part of the table
     */
    public NumberTable where(double first) {
        return new NumberTable(Arrays.stream(rows)
                .filter(row -> row[0] == first)
                .map(row -> Arrays.copyOfRange(row, 1, row.length))
                .toArray(double[][]::new));
    }

    /**
     * Returns the rows.
     *
     * @return copies of the rows, in the order of the file
     */
    public List<double[]> rows() {
        return Arrays.stream(rows).map(double[]::clone).toList();
    }

    /**
     * Returns the last value of a column.
     *
     * @param column place of the column, from 0
     * @return its value in the last row
     */
    public double last(int column) {
        return rows[rows.length - 1][column];
    }

    /**
     * Returns the value of a column by a straight line between the rows around a value of column 0; the end values beyond
     * the ends.
     *
     * @param x value of column 0
     * @param column place of the column, from 0
     * @return the value
     */
    public double held(double x, int column) {
        int last = rows.length - 1;
        return x <= rows[0][0] ? rows[0][column] : x >= rows[last][0] ? rows[last][column] : line(x, column);
    }

    /**
     * Returns the value of a column by a straight line; the first value below, the last piece prolonged above.
     *
     * @param x value of column 0
     * @param column place of the column, from 0
     * @return the value
     */
    public double prolonged(double x, int column) {
        return x <= rows[0][0] ? rows[0][column] : line(x, column);
    }

    private double line(double x, int column) {
        int i = 1;
        while (i < rows.length - 1 && x > rows[i][0]) {
            i++;
        }
        double[] a = rows[i - 1];
        double[] b = rows[i];
        return Interpolation.between(x, a[0], a[column], b[0], b[column]);
    }
}
