package dev.runnel.hydraulics.monitoring;

import org.apiguardian.api.API;

/**
 * What one velocity reading says. Every reading has exactly one.
 *
 * <p>What this is not: a quality test. A velocity that stands at exactly 0 under a flowing depth is often a sensor that
 * lost its echo; the monitor counts such readings as {@link #STANDING} and leaves the judgement to a person.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum VelocityCondition {
    /** There is no velocity reading. The flow is missing, unless the depth alone says that it is 0. */
    NO_VELOCITY,
    /** The reading is above 0: the water moves downstream. */
    FORWARD,
    /** The reading is exactly 0. */
    STANDING,
    /** The reading is below 0: the water moves upstream and the flow is negative. */
    REVERSE;

    private static final VelocityCondition[] BY_CODE = values();

    static VelocityCondition of(double velocity) {
        if (Double.isNaN(velocity)) {
            return NO_VELOCITY;
        }
        if (velocity == 0) {
            return STANDING;
        }
        return velocity > 0 ? FORWARD : REVERSE;
    }

    static VelocityCondition ofCode(int code) {
        return BY_CODE[code];
    }

    static int count() {
        return BY_CODE.length;
    }
}
