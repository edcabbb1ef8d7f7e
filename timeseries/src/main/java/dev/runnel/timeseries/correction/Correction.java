package dev.runnel.timeseries.correction;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.util.Locale;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * One correction of one series over one interval, with its reason. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Correction {
    /**
     * What a correction does.
     *
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public enum Kind {
        /** Adds a constant. */
        OFFSET,
        /** Adds an amount that goes in a straight line from one value to another. */
        DRIFT,
        /** Multiplies. */
        FACTOR,
        /** Moves readings in time, by seconds. */
        CLOCK_SHIFT,
        /** Takes the values away. */
        REMOVAL,
        /** Puts the values of a named source in their place. */
        REPLACEMENT,
        /** States the level of the sediment; alters no reading. */
        SEDIMENT,
        /** States how high the zero of the depth sensor lies; alters no reading. */
        SENSOR_OFFSET,
        /** States the roughness of the pipe; alters no reading. */
        ROUGHNESS;

        /**
         * Tells whether corrections of the kind state a setting of the monitor, with which flow is computed, and alter no
         * reading.
         *
         * @return true for sediment, sensor offset and roughness
         */
        public boolean isSetting() {
            return switch (this) {
                case SEDIMENT, SENSOR_OFFSET, ROUGHNESS -> true;
                default -> false;
            };
        }

        /**
         * Returns the kind in words, as files hold it.
         *
         * @return for example {@code clock shift}
         */
        public String toText() {
            return name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    private final String series;
    private final Interval interval;
    private final Kind kind;
    private final double value;
    private final double atEnd;
    private final String source;
    private final String reason;
    private final String evidence;
    private final String author;

    private Correction(
            String series,
            Interval interval,
            Kind kind,
            double value,
            double atEnd,
            String source,
            String reason,
            String evidence,
            String author) {
        this.series = words("series", series);
        this.interval = interval;
        this.kind = kind;
        this.value = value;
        this.atEnd = atEnd;
        this.source = source;
        this.reason = words("reason", reason);
        this.evidence = words("evidence", evidence);
        this.author = words("author", author);
        if (interval.isEmpty()) {
            throw new IllegalArgumentException("interval must not be empty, was " + interval);
        }
        EpochNanos.of(interval.start());
        EpochNanos.of(interval.end());
    }

    private static Correction of(
            String series, Interval interval, Kind kind, double value, double atEnd, String source) {
        return new Correction(series, interval, kind, value, atEnd, source, "none given", "none given", "unknown");
    }

    /**
     * Adds a constant: x + a.
     *
     * @param series name of the series
     * @param interval readings in it are corrected; half-open, not empty
     * @param amount a, in the unit of the readings; finite
     * @return the correction
     * @throws IllegalArgumentException if the amount is not finite, the interval empty or the name not one line of text
     */
    public static Correction offset(String series, Interval interval, double amount) {
        Objects.requireNonNull(series, "series");
        double checked = Require.finite("amount", amount, "");
        return of(series, interval, Kind.OFFSET, checked, checked, "");
    }

    /**
     * Adds an amount that grows from one end of the interval to the other, as between two visits.
     *
     * @param series name of the series
     * @param interval readings in it are corrected; half-open, not empty
     * @param atStart amount at its start, in the unit of the readings; finite
     * @param atEnd amount at its end; finite
     * @return the correction
     * @throws IllegalArgumentException if an amount is not finite, the interval empty or the name not one line of text
     */
    public static Correction drift(String series, Interval interval, double atStart, double atEnd) {
        Objects.requireNonNull(series, "series");
        return of(
                series,
                interval,
                Kind.DRIFT,
                Require.finite("atStart", atStart, ""),
                Require.finite("atEnd", atEnd, ""),
                "");
    }

    /**
     * Multiplies: a x.
     *
     * @param series name of the series
     * @param interval readings in it are corrected; half-open, not empty
     * @param factor a; finite, not 0
     * @return the correction
     * @throws IllegalArgumentException if the factor is 0 or not finite, the interval empty or the name not one line
     */
    public static Correction factor(String series, Interval interval, double factor) {
        Objects.requireNonNull(series, "series");
        if (factor == 0) {
            throw new IllegalArgumentException("factor must not be 0, which is a removal");
        }
        double checked = Require.finite("factor", factor, "");
        return of(series, interval, Kind.FACTOR, checked, checked, "");
    }

    /**
     * Moves readings in time.
     *
     * @param series name of the series
     * @param interval readings stamped in it are moved; half-open, not empty
     * @param shift what is added to the stamps; not 0
     * @return the correction
     * @throws IllegalArgumentException if the shift is 0 or longer than 292 years, the interval empty or the name not one
     *     line
     */
    public static Correction clockShift(String series, Interval interval, Duration shift) {
        Objects.requireNonNull(series, "series");
        EpochNanos.positive("shift", shift.abs());
        double seconds = shift.getSeconds() + shift.getNano() / 1e9;
        return of(series, interval, Kind.CLOCK_SHIFT, seconds, seconds, "");
    }

    /**
     * Takes the values away.
     *
     * @param series name of the series
     * @param interval readings in it lose their values; half-open, not empty
     * @return the correction
     * @throws IllegalArgumentException if the interval is empty or the name not one line of text
     */
    public static Correction removal(String series, Interval interval) {
        Objects.requireNonNull(series, "series");
        return of(series, interval, Kind.REMOVAL, 0, 0, "");
    }

    /**
     * Puts the values of a named source in the place of those of the series, missing ones too.
     *
     * @param series name of the series
     * @param interval readings in it are replaced; half-open, not empty
     * @param source name under which {@link Corrections#apply} is given the values
     * @return the correction
     * @throws IllegalArgumentException if the interval is empty or a name not one line of text
     */
    public static Correction replacement(String series, Interval interval, String source) {
        Objects.requireNonNull(series, "series");
        Objects.requireNonNull(source, "source");
        return of(series, interval, Kind.REPLACEMENT, 0, 0, words("source", source));
    }

    /**
     * States the level of the sediment over an interval.
     *
     * @param series name of the series it belongs to, for example that of the depth
     * @param interval when it lay there; half-open, not empty
     * @param level level of the bed above the clean invert, m; 0 or greater
     * @return the correction
     * @throws IllegalArgumentException if the level is negative or not finite, the interval empty or the name not one line
     */
    public static Correction sediment(String series, Interval interval, double level) {
        Objects.requireNonNull(series, "series");
        double checked = Require.nonNegative("level", level, "m");
        return of(series, interval, Kind.SEDIMENT, checked, checked, "");
    }

    /**
     * States the height of the depth sensor's zero over an interval, as after it was moved.
     *
     * @param series name of the series it belongs to, for example that of the depth
     * @param interval when it was there; half-open, not empty
     * @param height height of the zero above the clean invert, m; 0 or greater
     * @return the correction
     * @throws IllegalArgumentException if the height is negative or not finite, the interval empty or the name not one line
     */
    public static Correction sensorOffset(String series, Interval interval, double height) {
        Objects.requireNonNull(series, "series");
        double checked = Require.nonNegative("height", height, "m");
        return of(series, interval, Kind.SENSOR_OFFSET, checked, checked, "");
    }

    /**
     * States the roughness of the pipe over an interval, as after it was lined or found by a gauging. It plays no part in a
     * flow from depth and velocity, but in capacities and in the velocity that the law of the pipe expects.
     *
     * @param series name of the series it belongs to, for example that of the depth
     * @param interval when it held; half-open, not empty
     * @param roughness the measure of the pipe's law in SI units, for example n in s/m^(1/3) or ks in m; greater than 0
     * @return the correction
     * @throws IllegalArgumentException if the roughness is not greater than 0 or not finite, the interval empty or the name
     *     not one line
     */
    public static Correction roughness(String series, Interval interval, double roughness) {
        Objects.requireNonNull(series, "series");
        double checked = Require.positive("roughness", roughness, "");
        return of(series, interval, Kind.ROUGHNESS, checked, checked, "");
    }

    /**
     * Returns the correction with its reason.
     *
     * @param reason why; one line
     * @param evidence what shows it, for example a visit or a gauging; one line
     * @param author who made it; one line
     * @return the new correction
     * @throws IllegalArgumentException if one is empty or not one line of text
     */
    public Correction because(String reason, String evidence, String author) {
        Objects.requireNonNull(reason, "reason");
        Objects.requireNonNull(evidence, "evidence");
        Objects.requireNonNull(author, "author");
        return new Correction(series, interval, kind, value, atEnd, source, reason, evidence, author);
    }

    private static String words(String name, String text) {
        if (text.isBlank()
                || text.chars().anyMatch(Character::isISOControl)
                || !text.strip().equals(text)) {
            throw new IllegalArgumentException(
                    name + " must be one line of text without blanks around it, was " + Text.quoted(text));
        }
        return text;
    }

    /** The value that a reading gets; not for those that take or replace it. */
    double applied(double reading, long time) {
        return switch (kind) {
            case OFFSET -> reading + value;
            case FACTOR -> reading * value;
            case DRIFT -> {
                long start = EpochNanos.of(interval.start());
                long end = EpochNanos.of(interval.end());
                yield reading + value + (atEnd - value) * ((time - start) / (double) (end - start));
            }
            case CLOCK_SHIFT, REMOVAL, REPLACEMENT, SEDIMENT, SENSOR_OFFSET, ROUGHNESS -> reading;
        };
    }

    /** The shift of the clock, ns. */
    long shiftNanos() {
        return Math.round(value * 1e9);
    }

    /**
     * Returns the series that is corrected.
     *
     * @return its name
     */
    public String series() {
        return series;
    }

    /**
     * Returns when readings are corrected.
     *
     * @return half-open interval
     */
    public Interval interval() {
        return interval;
    }

    /**
     * Returns what the correction does.
     *
     * @return the kind
     */
    public Kind kind() {
        return kind;
    }

    /**
     * Returns its figure: the offset, the drift at the start, the factor, the shift in seconds, the setting.
     *
     * @return the figure; 0 for a removal or a replacement
     */
    public double value() {
        return value;
    }

    /**
     * Returns the figure at the end of the interval, which differs for a drift only.
     *
     * @return the figure
     */
    public double valueAtEnd() {
        return atEnd;
    }

    /**
     * Returns where replacing values come from.
     *
     * @return name of the source; empty for all other kinds
     */
    public String source() {
        return source;
    }

    /**
     * Returns why.
     *
     * @return the reason
     */
    public String reason() {
        return reason;
    }

    /**
     * Returns what shows it.
     *
     * @return the evidence
     */
    public String evidence() {
        return evidence;
    }

    /**
     * Returns who made it.
     *
     * @return the author
     */
    public String author() {
        return author;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Correction that
                && series.equals(that.series)
                && interval.equals(that.interval)
                && kind == that.kind
                && Double.compare(value, that.value) == 0
                && Double.compare(atEnd, that.atEnd) == 0
                && source.equals(that.source)
                && reason.equals(that.reason)
                && evidence.equals(that.evidence)
                && author.equals(that.author);
    }

    @Override
    public int hashCode() {
        return Objects.hash(series, interval, kind, value, atEnd, source, reason, evidence, author);
    }

    private String figure() {
        return switch (kind) {
            case OFFSET -> " of " + Text.number(value);
            case DRIFT -> " from " + Text.number(value) + " to " + Text.number(atEnd);
            case FACTOR -> " " + Text.number(value);
            case CLOCK_SHIFT -> " of " + Text.duration(Duration.ofNanos(shiftNanos()));
            case REMOVAL -> "";
            case REPLACEMENT -> " by " + source;
            case SEDIMENT, SENSOR_OFFSET -> " at " + Text.number(value) + " m";
            case ROUGHNESS -> " " + Text.number(value);
        };
    }

    @Override
    public String toString() {
        return "Correction[" + series + " " + interval + ", " + kind.toText() + figure() + ": " + reason + ", "
                + evidence + ", " + author + "]";
    }
}
