package dev.runnel.hydraulics.watch;

import org.apiguardian.api.API;

/**
 * What the watch compares with what is usual.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum Quantity {
    /** The velocity against the one usual at the same depth, in any weather. */
    VELOCITY_AT_DEPTH("velocity at the same depth"),
    /** The depth against the one usual at the same hour, in dry weather. */
    DEPTH("depth"),
    /** The velocity against the one usual at the same hour, in dry weather. */
    VELOCITY("velocity"),
    /** Velocity times flow area against the one usual at the same hour, in dry weather. */
    FLOW("flow");

    static final int COUNT = 4;

    private final String words;

    Quantity(String words) {
        this.words = words;
    }

    @Override
    public String toString() {
        return words;
    }
}
