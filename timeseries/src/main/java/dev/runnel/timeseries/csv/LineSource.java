package dev.runnel.timeseries.csv;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * Cuts text into lines: a line is decoded when the next one is asked for, and valid until then; a reader of plain lines
 * takes them from the bytes instead. A line ends with LF, CR LF or CR. Memory is bounded by the longest line allowed.
 */
final class LineSource {
    private static final int INITIAL_CAPACITY = 1 << 16;
    private static final int LONGEST_LINE = 1 << 20;

    /** Behind what has been read, for readers that look at eight letters in one go. */
    private static final int SLACK = 16;

    private static final byte[] BYTE_ORDER_MARK = {(byte) 0xEF, (byte) 0xBB, (byte) 0xBF};

    private final String name;
    private final TextBytes text;
    private byte[] buffer = new byte[INITIAL_CAPACITY + SLACK];
    private int filled;
    private int position;
    private long consumed;
    private boolean afterCarriageReturn;
    private long line;
    private int start;
    private int end;
    private boolean holdsNul;
    private char[] letters = new char[256];
    private int length;

    LineSource(String name, TextBytes text) throws IOException {
        this.name = name;
        this.text = text;
        // The mark and the first line may come by the byte where somebody types them.
        while (filled < BYTE_ORDER_MARK.length && fill()) {
            // Reads on.
        }
        if (text.charset().equals(StandardCharsets.UTF_8)
                && filled >= BYTE_ORDER_MARK.length
                && Arrays.equals(buffer, 0, BYTE_ORDER_MARK.length, BYTE_ORDER_MARK, 0, BYTE_ORDER_MARK.length)) {
            position = BYTE_ORDER_MARK.length;
        }
        refuseOtherKinds();
    }

    /** A character that no text file has, early on, gives away a file of another kind or another charset. */
    private void refuseOtherKinds() {
        boolean firstLine = true;
        for (int i = 0; i < filled; i++) {
            byte c = buffer[i];
            // Nearly all, and those of other alphabets.
            if (c >= ' ' || c < 0) {
                continue;
            }
            firstLine &= c != '\n' && c != '\r';
            // A power cut leaves zeros in the midst of a file: a matter of their line, if the first one has none.
            if (c == 0 && !firstLine) {
                continue;
            }
            if (c != '\t' && c != '\n' && c != '\r' && c != '\f') {
                long lines = 1;
                for (int j = 0; j < i; j++) {
                    lines += buffer[j] == '\n' ? 1 : 0;
                }
                throw new IllegalArgumentException(name + ", line " + lines + ": file must be text in the layout's "
                        + "charset, was something else: it holds the control character " + c);
            }
        }
    }

    /** The bytes that have been read, of which those from {@link #ahead} to {@link #filled} are yet to be taken. */
    byte[] bytes() {
        return buffer;
    }

    /** Place where the next line starts in what the buffer holds already. */
    int ahead() {
        if (afterCarriageReturn && position < filled) {
            position += buffer[position] == '\n' ? 1 : 0;
            afterCarriageReturn = false;
        }
        return position;
    }

    /** End of what the buffer holds, where a zero stands. */
    int filled() {
        return filled;
    }

    /** Bytes of the text before a place in the buffer. */
    long before(int place) {
        return consumed + place;
    }

    /** Goes on by some lines, of which a reader has found start and end of the last one already. */
    void take(int lines, int lastStart, int lastEnd) {
        start = lastStart;
        end = lastEnd;
        holdsNul = false;
        position = lastEnd + 1;
        afterCarriageReturn = buffer[lastEnd] == '\r';
        line += lines;
    }

    /** Goes to the next line; false if there is none. */
    boolean next() throws IOException {
        boolean found = cut();
        if (found) {
            decode();
        }
        return found;
    }

    private boolean cut() throws IOException {
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
                byte c = buffer[at];
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
        consumed += position;
        position = 0;
        start = 0;
        filled = kept;
        if (kept == buffer.length - SLACK) {
            if (kept >= LONGEST_LINE) {
                throw new IllegalArgumentException(name + ", line " + (line + 1) + ": a line must have at most "
                        + LONGEST_LINE + " bytes, was longer: is this a file of records?");
            }
            buffer = Arrays.copyOf(buffer, 2 * kept + SLACK);
        }
        int read = text.stream().read(buffer, filled, buffer.length - SLACK - filled);
        filled += Math.max(read, 0);
        buffer[filled] = 0;
        return read >= 0;
    }

    private void decode() {
        int size = end - start;
        if (size > letters.length) {
            letters = new char[Math.max(size, 2 * letters.length)];
        }
        int all = 0;
        for (int i = 0; i < size; i++) {
            byte each = buffer[start + i];
            letters[i] = (char) each;
            all |= each;
        }
        length = size;
        if (all < 0) {
            // What cannot be decoded becomes the mark of replacement.
            String decoded = toText();
            length = decoded.length();
            decoded.getChars(0, length, letters, 0);
        }
    }

    long line() {
        return line;
    }

    /** The letters of the line, of which there are {@link #length}; a reader may write to them. */
    char[] letters() {
        return letters;
    }

    int length() {
        return length;
    }

    /** The line as it stands in the file. */
    String toText() {
        return new String(buffer, start, end - start, charset());
    }

    private Charset charset() {
        return text.charset();
    }

    /** Tells whether the line holds a character of code 0, which no text has. */
    boolean holdsNul() {
        return holdsNul;
    }

    boolean isBlank() {
        for (int i = 0; i < length; i++) {
            if (letters[i] > ' ' || letters[i] == 0) {
                return false;
            }
        }
        return true;
    }
}
