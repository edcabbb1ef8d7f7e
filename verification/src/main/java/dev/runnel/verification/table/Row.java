package dev.runnel.verification.table;

import java.math.BigDecimal;
import java.util.Map;

/** One row of a CSV file: cells by column name, and where it stands. */
record Row(String file, long line, int number, Map<String, String> cells) {
    /** Returns the cell as it stands, without spaces around it. */
    String text(String column) {
        String cell = cells.get(column);
        if (cell == null) {
            throw TableException.at(file, line, column, "there is no such column, there are " + cells.keySet());
        }
        return cell;
    }

    /** Returns the cell, or nothing at all if the file has no such column. */
    String textOrBlank(String column) {
        return cells.getOrDefault(column, "");
    }

    /** Returns the cell as a number. */
    double number(String column) {
        String cell = text(column);
        try {
            return new BigDecimal(cell).doubleValue();
        } catch (NumberFormatException e) {
            throw TableException.at(file, line, column, "must be a decimal number, was \"" + cell + "\"");
        }
    }
}
