package dev.runnel.hydraulics.watch;

import org.apiguardian.api.API;

/**
 * What a figure takes from the readings, and so what it rests on.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum ReadingUse {
    /** The depth: levels, fullness, spills over a weir. */
    DEPTH,
    /** The velocity. */
    VELOCITY,
    /** Depth and velocity: flow, volume, dry weather flow. */
    FLOW,
    /** Flow and the times of rain and monitor: storm response. */
    STORM_RESPONSE
}
