package dev.runnel.internal;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Locale;
import org.apiguardian.api.API;

/** Numbers as text, the same on every machine: no default locale is read. */
@API(status = API.Status.INTERNAL)
public final class Text {
    private static final int LONGEST_QUOTE = 60;

    private Text() {}

    /**
     * Returns the shortest text that reads back as the same number, without a trailing ".0".
     *
     * @param value any double, NaN and infinities included
     * @return for example {@code 0.45}, {@code 3}, {@code 1.0E-9}, {@code NaN}
     */
    public static String number(double value) {
        String text = Double.toString(value);
        return text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
    }

    /**
     * Returns the number with a fixed count of decimals.
     *
     * @param value any double
     * @param decimals count of digits behind the point, 0 or more
     * @return for example {@code 0.450} for three decimals
     */
    public static String fixed(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    /**
     * Returns the number rounded to a count of significant digits, without zeros at its end, in plain notation between
     * 1e-4 and 1e7 and in exponent notation outside.
     *
     * @param value any double
     * @param digits count of significant digits, 1 or more
     * @return for example {@code 0.0123} for three digits, {@code 0.58} for 0.58 and six
     */
    public static String significant(double value, int digits) {
        if (!Double.isFinite(value)) {
            return Double.toString(value);
        }
        if (value == 0) {
            return "0";
        }
        double magnitude = Math.abs(value);
        if (magnitude < 1e-4 || magnitude >= 1e7) {
            return String.format(Locale.ROOT, "%." + (digits - 1) + "e", value).replaceFirst("\\.?0*e", "e");
        }
        return new BigDecimal(value)
                .round(new MathContext(digits))
                .stripTrailingZeros()
                .toPlainString();
    }

    /**
     * Returns a text from outside as a message should show it: in quotes, cut to 60 characters, with no character that
     * cannot be seen.
     *
     * @param text any text
     * @return for example {@code "12,5"}
     */
    public static String quoted(CharSequence text) {
        StringBuilder shown = new StringBuilder("\"");
        int length = Math.min(text.length(), LONGEST_QUOTE);
        for (int i = 0; i < length; i++) {
            char c = text.charAt(i);
            shown.append(Character.isISOControl(c) ? '\uFFFD' : c);
        }
        return shown.append(text.length() > length ? "..." : "").append('"').toString();
    }
}
