package dev.runnel.examples.docs;

import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Compares what a page says with what the shell says: the same text, except that a number printed in full (12 digits or
 * more on both sides) may differ by 1e-12 of itself. Processors differ in the last digit of a sine or a power.
 */
final class Answers {
    private static final Pattern NUMBER = Pattern.compile("\\d+\\.\\d+(?:E-?\\d+)?");
    private static final int FULL = 12;
    private static final double LAST_DIGITS = 1e-12;

    private Answers() {}

    static boolean agree(List<String> page, List<String> shell) {
        String expected = String.join("\n", page);
        String actual = String.join("\n", shell);
        if (!NUMBER.matcher(expected)
                .replaceAll("#")
                .equals(NUMBER.matcher(actual).replaceAll("#"))) {
            return false;
        }
        Matcher left = NUMBER.matcher(expected);
        Matcher right = NUMBER.matcher(actual);
        while (left.find() && right.find()) {
            if (!left.group().equals(right.group()) && !close(left.group(), right.group())) {
                return false;
            }
        }
        return true;
    }

    /** Numbers of a drawing may differ by a step of the last place that is written. */
    static boolean samePicture(String committed, String drawn) {
        Pattern number = Pattern.compile("\\d+(?:\\.\\d+)?");
        if (!number.matcher(committed)
                .replaceAll("#")
                .equals(number.matcher(drawn).replaceAll("#"))) {
            return false;
        }
        Matcher left = number.matcher(committed);
        Matcher right = number.matcher(drawn);
        while (left.find() && right.find()) {
            if (Math.abs(Double.parseDouble(left.group()) - Double.parseDouble(right.group())) > 0.11) {
                return false;
            }
        }
        return true;
    }

    private static boolean close(String page, String shell) {
        if (digits(page) < FULL || digits(shell) < FULL) {
            return false;
        }
        double expected = Double.parseDouble(page);
        return Math.abs(Double.parseDouble(shell) - expected) <= LAST_DIGITS * Math.abs(expected);
    }

    private static long digits(String number) {
        String mantissa = number.replaceAll("E.*", "");
        return mantissa.replaceFirst("^0\\.0*", "")
                .chars()
                .filter(Character::isDigit)
                .count();
    }
}
