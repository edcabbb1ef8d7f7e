package dev.runnel.timeseries.correction;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * A figure read by hand beside what the monitor said at that time. Immutable and thread-safe.
 *
 * @param visit the visit
 * @param quantity what was compared: {@code depth}, {@code velocity}, {@code flow} or {@code clock}
 * @param hand by hand; of the clock 0
 * @param monitor by the monitor; of the clock the seconds it was ahead; NaN if it had no reading near
 * @param tolerance largest difference that is taken for the uncertainty of both, in the same unit
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record VisitDifference(SiteVisit visit, String quantity, double hand, double monitor, double tolerance) {
    /**
     * Returns how much more the monitor said.
     *
     * @return monitor − hand; NaN if the monitor had no reading near
     */
    public double difference() {
        return monitor - hand;
    }

    /**
     * Tells whether there was something to compare with.
     *
     * @return false if the monitor had no reading near
     */
    public boolean isCompared() {
        return !Double.isNaN(monitor);
    }

    /**
     * Tells whether the difference is larger than the tolerance.
     *
     * @return true if it is; false also if there was nothing to compare with
     */
    public boolean isBeyond() {
        return Math.abs(difference()) > tolerance;
    }

    @Override
    public String toString() {
        String verdict = !isCompared() ? "no reading near" : isBeyond() ? "beyond" : "within";
        return "VisitDifference[" + visit.time() + ", " + quantity + ": monitor " + Text.significant(monitor, 4)
                + ", hand " + Text.significant(hand, 4)
                + (isCompared() ? ", difference " + Text.significant(difference(), 3) : "") + ", " + verdict
                + " a tolerance of " + Text.significant(tolerance, 3) + "]";
    }
}
