package dev.runnel.verification.simulation;

import dev.runnel.internal.Text;

/**
 * Sites that count together.
 *
 * @param kind the fault
 * @param severity as in {@link Fault}
 * @param ramp days until it is fully there
 * @param lasts days until it ends; infinite if it stays
 * @param scatter of the law, for sound sites; 0 where the sites of the cell take 2, 4, 6 and 8 % in turn
 * @param trait what is peculiar
 * @param levelOnly whether the watch sees no velocity
 */
record Cell(
        FaultKind kind, double severity, double ramp, double lasts, double scatter, Trait trait, boolean levelOnly) {
    private static final double SMALL_VELOCITY = 0.1;
    private static final double SMALL_DEPTH = 0.15;

    boolean isSound() {
        return kind == FaultKind.NONE;
    }

    /** Whether the fault lies within a winter of more water, which has findings of its own. */
    boolean isInSeason() {
        return trait == Trait.SEASON && !isSound();
    }

    /** Whether a sensor errs by so little that only weeks tell; a depth by as much as moves the velocity usual there by a tenth. */
    boolean isSmall() {
        return switch (kind) {
            case VELOCITY_FOULING, VELOCITY_STEP -> severity <= SMALL_VELOCITY;
            case DEPTH_DRIFT -> Math.abs(severity) <= SMALL_DEPTH;
            default -> false;
        };
    }

    /** Whether nothing at the monitor is wrong, so that every finding is a false one. */
    boolean isQuiet() {
        return switch (kind) {
            case NONE, FALSE_STAMP -> true;
            default -> false;
        };
    }

    /** The severity as people say it. */
    String how() {
        String often = kind == FaultKind.RECURRING ? " again and again" : "";
        String time = ramp < 1 ? Text.number(Math.rint(24 * ramp)) + " h" : Text.number(ramp) + " d";
        String over = ramp > 0 && kind != FaultKind.RECURRING ? " in " + time : "";
        return switch (kind) {
            case NONE ->
                (trait == Trait.PLAIN ? "" : trait + ", ") + percent(scatter).substring(1) + " scatter";
            case BLOCKAGE,
                    BLOCKAGE_ABRUPT,
                    BLOCKAGE_RELEASED,
                    BLOCKAGE_DROWNED,
                    OBSTRUCTION_GONE,
                    FROM_FIRST_DAY,
                    SEDIMENT,
                    REVERSE_FLOW,
                    RECURRING -> percent(severity) + " depth" + over + often;
            case DEPTH_OFFSET, DEPTH_DRIFT -> percent(severity) + " of depth" + over;
            case VELOCITY_FOULING, VELOCITY_STEP, LESS_WATER, CLOGGED_FUNNEL -> percent(-severity) + over;
            case MORE_WATER -> percent(severity) + over;
            case VELOCITY_ZEROS, WEAK_ECHO, SIGN_FLIPS, FALSE_ECHO ->
                percent(severity).substring(1) + " of readings";
            case FROZEN_DEPTH, FROZEN_VELOCITY, FROZEN_LOGGER -> Text.number(lasts) + " d";
            case CLOCK_OF_MONITOR, CLOCK_OF_GAUGE -> (severity > 0 ? "+" : "") + Text.number(severity) + " h";
            case FALSE_STAMP -> (severity > 0 ? "+" : "") + Text.number(severity) + " d";
            case DEAD_GAUGE -> Double.isInfinite(lasts) ? "to the end" : "for " + Text.number(lasts) + " d";
            case DEPTH_UNIT, VELOCITY_UNIT -> "times " + Text.number(severity);
            case EXCHANGED_COLUMNS ->
                severity == 1 ? "both in SI" : "depth in units of 1/" + Text.number(severity) + " m";
        };
    }

    private static String percent(double share) {
        return (share < 0 ? "-" : "+") + Text.number(Math.rint(Math.abs(share) * 100)) + " %";
    }

    /** What is wrong, as people say it. */
    String what() {
        return kind + (trait == Trait.SEASON ? ", wet season" : "") + (levelOnly ? ", level only" : "");
    }
}
