package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * How much later a gauge shows the rain of a storm than the others do.
 *
 * @param storm the storm
 * @param shift how much later; negative if earlier; whole cells of the comparison
 * @param likeness cosine of the angle between its rain, so shifted, and that of the others, from 0 to 1
 * @see GaugeClocks
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record StormShift(Interval storm, Duration shift, double likeness) {
    /**
     * Checks that nothing is missing.
     *
     * @param storm the storm
     * @param shift how much later; negative if earlier; whole cells of the comparison
     * @param likeness cosine of the angle between its rain, so shifted, and that of the others, from 0 to 1
     */
    public StormShift {
        Objects.requireNonNull(storm, "storm");
        Objects.requireNonNull(shift, "shift");
    }

    @Override
    public String toString() {
        return storm + ": "
                + (shift.isZero()
                        ? "no shift"
                        : Text.duration(shift.abs()) + (shift.isNegative() ? " earlier" : " later"))
                + ", likeness " + Text.significant(likeness, 3);
    }
}
