package dev.runnel.hydraulics.internal;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apiguardian.api.API;

/** A small table of this library's own: CSV beside the class that uses it, lines of {@code #} tell the source. */
@API(status = API.Status.INTERNAL)
public final class Table {
    private final List<String> head;
    private final List<String[]> rows;

    private Table(List<String> head, List<String[]> rows) {
        this.head = head;
        this.rows = rows;
    }

    /**
     * Reads a table. No cell holds a comma or quotes.
     *
     * @param owner class beside which the file lies
     * @param name file name
     * @return the table
     * @throws IllegalStateException if there is no such file
     */
    public static Table read(Class<?> owner, String name) {
        InputStream stream = owner.getResourceAsStream(name);
        if (stream == null) {
            throw new IllegalStateException("no table " + name + " beside " + owner.getName());
        }
        List<String[]> lines = new ArrayList<>();
        try (var reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                if (!line.startsWith("#")) {
                    lines.add(line.split(",", -1));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return new Table(List.of(lines.get(0)), List.copyOf(lines.subList(1, lines.size())));
    }

    /**
     * Returns a column as numbers.
     *
     * @param column name in the first line
     * @return a new array
     */
    public double[] numbers(String column) {
        return texts(column).stream().mapToDouble(Double::parseDouble).toArray();
    }

    /**
     * Returns all cells as numbers.
     *
     * @return a new array, row by row
     */
    public double[][] numbers() {
        return rows.stream()
                .map(row -> Arrays.stream(row).mapToDouble(Double::parseDouble).toArray())
                .toArray(double[][]::new);
    }

    /**
     * Returns a column as text.
     *
     * @param column name in the first line
     * @return the cells
     */
    public List<String> texts(String column) {
        int index = head.indexOf(column);
        List<String> cells = new ArrayList<>();
        rows.forEach(row -> cells.add(row[index]));
        return List.copyOf(cells);
    }
}
