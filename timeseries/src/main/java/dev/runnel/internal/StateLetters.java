package dev.runnel.internal;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * How a value stands in a {@link StateText}: as it is; in braces where something in it would be taken for syntax, as the blanks
 * of a state within a state; and with {@code %XX} for what braces cannot hold, invisible letters, those that are not ASCII and
 * braces without their others. Braces lie in one another: what is in them is not written anew for each state around it.
 */
final class StateLetters {
    static final StateLetters IN_STATE = new StateLetters(false);

    /** Commas too: they end the values of a list. */
    static final StateLetters IN_LIST = new StateLetters(true);

    // Looked up: the state of a watch is of many letters, and each part of it is written into the next greater one.
    private static final byte[] DIGITS = "0123456789abcdef".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] VALUES = values();

    /** Letters of an escape. */
    private static final int ESCAPE = 3;

    private static final byte DELETE = 127;

    private final boolean[] isEscaped;

    private StateLetters(boolean comma) {
        isEscaped = escapes(comma);
    }

    /** Returns a value as it stands in a text. */
    String written(String value) {
        byte[] bytes = value.getBytes(StandardCharsets.UTF_8);
        int first = 0;
        while (first < bytes.length && !isEscaped[bytes[first] & 255]) {
            first++;
        }
        if (first == bytes.length) {
            return value;
        }
        return fitsBraces(bytes, first) ? "{" + value + "}" : escaped(bytes, first);
    }

    /** Whether all is visible ASCII and each brace has its other; before the first letter that is not plain there is none. */
    private static boolean fitsBraces(byte[] bytes, int first) {
        int open = 0;
        for (int i = first; i < bytes.length; i++) {
            byte each = bytes[i];
            if (each < ' ' || each == DELETE) {
                return false;
            }
            if (each == '{') {
                open++;
            } else if (each == '}') {
                open--;
                if (open < 0) {
                    return false;
                }
            }
        }
        return open == 0;
    }

    private String escaped(byte[] bytes, int first) {
        byte[] text = Arrays.copyOf(bytes, bytes.length + bytes.length / 4 + ESCAPE);
        int length = first;
        for (int i = first; i < bytes.length; i++) {
            byte each = bytes[i];
            if (isEscaped[each & 255]) {
                // Room for this escape and for all letters after it.
                if (length + ESCAPE + bytes.length - i > text.length) {
                    text = Arrays.copyOf(text, 2 * text.length);
                }
                text[length++] = '%';
                text[length++] = DIGITS[(each >> 4) & 15];
                text[length++] = DIGITS[each & 15];
            } else {
                text[length++] = each;
            }
        }
        return new String(text, 0, length, StandardCharsets.ISO_8859_1);
    }

    /** By byte: blanks and other invisible ones, braces, the sign of an escape, and what is not ASCII. */
    private static boolean[] escapes(boolean comma) {
        boolean[] isEscaped = new boolean[256];
        Arrays.fill(isEscaped, 0, ' ' + 1, true);
        Arrays.fill(isEscaped, DELETE, 256, true);
        isEscaped['%'] = true;
        isEscaped['{'] = true;
        isEscaped['}'] = true;
        isEscaped[','] = comma;
        return isEscaped;
    }

    /** Where a value that begins at an index ends: before the next mark that stands in no braces, or with the text. */
    static int end(String text, int from, char mark) {
        int start = text.startsWith("{", from) ? closing(text, from) + 1 : from;
        int end = text.indexOf(mark, start);
        int found = end < 0 ? text.length() : end;
        if (start > from && start != found) {
            throw new IllegalArgumentException("state must go on with a value's end behind its braces, was "
                    + Text.quoted(text.substring(start, found)));
        }
        return found;
    }

    /** Where the brace that is opened at an index is closed. */
    private static int closing(String text, int from) {
        int open = 0;
        for (int i = from; i < text.length(); i++) {
            char each = text.charAt(i);
            if (each == '{') {
                open++;
            } else if (each == '}') {
                open--;
                if (open == 0) {
                    return i;
                }
            }
        }
        throw new IllegalArgumentException("state must close each brace, was " + Text.quoted(text.substring(from)));
    }

    /** Returns the value that stands in a text as {@link #written}. */
    static String read(String text) {
        return text.startsWith("{") ? text.substring(1, text.length() - 1) : unescaped(text);
    }

    private static String unescaped(String text) {
        if (text.indexOf('%') < 0) {
            return text;
        }
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        int length = 0;
        int all = 0;
        for (int i = 0; i < bytes.length; i++) {
            byte each = bytes[i];
            if (each == '%') {
                each = escaped(text, bytes, i);
                i += 2;
            }
            all |= each;
            bytes[length++] = each;
        }
        // Nearly always ASCII: to decode that takes no look at each letter.
        return new String(bytes, 0, length, all < 0 ? StandardCharsets.UTF_8 : StandardCharsets.ISO_8859_1);
    }

    private static byte escaped(String text, byte[] bytes, int at) {
        boolean room = at + 2 < bytes.length;
        int high = room ? VALUES[bytes[at + 1] & 255] : -1;
        int low = room ? VALUES[bytes[at + 2] & 255] : -1;
        if (high < 0 || low < 0) {
            throw new IllegalArgumentException("state must hold two digits after %, was " + Text.quoted(text));
        }
        return (byte) ((high << 4) | low);
    }

    /** By letter: the value of a digit of an escape, or -1. */
    private static byte[] values() {
        byte[] values = new byte[256];
        for (int i = 0; i < values.length; i++) {
            values[i] = (byte) Character.digit(i, 16);
        }
        return values;
    }
}
