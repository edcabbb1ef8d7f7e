package dev.runnel.verification.simulation;

import java.util.Set;

/** What a finding can be called, in the words of the score: names that no reading can tell apart are one. */
enum Called {
    HELD_UP("held up"),
    RELEASED("released"),
    MORE_WATER("more water"),
    LESS_WATER("less water"),
    DEPTH_STEP("depth step"),
    DEPTH_DRIFT("drift or sediment"),
    VELOCITY_LOSS("velocity loss"),
    VELOCITY_GAIN("velocity gain"),
    LOW_FOR_DEPTH("low for depth"),
    HIGH_FOR_DEPTH("high for depth"),
    LEVEL_UP("level up"),
    LEVEL_DOWN("level down"),
    DROP_OUTS("drop-outs"),
    SIGN_FLIPS("sign flips"),
    REVERSED_SIGN("reversed sign"),
    REVERSE_FLOW("reverse flow"),
    FALSE_ECHO("false echo of depth"),
    FALSE_VELOCITY("velocity far too high"),
    FROZEN_DEPTH("frozen depth"),
    FROZEN_VELOCITY("frozen velocity"),
    CONTRADICTORY("contradictory"),
    UNIT("another unit"),
    EXCHANGED_COLUMNS("columns exchanged"),
    CLOCK_OF_MONITOR("clock of monitor"),
    CLOCK_OF_GAUGE("clock of gauge"),
    SILENT_GAUGE("silent gauge"),
    GAUGE_SHARE("share of gauge"),
    REMARK("remark"),
    BASELINE_DOUBTFUL("baseline doubtful");

    private final String text;

    Called(String text) {
        this.text = text;
    }

    /** Whether the name says a cause, which nobody can know from a level alone. */
    boolean isCause() {
        return switch (this) {
            case HELD_UP, RELEASED, MORE_WATER, LESS_WATER, DEPTH_STEP, DEPTH_DRIFT, VELOCITY_LOSS, VELOCITY_GAIN ->
                true;
            default -> false;
        };
    }

    /** The names that are right for a fault; none if nothing at the monitor is wrong. */
    static Set<Called> rightFor(Fault fault, boolean levelOnly) {
        if (levelOnly) {
            return switch (fault.kind()) {
                case FROZEN_DEPTH, FROZEN_LOGGER -> Set.of(FROZEN_DEPTH);
                case FALSE_ECHO -> Set.of(FALSE_ECHO);
                case CLOCK_OF_MONITOR -> Set.of(CLOCK_OF_MONITOR);
                case CLOCK_OF_GAUGE -> Set.of(CLOCK_OF_GAUGE);
                case DEAD_GAUGE -> Set.of(SILENT_GAUGE);
                case CLOGGED_FUNNEL -> Set.of(GAUGE_SHARE);
                case DEPTH_UNIT -> Set.of(UNIT);
                case OBSTRUCTION_GONE, LESS_WATER -> Set.of(LEVEL_DOWN);
                case DEPTH_OFFSET, DEPTH_DRIFT -> Set.of(fault.severity() < 0 ? LEVEL_DOWN : LEVEL_UP);
                case BLOCKAGE,
                        BLOCKAGE_ABRUPT,
                        BLOCKAGE_RELEASED,
                        BLOCKAGE_DROWNED,
                        RECURRING,
                        SEDIMENT,
                        MORE_WATER,
                        REVERSE_FLOW -> Set.of(LEVEL_UP);
                default -> Set.of();
            };
        }
        return switch (fault.kind()) {
            case BLOCKAGE, BLOCKAGE_ABRUPT, BLOCKAGE_RELEASED, BLOCKAGE_DROWNED, RECURRING -> Set.of(HELD_UP);
            case OBSTRUCTION_GONE -> Set.of(RELEASED);
            case SEDIMENT, DEPTH_DRIFT -> Set.of(DEPTH_DRIFT);
            case LESS_WATER -> Set.of(LESS_WATER);
            case MORE_WATER -> Set.of(MORE_WATER);
            case REVERSE_FLOW -> Set.of(REVERSE_FLOW);
            case DEPTH_OFFSET -> Set.of(DEPTH_STEP);
            case VELOCITY_FOULING, VELOCITY_STEP -> Set.of(VELOCITY_LOSS);
            case VELOCITY_ZEROS, WEAK_ECHO -> Set.of(DROP_OUTS);
            case SIGN_FLIPS -> Set.of(fault.severity() < 1 ? SIGN_FLIPS : REVERSED_SIGN);
            case FALSE_ECHO -> Set.of(FALSE_ECHO);
            case FROZEN_DEPTH -> Set.of(FROZEN_DEPTH);
            case FROZEN_VELOCITY -> Set.of(FROZEN_VELOCITY);
            case FROZEN_LOGGER -> Set.of(FROZEN_DEPTH, FROZEN_VELOCITY);
            case CLOCK_OF_MONITOR -> Set.of(CLOCK_OF_MONITOR);
            case CLOCK_OF_GAUGE -> Set.of(CLOCK_OF_GAUGE);
            case DEAD_GAUGE -> Set.of(SILENT_GAUGE);
            case CLOGGED_FUNNEL -> Set.of(GAUGE_SHARE);
            case DEPTH_UNIT, VELOCITY_UNIT -> Set.of(UNIT);
            case EXCHANGED_COLUMNS -> Set.of(EXCHANGED_COLUMNS);
            case NONE, FALSE_STAMP, FROM_FIRST_DAY -> Set.of();
        };
    }

    @Override
    public String toString() {
        return text;
    }
}
