package dev.runnel.hydraulics.rating;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * One segment of a rating curve, Q = C (h − a)^b.
 *
 * @param fromStage stage from which it holds, m; negative infinity for the lowest segment
 * @param toStage stage to which it holds, m; positive infinity for the highest segment
 * @param constant C, m³/s at 1 m above the offset
 * @param offset stage of no flow a, m
 * @param exponent b, a pure number
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record RatingSegment(double fromStage, double toStage, double constant, double offset, double exponent) {
    @Override
    public String toString() {
        String range = fromStage == Double.NEGATIVE_INFINITY ? "" : " from " + Text.significant(fromStage, 6) + " m";
        return "Q = " + Text.significant(constant, 5) + " (h " + (offset < 0 ? "+ " : "- ")
                + Text.significant(Math.abs(offset), 5) + ")^" + Text.significant(exponent, 5) + range;
    }
}
