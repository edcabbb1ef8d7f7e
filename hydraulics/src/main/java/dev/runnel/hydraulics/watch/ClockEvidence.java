package dev.runnel.hydraulics.watch;

/**
 * Whether the last dry days say together that they come early or late. Working days decide; days of rest may not contradict.
 * A working day that the usual day of rest explains as well as the moved working day is people who stayed at home, and so is
 * one whose morning alone comes late: a clock moves the evening as well.
 */
final class ClockEvidence {
    /** Working days must be beyond this, days of rest as well, h; chosen here, as are all values of this class. */
    private static final double LEAST_SHIFT = 0.2;

    private static final double LEAST_REST_SHIFT = 0.3;

    /** A median shift beyond this is large, h: a wet season, which flattens the day, makes none. */
    private static final double LARGE_SHIFT = 0.6;

    /** Distance from usual of a day in its scatter, beyond which it counts no more. */
    private static final double MOST = 6;

    /** How much worse the usual day of rest must fit working days. */
    private static final double NOT_AT_HOME = 1.2;

    /** Share of what moving the working days gains that afternoon, evening and night must have. */
    private static final double SHARE_OF_EVENING = 0.1;

    /**
     * Share of the shift of whole days, or of their mornings if that is more, by which the evenings must have moved in the median.
     */
    private static final double EVENING_WITH_DAY = 0.6;

    /** And the mornings, by this share of what the whole days moved: whoever goes to bed late gets up as ever. */
    private static final double MORNING_WITH_DAY = 0.5;

    /**
     * A shift up to this, h, may be the habit of a school holiday, unless a day of rest moved as well or the evenings by this share.
     */
    private static final double SMALL_SHIFT = 0.8;

    private static final double EVENING_ALONE = 0.7;

    /** A day of rest did not move whose evening moved by less than this share of it: people slept in. */
    private static final double EVENING_OF_REST = 0.5;

    /** Beyond this, h, whole days hardly come late by their mornings alone: the evenings are held against them and not the mornings. */
    private static final double WIDE_SHIFT = 0.8;

    /**
     * Few working days must be alike: each beyond this share of their median, and, as long as people may have stayed at home,
     * none beyond twice the median and so many hours more.
     */
    private static final int FEW = 3;

    private static final double ALIKE = 0.6;

    private static final double FARTHER = 0.5;

    /**
     * Of few days, one that moved still fits the usual one badly, by so many times what the working days before leave, if
     * something leapt in it: that is no other hour.
     */
    private static final double MISFIT = 3;

    private static final int LEAST_BEFORE = 3;

    /**
     * Two days might be anybody's habit: a clock is set wrong by hours and half hours, their median must be that near to one, h;
     * they may differ by so many scatters; and the depth must have moved by this share of what the flow has.
     */
    private static final double NEAR_HALF_HOUR = 0.15;

    private static final double APART = 3;

    private static final double SHARE_BY_DEPTH = 0.4;

    /** How near the median of three days must be where the depth alone places them, h. */
    private static final double NEAR_BY_DEPTH = 0.2;

    /** So many days in a row nobody stays at home without being told. */
    private static final int NO_HOLIDAY = 6;

    /** One way to agree: days, within calendar days, working days among them, their median shift, and so on. */
    private record Agreement(int days, int within, int work, double shift, double scatters, double gain) {}

    private static final Agreement[] BY_FLOW = {
        new Agreement(2, 6, 2, 0.4, 5.5, 0.5),
        new Agreement(3, 8, 2, 0.3, 5, 0.4),
        new Agreement(4, 12, 2, 0.3, 4.5, 0.4),
        new Agreement(5, 16, 3, 0.3, 4, 0.4),
        new Agreement(6, 16, 3, 0.3, 3.6, 0.4),
        new Agreement(7, 16, 3, 0.28, 3.6, 0.4)
    };

    /** Where there is no flow to place the days by: the depth wanders with its law as well. */
    private static final Agreement[] BY_DEPTH = {
        new Agreement(3, 8, 2, 0.7, 4.2, 0.4),
        new Agreement(4, 12, 2, 0.5, 4, 0.4),
        new Agreement(5, 16, 3, 0.36, 3.8, 0.4),
        new Agreement(6, 16, 3, 0.33, 3.6, 0.4),
        new Agreement(7, 16, 3, 0.3, 3.6, 0.4)
    };

    private static final Agreement AFTER_CIVIL_CHANGE = new Agreement(2, 2, 1, 0.6, 3.5, 0.4);

    private final ClockWatch watch;

    ClockEvidence(ClockWatch watch) {
        this.watch = watch;
    }

    /**
     * Number of days that agree; 0 if they do not.
     *
     * @param small whether small shifts count, which only many days tell
     */
    int days(long day, boolean small) {
        for (Agreement each : watch.hasFlow() ? BY_FLOW : BY_DEPTH) {
            if (agree(day, each) && isOfClock(each.days) && (small || Math.abs(median(each.days)) > LARGE_SHIFT)) {
                return each.days;
            }
        }
        return 0;
    }

