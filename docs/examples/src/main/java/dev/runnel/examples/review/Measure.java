package dev.runnel.examples.review;

import dev.runnel.internal.Settings;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads values with a unit, such as {@code 450 mm} or {@code 10 min}, and fractions such as {@code 1:150}. */
final class Measure {
    /** Units of length, each in m, in the site file as in columns of readings. */
    static final Map<String, BigDecimal> LENGTH =
            units("mm", "0.001", "cm", "0.01", "m", "1", "in", "0.0254", "ft", "0.3048");

    /** Units of velocity, each in m/s, in the site file as in columns of readings. */
    static final Map<String, BigDecimal> VELOCITY =
            units("m/s", "1", "mm/s", "0.001", "cm/s", "0.01", "ft/s", "0.3048");

    /** Units of time, each in s. */
    static final Map<String, BigDecimal> TIME = units("s", "1", "min", "60", "h", "3600", "d", "86400");

    /** Units of rain, each in mm. */
    static final Map<String, BigDecimal> RAIN = units("mm", "1");

    /** Units of temperature. */
    static final Map<String, BigDecimal> TEMPERATURE = units("C", "1");

    private static final Pattern NUMBER_AND_UNIT = Pattern.compile("([+-]?[0-9]*\\.?[0-9]+)\\s*(\\S*)");
    private static final Pattern RATIO = Pattern.compile("1\\s*(?::|in)\\s*([0-9]*\\.?[0-9]+)");

    private Measure() {}

    /** Returns a value in the base of its units; 0 needs no unit. */
    static double of(Settings settings, String key, String text, Map<String, BigDecimal> units) {
        Matcher matcher = NUMBER_AND_UNIT.matcher(text);
        if (matcher.matches()) {
            BigDecimal number = new BigDecimal(matcher.group(1));
            BigDecimal factor = units.get(matcher.group(2));
            if (factor != null) {
                // Decimal, so that 700 mm are 0.7 m and not 0.7000000000000001 m.
                return number.multiply(factor).doubleValue();
            }
            if (number.signum() == 0 && matcher.group(2).isEmpty()) {
                return 0;
            }
        }
        throw settings.refused(key, "must be a number and a unit of " + list(units) + ", was \"" + text + "\"");
    }

    /** Returns a fall over length, from {@code 1:150}, {@code 1 in 150}, {@code 0.0067} or {@code 0.67 %}. */
    static double gradient(Settings settings, String key, String text) {
        Matcher ratio = RATIO.matcher(text);
        Matcher number = NUMBER_AND_UNIT.matcher(text);
        double gradient = Double.NaN;
        if (ratio.matches()) {
            gradient = 1 / Double.parseDouble(ratio.group(1));
        } else if (number.matches() && number.group(2).isEmpty()) {
            gradient = Double.parseDouble(number.group(1));
        } else if (number.matches() && number.group(2).equals("%")) {
            gradient = Double.parseDouble(number.group(1)) / 100;
        }
        if (!(gradient > 0 && gradient <= 1)) {
            throw settings.refused(
                    key, "must be a fall such as 1:150, 0.0067 or 0.67 %, above 0 and at most 1, was \"" + text + "\"");
        }
        return gradient;
    }

    private static String list(Map<String, BigDecimal> units) {
        return String.join(", ", units.keySet());
    }

    private static Map<String, BigDecimal> units(String... namesAndFactors) {
        Map<String, BigDecimal> units = new LinkedHashMap<>();
        for (int i = 0; i < namesAndFactors.length; i += 2) {
            units.put(namesAndFactors[i], new BigDecimal(namesAndFactors[i + 1]));
        }
        return units;
    }
}
