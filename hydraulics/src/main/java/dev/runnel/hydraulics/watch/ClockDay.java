package dev.runnel.hydraulics.watch;

import dev.runnel.timeseries.baseline.DayCurve;
import java.util.Arrays;

/**
 * By how many hours the usual course of one quantity must be moved to fit a dry day best: its level, a straight line and the
 * amplitude free, and, where a season may bring more water of its own, that too.
 */
final class ClockDay {
    /** Farthest shift that is tried, in steps; chosen here. */
    private static final int MOST_SHIFT = 20;

    private static final int STEPS_PER_HOUR = 4;
    private static final int STEPS = 24 * STEPS_PER_HOUR;

    /** A day may be flatter or livelier than usual within these bounds; chosen here. */
    private static final double LEAST_AMPLITUDE = 0.6;

    private static final double LARGEST_AMPLITUDE = 1.6;

    /** Afternoon, evening and night, in which people who stay at home do what they always do; chosen here. */
    private static final double EVENING = 14;

    private static final double NIGHT = 3;

    /** Fewest of these hours that place them by themselves; chosen here. */
    private static final int LEAST_HOURS_OF_HALF = 9;

    /** Share of the squares of a free term below which the day does not tell it. */
    private static final double UNTOLD = 1e-9;

    /**
     * Where a day lies.
     *
     * @param shift h
     * @param unmoved squares that are left at the usual shift
     * @param moved squares that are left at this one
     * @param evening by how much moving lessens the squares of afternoon, evening and night
     */
    record Phase(double shift, double unmoved, double moved, double evening) {}

    private final double[][] curve = new double[2][STEPS];
    private final double[][] water = new double[2][STEPS];
    private final boolean waterIsFree;
    private final ClockUsual usual;

    /** By kind of day, those of the last hours: most days have the same. Never changed once made, so that any thread may look. */
    private final Courses[] lastCourses = new Courses[2];

    /**
     * Returns the days of one quantity.
     *
     * @param usualDay natural logarithm of the quantity
     * @param waterIsFree whether a steady flow beside the people's is free: to the first order it moves ln x by a multiple of 1/x
     */
    ClockDay(DayCurve usualDay, boolean waterIsFree, ClockUsual usual) {
        this.usual = usual;
        this.waterIsFree = waterIsFree;
        for (int kind = 0; kind < 2; kind++) {
            for (int i = 0; i < STEPS; i++) {
                curve[kind][i] = usualDay.value((double) i / STEPS_PER_HOUR, kind > 0);
                water[kind][i] = Math.exp(curve[kind][0] - curve[kind][i]);
            }
        }
    }

    ClockUsual usual() {
        return usual;
    }

    /** Where a day of this kind lies; shift NaN at the end of what is tried, where it is none. */
    Phase phase(double[] hours, double[] values, int count, boolean rest) {
        double[] squares = new double[2 * MOST_SHIFT + 1];
        double[] left = new double[count];
        Courses courses = courses(hours, count, rest);
        double[] day = courses.straightened(values);
        int best = 0;
        for (int i = 0; i < squares.length; i++) {
            squares[i] = courses.moved[i].squares(day, left);
            best = squares[i] < squares[best] ? i : best;
        }
        if (best == 0 || best == squares.length - 1) {
            return new Phase(Double.NaN, 0, 0, 0);
        }
        double at = best - MOST_SHIFT + refined(squares, best);
        int usualSteps = Math.min(MOST_SHIFT, Math.max(-MOST_SHIFT, steps(usual.centre(rest))));
        courses.moved[MOST_SHIFT + usualSteps].squares(day, left);
        double evening = eveningOf(hours, left, count);
        courses.moved[best].squares(day, left);
        return new Phase(
                at / STEPS_PER_HOUR,
                squares[MOST_SHIFT + usualSteps],
                squares[best],
                evening - eveningOf(hours, left, count));
    }

    /**
     * By how many hours the evening of a day (afternoon, evening and night), or its morning, comes late by itself, level and amplitude
     * free; NaN if too few of its hours are known or at the end of what is tried.
     */
    double shiftOfHalf(boolean evening, double[] hours, double[] values, int count, boolean rest) {
        int kind = rest ? 1 : 0;
        int[] at = new int[count];
        double[] known = new double[count];
        int n = 0;
        for (int i = 0; i < count; i++) {
            if (evening == (hours[i] >= EVENING || hours[i] < NIGHT)) {
                at[n] = steps(hours[i]);
                known[n++] = values[i];
            }
        }
        if (n < LEAST_HOURS_OF_HALF) {
            return Double.NaN;
        }
        centre(known, n);
        double squaresOfDay = product(known, known, n);
        double[] squares = new double[2 * MOST_SHIFT + 1];
        double[] course = new double[n];
        int best = 0;
        for (int k = 0; k < squares.length; k++) {
            for (int i = 0; i < n; i++) {
                course[i] = curve[kind][Math.floorMod(at[i] + MOST_SHIFT - k, STEPS)];
            }
            centre(course, n);
            double xx = product(course, course, n);
            double xy = product(course, known, n);
            double amplitude = amplitude(xy, xx);
            squares[k] = squaresOfDay - amplitude * (2 * xy - amplitude * xx);
            best = squares[k] < squares[best] ? k : best;
        }
        return best == 0 || best == squares.length - 1
                ? Double.NaN
                : (best - MOST_SHIFT + refined(squares, best)) / STEPS_PER_HOUR;
    }

