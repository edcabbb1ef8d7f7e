package dev.runnel.internal;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.math.BigDecimal;
import java.math.MathContext;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Collection;
import java.util.Locale;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/** Numbers as text, the same on every machine: no default locale is read. */
@API(status = API.Status.INTERNAL)
public final class Text {
    private static final int LONGEST_QUOTE = 60;
    private static final Duration LONGEST = Duration.ofSeconds(Long.MAX_VALUE, 999_999_999);
    private static final Duration LONGEST_NEGATIVE = Duration.ofSeconds(Long.MIN_VALUE);

    private static final double[] TEN_TO = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9};

    /** 10 to the power of the place, up to more than {@link #LARGEST_QUICK}. */
    private static final long[] POWERS = new long[14];

    static {
        POWERS[0] = 1;
        for (int i = 1; i < POWERS.length; i++) {
            POWERS[i] = 10 * POWERS[i - 1];
        }
    }

    private static final int LONGEST_QUICK = 24;

    private static final double TWO_LAST_PLACES = 4.5e-16;

    /** Below, the product is off by 1e-4 at most. */
    private static final double LARGEST_QUICK = 1e12;

    private static final VarHandle EIGHT = MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.LITTLE_ENDIAN);
    private static final int EIGHT_DIGITS = 100_000_000;

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
        String quick = decimals >= 0 && decimals < TEN_TO.length ? quickly(value, decimals) : "";
        return quick.isEmpty() ? String.format(Locale.ROOT, "%." + decimals + "f", value) : quick;
    }

    /** The same in a tenth of the time where the digits are beyond doubt, else the empty text. */
    private static String quickly(double value, int decimals) {
        byte[] text = new byte[LONGEST_QUICK];
        int end = fixed(value, decimals, text, 0);
        return end < 0 ? "" : new String(text, 0, end, StandardCharsets.US_ASCII);
    }

    /**
     * Puts the number with a fixed count of decimals into a text, in a tenth of the time, where its digits are beyond doubt:
     * not for numbers of more than twelve digits.
     *
     * @param value any double
     * @param decimals count of digits behind the point, 0 to 9
     * @param text where to put ASCII; has room for 24 bytes more
     * @param at first place
     * @return the place behind the number; -1, and nothing put down, where {@link #fixed(double, int)} is to say
     */
    public static int fixed(double value, int decimals, byte[] text, int at) {
        if (decimals >= TEN_TO.length) {
            return -1;
        }
        double scaled = Math.abs(value) * TEN_TO[decimals];
        if (!(scaled < LARGEST_QUICK)) {
            return -1;
        }
        long whole = (long) scaled;
        double rest = scaled - whole;
        boolean up = rest > 0.5;
        // The product and the shortest text of the number are each off by half a last place of it at most.
        if (Math.abs(rest - 0.5) <= TWO_LAST_PLACES * scaled) {
            // The middle is itself a decimal of up to fifteen digits: the shortest text of the number lies on the side
            // of
            // it on which the number does, and is it where they are equal.
            double middle = 10 * whole + 5;
            if (decimals + 1 >= TEN_TO.length) {
                return -1;
            }
            up = Math.abs(value) >= middle / TEN_TO[decimals + 1];
        }
        long digits = up ? whole + 1 : whole;
        int count = decimals + 1;
        while (count < POWERS.length && digits >= POWERS[count]) {
            count++;
        }
        int place = at;
        // As the general form: a sign before what was negative, 0 too.
        if (Double.doubleToRawLongBits(value) < 0) {
            text[place++] = '-';
        }
        int end = place + count + (decimals > 0 ? 1 : 0);
        if (digits < EIGHT_DIGITS && decimals < Long.BYTES) {
            // Nearly all numbers: their digits are put down in one go, once before the point and once behind it.
            long letters = letters((int) digits) >>> (8 - count << 3);
            EIGHT.set(text, place, letters);
            if (decimals > 0) {
                int ahead = count - decimals;
                EIGHT.set(text, place + ahead + 1, letters >>> (ahead << 3));
                text[place + ahead] = '.';
            }
            return end;
        }
        int back = end;
        for (int i = 0; i < count; i++) {
            if (i == decimals && i > 0) {
                text[--back] = '.';
            }
            text[--back] = (byte) ('0' + digits % 10);
            digits /= 10;
        }
        return end;
    }

    /** Eight digits as letters, the first in the lowest byte: two numbers of four digits, four of two, eight of one. */
    private static long letters(int number) {
        int first = number / 10_000;
        long fours = first | (long) (number - 10_000 * first) << 32;
        long hundreds = fours * 10_486 >>> 20 & 0x0000007F_0000007FL;
        long twos = hundreds | fours - 100 * hundreds << 16;
        long tens = twos * 103 >>> 10 & 0x000F000F_000F000FL;
        return (tens | twos - 10 * tens << 8) | 0x30303030_30303030L;
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
            return withExponent(value, digits);
        }
        return new BigDecimal(value)
                .round(new MathContext(digits))
                .stripTrailingZeros()
                .toPlainString();
    }

    /** As the formatter of Java has it, which takes many times as long: reports write hundreds of thousands. */
    private static String withExponent(double value, int digits) {
        BigDecimal rounded = new BigDecimal(Double.toString(value))
                .round(new MathContext(digits))
                .stripTrailingZeros();
        String written = rounded.unscaledValue().abs().toString();
        int exponent = written.length() - 1 - rounded.scale();
        return (value < 0 ? "-" : "")
                + written.charAt(0)
                + (written.length() == 1 ? "" : "." + written.substring(1))
                + (exponent < 0 ? "e-" : "e+")
                + (Math.abs(exponent) < 10 ? "0" : "")
                + Math.abs(exponent);
    }

    /**
     * Returns a duration as people write it: days, hours, minutes and seconds, what is 0 left out. From a minute on it is
     * rounded to whole seconds, below to three significant digits.
     *
     * @param duration any duration
     * @return for example {@code 14 min 26 s}, {@code 1 d 2 h}, {@code 0.25 s}, {@code 0 s}
     */
    public static String duration(Duration duration) {
        if (duration.isNegative()) {
            // The longest negative one has no positive counterpart; a nanosecond of it is rounded away in any case.
            return "-" + duration(duration.equals(LONGEST_NEGATIVE) ? LONGEST : duration.negated());
        }
        if (duration.getSeconds() < 60) {
            double seconds = duration.getSeconds() + duration.getNano() / 1e9;
            String text = significant(seconds, 3);
            return text.equals("60") ? "1 min" : text + " s";
        }
        long seconds = duration.getSeconds();
        seconds += duration.getNano() >= 500_000_000 && seconds < Long.MAX_VALUE ? 1 : 0;
        StringBuilder text = new StringBuilder();
        part(text, seconds / 86_400, "d");
        part(text, seconds / 3_600 % 24, "h");
        part(text, seconds / 60 % 60, "min");
        part(text, seconds % 60, "s");
        return text.toString();
    }

    /**
     * Returns a duration for a message that is about its last digit: as people write it where that loses nothing, else in
     * the notation of ISO 8601.
     *
     * @param duration any duration
     * @return for example {@code 4 min}, {@code PT4M0.001S}
     */
    public static String exactDuration(Duration duration) {
        return duration.getNano() == 0 ? duration(duration) : duration.toString();
    }

    /**
     * Returns durations for a message, each as {@link #exactDuration} writes it.
     *
     * @param durations any durations
     * @return for example {@code [30 min, 1 h]}
     */
    public static String durations(Collection<Duration> durations) {
        return durations.stream().map(Text::exactDuration).collect(Collectors.joining(", ", "[", "]"));
    }

    private static void part(StringBuilder text, long count, String unit) {
        if (count > 0) {
            text.append(text.isEmpty() ? "" : " ").append(count).append(' ').append(unit);
        }
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
