package dev.runnel.verification.report;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.NamedCsvRecord;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/**
 * The public calculations of the library and the named calculations that reach them. Made by a test that watches a whole
 * run; it compares the file with the code in every build.
 */
final class PublicCalculations {
    private static final String FILE = "/dev/runnel/verification/reach.csv";
    private static final String REASONS = "/dev/runnel/verification/without-table.csv";

    /**
     * A public method, as class below {@code dev.runnel}, {@code #}, name.
     *
     * @param straight calculations that call it
     * @param through calculations that reach it through other public methods
     * @param reason why no table reaches it; empty if one does
     */
    record Method(String name, Set<String> straight, Set<String> through, String reason) {
        String module() {
            return name.substring(0, name.indexOf('.'));
        }

        /** The name without its class. */
        String method() {
            return name.substring(name.indexOf('#') + 1);
        }

        Set<String> calculations() {
            Set<String> all = new LinkedHashSet<>(straight);
            all.addAll(through);
            return all;
        }
    }

    private static final List<Method> ALL = load();

    private PublicCalculations() {}

    static List<Method> all() {
        return ALL;
    }

    /**
     * Returns the method that a named calculation is about, for a message: the one of its name, else one whose name its own
     * ends with, else the one that the fewest calculations reach, since what all of them reach (a gradient, a section) says
     * nothing. Empty if none is known.
     */
    static String askedBy(String calculation) {
        String last = calculation.substring(calculation.lastIndexOf('.') + 1).replace("-", "");
        return ALL.stream()
                .filter(each -> each.calculations().contains(calculation))
                .min(Comparator.comparing((Method each) -> !each.method().equalsIgnoreCase(last))
                        .thenComparing(each -> !last.endsWith(each.method().toLowerCase(Locale.ROOT)))
                        .thenComparing(each -> !each.straight().contains(calculation))
                        .thenComparing(each -> each.calculations().size()))
                .map(Method::name)
                .orElse("");
    }

    private static List<Method> load() {
        Map<String, String> reasons = new LinkedHashMap<>();
        for (NamedCsvRecord row : rows(REASONS)) {
            reasons.put(row.getField("method"), row.getField("reason"));
        }
        List<Method> methods = new ArrayList<>();
        for (NamedCsvRecord row : rows(FILE)) {
            String name = row.getField("method");
            methods.add(new Method(
                    name,
                    names(row.getField("straight")),
                    names(row.getField("through")),
                    reasons.getOrDefault(name, "")));
        }
        return List.copyOf(methods);
    }

    private static Set<String> names(String joined) {
        return joined.isEmpty() ? Set.of() : new LinkedHashSet<>(List.of(joined.split(" ")));
    }

    private static List<NamedCsvRecord> rows(String file) {
        InputStream in = PublicCalculations.class.getResourceAsStream(file);
        if (in == null) {
            throw new IllegalStateException(file + " is missing from the program");
        }
        try (CsvReader<NamedCsvRecord> reader =
                CsvReader.builder().ofNamedCsvRecord(new InputStreamReader(in, StandardCharsets.UTF_8))) {
            return reader.stream().toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
