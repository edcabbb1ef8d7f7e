package dev.runnel.timeseries.csv;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Times that are one number. */
final class NumberTime extends TimeText {
    private static final int LONGEST = 40;
    private static final BigDecimal SECONDS_OF_DAY = BigDecimal.valueOf(86_400);
    private static final BigDecimal FIRST_GOOD_DAY = BigDecimal.valueOf(61);

    /** Seconds from 1970 to 30 December 1899, from which day 61 is 1 March 1900. */
    private static final long SPREADSHEET_ORIGIN = -25_569L * 86_400;

    private static final BigDecimal MOST_SECONDS = BigDecimal.valueOf(Long.MAX_VALUE / 1_000_000_000L);

    private final TimeNumber kind;

    NumberTime(TimeNumber kind) {
        this.kind = kind;
    }

    @Override
    boolean parse(char[] text, int from, int to) {
        if (from == to || to - from > LONGEST) {
            return false;
        }
        StringBuilder digits = new StringBuilder();
        for (int i = from; i < to; i++) {
            char c = text[i] == ',' ? '.' : text[i];
            // Without an exponent, so that no number is longer than it looks.
            if (!(c >= '0' && c <= '9' || c == '.' || c == '-' && i == from)) {
                return false;
            }
            digits.append(c);
        }
        BigDecimal number;
        try {
            number = new BigDecimal(digits.toString());
        } catch (NumberFormatException e) {
            return false;
        }
        return switch (kind) {
            case UNIX_SECONDS -> take(number, 0, true);
            case UNIX_MILLISECONDS -> take(number.movePointLeft(3), 0, true);
            case SPREADSHEET_DAYS ->
                number.compareTo(FIRST_GOOD_DAY) >= 0
                        && take(
                                number.multiply(SECONDS_OF_DAY).setScale(3, RoundingMode.HALF_UP),
                                SPREADSHEET_ORIGIN,
                                false);
        };
    }

    private boolean take(BigDecimal seconds, long origin, boolean isUtc) {
        if (seconds.abs().compareTo(MOST_SECONDS) > 0) {
            return false;
        }
        BigDecimal whole = seconds.setScale(0, RoundingMode.FLOOR);
        localSecond = whole.longValueExact() + origin;
        nano = seconds.subtract(whole)
                .movePointRight(9)
                .setScale(0, RoundingMode.DOWN)
                .intValueExact();
        hasOffset = isUtc;
        offset = 0;
        return true;
    }

    @Override
    String form() {
        return switch (kind) {
            case UNIX_SECONDS -> "seconds since 1970";
            case UNIX_MILLISECONDS -> "milliseconds since 1970";
            case SPREADSHEET_DAYS -> "days of a spreadsheet, 61 or more";
        };
    }
}
