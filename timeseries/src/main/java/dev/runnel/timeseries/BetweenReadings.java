package dev.runnel.timeseries;

import org.apiguardian.api.API;

/**
 * What is taken to be known between two readings. OGC WaterML 2.0 (10-126r4, table 9) calls the first "constant in the
 * succeeding interval" and the second "continuous".
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum BetweenReadings {
    /** A reading holds until the next one, but no longer than the maximum gap. */
    HOLD,
    /** Two readings no further apart than the maximum gap are joined by a straight line; else nothing is known. */
    LINEAR
}
