package dev.runnel.rainfall.distribution;

import org.apiguardian.api.API;

/**
 * What changes with time in a {@link TrendFit}.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum TrendIn {
    /** Nothing: the ordinary fit, to compare with. */
    NOTHING(0),
    /** The location, by a straight line: &xi;(t) = &xi;<sub>0</sub> + b t. */
    LOCATION(1),
    /** The scale, by an exponential, so that it stays above 0: &alpha;(t) = &alpha;<sub>0</sub> exp(c t). */
    SCALE(1),
    /** Both. */
    LOCATION_AND_SCALE(2);

    private final int slopes;

    TrendIn(int slopes) {
        this.slopes = slopes;
    }

    /**
     * Returns how many parameters more than the ordinary fit has.
     *
     * @return 0 to 2
     */
    public int slopes() {
        return slopes;
    }

    boolean isInLocation() {
        return this == LOCATION || this == LOCATION_AND_SCALE;
    }

    boolean isInScale() {
        return this == SCALE || this == LOCATION_AND_SCALE;
    }
}
