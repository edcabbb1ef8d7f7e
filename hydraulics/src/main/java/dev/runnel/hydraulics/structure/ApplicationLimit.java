package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Text;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.apiguardian.api.API;

/**
 * One limit of application of a head-discharge relation: a quantity that depends on the head, or on the geometry alone,
 * and the range in which the coefficient was measured. Immutable and thread-safe if its function is.
 *
 * <p>A value within 1e-12 (relative) of a bound counts as on it, so that a head computed back from a discharge at the
 * limit is not refused for its last bit.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class ApplicationLimit {
    private static final double ROUNDING = 1e-12;

    private final String quantity;
    private final String unit;
    private final double from;
    private final double to;
    private final String source;
    private final DoubleUnaryOperator value;

    private ApplicationLimit(
            String quantity, String unit, double from, double to, String source, DoubleUnaryOperator value) {
        this.quantity = Objects.requireNonNull(quantity, "quantity");
        this.unit = Objects.requireNonNull(unit, "unit");
        this.source = Objects.requireNonNull(source, "source");
        this.value = Objects.requireNonNull(value, "value");
        if (!(from <= to)) {
            throw new IllegalArgumentException(
                    "from must not be above to " + Text.number(to) + ", was " + Text.number(from));
        }
        this.from = from;
        this.to = to;
    }

    /**
     * Returns a limit with both bounds; an infinite bound means none.
     *
     * @param quantity what is limited, in the symbols of the class, such as {@code h/p}
     * @param unit its unit, empty for a pure number
     * @param from lowest allowed value
     * @param to highest allowed value
     * @param source author or standard and year
     * @param value the quantity as a function of the head, m
     * @return the limit
     * @throws IllegalArgumentException if {@code from} is above {@code to} or one of them is NaN
     */
    public static ApplicationLimit of(
            String quantity, String unit, double from, double to, String source, DoubleUnaryOperator value) {
        return new ApplicationLimit(quantity, unit, from, to, source, value);
    }

    /**
     * Returns a limit with a lower bound only.
     *
     * @param quantity what is limited
     * @param unit its unit, empty for a pure number
     * @param from lowest allowed value
     * @param source author or standard and year
     * @param value the quantity as a function of the head, m
     * @return the limit
     * @throws IllegalArgumentException if {@code from} is NaN
     */
    public static ApplicationLimit atLeast(
            String quantity, String unit, double from, String source, DoubleUnaryOperator value) {
        return new ApplicationLimit(quantity, unit, from, Double.POSITIVE_INFINITY, source, value);
    }

    /**
     * Returns a limit with an upper bound only.
     *
     * @param quantity what is limited
     * @param unit its unit, empty for a pure number
     * @param to highest allowed value
     * @param source author or standard and year
     * @param value the quantity as a function of the head, m
     * @return the limit
     * @throws IllegalArgumentException if {@code to} is NaN
     */
    public static ApplicationLimit atMost(
            String quantity, String unit, double to, String source, DoubleUnaryOperator value) {
        return new ApplicationLimit(quantity, unit, Double.NEGATIVE_INFINITY, to, source, value);
    }

    /**
     * Returns what is limited.
     *
     * @return the quantity in the symbols of the class
     */
    public String quantity() {
        return quantity;
    }

    /**
     * Returns the unit.
     *
     * @return unit, empty for a pure number
     */
    public String unit() {
        return unit;
    }

    /**
     * Returns the lower bound.
     *
     * @return lowest allowed value, negative infinity for none
     */
    public double from() {
        return from;
    }

    /**
     * Returns the upper bound.
     *
     * @return highest allowed value, positive infinity for none
     */
    public double to() {
        return to;
    }

    /**
     * Returns who set the limit.
     *
     * @return author or standard and year
     */
    public String source() {
        return source;
    }

    /**
     * Returns the limited quantity at a head.
     *
     * @param head head, m
     * @return its value in {@link #unit()}
     */
    public double value(double head) {
        return value.applyAsDouble(head);
    }

    /**
     * Tells whether the limit is kept at a head.
     *
     * @param head head, m
     * @return true if the quantity lies in [from, to], bounds included to within 1e-12 relative; false for NaN
     */
    public boolean isMet(double head) {
        double x = value.applyAsDouble(head);
        return x >= from - ROUNDING * Math.abs(from) && x <= to + ROUNDING * Math.abs(to);
    }

    private String range() {
        String tail = unit.isEmpty() ? "" : " " + unit;
        if (from == Double.NEGATIVE_INFINITY) {
            return "at most " + Text.number(to) + tail;
        }
        if (to == Double.POSITIVE_INFINITY) {
            return "at least " + Text.number(from) + tail;
        }
        return "in [" + Text.number(from) + ", " + Text.number(to) + "]" + tail;
    }

    String refusal(double was) {
        return quantity + " must be " + range() + ", was " + Text.significant(was, 6) + " (" + source + ")";
    }

    @Override
    public String toString() {
        return quantity + " " + range() + " (" + source + ")";
    }
}
