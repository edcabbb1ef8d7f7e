package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * One parameter of a family: its name, what it is, and the range in which a likelihood is searched. Immutable.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Parameter {
    private static final double NEARLY = 0.95;
    private static final double AT_THE_END = 1e-10;

    private final String name;
    private final boolean hasUnit;
    private final double lowest;
    private final double highest;

    private Parameter(String name, boolean hasUnit, double lowest, double highest) {
        this.name = Objects.requireNonNull(name, "name");
        this.hasUnit = hasUnit;
        this.lowest = lowest;
        this.highest = highest;
    }

    /**
     * Returns a parameter in the unit of the sample that may have any finite value.
     *
     * @param name name, as in {@link Distribution#parameters}
     * @return the parameter
     */
    public static Parameter location(String name) {
        return new Parameter(name, true, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /**
     * Returns a parameter in the unit of the sample that is greater than 0.
     *
     * @param name name, as in {@link Distribution#parameters}
     * @return the parameter
     */
    public static Parameter scale(String name) {
        return new Parameter(name, true, 0, Double.POSITIVE_INFINITY);
    }

    /**
     * Returns a parameter without a unit that may have any finite value.
     *
     * @param name name, as in {@link Distribution#parameters}
     * @return the parameter
     */
    public static Parameter shape(String name) {
        return new Parameter(name, false, Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY);
    }

    /**
     * Returns this parameter with the open range in which a likelihood is searched: narrower than what the distribution takes
     * where the density at a bound is infinite, and the likelihood with it.
     *
     * @param lowest lower end, not reached
     * @param highest upper end, not reached
     * @return the new parameter
     * @throws IllegalArgumentException if the range is empty
     */
    public Parameter within(double lowest, double highest) {
        if (!(lowest < highest)) {
            throw new IllegalArgumentException(
                    "lowest must be below highest, were " + Text.number(lowest) + " and " + Text.number(highest));
        }
        return new Parameter(name, hasUnit, lowest, highest);
    }

    /**
     * Returns the name.
     *
     * @return name, as in {@link Distribution#parameters}
     */
    public String name() {
        return name;
    }

    /**
     * Tells whether the parameter has the unit of the sample.
     *
     * @return true for a location or scale, false for a shape
     */
    public boolean hasUnit() {
        return hasUnit;
    }

    boolean isScale() {
        return hasUnit && lowest == 0;
    }

    /** Returns a value if a search may go there, else one nearly at the end of the range as seen from inside. */
    double toward(double inside, double value) {
        double end = Math.max(lowest, Math.min(highest, value));
        return admits(value) ? value : inside + NEARLY * (end - inside);
    }

    /** Returns a value if a search may go there, else one at the end of the range as near as makes no difference. */
    double nearest(double value) {
        return value <= lowest
                ? lowest + AT_THE_END * Math.max(1, Math.abs(lowest))
                : value >= highest ? highest - AT_THE_END * Math.max(1, Math.abs(highest)) : value;
    }

    /** Tells whether a search may go there. */
    boolean admits(double value) {
        return value > lowest && value < highest;
    }

    @Override
    public String toString() {
        return name;
    }
}
