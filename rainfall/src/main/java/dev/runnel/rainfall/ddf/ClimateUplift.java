package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * An allowance for a future climate: a share by which every depth is raised, and where it comes from. Nothing in this
 * library raises a depth unless it is given one.
 *
 * <p>What this is not: a forecast. Allowances differ by place, duration and horizon; take yours from the authority
 * concerned.
 *
 * @param name source, scenario and horizon, as they should stand in a report
 * @param percent rise of depth, %; above -100
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ClimateUplift(String name, double percent) {
    /**
     * Checks the arguments.
     *
     * @param name source, scenario and horizon; not blank
     * @param percent rise of depth, %; above -100, finite
     * @throws IllegalArgumentException if an argument is out of range
     */
    public ClimateUplift {
        if (name.isBlank()) {
            throw new IllegalArgumentException("name must say where the uplift comes from, was blank");
        }
        if (!(percent > -100 && percent < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "percent must be above -100 and finite (%), was " + Text.number(percent));
        }
    }

    /**
     * Returns the allowance.
     *
     * @param name source, scenario and horizon; not blank
     * @param percent rise of depth, %; above -100
     * @return the allowance
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static ClimateUplift ofPercent(String name, double percent) {
        return new ClimateUplift(name, percent);
    }

    /**
     * Returns the factor on depth.
     *
     * @return 1 + percent/100
     */
    public double factor() {
        return 1 + percent / 100;
    }
}
