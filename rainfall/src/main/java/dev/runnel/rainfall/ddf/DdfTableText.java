package dev.runnel.rainfall.ddf;

import dev.runnel.base.Unreadable;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;

/** Reads a {@link DdfTable} and says where it goes wrong. Holds nothing but numbers, so no quoting is needed. */
final class DdfTableText {
    private static final String EXPECTED = "a line such as duration_min,1,2,5,10,30,100";

    private final String source;
    private final ReturnPeriodBasis basis;
    private final List<Duration> durations = new ArrayList<>();
    private final List<double[]> depths = new ArrayList<>();
    private double[] years = {};
    private double secondsPerUnit;

    private DdfTableText(String source, ReturnPeriodBasis basis) {
        this.source = source;
        this.basis = basis;
    }

    static DdfTable read(Path file, ReturnPeriodBasis basis) {
        try {
            return parse(Files.readString(file, StandardCharsets.UTF_8), file.toString(), basis);
        } catch (CharacterCodingException e) {
            throw new IllegalArgumentException(file + ": must be text in UTF-8, was not", e);
        } catch (IOException e) {
            throw Unreadable.file(file, e);
        }
    }

    static DdfTable parse(String text, String source, ReturnPeriodBasis basis) {
        DdfTableText reader = new DdfTableText(source, basis);
        int line = 0;
        for (String content : text.split("\\R", -1)) {
            line++;
            String row = (line == 1 && content.startsWith("\uFEFF") ? content.substring(1) : content).strip();
            if (!row.isEmpty() && row.charAt(0) != '#') {
                reader.take(row.split(",", -1), line);
            }
        }
        return reader.table();
    }

    private void take(String[] cells, int line) {
        if (years.length == 0) {
            takeHeader(cells, line);
        } else {
            takeRow(cells, line);
        }
    }

    private void takeHeader(String[] cells, int line) {
        switch (cells[0].strip()) {
            case "duration_min" -> secondsPerUnit = 60;
            case "duration_h" -> secondsPerUnit = 3600;
            default -> throw wrong(line, 1, "must be duration_min or duration_h, was '" + cells[0].strip() + "'");
        }
        if (cells.length < 2) {
            throw wrong(line, 1, "must be followed by return periods in years, " + EXPECTED);
        }
        years = new double[cells.length - 1];
        for (int column = 0; column < years.length; column++) {
            years[column] = number(cells[column + 1], line, column + 2);
            int at = column;
            checked(line, column + 2, () -> DdfTableChecks.checkYears(years, at, basis));
        }
    }

    private void takeRow(String[] cells, int line) {
        if (cells.length != years.length + 1) {
            throw wrong(
                    line, cells.length, "must be the last of " + (years.length + 1) + " columns, as in the first line");
        }
        double units = number(cells[0], line, 1);
        durations.add(Duration.ofNanos(Math.round(units * secondsPerUnit * 1e9)));
        int row = depths.size();
        checked(line, 1, () -> DdfTableChecks.checkDuration(durations, row));
        double[] values = new double[years.length];
        depths.add(values);
        double[][] soFar = depths.toArray(double[][]::new);
        for (int column = 0; column < values.length; column++) {
            values[column] = number(cells[column + 1], line, column + 2);
            int at = column;
            checked(line, column + 2, () -> DdfTableChecks.checkDepth(durations, years, soFar, row, at));
        }
    }

    private DdfTable table() {
        if (years.length == 0) {
            throw new IllegalArgumentException(source + ": must hold " + EXPECTED + ", was empty");
        }
        if (durations.isEmpty()) {
            throw new IllegalArgumentException(source + ": must hold at least one line of depths, had none");
        }
        return DdfTable.of(basis, durations, years, depths.toArray(double[][]::new));
    }

    private double number(String cell, int line, int column) {
        try {
            return Double.parseDouble(cell.strip());
        } catch (NumberFormatException e) {
            throw wrong(line, column, "must be a number, was '" + cell.strip() + "'");
        }
    }

    private void checked(int line, int column, Runnable check) {
        try {
            check.run();
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    source + " line " + line + ", column " + column + ": " + e.getMessage(), e);
        }
    }

    private IllegalArgumentException wrong(int line, int column, String message) {
        return new IllegalArgumentException(source + " line " + line + ", column " + column + ": " + message);
    }
}
