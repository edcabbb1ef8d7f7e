package dev.runnel.verification;

import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * One expected value beside one computed value. Immutable.
 *
 * @param name unique name: table, row of the table, quantity
 * @param table name of the table the row stands in
 * @param column column of the table the expected value stands in; empty if it stands in no table
 * @param program program that made the expected value, as a path in the repository; empty if none is named
 * @param module library module that is checked
 * @param calculation name of the calculation
 * @param source where the expected value comes from
 * @param locator table, page or example in the source
 * @param input input of the calculation, as text
 * @param printed the expected value as printed
 * @param unit unit of expected value, computed value, deviation and tolerance
 * @param computed what the library computes; empty if it refused the input
 * @param tolerance largest allowed deviation, 0 or greater
 * @param status the outcome
 * @param remark reason of an exclusion, or what the calculation said when it refused; empty otherwise
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Check(
        String name,
        String table,
        String column,
        String program,
        String module,
        String calculation,
        Source source,
        String locator,
        String input,
        String printed,
        String unit,
        OptionalDouble computed,
        double tolerance,
        Status status,
        String remark) {
    /**
     * Checks the parts.
     *
     * @param name unique name
     * @param table name of the table
     * @param column column of the table
     * @param program program that made the expected value
     * @param module library module that is checked
     * @param calculation name of the calculation
     * @param source where the expected value comes from
     * @param locator table, page or example in the source
     * @param input input of the calculation
     * @param printed the expected value as printed
     * @param unit unit of all values
     * @param computed what the library computes
     * @param tolerance largest allowed deviation
     * @param status the outcome
     * @param remark reason of an exclusion or refusal
     * @throws IllegalArgumentException if the printed value is no number, the tolerance negative or not finite, or the
     *     status not what {@link #judge} says of a value that is not excluded
     */
    public Check {
        if (!(tolerance >= 0 && tolerance < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("tolerance must be 0 or greater and finite, was " + tolerance);
        }
        double expected = Double.parseDouble(printed);
        if (status != Status.EXCLUDED && status != judge(expected, computed.orElse(Double.NaN), tolerance)) {
            throw new IllegalArgumentException("status must follow from expected " + printed + ", computed " + computed
                    + " and tolerance " + tolerance + ", was " + status);
        }
    }

    /**
     * Returns the expected value.
     *
     * @return the printed text as a number
     */
    public double expected() {
        return Double.parseDouble(printed);
    }

    /**
     * Returns computed minus expected.
     *
     * @return the deviation; empty if there is no computed value
     */
    public OptionalDouble deviation() {
        return computed.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(computed.getAsDouble() - expected());
    }

    /**
     * Returns how much of the tolerance is used.
     *
     * @return |deviation| / tolerance; 0 for a deviation of 0, infinite for any other if the tolerance is 0 or there is
     *     no computed value
     */
    public double share() {
        double deviation = Math.abs(deviation().orElse(Double.POSITIVE_INFINITY));
        return deviation == 0 ? 0 : deviation / tolerance;
    }

    /**
     * Decides the outcome of a value that is not excluded.
     *
     * @param expected expected value
     * @param computed computed value; NaN fails
     * @param tolerance largest allowed deviation
     * @return {@link Status#PASS} if |computed − expected| ≤ tolerance, else {@link Status#FAIL}
     */
    public static Status judge(double expected, double computed, double tolerance) {
        return Math.abs(computed - expected) <= tolerance ? Status.PASS : Status.FAIL;
    }
}
