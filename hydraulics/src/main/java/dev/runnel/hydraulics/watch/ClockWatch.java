package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * The phase of single dry days, by the flow where it is known and is a course of its own, else by the depth: what a law
 * between depth and velocity scatters moves the depth and not the flow.
 */
final class ClockWatch {
    /** Fewest hours of a day whose course can be placed; chosen here. */
    static final int LEAST_HOURS = 16;

    /** Days that are kept; chosen here, enough for the longest agreement asked for. */
    private static final int DAYS = 16;

    /** Error of the shift of a day in which the clock was moved by an hour, h; chosen here. */
    private static final double MIXED_DAY = 0.5;

    private static final int MOST_HOURS = 25;

    // Columns of a day.
    private static final int SHIFT = 0;
    private static final int UNMOVED = 1;
    private static final int MOVED = 2;
    private static final int OF_OTHER = 3;
    private static final int REST = 4;
    private static final int SCATTER = 5;
    private static final int EVENING = 6;
    private static final int COLUMNS = 7;

    private final ClockDay byDepth;
    private final Optional<ClockDay> byFlow;
    private final Ring days = new Ring(DAYS, COLUMNS);

    /** Shift of the same days by the depth, where the flow places them; NaN where it does not tell. */
    private final Ring depthShifts = new Ring(DAYS, 1);

    /** Shift of the afternoon, evening and night of the same days by themselves; NaN where they do not tell. */
    private final Ring eveningShifts = new Ring(DAYS, 1);

    /** The same of their mornings. */
    private final Ring morningShifts = new Ring(DAYS, 1);

    private final Hours depth = new Hours("clock");
    private final Hours flow = new Hours("clockFlow");

    /** Dry hours of the day of one quantity. */
    private static final class Hours {
        private final String name;
        private final double[] hours = new double[MOST_HOURS];
        private final double[] values = new double[MOST_HOURS];
        private int count;

        Hours(String name) {
            this.name = name;
        }

        void add(double hourOfDay, double value) {
            if (count < MOST_HOURS && !Double.isNaN(value)) {
                hours[count] = hourOfDay;
                values[count++] = value;
            }
        }

        void write(StateText text) {
            text.with(name + "Hours", Arrays.copyOf(hours, count)).with(name + "Values", Arrays.copyOf(values, count));
        }

        void read(StateText text) {
            double[] found = text.numbers(name + "Hours");
            if (found.length > MOST_HOURS) {
                throw new IllegalArgumentException(
                        "state " + name + "Hours must hold up to " + MOST_HOURS + " numbers, was " + found.length);
            }
            count = found.length;
            System.arraycopy(found, 0, hours, 0, count);
            System.arraycopy(text.numbers(name + "Values", count), 0, values, 0, count);
        }
    }

    ClockWatch(ClockDay byDepth, Optional<ClockDay> byFlow) {
        this.byDepth = byDepth;
        this.byFlow = byFlow;
    }

    /** Whether the days of this site are placed by the flow wherever it is known. */
    boolean hasFlow() {
        return byFlow.isPresent();
    }

    /** Adds a dry hour of the day; NaN for a flow that is not known. */
    void add(double hourOfDay, double lnDepth, double lnFlow) {
        depth.add(hourOfDay, lnDepth);
        flow.add(hourOfDay, lnFlow);
    }

    /** Ends the day; returns whether it was good enough to tell its phase. */
    boolean endDay(long day, boolean rest) {
        boolean placed =
                byFlow.isPresent() && place(byFlow.orElseThrow(), flow, day, rest) || place(byDepth, depth, day, rest);
        if (placed) {
            depthShifts.add(day, shiftByDepth(rest));
        }
        dropDay();
        return placed;
    }

    private boolean place(ClockDay course, Hours of, long day, boolean rest) {
        if (of.count < LEAST_HOURS) {
            return false;
        }
        ClockDay.Phase phase = course.phase(of.hours, of.values, of.count, rest);
        // At the end of what is tried the shift is none.
        if (Double.isNaN(phase.shift())) {
            return false;
        }
        ClockUsual usual = course.usual();
        days.add(
                day,
                phase.shift() - usual.centre(rest),
                phase.unmoved(),
                phase.moved(),
                course.unmoved(of.hours, of.values, of.count, !rest),
                rest ? 1 : 0,
                usual.scatter(rest),
                phase.evening());
        morningShifts.add(
                day, course.shiftOfHalf(false, of.hours, of.values, of.count, rest) - usual.half(false, rest));
        eveningShifts.add(day, course.shiftOfHalf(true, of.hours, of.values, of.count, rest) - usual.half(true, rest));
        return true;
    }

