package dev.runnel.verification.simulation;

/** What can go wrong at a site. */
enum FaultKind {
    NONE("sound"),
    /** Grows downstream: depth up, velocity down, the same flow. Stays to the end of the record. */
    BLOCKAGE("blockage"),
    /** The same within two hours. */
    BLOCKAGE_ABRUPT("blockage, abrupt"),
    /** Grows, holds three days, is gone within an hour. */
    BLOCKAGE_RELEASED("blockage, released"),
    /** Lies like a dam that storms drown, in a wet season. */
    BLOCKAGE_DROWNED("blockage, drowned by storms"),
    /** There from the first day, gone at a moment. */
    OBSTRUCTION_GONE("old obstruction gone"),
    SEDIMENT("sediment"),
    LESS_WATER("less water"),
    MORE_WATER("more water"),
    /** Grows and is cleared again and again, every so many days. */
    RECURRING("recurring obstruction"),
    /** Held back so far that the water runs backwards for some hours on three days. */
    REVERSE_FLOW("reverse flow"),
    DEPTH_OFFSET("depth offset"),
    DEPTH_DRIFT("depth drift"),
    VELOCITY_FOULING("velocity fouling"),
    VELOCITY_STEP("velocity step"),
    VELOCITY_ZEROS("velocity zeros"),
    WEAK_ECHO("weak echo"),
    SIGN_FLIPS("sign flips"),
    /** Single depths far from their neighbours. */
    FALSE_ECHO("false echo of depth"),
    FROZEN_DEPTH("frozen depth"),
    FROZEN_VELOCITY("frozen velocity"),
    FROZEN_LOGGER("frozen logger"),
    CLOCK_OF_MONITOR("clock of monitor"),
    CLOCK_OF_GAUGE("clock of gauge"),
    DEAD_GAUGE("dead gauge"),
    /** A funnel that lets only some of the rain through to the bucket. */
    CLOGGED_FUNNEL("clogged funnel"),
    FALSE_STAMP("false stamp"),
    /** A logger that was set anew: readings a factor larger. */
    DEPTH_UNIT("depth in another unit"),
    VELOCITY_UNIT("velocity in another unit"),
    /** Depth and velocity in the columns of each other. */
    EXCHANGED_COLUMNS("columns exchanged"),
    /** A blockage that was there on the first day and stays. */
    FROM_FIRST_DAY("blockage from the first day");

    private final String text;

    FaultKind(String text) {
        this.text = text;
    }

    /** Whether the water itself is changed, not only what is read of it. */
    boolean isPhysical() {
        return compareTo(BLOCKAGE) >= 0 && compareTo(REVERSE_FLOW) <= 0 || this == FROM_FIRST_DAY;
    }

    /** Whether something holds the water up downstream of the monitor. */
    boolean isObstruction() {
        return switch (this) {
            case BLOCKAGE,
                    BLOCKAGE_ABRUPT,
                    BLOCKAGE_RELEASED,
                    BLOCKAGE_DROWNED,
                    OBSTRUCTION_GONE,
                    RECURRING,
                    FROM_FIRST_DAY -> true;
            default -> false;
        };
    }

    @Override
    public String toString() {
        return text;
    }
}
