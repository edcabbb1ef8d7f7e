package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Unreadable;
import dev.runnel.rainfall.internal.ResourceText;
import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Lines of cells parted by commas, and where in them a mistake is. Cells are numbers and heads, so nothing is quoted. */
record NumberLines(String source, List<Line> lines) {
    /** A line that is neither empty nor a comment. */
    record Line(int number, String[] cells) {
        String cell(int column) {
            return cells[column - 1].strip();
        }
    }

    static NumberLines read(Path file) {
        try {
            return parse(Files.readString(file, StandardCharsets.UTF_8), file.toString());
        } catch (CharacterCodingException e) {
            throw new IllegalArgumentException(file + ": must be text in UTF-8, was not", e);
        } catch (IOException e) {
            throw Unreadable.file(file, e);
        }
    }

    static NumberLines resource(String name) {
        return parse(ResourceText.read(NumberLines.class, name), name);
    }

    static NumberLines parse(String text, String source) {
        List<Line> lines = new ArrayList<>();
        int number = 0;
        for (String content : text.split("\\R", -1)) {
            number++;
            String row = (number == 1 && content.startsWith("\uFEFF") ? content.substring(1) : content).strip();
            if (!row.isEmpty() && row.charAt(0) != '#') {
                lines.add(new Line(number, row.split(",", -1)));
            }
        }
        return new NumberLines(source, lines);
    }

    /** The first line, which names the columns, and at least one more. */
    Line header(String expected) {
        if (lines.isEmpty()) {
            throw new IllegalArgumentException(source + ": must hold " + expected + ", was empty");
        }
        return lines.get(0);
    }

    double number(Line line, int column) {
        String cell = line.cell(column);
        try {
            return Double.parseDouble(cell);
        } catch (NumberFormatException e) {
            throw wrong(line, column, "must be a number, was '" + cell + "'");
        }
    }

    void requireColumns(Line line, int columns) {
        if (line.cells.length != columns) {
            throw wrong(line, line.cells.length, "must be the last of " + columns + " columns, as in the first line");
        }
    }

    void checked(Line line, int column, Runnable check) {
        try {
            check.run();
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(place(line, column) + e.getMessage(), e);
        }
    }

    IllegalArgumentException wrong(Line line, int column, String message) {
        return new IllegalArgumentException(place(line, column) + message);
    }

    private String place(Line line, int column) {
        return source + " line " + line.number + ", column " + column + ": ";
    }
}