    private double shiftByDepth(boolean rest) {
        return depth.count < LEAST_HOURS
                ? Double.NaN
                : byDepth.phase(depth.hours, depth.values, depth.count, rest).shift()
                        - byDepth.usual().centre(rest);
    }

    void dropDay() {
        depth.count = 0;
        flow.count = 0;
    }

    int size() {
        return days.size();
    }

    private double value(int fromLast, int column) {
        return days.value(days.size() - 1 - fromLast, column);
    }

    long day(int fromLast) {
        return days.number(days.size() - 1 - fromLast);
    }

    /** Shift of a day against its usual one in hours, positive if the day is late by the clock of the record. */
    double shift(int fromLast) {
        return value(fromLast, SHIFT);
    }

    /** The same as the depth alone has it; NaN where it does not tell. */
    double shiftByDepth(int fromLast) {
        return depthShifts.value(depthShifts.size() - 1 - fromLast, 0);
    }

    /** Shift of the afternoon, evening and night of a day by themselves, h; NaN where they do not tell. */
    double shiftOfEvening(int fromLast) {
        return eveningShifts.value(eveningShifts.size() - 1 - fromLast, 0);
    }

    /** The same of the morning. */
    double shiftOfMorning(int fromLast) {
        return morningShifts.value(morningShifts.size() - 1 - fromLast, 0);
    }

    /** What days of this kind scatter about their usual shift, h. */
    double scatter(int fromLast) {
        return value(fromLast, SCATTER);
    }

    /**
     * Mean shift of the first usable days of an interval, at most so many, weighted by what days of their kind scatter, and
     * the variance of that mean; NaN if there are fewer than the least. The shift of a mixed day, half by one clock and half by
     * another, says little.
     */
    double[] mean(long fromDay, long toDay, int least, int most, long mixedDay) {
        double sum = 0;
        double weights = 0;
        int found = 0;
        for (int i = days.from(fromDay); i < days.size() && days.number(i) <= toDay && found < most; i++) {
            double scatter = days.value(i, SCATTER);
            double variance = scatter * scatter + (days.number(i) == mixedDay ? MIXED_DAY * MIXED_DAY : 0);
            sum += days.value(i, SHIFT) / variance;
            weights += 1 / variance;
            found++;
        }
        return found < least ? new double[] {Double.NaN, Double.NaN} : new double[] {sum / weights, 1 / weights};
    }

    double squaresUnmoved(int fromLast) {
        return value(fromLast, UNMOVED);
    }

    double squaresMoved(int fromLast) {
        return value(fromLast, MOVED);
    }

    /** Squares that the usual day of the other kind leaves, not moved. */
    double squaresOfOther(int fromLast) {
        return value(fromLast, OF_OTHER);
    }

    /** By how much moving the day lessens the squares of its afternoon, evening and night. */
    double gainOfEvening(int fromLast) {
        return value(fromLast, EVENING);
    }

    boolean isRest(int fromLast) {
        return value(fromLast, REST) > 0;
    }

    void write(StateText text) {
        days.write(text, "clockPhases");
        depthShifts.write(text, "clockDepths");
        eveningShifts.write(text, "clockEvenings");
        morningShifts.write(text, "clockMornings");
        depth.write(text);
        flow.write(text);
    }

    void read(StateText text) {
        days.read(text, "clockPhases");
        depthShifts.read(text, "clockDepths");
        eveningShifts.read(text, "clockEvenings");
        morningShifts.read(text, "clockMornings");
        for (Ring each : List.of(depthShifts, eveningShifts, morningShifts)) {
            if (each.size() != days.size()) {
                throw new IllegalArgumentException("state clockDepths, clockEvenings and clockMornings must hold "
                        + days.size() + " days as clockPhases does, was " + each.size() + " days");
            }
        }
        depth.read(text);
        flow.read(text);
    }
}
