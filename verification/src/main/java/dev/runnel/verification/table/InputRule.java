package dev.runnel.verification.table;

import dev.runnel.verification.calculation.Inputs;
import java.nio.file.Path;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** How one input of a calculation is made from a row. */
interface InputRule {
    /** Returns the columns it uses. */
    Set<String> columns();

    /** Puts the input of this row. */
    void put(String name, Row row, Inputs inputs);

    /** Reads what lies outside the row, so that later nothing needs the folder. */
    default void prepare(Row row) {}

    /** Returns the rule written in a descriptor; data files are looked for in {@code folder}. */
    static InputRule parse(String text, Path folder) {
        String[] words = text.split("\\s+");
        if (words[0].equals("text") && words.length == 2) {
            return new Cell(words[1]);
        }
        if (words[0].equals("word") && words.length >= 2) {
            return new Word(text.substring("word".length()).strip());
        }
        if (words[0].equals("file") && words.length == 2) {
            return new Document(folder, words[1], new ConcurrentHashMap<>());
        }
        if (words[0].equals("data") && words.length == 3) {
            return new Sample(folder, words[1], words[2], new ConcurrentHashMap<>());
        }
        return new Computed(Formula.parse(text));
    }

    /** A number by a formula. */
    record Computed(Formula formula) implements InputRule {
        @Override
        public Set<String> columns() {
            return formula.names();
        }

        @Override
        public void put(String name, Row row, Inputs inputs) {
            inputs.put(name, formula.value(row::number));
        }
    }

    /** The text of a cell. */
    record Cell(String column) implements InputRule {
        @Override
        public Set<String> columns() {
            return Set.of(column);
        }

        @Override
        public void put(String name, Row row, Inputs inputs) {
            inputs.put(name, row.text(column));
        }
    }

    /** The same text for all rows. */
    record Word(String text) implements InputRule {
        @Override
        public Set<String> columns() {
            return Set.of();
        }

        @Override
        public void put(String name, Row row, Inputs inputs) {
            inputs.put(name, text);
        }
    }

    /** The name of a file in which {COLUMN} stands for the cell. */
    final class FileName {
        private static final Pattern PLACE = Pattern.compile("\\{(\\w+)}");

        private FileName() {}

        static Set<String> columns(String name) {
            Set<String> columns = new LinkedHashSet<>();
            PLACE.matcher(name).results().forEach(result -> columns.add(result.group(1)));
            return columns;
        }

        static String of(String name, Row row) {
            return PLACE.matcher(name).replaceAll(result -> Matcher.quoteReplacement(row.text(result.group(1))));
        }

        static TableException refused(Row asking, TableException cause) {
            return new TableException(asking.file() + ", line " + asking.line() + ": " + cause.getMessage());
        }
    }

    /** The text of another file, read once. */
    record Document(Path folder, String file, Map<String, String> cache) implements InputRule {
        @Override
        public Set<String> columns() {
            return FileName.columns(file);
        }

        @Override
        public void prepare(Row row) {
            text(row);
        }

        @Override
        public void put(String name, Row row, Inputs inputs) {
            inputs.put(name, text(row));
        }

        private String text(Row row) {
            return cache.computeIfAbsent(FileName.of(file, row), name -> read(name, row));
        }

        private String read(String name, Row asking) {
            try {
                return CsvFile.text(folder.resolve(name));
            } catch (TableException e) {
                throw FileName.refused(asking, e);
            }
        }
    }

    /** A sample: one column of another file, read once. */
    record Sample(Path folder, String file, String column, Map<String, double[]> cache) implements InputRule {
        @Override
        public Set<String> columns() {
            return FileName.columns(file);
        }

        @Override
        public void prepare(Row row) {
            values(row);
        }

        @Override
        public void put(String name, Row row, Inputs inputs) {
            inputs.put(name, values(row));
        }

        private double[] values(Row row) {
            return cache.computeIfAbsent(FileName.of(file, row), name -> read(name, row));
        }

        private double[] read(String name, Row asking) {
            try {
                List<Row> rows = CsvFile.read(folder.resolve(name)).rows();
                return rows.stream().mapToDouble(row -> row.number(column)).toArray();
            } catch (TableException e) {
                throw FileName.refused(asking, e);
            }
        }
    }
}
