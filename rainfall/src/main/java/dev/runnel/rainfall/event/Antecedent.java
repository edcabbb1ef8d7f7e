package dev.runnel.rainfall.event;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import org.apiguardian.api.API;

/**
 * The dry time before an event: from the end of the last rain of any size, kept as an event or not, to its start.
 *
 * @param dryTime length; 0 or longer
 * @param isAtLeast true if the record begins in it, so that it may have been longer
 * @param missingSteps missing steps in it, which may have been wet
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Antecedent(Duration dryTime, boolean isAtLeast, int missingSteps) {
    /**
     * Checks the arguments.
     *
     * @param dryTime length; 0 or longer
     * @param isAtLeast true if the record begins in it
     * @param missingSteps missing steps in it; 0 or more
     * @throws IllegalArgumentException if the length or the number is negative
     */
    public Antecedent {
        EpochNanos.nonNegative("dryTime", dryTime);
        Require.atLeast("missingSteps", missingSteps, 0);
    }

    @Override
    public String toString() {
        if (isAtLeast && dryTime.isZero()) {
            return "dry time before unknown";
        }
        return (isAtLeast ? "dry for at least " : "dry for ")
                + Text.duration(dryTime)
                + (missingSteps == 0 ? "" : ", " + missingSteps + " missing in that");
    }
}
