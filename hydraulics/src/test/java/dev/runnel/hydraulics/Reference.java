package dev.runnel.hydraulics;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Rows of a file of reference values, which tells in its first line how it was made. */
public final class Reference {
    private Reference() {}

    public static List<Map<String, String>> rows(Class<?> owner, String resource) {
        var stream = Objects.requireNonNull(owner.getResourceAsStream(resource), resource);
        try (var reader = new BufferedReader(new InputStreamReader(stream, StandardCharsets.UTF_8))) {
            List<Map<String, String>> rows = new ArrayList<>();
            List<String> head = List.of();
            for (String line = reader.readLine(); line != null; line = reader.readLine()) {
                List<String> cells = List.of(line.split(","));
                if (line.startsWith("#")) {
                    continue;
                }
                if (head.isEmpty()) {
                    head = cells;
                    continue;
                }
                Map<String, String> row = new LinkedHashMap<>();
                for (int i = 0; i < cells.size(); i++) {
                    row.put(head.get(i), cells.get(i));
                }
                rows.add(row);
            }
            return rows;
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Relative deviation, without a rounding of its own. */
    public static double deviation(double value, String expected) {
        BigDecimal reference = new BigDecimal(expected);
        return new BigDecimal(value)
                .subtract(reference)
                .divide(reference, MathContext.DECIMAL64)
                .abs()
                .doubleValue();
    }
}
