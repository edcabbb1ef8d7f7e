package dev.runnel.verification.table;

import de.siegmar.fastcsv.reader.CommentStrategy;
import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A CSV file with a header, all of it in memory: published tables are small. */
record CsvFile(String name, List<String> columns, List<Row> rows) {
    /** Reads a file, refusing rows that are longer or shorter than the header. */
    static CsvFile read(Path path) {
        String name = path.toString();
        try (CsvReader<CsvRecord> reader = CsvReader.builder()
                .commentStrategy(CommentStrategy.SKIP)
                .allowExtraFields(true)
                .allowMissingFields(true)
                .ofCsvRecord(text(path))) {
            return from(name, reader);
        } catch (CsvParseException | IOException e) {
            throw new TableException(name + ": is not a CSV file (" + e.getMessage() + ")");
        }
    }

    /** Reads any text file in UTF-8. */
    static String text(Path path) {
        try {
            return Files.readString(path, StandardCharsets.UTF_8);
        } catch (NoSuchFileException e) {
            throw new TableException(path + ": there is no such file");
        } catch (IOException e) {
            throw new TableException(path + ": cannot be read as text in UTF-8 (" + e + ")");
        }
    }

    private static CsvFile from(String name, Iterable<CsvRecord> records) {
        List<String> columns = List.of();
        Map<String, Integer> places = new LinkedHashMap<>();
        List<Row> rows = new ArrayList<>();
        for (CsvRecord csv : records) {
            if (columns.isEmpty()) {
                columns = header(name, csv);
                for (String column : columns) {
                    places.put(column, places.size());
                }
                continue;
            }
            if (csv.getFieldCount() != columns.size()) {
                throw new TableException(name + ", line " + csv.getStartingLineNumber() + ": must have "
                        + columns.size() + " cells as the header, has " + csv.getFieldCount());
            }
            List<String> cells = csv.getFields().stream().map(String::strip).toList();
            rows.add(new Row(name, csv.getStartingLineNumber(), rows.size() + 1, places, cells));
        }
        if (rows.isEmpty()) {
            throw new TableException(name + ": must have a header and at least one row");
        }
        return new CsvFile(name, columns, List.copyOf(rows));
    }

    private static List<String> header(String name, CsvRecord csv) {
        List<String> columns = csv.getFields().stream().map(String::strip).toList();
        for (String column : columns) {
            if (!column.matches("[A-Za-z_][A-Za-z0-9_]*")) {
                throw new TableException(name + ", line " + csv.getStartingLineNumber()
                        + ": a column name must be letters, digits and _, was \"" + column + "\"");
            }
        }
        if (columns.stream().distinct().count() < columns.size()) {
            throw new TableException(
                    name + ", line " + csv.getStartingLineNumber() + ": column names must differ, were " + columns);
        }
        return columns;
    }
}
