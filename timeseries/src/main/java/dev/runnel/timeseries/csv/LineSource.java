package dev.runnel.timeseries.csv;

import java.io.IOException;
import java.io.Reader;
import java.util.Arrays;

/**
 * Cuts text into lines without copying them: a line is a stretch of the buffer, valid until the next one is asked for.
 * A line ends with LF, CR LF or CR. Memory is bounded by the longest line allowed.
 */
final class LineSource {
    private static final int INITIAL_CAPACITY = 1 << 16;
    private static final int LONGEST_LINE = 1 << 20;
    private static final char BYTE_ORDER_MARK = '\uFEFF';

    private final String name;
    private final Reader reader;
    private char[] buffer = new char[INITIAL_CAPACITY];
    private int filled;
    private int position;
    private boolean afterCarriageReturn;
    private long line;
    private int start;
    private int end;
    private boolean holdsNul;

    LineSource(String name, Reader reader) throws IOException {
        this.name = name;
        this.reader = reader;
        fill();
        if (filled > 0 && buffer[0] == BYTE_ORDER_MARK) {
            position = 1;
        }
        refuseOtherKinds();
    }

    /** A character that no text file has, early on, gives away a file of another kind or another charset. */
    private void refuseOtherKinds() {
        boolean firstLine = true;
        for (int i = 0; i < filled; i++) {
            char c = buffer[i];
            firstLine &= c != '\n' && c != '\r';
            // A power cut leaves zeros in the midst of a file: a matter of their line, if the first one has none.
            if (c == 0 && !firstLine) {
                continue;
            }
            if (c < ' ' && c != '\t' && c != '\n' && c != '\r' && c != '\f') {
                long lines = 1;
                for (int j = 0; j < i; j++) {
                    lines += buffer[j] == '\n' ? 1 : 0;
                }
                throw new IllegalArgumentException(name + ", line " + lines + ": file must be text in the layout's "
                        + "charset, was something else: it holds the control character " + (int) c);
            }
        }
    }

    /** Place where the next line starts in what the buffer holds already. */
    int ahead() {
        if (afterCarriageReturn && position < filled) {
            position += buffer[position] == '\n' ? 1 : 0;
            afterCarriageReturn = false;
        }
        return position;
    }

    /** End of what the buffer holds. */
    int filled() {
        return filled;
    }

    /** Goes to the next line, of which a reader has found the end already. */
    void take(int lineEnd) {
        start = position;
        holdsNul = false;
        end = lineEnd;
        position = lineEnd + 1;
        afterCarriageReturn = buffer[lineEnd] == '\r';
        line++;
    }

    /** Goes to the next line; false if there is none. */
    boolean next() throws IOException {
        if (afterCarriageReturn) {
            if (position == filled) {
                fill();
            }
            if (position < filled && buffer[position] == '\n') {
                position++;
            }
            afterCarriageReturn = false;
        }
        start = position;
        holdsNul = false;
        int at = position;
        while (true) {
            while (at < filled) {
                char c = buffer[at];
                // One comparison for nearly every character: those below are rare.
                if (c <= '\r') {
                    if (c == '\n' || c == '\r') {
                        afterCarriageReturn = c == '\r';
                        position = at + 1;
                        end = at;
                        line++;
                        return true;
                    }
                    holdsNul |= c == 0;
                }
                at++;
            }
            int before = at - start;
            if (!fill()) {
                position = filled;
                end = filled;
                if (end == start) {
                    return false;
                }
                line++;
                return true;
            }
            start = position;
            at = start + before;
        }
    }

    /** Moves what is left to the front and reads more; false at the end of the text. */
    private boolean fill() throws IOException {
        int kept = filled - position;
        System.arraycopy(buffer, position, buffer, 0, kept);
        position = 0;
        start = 0;
        filled = kept;
        if (kept == buffer.length) {
            if (kept >= LONGEST_LINE) {
                throw new IllegalArgumentException(name + ", line " + (line + 1) + ": a line must have at most "
                        + LONGEST_LINE + " characters, was longer: is this a file of records?");
            }
            buffer = Arrays.copyOf(buffer, 2 * buffer.length);
        }
        int read = reader.read(buffer, filled, buffer.length - filled);
        if (read < 0) {
            return false;
        }
        filled += read;
        return true;
    }

    long line() {
        return line;
    }

    char[] buffer() {
        return buffer;
    }

    int start() {
        return start;
    }

    int end() {
        return end;
    }

    /** Tells whether the line holds a character of code 0, which no text has. */
    boolean holdsNul() {
        return holdsNul;
    }

    boolean isBlank() {
        for (int i = start; i < end; i++) {
            if (buffer[i] > ' ' || buffer[i] == 0) {
                return false;
            }
        }
        return true;
    }
}
