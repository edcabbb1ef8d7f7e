package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.Arrays;
import java.util.Optional;

/**
 * Looks for a depth that steps from one reading to the next and stays there while the velocity goes on as before: a sensor
 * that was moved. Water takes longer, and moves the velocity with it.
 */
final class DepthJumps {
    // Every number of this class is chosen here; the reasons stand beside them.

    /** Smallest step of ln y, 12 %: less is never told of a depth. */
    private static final double LEAST = 0.12;

    /** Largest one: more is no knock, but another unit or no water. */
    private static final double LARGEST = 1;

    /** Known dry hours after the step that decide; twice as many where no velocity stands beside the depth. */
    private static final int HOURS_AFTER = 6;

    private static final int HOURS_AFTER_ALONE = 12;

    /** Known dry hours before the step, of so many, that show where things stood. */
    private static final int HOURS_BEFORE = 6;

    private static final int LEAST_BEFORE = 3;
    private static final int BEFORE = 12;

    /** The question ends after a day and a half: what comes later may be something else. */
    private static final int OPEN_HOURS = 36;

    /**
     * Dry hours of three days before, and how many of them show that what was before the step was no passing state; after a wet
     * spell the last so many of ten days.
     */
    private static final int DAYS_BEFORE = 72;

    private static final int LONG_BEFORE = 240;

    private static final int LEAST_OF_DAYS = 24;

    /** Share of the step by which the depth must have moved, and the most it may. */
    private static final double STAYS = 0.6;

    private static final double MOST = 1.6;

    /** Share of the step by which a level alone stands away from usual after it: what comes back is no step. */
    private static final double AWAY = 0.4;

    /** Share of the step that no more than one hour in six after it may lack. */
    private static final double HALF = 0.5;

    private static final int ODD_HOURS = 6;

    /** Another name lies farther by this squared distance: the step itself speaks for the sensor already. */
    private static final double FARTHER = 2;

    private final double limit;
    private final Optional<Naming> naming;

    /** Depth and velocity of dry hours less those of the usual dry day. */
    private final Ring hours = new Ring(LONG_BEFORE + OPEN_HOURS, 2);

    private Optional<DepthJump> asked = Optional.empty();

    DepthJumps(SiteBaseline baseline) {
        // Where a tide moves depth and velocity by the hour, the way from one hour to another names nothing.
        boolean named = !(baseline.isTidal() && baseline.watches(Quantity.VELOCITY_AT_DEPTH));
        this.limit = baseline.watches(Quantity.DEPTH) && named ? baseline.sensor.depthStep() : Double.NaN;
        this.naming = baseline.watches(Quantity.VELOCITY_AT_DEPTH) && baseline.watches(Quantity.VELOCITY)
                ? Optional.of(Naming.of(baseline))
                : Optional.empty();
    }

    /** Whether there is no velocity to go by. */
    boolean isAlone() {
        return naming.isEmpty();
    }

    /**
     * Takes an hour; returns the step that is now known to stay.
     *
     * @param d ln depth over that of the usual dry day; NaN if it is not known, as in wet weather
     * @param u the same of the velocity
     */
    Optional<DepthJump> hour(SiteHour hour, double d, double u) {
        if (asked.isPresent() && hour.hour - asked.orElseThrow().hour() > OPEN_HOURS) {
            asked = Optional.empty();
        }
        if (Double.isNaN(d) || !isAlone() && Double.isNaN(u)) {
            return Optional.empty();
        }
        hours.add(hour.hour, d, u);
        // A NaN of a limit or a step is beyond nothing.
        if (Math.abs(hour.step) > limit) {
            DepthJump jump = DepthJump.of(hour);
            if (Math.abs(jump.ln()) > LEAST
                    && Math.abs(jump.ln()) < LARGEST
                    && (asked.isEmpty()
                            || Math.abs(jump.step())
                                    > Math.abs(asked.orElseThrow().step()))) {
                asked = Optional.of(jump);
            }
        }
        if (asked.isEmpty()) {
            return Optional.empty();
        }
        DepthJump jump = asked.orElseThrow();
        int after = hours.from(jump.hour() + 1);
        if (hours.size() - after < (isAlone() ? HOURS_AFTER_ALONE : HOURS_AFTER)) {
            return Optional.empty();
        }
        asked = Optional.empty();
        return stays(jump, after) ? Optional.of(jump) : Optional.empty();
    }

    private boolean stays(DepthJump jump, int after) {
        int at = hours.from(jump.hour());
        int before = Math.max(hours.from(jump.hour() - BEFORE), at - HOURS_BEFORE);
        int days = hours.from(jump.hour() - DAYS_BEFORE);
        if (at - days < LEAST_OF_DAYS) {
            days = Math.max(hours.from(jump.hour() - LONG_BEFORE), at - LEAST_OF_DAYS);
        }
        if (at - before < LEAST_BEFORE || at - days < LEAST_OF_DAYS) {
            return false;
        }
        double stood = Medians.of(hours.column(before, at, 0));
        double[] stands = hours.column(after, 0);
        double stand = Medians.of(stands);
        double moved = stand - stood;
        double ln = jump.ln();
        long back =
                Arrays.stream(stands).filter(d -> !((d - stood) / ln > HALF)).count();
        if (!(moved / ln > STAYS && moved / ln < MOST)
                || !((stand - Medians.of(hours.column(days, at, 0))) / ln > HALF)
                || ODD_HOURS * back > stands.length) {
            return false;
        }
        if (isAlone()) {
            return stand / ln > AWAY;
        }
        double[] far = naming.orElseThrow()
                .distances(moved, Medians.of(hours.column(after, 1)) - Medians.of(hours.column(before, at, 1)));
        int ray = jump.sign() > 0 ? Naming.DEPTH_UP : Naming.DEPTH_DOWN;
        double other = Double.POSITIVE_INFINITY;
        for (int i = 0; i < far.length; i++) {
            other = i == ray ? other : Math.min(other, far[i]);
        }
        return other - far[ray] > FARTHER;
    }

    /** Forgets what was read from an hour on. */
    void dropFrom(long hour) {
        hours.dropFrom(hour);
        asked = Optional.empty();
    }

    void write(StateText text) {
        hours.write(text, "still");
        asked.ifPresent(jump -> jump.write(text, "asked"));
    }

    void read(StateText text) {
        hours.read(text, "still");
        asked = text.has("askedStep") ? Optional.of(DepthJump.read(text, "asked")) : Optional.empty();
    }
}
