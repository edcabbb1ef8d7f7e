package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Text;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The result of a gauging.
 *
 * @param method name of the method, such as {@code mid-section}
 * @param strips the strips, in order of distance, unmodifiable
 * @param verticals count of verticals between the edges
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record GaugedDischarge(String method, List<Strip> strips, int verticals) {
    /**
     * Keeps an unmodifiable copy of the list.
     *
     * @param method name of the method
     * @param strips the strips
     * @param verticals count of verticals
     */
    public GaugedDischarge {
        Objects.requireNonNull(method, "method");
        Objects.requireNonNull(strips, "strips");
        strips = List.copyOf(strips);
    }

    /**
     * Returns the discharge.
     *
     * @return Q, m³/s
     */
    public double discharge() {
        return strips.stream().mapToDouble(Strip::discharge).sum();
    }

    /**
     * Returns the area.
     *
     * @return A, m²
     */
    public double area() {
        return strips.stream().mapToDouble(Strip::area).sum();
    }

    /**
     * Returns the mean velocity, Q/A.
     *
     * @return V, m/s
     */
    public double meanVelocity() {
        return discharge() / area();
    }

    /**
     * Returns the greatest share of one strip, which ISO 748 wants below 0.1 and no strip above 0.2 (from memory).
     *
     * @return share of the discharge, in [0, 1] where no strip runs back
     */
    public double greatestShare() {
        return strips.stream().mapToDouble(Strip::discharge).max().orElseThrow() / discharge();
    }

    /**
     * Returns the factor by which a velocity read at the same time must be multiplied to give the mean.
     *
     * @param read velocity that the sensor read, m/s; not 0
     * @return V over {@code read}
     * @throws IllegalArgumentException if {@code read} is 0, infinite or NaN
     */
    public double factorFor(double read) {
        if (!(Math.abs(read) > 0 && Math.abs(read) < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("read must be a velocity other than 0 m/s, was " + Text.number(read));
        }
        return meanVelocity() / read;
    }

    /**
     * Returns the uncertainty by the budget of ISO 748 with its usual components.
     *
     * @return the budget
     */
    public GaugingBudget budget() {
        return GaugingBudget.of(this);
    }

    @Override
    public String toString() {
        return "GaugedDischarge[" + method + ": " + Text.significant(discharge(), 4) + " m3/s, area "
                + Text.significant(area(), 4) + " m2, mean velocity " + Text.significant(meanVelocity(), 4) + " m/s, "
                + verticals + " verticals]";
    }
}
