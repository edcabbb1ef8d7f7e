package dev.runnel.examples.review;

import dev.runnel.internal.Settings;
import dev.runnel.timeseries.csv.CsvUnit;
import java.math.BigDecimal;
import java.util.List;
import java.util.function.ToDoubleFunction;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Reads values with a unit, such as {@code 450 mm} or {@code 10 min}, and fractions such as {@code 1:150}. */
final class Measure {
    /** Units of length, to m, in the site file as in columns of readings. */
    static final Units LENGTH =
            Units.of(CsvUnit.MILLIMETRE, CsvUnit.CENTIMETRE, CsvUnit.METRE, CsvUnit.INCH, CsvUnit.FOOT);

    /** Units of velocity, to m/s, in the site file as in columns of readings. */
    static final Units VELOCITY = Units.of(
            CsvUnit.METRE_PER_SECOND,
            CsvUnit.MILLIMETRE_PER_SECOND,
            CsvUnit.CENTIMETRE_PER_SECOND,
            CsvUnit.FOOT_PER_SECOND);

    /** Units of flow, to m3/s. */
    static final Units FLOW = new Units(List.of("m3/s", "l/s"), List.of(times("1"), times("0.001")));

    /** Units of time, to s. */
    static final Units TIME =
            new Units(List.of("s", "min", "h", "d"), List.of(seconds(1), seconds(60), seconds(3600), seconds(86_400)));

    private static final BigDecimal MM_PER_INCH = new BigDecimal("25.4");

    /** Rain, in mm. */
    static final Units RAIN = new Units(
            List.of("mm", "in"),
            List.of(
                    BigDecimal::doubleValue,
                    inches -> inches.multiply(MM_PER_INCH).doubleValue()));

    /** Areas, to m2. */
    static final Units AREA =
            new Units(List.of("m2", "ha", "km2"), List.of(times("1"), times("10000"), times("1000000")));

    /** Temperature, in degrees Celsius. */
    static final Units TEMPERATURE = new Units(List.of("C"), List.of(BigDecimal::doubleValue));

    private static final Pattern NUMBER_AND_UNIT = Pattern.compile("([+-]?[0-9]*\\.?[0-9]+)\\s*(\\S*)");
    private static final Pattern RATIO = Pattern.compile("1\\s*(?::|in)\\s*([0-9]*\\.?[0-9]+)");

    /**
     * Units of one quantity.
     *
     * @param symbols how they are written
     * @param conversions from a number as written to the base of each
     */
    record Units(List<String> symbols, List<ToDoubleFunction<BigDecimal>> conversions) {
        static Units of(CsvUnit... units) {
            return new Units(
                    Stream.of(units).map(CsvUnit::symbol).toList(),
                    Stream.of(units)
                            .map(unit -> (ToDoubleFunction<BigDecimal>) unit::toSi)
                            .toList());
        }
    }

    private Measure() {}

    /** Returns a value in the base of its units; 0 needs no unit. */
    static double of(Settings settings, String key, String text, Units units) {
        Matcher matcher = NUMBER_AND_UNIT.matcher(text);
        if (matcher.matches()) {
            BigDecimal number = new BigDecimal(matcher.group(1));
            int unit = units.symbols().indexOf(matcher.group(2));
            if (unit >= 0) {
                return units.conversions().get(unit).applyAsDouble(number);
            }
            if (number.signum() == 0 && matcher.group(2).isEmpty()) {
                return 0;
            }
        }
        throw settings.refused(
                key, "must be a number and a unit of " + String.join(", ", units.symbols()) + ", was \"" + text + "\"");
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

    private static ToDoubleFunction<BigDecimal> times(String factor) {
        return number -> number.multiply(new BigDecimal(factor)).doubleValue();
    }

    private static ToDoubleFunction<BigDecimal> seconds(int unit) {
        return number -> number.multiply(BigDecimal.valueOf(unit)).doubleValue();
    }
}
