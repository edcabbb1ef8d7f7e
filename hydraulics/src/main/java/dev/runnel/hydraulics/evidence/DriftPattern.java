package dev.runnel.hydraulics.evidence;

import org.apiguardian.api.API;

/**
 * Which combination of drifts of level, velocity and flow was seen over some dry days, and what it would be consistent
 * with. The words say what is seen, never what is the case: each combination has other explanations.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public enum DriftPattern {
    /** Level up, velocity down, no drift of the flow. */
    BACKWATER(
            "level up, velocity down, no drift of the flow found: consistent with an obstruction downstream that holds the"
                    + " water back; a risen level downstream or a drifting depth sensor with a fouling velocity sensor can"
                    + " look the same"),
    /** No drift of the level, velocity down, flow down. */
    VELOCITY_LOSS(
            "velocity and flow down, no drift of the level found: consistent with a velocity sensor that is fouling; less"
                    + " water with a drifting depth sensor can look the same"),
    /** The velocity repeated one value for whole days. */
    VELOCITY_FROZEN(
            "the velocity repeated the same value for most of a day or longer: consistent with a velocity sensor that is"
                    + " fouled or frozen; flow, ratio and trends of those days mean little"),
    /** Level up, flow up, velocity not down. */
    MORE_WATER("level and flow up, velocity not down: consistent with more water, for example infiltration"),
    /** Level down, flow down, velocity not up. */
    LESS_WATER(
            "level and flow down, velocity not up: consistent with less water, or with water that takes another way"),
    /** Some drift, in another combination. */
    OTHER("a drift in a combination that has no plain reading here: look at the plots and at the sensors"),
    /** No drift found. */
    NONE("no drift found; that is not a proof that there is none"),
    /** Not enough days to say anything. */
    TOO_FEW_DAYS("too few dry days with enough readings to say anything");

    private final String description;

    DriftPattern(String description) {
        this.description = description;
    }

    /**
     * Returns what was seen and what it would be consistent with.
     *
     * @return a sentence in plain words
     */
    public String description() {
        return description;
    }

    static DriftPattern of(Direction level, Direction velocity, Direction flow) {
        if (level == Direction.UP && velocity == Direction.DOWN && flow == Direction.NONE) {
            return BACKWATER;
        }
        if (level == Direction.NONE && velocity == Direction.DOWN && flow == Direction.DOWN) {
            return VELOCITY_LOSS;
        }
        if (level == Direction.UP && velocity != Direction.DOWN && flow == Direction.UP) {
            return MORE_WATER;
        }
        if (level == Direction.DOWN && velocity != Direction.UP && flow == Direction.DOWN) {
            return LESS_WATER;
        }
        boolean steady = level == Direction.NONE && velocity == Direction.NONE && flow == Direction.NONE;
        return steady ? NONE : OTHER;
    }
}
