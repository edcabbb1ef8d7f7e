package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.Table;
import java.util.Arrays;

/** A small published table kept as a resource, and straight-line interpolation in it. */
final class CoefficientTable {
    private final double[][] rows;

    private CoefficientTable(double[][] rows) {
        this.rows = rows;
    }

    /** Reads a table of numbers. */
    static CoefficientTable resource(String file) {
        return new CoefficientTable(Table.read(CoefficientTable.class, file).numbers());
    }

    /** Returns the rows whose first column has the value, without that column. */
    CoefficientTable where(double first) {
        return new CoefficientTable(Arrays.stream(rows)
                .filter(row -> row[0] == first)
                .map(row -> Arrays.copyOfRange(row, 1, row.length))
                .toArray(double[][]::new));
    }

    double[][] rows() {
        return rows;
    }

    double[] column(int index) {
        return Arrays.stream(rows).mapToDouble(row -> row[index]).toArray();
    }

    /** Straight line between the rows around x of column 0; the end values beyond the ends. */
    double held(double x, int column) {
        int last = rows.length - 1;
        return x <= rows[0][0] ? rows[0][column] : x >= rows[last][0] ? rows[last][column] : line(x, column);
    }

    /** Straight line between the rows around x; the first value below, the last piece prolonged above. */
    double prolonged(double x, int column) {
        return x <= rows[0][0] ? rows[0][column] : line(x, column);
    }

    private double line(double x, int column) {
        int i = 1;
        while (i < rows.length - 1 && x > rows[i][0]) {
            i++;
        }
        double[] a = rows[i - 1];
        double[] b = rows[i];
        double share = (x - a[0]) / (b[0] - a[0]);
        return a[column] + share * (b[column] - a[column]);
    }
}
