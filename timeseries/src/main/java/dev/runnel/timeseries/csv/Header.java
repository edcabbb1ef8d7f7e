package dev.runnel.timeseries.csv;

import java.util.ArrayList;
import java.util.List;

/** Where the columns stand that a layout asks for. */
final class Header {
    private final String place;
    private final List<String> names;
    private final boolean named;

    private Header(String place, List<String> names, boolean named) {
        this.place = place;
        this.names = names;
        this.named = named;
    }

    static Header of(String place, FieldSplitter fields) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < fields.count(); i++) {
            names.add(fields.text(i));
        }
        return new Header(place, names, true);
    }

    /** The header of a file that has none: columns are called by position. */
    static Header none(String place) {
        return new Header(place, List.of(), false);
    }

    /** Most fields a line may have. */
    int size() {
        return named ? names.size() : Integer.MAX_VALUE;
    }

    /** Returns the index of a column; the file is refused if it has none or two of that name. */
    int indexOf(String column) {
        if (!named) {
            return position(column) - 1;
        }
        int found = names.indexOf(column);
        if (found < 0) {
            throw new IllegalArgumentException(
                    place + ": column must be one of " + String.join(", ", names) + ", was " + column);
        }
        if (found != names.lastIndexOf(column)) {
            throw new IllegalArgumentException(place + ", column " + (names.lastIndexOf(column) + 1)
                    + ": column name must be there once, was there again: " + column);
        }
        return found;
    }

    private int position(String column) {
        if (!column.matches("[1-9][0-9]{0,3}")) {
            throw new IllegalArgumentException(
                    place + ": column must be a position from 1 to 9999 in a file without header, was " + column);
        }
        return Integer.parseInt(column);
    }
}
