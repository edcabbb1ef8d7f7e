package dev.runnel.timeseries.csv;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.Arrays;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/**
 * Units that files use, with the factor to the unit Runnel works in: m, m/s, m³/s, °C as written. Rain in mm and mm/h
 * stays as written, so a column of rain takes {@link #AS_WRITTEN}.
 *
 * <p>Factors are exact: those of metric units by definition, the foot (0.3048 m) and the inch by the international
 * agreement of 1959, the US gallon as 231 cubic inches (NIST Special Publication 811, 2008, appendix B.8).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum CsvUnit {
    /** No conversion. */
    AS_WRITTEN("", 1, 1),
    /** Millimetre to m; for depth, not for rain. */
    MILLIMETRE("mm", 1, 1000),
    /** Centimetre to m. */
    CENTIMETRE("cm", 1, 100),
    /** Metre. */
    METRE("m", 1, 1),
    /** Inch to m. */
    INCH("in", 0.0254, 1),
    /** Foot to m. */
    FOOT("ft", 0.3048, 1),
    /** Millimetre per second to m/s. */
    MILLIMETRE_PER_SECOND("mm/s", 1, 1000),
    /** Centimetre per second to m/s. */
    CENTIMETRE_PER_SECOND("cm/s", 1, 100),
    /** Metre per second. */
    METRE_PER_SECOND("m/s", 1, 1),
    /** Foot per second to m/s. */
    FOOT_PER_SECOND("ft/s", 0.3048, 1),
    /** Litre per second to m³/s. */
    LITRE_PER_SECOND("L/s", 1, 1000),
    /** Cubic metre per second. */
    CUBIC_METRE_PER_SECOND("m3/s", 1, 1),
    /** Cubic metre per hour to m³/s. */
    CUBIC_METRE_PER_HOUR("m3/h", 1, 3600),
    /** Cubic metre per day to m³/s. */
    CUBIC_METRE_PER_DAY("m3/d", 1, 86_400),
    /** Megalitre per day to m³/s. */
    MEGALITRE_PER_DAY("ML/d", 1000, 86_400),
    /** Cubic foot per second to m³/s. */
    CUBIC_FOOT_PER_SECOND("ft3/s", 0.028316846592, 1),
    /** US gallon per minute to m³/s. */
    US_GALLON_PER_MINUTE("US gal/min", 0.003785411784, 60),
    /** Per cent to a fraction of 1. */
    PER_CENT("%", 1, 100);

    private final String symbol;
    private final double multiplier;
    private final double divisor;

    CsvUnit(String symbol, double multiplier, double divisor) {
        this.symbol = symbol;
        this.multiplier = multiplier;
        this.divisor = divisor;
    }

    /**
     * Returns the unit with a symbol.
     *
     * @param symbol one of mm, cm, m, in, ft, mm/s, cm/s, m/s, ft/s, L/s, m3/s, m3/h, m3/d, ML/d, ft3/s, US gal/min, %, or
     *     empty for {@link #AS_WRITTEN}; {@code l/s} and {@code m³} are understood
     * @return the unit
     * @throws IllegalArgumentException if there is none with that symbol
     */
    public static CsvUnit parse(String symbol) {
        String plain = symbol.trim().replace('³', '3');
        for (CsvUnit unit : values()) {
            if (unit.symbol.equals(plain) || unit == LITRE_PER_SECOND && plain.equals("l/s")) {
                return unit;
            }
        }
        String known = Arrays.stream(values())
                .filter(unit -> unit != AS_WRITTEN)
                .map(CsvUnit::symbol)
                .collect(Collectors.joining(", "));
        throw new IllegalArgumentException("symbol must be one of " + known + ", was " + symbol);
    }

    /**
     * Returns the symbol.
     *
     * @return for example {@code L/s}; empty for {@link #AS_WRITTEN}
     */
    public String symbol() {
        return symbol;
    }

    /** Whether a number in this unit is already in the one Runnel works in. */
    boolean isAsWritten() {
        return multiplier == 1 && divisor == 1;
    }

    /**
     * Converts a number in a file. A division by a whole power of ten is done as such, so that 123 mm becomes the double
     * nearest to 0.123 m.
     *
     * @param written the value in this unit
     * @return the value in the unit Runnel works in
     */
    public double toSi(double written) {
        return written * multiplier / divisor;
    }

    /**
     * Converts a number exactly as it was written, so that 0.7 in becomes the double nearest to 0.01778 m: for the few
     * numbers of a site, not for columns of readings.
     *
     * @param written the value in this unit
     * @return the double nearest to the value in the unit Runnel works in
     * @throws IllegalArgumentException if the value is beyond the range of a double
     */
    public double toSi(BigDecimal written) {
        double rounded = written.doubleValue();
        if (!Double.isFinite(rounded)) {
            throw new IllegalArgumentException("written must be within the range of a double, was " + written);
        }
        // What is rounded to 0 already may have an exponent that cannot be multiplied.
        return rounded == 0
                ? rounded
                : written.multiply(BigDecimal.valueOf(multiplier))
                        .divide(BigDecimal.valueOf(divisor), MathContext.DECIMAL128)
                        .doubleValue();
    }

    /**
     * Converts back.
     *
     * @param si the value in the unit Runnel works in
     * @return the value in this unit
     */
    public double fromSi(double si) {
        return si * divisor / multiplier;
    }
}