    /** Whether few days that agree moved as a clock moves them: by half hours, alike, and the depth with the flow. */
    private boolean isOfClock(int days) {
        if (Math.abs(median(days)) <= SMALL_SHIFT && !hasRest(days) && !eveningMoved(days, EVENING_ALONE)) {
            return false;
        }
        if (days > FEW) {
            return true;
        }
        double middle = Math.abs(median(days));
        double fromHalfHour = Math.abs(middle - Math.rint(2 * middle) / 2);
        if (days > 2) {
            return watch.hasFlow() || fromHalfHour <= NEAR_BY_DEPTH;
        }
        if (workBefore(days) < LEAST_BEFORE) {
            return false;
        }
        boolean alike = Math.abs(watch.shift(0) - watch.shift(1)) <= APART * watch.scatter(0);
        return alike && fromHalfHour <= NEAR_HALF_HOUR && depthMoved(0) && depthMoved(1);
    }

    /** Whether a day of rest is among the days, and its evening does not deny that it moved. */
    private boolean hasRest(int days) {
        for (int i = 0; i < days; i++) {
            double shift = watch.shift(i);
            if (watch.isRest(i)
                    && !(Math.signum(shift) * watch.shiftOfEvening(i) < EVENING_OF_REST * Math.abs(shift))) {
                return true;
            }
        }
        return false;
    }

    private int workBefore(int days) {
        int work = 0;
        for (int i = days; i < watch.size(); i++) {
            work += watch.isRest(i) ? 0 : 1;
        }
        return work;
    }

    private boolean depthMoved(int fromLast) {
        double shift = watch.shift(fromLast);
        return Math.signum(shift) * watch.shiftByDepth(fromLast) >= SHARE_BY_DEPTH * Math.abs(shift);
    }

    /** Whether the last two days in a row agree, which suffices after a civil change. */
    boolean afterCivilChange(long day) {
        return agree(day, AFTER_CIVIL_CHANGE);
    }

    int daysAfterCivilChange() {
        return AFTER_CIVIL_CHANGE.days;
    }

    private boolean agree(long day, Agreement wanted) {
        if (watch.size() < wanted.days || day - watch.day(wanted.days - 1) >= wanted.within) {
            return false;
        }
        double sign = Math.signum(watch.shift(0));
        double middle = Math.abs(median(wanted.days));
        boolean few = wanted.days <= FEW;
        double nearest = few ? ALIKE * middle : 0;
        double farthest = wanted.days < NO_HOLIDAY ? 2 * middle + FARTHER : Double.POSITIVE_INFINITY;
        double mostLeft = few ? MISFIT * leftBefore(wanted.days) : Double.POSITIVE_INFINITY;
        double unmoved = 0;
        double moved = 0;
        double workUnmoved = 0;
        double workMoved = 0;
        double atHome = 0;
        double distance = 0;
        double evening = 0;
        int work = 0;
        for (int i = 0; i < wanted.days; i++) {
            boolean rest = watch.isRest(i);
            double shift = sign * watch.shift(i);
            if (!(shift > (rest ? LEAST_REST_SHIFT : LEAST_SHIFT))) {
                return false;
            }
            if (!rest && (shift < nearest || shift > farthest || watch.squaresMoved(i) > mostLeft)) {
                return false;
            }
            unmoved += watch.squaresUnmoved(i);
            moved += watch.squaresMoved(i);
            distance += Math.min(MOST, shift / watch.scatter(i));
            if (!rest) {
                work++;
                workUnmoved += watch.squaresUnmoved(i);
                workMoved += watch.squaresMoved(i);
                evening += watch.gainOfEvening(i);
                atHome += watch.squaresOfOther(i);
            }
        }
        return work >= wanted.work
                && middle > wanted.shift
                && distance > wanted.scatters * Math.sqrt(wanted.days)
                && unmoved - moved > wanted.gain * moved
                && eveningMoved(wanted.days, EVENING_WITH_DAY)
                && (wanted.days >= NO_HOLIDAY
                        || atHome > NOT_AT_HOME * workMoved && evening > SHARE_OF_EVENING * (workUnmoved - workMoved));
    }

    /**
     * Whether the evenings of the working days, placed by themselves, came late or early with the whole days and with the mornings, by a
     * share of what those moved: whoever sleeps in goes to bed as ever.
     */
    private boolean eveningMoved(int days, double share) {
        double middle = median(days);
        double sign = Math.signum(middle);
        double[] evenings = new double[days];
        double[] mornings = new double[days];
        for (int i = 0; i < days; i++) {
            boolean rest = watch.isRest(i);
            evenings[i] = rest ? Double.NaN : watch.shiftOfEvening(i);
            mornings[i] = rest ? Double.NaN : watch.shiftOfMorning(i);
        }
        double day = Math.abs(middle);
        double morning = sign * Medians.of(mornings);
        double whole = day <= WIDE_SHIFT && morning > day ? morning : day;
        return !(sign * Medians.of(evenings) < share * whole) && !(morning < MORNING_WITH_DAY * day);
    }

    /** Median of the squares that the working days before the last ones leave; infinite if they are too few. */
    private double leftBefore(int days) {
        double[] left = new double[Math.max(0, watch.size() - days)];
        int known = 0;
        for (int i = 0; i < left.length; i++) {
            boolean rest = watch.isRest(days + i);
            left[i] = rest ? Double.NaN : watch.squaresMoved(days + i);
            known += rest ? 0 : 1;
        }
        return known < LEAST_BEFORE ? Double.POSITIVE_INFINITY : Medians.of(left);
    }

    /** Median shift of the working days among the last days. */
    double median(int days) {
        double[] shifts = new double[days];
        for (int i = 0; i < days; i++) {
            shifts[i] = watch.isRest(i) ? Double.NaN : watch.shift(i);
        }
        return Medians.of(shifts);
    }
}
