package dev.runnel.timeseries.csv;

import java.util.Arrays;

/**
 * Cuts a line into fields by RFC 4180, with two differences: blanks around a field do not matter, and a quoted field
 * ends with its line, so that a stray quote spoils one line and not the rest of the file.
 *
 * <p>Why not a general parser: those read on over line ends to find the closing quote, and then the lines in between are
 * gone without a word.
 */
final class FieldSplitter {
    private final char separator;
    private int[] starts = new int[16];
    private int[] ends = new int[16];
    private int count;
    private char[] buffer = new char[0];

    FieldSplitter(char separator) {
        this.separator = separator;
    }

    /**
     * Splits; doubled quotes are put right in the buffer itself.
     *
     * @return 0, or the position of the field that cannot be read
     */
    int split(char[] line, int from, int to) {
        buffer = line;
        count = 0;
        int at = from;
        while (true) {
            while (at < to && isBlank(line[at])) {
                at++;
            }
            if (at < to && line[at] == '"') {
                at = quoted(line, at + 1, to);
                if (at < 0) {
                    return count + 1;
                }
            } else {
                int start = at;
                while (at < to && line[at] != separator) {
                    at++;
                }
                int end = at;
                while (end > start && isBlank(line[end - 1])) {
                    end--;
                }
                add(start, end);
            }
            if (at == to) {
                return 0;
            }
            at++;
        }
    }

    /** Returns the position of the separator or the end behind a quoted field, or -1. */
    private int quoted(char[] line, int from, int to) {
        int write = from;
        int at = from;
        while (at < to) {
            if (line[at] == '"') {
                if (at + 1 < to && line[at + 1] == '"') {
                    at++;
                } else {
                    break;
                }
            }
            line[write++] = line[at++];
        }
        if (at == to) {
            return -1;
        }
        at++;
        while (at < to && line[at] != separator) {
            if (!isBlank(line[at])) {
                return -1;
            }
            at++;
        }
        add(from, write);
        return at;
    }

    /** A tab is a blank only where it does not separate. */
    private boolean isBlank(char c) {
        return c == ' ' || c == '\u00A0' || c == '\t' && separator != '\t';
    }

    private void add(int start, int end) {
        if (count == starts.length) {
            starts = Arrays.copyOf(starts, 2 * count);
            ends = Arrays.copyOf(ends, 2 * count);
        }
        starts[count] = start;
        ends[count] = end;
        count++;
    }

    int count() {
        return count;
    }

    int start(int index) {
        return starts[index];
    }

    int end(int index) {
        return ends[index];
    }

    String text(int index) {
        return new String(buffer, starts[index], ends[index] - starts[index]);
    }

    boolean is(int index, String text) {
        int length = ends[index] - starts[index];
        if (length != text.length()) {
            return false;
        }
        for (int i = 0; i < length; i++) {
            if (buffer[starts[index] + i] != text.charAt(i)) {
                return false;
            }
        }
        return true;
    }

    boolean isEmpty(int index) {
        return starts[index] == ends[index];
    }
}
