package dev.runnel.rainfall.ddf;

import dev.runnel.base.Text;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** A table of factors that comes with this library: read by column, and linearly between rows. */
record FactorTable(double[] rows, double[] columns, double[][] values) {
    static FactorTable read(String resource) {
        try (InputStream in = FactorTable.class.getResourceAsStream(resource)) {
            if (in == null) {
                throw new IllegalStateException("this jar lacks " + resource);
            }
            return parse(new String(in.readAllBytes(), StandardCharsets.UTF_8));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static FactorTable parse(String text) {
        List<double[]> rows = new ArrayList<>();
        double[] columns = {};
        for (String line : text.lines().filter(each -> !each.startsWith("#")).toList()) {
            String[] cells = line.split(",", -1);
            if (columns.length == 0) {
                columns = numbers(Arrays.copyOfRange(cells, 1, cells.length));
            } else {
                rows.add(numbers(cells));
            }
        }
        return new FactorTable(
                rows.stream().mapToDouble(row -> row[0]).toArray(),
                columns,
                rows.stream().map(row -> Arrays.copyOfRange(row, 1, row.length)).toArray(double[][]::new));
    }

    private static double[] numbers(String[] cells) {
        return Arrays.stream(cells).mapToDouble(Double::parseDouble).toArray();
    }

    double firstRow() {
        return rows[0];
    }

    double lastRow() {
        return rows[rows.length - 1];
    }

    int column(String name, double head) {
        int found = Arrays.binarySearch(columns, head);
        if (found < 0) {
            throw new IllegalArgumentException(
                    name + " must be one of " + Arrays.toString(columns) + ", was " + Text.number(head));
        }
        return found;
    }

    double value(double row, int column) {
        int found = Arrays.binarySearch(rows, row);
        if (found >= 0) {
            return values[found][column];
        }
        int upper = -found - 1;
        double share = (row - rows[upper - 1]) / (rows[upper] - rows[upper - 1]);
        return values[upper - 1][column] + share * (values[upper][column] - values[upper - 1][column]);
    }
}
