package dev.runnel.internal;

import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/** How a value stands in a {@link StateText}: what would be taken for syntax, or is not ASCII, is written as {@code %XX}. */
final class StateLetters {
    static final StateLetters IN_STATE = new StateLetters(false);

    /** Commas too: they end the values of a list. */
    static final StateLetters IN_LIST = new StateLetters(true);

    // Looked up: the state of a watch is of many letters, and each part of it is written into the next greater one.
    private static final byte[] DIGITS = "0123456789abcdef".getBytes(StandardCharsets.US_ASCII);
    private static final byte[] VALUES = values();

    /** Letters of an escape. */
    private static final int ESCAPE = 3;

    private final boolean[] isEscaped;

    private StateLetters(boolean comma) {
        isEscaped = escapes(comma);
    }

    String escaped(String value) {
        byte[] bytes = value.getBytes(StandardCharsets.UTF_8);
        int first = 0;
        while (first < bytes.length && !isEscaped[bytes[first] & 255]) {
            first++;
        }
        if (first == bytes.length) {
            return value;
        }
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

    /** By byte: blanks and other invisible ones, the sign of an escape, and what is not ASCII. */
    private static boolean[] escapes(boolean comma) {
        boolean[] isEscaped = new boolean[256];
        Arrays.fill(isEscaped, 0, ' ' + 1, true);
        Arrays.fill(isEscaped, 127, 256, true);
        isEscaped['%'] = true;
        isEscaped[','] = comma;
        return isEscaped;
    }

    static String unescaped(String text) {
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
