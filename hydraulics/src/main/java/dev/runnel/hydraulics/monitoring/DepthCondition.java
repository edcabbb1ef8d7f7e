package dev.runnel.hydraulics.monitoring;

import org.apiguardian.api.API;

/**
 * What one depth reading says about the pipe. Every reading has exactly one; with the {@link VelocityCondition} it
 * decides how the flow is found (see {@link PipeMonitor}).
 *
 * <p>What this is not: a quality test. It says what the reading means if it is true, not whether it is true.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum DepthCondition {
    /** There is no depth reading. The flow is missing. */
    NO_DEPTH,
    /** The reading is below 0, which no depth can be: taken as a reading of 0 and the flow called suspect. */
    NEGATIVE,
    /**
     * The reading is 0 and a sensor at that place misses no water: the pipe is empty, the flow 0 whatever the velocity
     * sensor says.
     */
    DRY,
    /**
     * The reading is 0 and the sensor sits above the lowest point where water could flow: the depth is somewhere from 0
     * to the sensor offset, the flow not known and missing.
     */
    BELOW_SENSOR,
    /** Water is read at or below the stated top of the sediment: no flow area, flow 0, at best of poor quality. */
    BELOW_BED,
    /** Water above the bed and not above the soffit. */
    PART_FULL,
    /** The level stands above the soffit: the flow area is the whole section above the bed. */
    SURCHARGED,
    /** The reading lies more than 50 m from the sensor: another unit than metres, or an error code. The flow is missing. */
    IMPOSSIBLE;

    private static final DepthCondition[] BY_CODE = values();

    /**
     * Tells whether water fills at least a part of the section, so that the velocity decides the flow.
     *
     * @return true for {@link #PART_FULL} and {@link #SURCHARGED}
     */
    public boolean isFlowing() {
        return this == PART_FULL || this == SURCHARGED;
    }

    static DepthCondition ofCode(int code) {
        return BY_CODE[code];
    }

    static int count() {
        return BY_CODE.length;
    }
}
