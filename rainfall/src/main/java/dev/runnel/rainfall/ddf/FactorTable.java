package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Interpolation;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A table of factors, read linearly between rows. A blank cell is NaN. */
record FactorTable(double[] rows, double[][] values) {
    /** What a cell must be, given the line before it and the cells to its left. */
    interface CellCheck {
        void check(double row, int column, FactorTable above, double[] values);
    }

    /** Reads the lines after the header. */
    static FactorTable of(NumberLines text, int columns, boolean blanks, CellCheck check) {
        FactorTable table = new FactorTable(new double[0], new double[0][]);
        for (NumberLines.Line line : text.lines().subList(1, text.lines().size())) {
            text.requireColumns(line, columns + 1);
            FactorTable above = table;
            double row = text.number(line, 1);
            text.checked(line, 1, () -> above.requireNext(row));
            double[] values = new double[columns];
            for (int column = 2; column <= line.cells().length; column++) {
                int at = column - 2;
                boolean blank = blanks && line.cell(column).isEmpty();
                values[at] = blank ? Double.NaN : text.number(line, column);
                if (!blank) {
                    text.checked(line, column, () -> check.check(row, at, above, values));
                }
            }
            table = above.with(row, values);
        }
        if (table.rows.length == 0) {
            throw new IllegalArgumentException(text.source() + ": must hold at least one line of factors, had none");
        }
        return table;
    }

    private void requireNext(double row) {
        double before = rows.length == 0 ? 0 : lastRow();
        if (!(row > before && row < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "must be above " + Text.number(before) + " and finite, was " + Text.number(row));
        }
    }

    private FactorTable with(double row, double[] rowValues) {
        double[] more = Arrays.copyOf(rows, rows.length + 1);
        more[rows.length] = row;
        List<double[]> moreValues = new ArrayList<>(Arrays.asList(values));
        moreValues.add(rowValues);
        return new FactorTable(more, moreValues.toArray(double[][]::new));
    }

    double firstRow() {
        return rows[0];
    }

    double lastRow() {
        return rows[rows.length - 1];
    }

    double[] row(double row) {
        int found = Arrays.binarySearch(rows, row);
        if (found >= 0) {
            return values[found].clone();
        }
        int upper = -found - 1;
        double[] between = new double[values[upper].length];
        for (int i = 0; i < between.length; i++) {
            between[i] =
                    Interpolation.between(row, rows[upper - 1], values[upper - 1][i], rows[upper], values[upper][i]);
        }
        return between;
    }
}
