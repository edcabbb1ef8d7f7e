package dev.runnel.verification.table;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;

/**
 * One row of a CSV file, and where it stands.
 *
 * @param file name of the file
 * @param line its line in the file
 * @param number its number among the rows, from 1
 * @param places where the cell of a column stands, shared by all rows of the file: a map for each would be most of what a run holds
 * @param cells the cells, without spaces around them
 */
record Row(String file, long line, int number, Map<String, Integer> places, List<String> cells) {
    /** Returns the cell as it stands, without spaces around it. */
    String text(String column) {
        Integer place = places.get(column);
        if (place == null) {
            throw TableException.at(file, line, column, "there is no such column, there are " + places.keySet());
        }
        return cells.get(place);
    }

    /** Returns the cell, or nothing at all if the file has no such column. */
    String textOrBlank(String column) {
        Integer place = places.get(column);
        return place == null ? "" : cells.get(place);
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
