package dev.runnel.timeseries.csv;

/** Reads decimal numbers from characters, correctly rounded. */
final class Decimals {
    /** Up to here a whole number is a double without rounding, and so is every power of ten below. */
    private static final long EXACT = 1L << 53;

    private static final double[] POWERS_OF_TEN = {
        1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15, 1e16, 1e17, 1e18, 1e19,
        1e20, 1e21, 1e22
    };

    private Decimals() {}

    /**
     * Reads sign, digits, point, digits and exponent.
     *
     * @return the number; NaN if it is not one or too large for a double
     */
    static double parse(char[] text, int from, int to, char point) {
        int at = from;
        boolean negative = false;
        if (at < to && (text[at] == '-' || text[at] == '+')) {
            negative = text[at] == '-';
            at++;
        }
        long digits = 0;
        int count = 0;
        int decimals = 0;
        boolean seenPoint = false;
        while (at < to) {
            char c = text[at];
            if (c >= '0' && c <= '9') {
                if (digits >= EXACT / 10 - 1) {
                    return general(text, from, to, point);
                }
                digits = digits * 10 + (c - '0');
                count++;
                decimals += seenPoint ? 1 : 0;
            } else if (c == point && !seenPoint) {
                seenPoint = true;
            } else {
                return general(text, from, to, point);
            }
            at++;
        }
        if (count == 0 || decimals >= POWERS_OF_TEN.length) {
            return general(text, from, to, point);
        }
        // Both are exact, and a quotient is rounded once: the same double as the general way gives.
        double value = digits / POWERS_OF_TEN[decimals];
        return negative ? -value : value;
    }

    /** Leaves the number to the JDK, after a check of the form: the JDK also reads "1f", "0x1p3" and "Infinity". */
    private static double general(char[] text, int from, int to, char point) {
        int at = from;
        if (at < to && (text[at] == '-' || text[at] == '+')) {
            at++;
        }
        int whole = at;
        at = skipDigits(text, at, to);
        int count = at - whole;
        if (at < to && text[at] == point) {
            int fraction = ++at;
            at = skipDigits(text, at, to);
            count += at - fraction;
        }
        if (count == 0) {
            return Double.NaN;
        }
        if (at < to && (text[at] == 'e' || text[at] == 'E')) {
            at++;
            if (at < to && (text[at] == '-' || text[at] == '+')) {
                at++;
            }
            int exponent = at;
            at = skipDigits(text, at, to);
            if (at == exponent) {
                return Double.NaN;
            }
        }
        if (at != to) {
            return Double.NaN;
        }
        double value = Double.parseDouble(new String(text, from, to - from).replace(point, '.'));
        return Double.isInfinite(value) ? Double.NaN : value;
    }

    private static int skipDigits(char[] text, int from, int to) {
        int at = from;
        while (at < to && text[at] >= '0' && text[at] <= '9') {
            at++;
        }
        return at;
    }
}
