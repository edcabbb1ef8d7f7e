package dev.runnel.hydraulics.rating;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * A rated discharge between two bounds.
 *
 * @param stage stage, m
 * @param lower lower bound of the discharge, m³/s
 * @param discharge discharge of the curve, m³/s
 * @param upper upper bound of the discharge, m³/s
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record RatingBand(double stage, double lower, double discharge, double upper) {
    @Override
    public String toString() {
        return "RatingBand[stage " + Text.significant(stage, 5) + " m: " + Text.significant(lower, 4) + " < "
                + Text.significant(discharge, 4) + " < " + Text.significant(upper, 4) + " m3/s]";
    }
}
