package dev.runnel.timeseries.csv;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A short cut for patterns of digits in fixed places, such as {@code dd/MM/yyyy HH:mm}, some ten times as fast as a
 * formatter. It only ever says yes: what it does not take, the formatter decides.
 */
final class FixedFields {
    private static final String FIELDS = "uMdHms";
    private static final int YEAR = 0;
    private static final int MONTH = 1;
    private static final int DAY = 2;
    private static final int HOUR = 3;
    private static final int MINUTE = 4;
    private static final int SECOND = 5;

    private final String pattern;
    private final Calendar calendar = new Calendar();
    private final int[] values = new int[FIELDS.length()];
    private long localSecond;

    private FixedFields(String pattern) {
        this.pattern = pattern;
    }

    /** Returns the short cut, or null if the pattern has anything but whole dates, times of day and punctuation. */
    static @Nullable FixedFields of(String pattern) {
        String proleptic = pattern.replace('y', 'u');
        for (int i = 0; i < proleptic.length(); i++) {
            char c = proleptic.charAt(i);
            boolean isField = FIELDS.indexOf(c) >= 0;
            if (!isField && "/-.: ,".indexOf(c) < 0) {
                return null;
            }
        }
        boolean date = hasOnce(proleptic, "uuuu") && hasOnce(proleptic, "MM") && hasOnce(proleptic, "dd");
        boolean hour = hasOnce(proleptic, "HH");
        boolean minute = hasOnce(proleptic, "mm");
        boolean second = hasOnce(proleptic, "ss");
        boolean none = proleptic.matches("[^Hms]*");
        boolean time = hour && minute && (second || proleptic.indexOf('s') < 0);
        return date && (time || none) ? new FixedFields(proleptic) : null;
    }

    /** Tells whether a letter occurs as exactly this run and nowhere else. */
    private static boolean hasOnce(String pattern, String run) {
        int at = pattern.indexOf(run.charAt(0));
        return at >= 0 && pattern.startsWith(run, at) && pattern.indexOf(run.charAt(0), at + run.length()) < 0;
    }

    /** Reads; false if the formatter must decide. */
    boolean parse(char[] text, int from, int to) {
        if (to - from != pattern.length()) {
            return false;
        }
        Arrays.fill(values, 0);
        for (int i = 0; i < pattern.length(); i++) {
            char expected = pattern.charAt(i);
            char found = text[from + i];
            int field = FIELDS.indexOf(expected);
            if (field < 0 ? found != expected : found < '0' || found > '9') {
                return false;
            }
            if (field >= 0) {
                values[field] = 10 * values[field] + (found - '0');
            }
        }
        long day = calendar.epochDay(values[YEAR], values[MONTH], values[DAY]);
        if (day == Calendar.NO_DAY || values[HOUR] > 23 || values[MINUTE] > 59 || values[SECOND] > 59) {
            return false;
        }
        localSecond = day * 86_400 + values[HOUR] * 3600L + values[MINUTE] * 60L + values[SECOND];
        return true;
    }

    long localSecond() {
        return localSecond;
    }
}
