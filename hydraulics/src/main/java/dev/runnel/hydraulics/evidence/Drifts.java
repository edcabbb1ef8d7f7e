package dev.runnel.hydraulics.evidence;

import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The trends of the daily figures over the same days. Immutable and thread-safe.
 *
 * @param level of the median level, m
 * @param velocity of the median velocity, m/s
 * @param flow of the mean flow, m³/s
 * @param ratio of the median of measured over uniform-flow velocity
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Drifts(Trend level, Trend velocity, Trend flow, Trend ratio) {
    /**
     * Checks that all are there.
     *
     * @param level of the median level, m
     * @param velocity of the median velocity, m/s
     * @param flow of the mean flow, m³/s
     * @param ratio of the median of measured over uniform-flow velocity
     */
    public Drifts {
        Objects.requireNonNull(level, "level");
        Objects.requireNonNull(velocity, "velocity");
        Objects.requireNonNull(flow, "flow");
        Objects.requireNonNull(ratio, "ratio");
    }
}