    /** Where between steps the least of three squares lies, in steps from the middle one. */
    private static double refined(double[] squares, int best) {
        double bend = squares[best - 1] - 2 * squares[best] + squares[best + 1];
        return bend > 0 ? (squares[best - 1] - squares[best + 1]) / (2 * bend) : 0;
    }

    private static double amplitude(double xy, double xx) {
        return xx > 0 ? Math.min(LARGEST_AMPLITUDE, Math.max(LEAST_AMPLITUDE, xy / xx)) : 1;
    }

    /** Squares that the usual day of a kind leaves, not moved. */
    double unmoved(double[] hours, double[] values, int count, boolean rest) {
        StraightLine line = new StraightLine(count);
        return new Course(hours, line, rest, steps(usual.centre(rest)))
                .squares(line.straightened(values), new double[count]);
    }

    private static int steps(double shift) {
        return (int) Math.round(shift * STEPS_PER_HOUR);
    }

    private static double eveningOf(double[] hours, double[] left, int count) {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += hours[i] >= EVENING || hours[i] < NIGHT ? left[i] * left[i] : 0;
        }
        return sum;
    }

    private Courses courses(double[] hours, int count, boolean rest) {
        int kind = rest ? 1 : 0;
        Courses last = lastCourses[kind];
        if (last == null || !Arrays.equals(last.hours, 0, last.hours.length, hours, 0, count)) {
            last = new Courses(Arrays.copyOf(hours, count), rest);
            lastCourses[kind] = last;
        }
        return last;
    }

    /** What a day of some hours is held against, at each shift: nothing of it depends on what was read. */
    private final class Courses {
        private final double[] hours;
        private final StraightLine line;
        private final Course[] moved = new Course[2 * MOST_SHIFT + 1];

        Courses(double[] hours, boolean rest) {
            this.hours = hours;
            line = new StraightLine(hours.length);
            for (int i = 0; i < moved.length; i++) {
                moved[i] = new Course(hours, line, rest, i - MOST_SHIFT);
            }
        }

        double[] straightened(double[] values) {
            return line.straightened(values);
        }
    }

    /** Level and a straight line, which are free, so that the end of a wet spell does not pass for another hour. */
    private static final class StraightLine {
        private final int count;
        private final double[] time;
        private final double squaresOfTime;

        StraightLine(int count) {
            this.count = count;
            time = new double[count];
            for (int i = 0; i < count; i++) {
                time[i] = i;
            }
            centre(time, count);
            squaresOfTime = product(time, time, count);
        }

        /** Values without them. */
        double[] straightened(double[] values) {
            double[] column = Arrays.copyOf(values, count);
            centre(column, count);
            takeOut(time, squaresOfTime, column, count);
            return column;
        }
    }

    /** The usual course that comes k quarters of an hour late, and the free water, in the hours of a day. */
    private final class Course {
        private final int count;
        private final double[] usualCourse;
        private final double squaresOfCourse;
        private final double[] more;
        private final double squaresOfMore;

        Course(double[] hours, StraightLine line, boolean rest, int k) {
            int kind = rest ? 1 : 0;
            count = line.count;
            double[] course = new double[count];
            double[] water = new double[waterIsFree ? count : 0];
            for (int i = 0; i < count; i++) {
                int step = step(hours[i], k);
                course[i] = curve[kind][step];
                if (waterIsFree) {
                    water[i] = ClockDay.this.water[kind][step];
                }
            }
            usualCourse = line.straightened(course);
            if (waterIsFree) {
                more = line.straightened(water);
                squaresOfMore = product(more, more, count);
                takeOut(more, squaresOfMore, usualCourse, count);
            } else {
                more = water;
                squaresOfMore = 0;
            }
            squaresOfCourse = product(usualCourse, usualCourse, count);
        }

        /** Least squares of a straightened day against it, and what each hour leaves. */
        double squares(double[] day, double[] left) {
            System.arraycopy(day, 0, left, 0, count);
            if (waterIsFree) {
                takeOut(more, squaresOfMore, left, count);
            }
            double amplitude = amplitude(product(usualCourse, left, count), squaresOfCourse);
            for (int i = 0; i < count; i++) {
                left[i] -= amplitude * usualCourse[i];
            }
            return product(left, left, count);
        }
    }

    /** The step of the usual day in which an hour lies that is so many steps late: clocks of all zones stand apart by whole steps. */
    private static int step(double hourOfDay, int late) {
        return Math.floorMod(steps(hourOfDay) - late, STEPS);
    }

    private static void centre(double[] x, int count) {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += x[i];
        }
        for (int i = 0; i < count; i++) {
            x[i] -= sum / count;
        }
    }

    /** Takes out of a column what another one explains, whose squares are known. */
    private static void takeOut(double[] what, double squares, double[] of, int count) {
        if (squares > UNTOLD * count) {
            double factor = product(what, of, count) / squares;
            for (int i = 0; i < count; i++) {
                of[i] -= factor * what[i];
            }
        }
    }

    private static double product(double[] x, double[] y, int count) {
        double sum = 0;
        for (int i = 0; i < count; i++) {
            sum += x[i] * y[i];
        }
        return sum;
    }
}
