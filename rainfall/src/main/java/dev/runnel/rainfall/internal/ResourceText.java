package dev.runnel.rainfall.internal;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.apiguardian.api.API;

/** The tables that this library ships, as text and as columns of numbers. */
@API(status = API.Status.INTERNAL)
public final class ResourceText {
    private ResourceText() {}

    /**
     * Reads a resource.
     *
     * @param beside class beside which it lies
     * @param name its name
     * @return its text
     */
    public static String read(Class<?> beside, String name) {
        try (InputStream in = beside.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("this jar lacks " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * Reads one column of a table of numbers.
     *
     * @param beside class beside which it lies
     * @param name its name
     * @param column header of the column
     * @return the numbers, from the top
     */
    public static double[] column(Class<?> beside, String name, String column) {
        List<String> lines = new ArrayList<>();
        for (String line : read(beside, name).split("\\R")) {
            if (!line.isBlank() && line.charAt(0) != '#') {
                lines.add(line);
            }
        }
        int at = List.of(lines.get(0).split(",")).indexOf(column);
        if (at < 0) {
            throw new IllegalStateException("this jar lacks column " + column + " of " + name);
        }
        return lines.stream()
                .skip(1)
                .mapToDouble(line -> Double.parseDouble(line.split(",")[at]))
                .toArray();
    }
}
