package dev.runnel.rainfall.gauge;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;

/**
 * Lays tips, or rain in other steps, out over steps of time. They come in order, so one step after the other is filled and closed; the fast path,
 * a depth wholly inside the open step, needs no division.
 */
final class Apportionment {
    /** Chosen here: 190 years of minutes, 800 MB. More is a slip of the unit or of a date. */
    private static final long MOST_STEPS = 100_000_000;

    private final double[] depths;
    private final long start;
    private final long step;
    private final CompensatedSum open = new CompensatedSum();
    private int index;
    private long end;

    private Apportionment(int steps, long start, long step) {
        this.depths = new double[steps];
        this.start = start;
        this.step = step;
        // The first filling opens its step.
        this.end = start;
    }

    static RegularSeries of(Fillings fillings, boolean smooth, long start, long step, long length) {
        Apportionment apportionment = new Apportionment(stepCount(start, length, step), start, step);
        apportionment.addAll(fillings, smooth);
        apportionment.close();
        return apportionment.toSeries();
    }

    /** Rain that is steady within each of its steps, in other steps. */
    static StepRecord of(RegularSeries rain, long step) {
        long start = EpochNanos.of(rain.start());
        long from = start;
        long rainStep = rain.step().toNanos();
        Apportionment apportionment = new Apportionment(stepCount(start, rainStep * rain.size(), step), start, step);
        for (int i = 0; i < rain.size(); i++) {
            if (!Double.isNaN(rain.value(i))) {
                apportionment.add(from, from + rainStep, rain.value(i));
            }
            from += rainStep;
        }
        apportionment.close();
        return apportionment.withGapsOf(rain);
    }

    /** Makes every step missing that shares time with a missing one of the rain, and counts what that leaves out. */
    private StepRecord withGapsOf(RegularSeries rain) {
        long rainStep = rain.step().toNanos();
        CompensatedSum leftOut = new CompensatedSum();
        for (int i = 0; i < rain.size(); i++) {
            if (Double.isNaN(rain.value(i))) {
                for (int k = first(rainStep, i); k <= last(rainStep, i); k++) {
                    leftOut.add(Double.isNaN(depths[k]) ? 0 : depths[k]);
                    depths[k] = Double.NaN;
                }
            }
        }
        int aside = 0;
        for (int i = 0; i < rain.size(); i++) {
            boolean isCut = false;
            for (int k = first(rainStep, i); rain.value(i) > 0 && k <= last(rainStep, i); k++) {
                isCut |= Double.isNaN(depths[k]);
            }
            aside += isCut ? 1 : 0;
        }
        RegularSeries series = toSeries();
        return new StepRecord(series, series.missing(), 0, aside, leftOut.value());
    }

    private int first(long rainStep, int index) {
        return (int) (rainStep * index / step);
    }

    private int last(long rainStep, int index) {
        return (int) ((rainStep * (index + 1L) - 1) / step);
    }

    /** Number of steps that cover a length, at most the bound. */
    static int stepCount(long start, long length, long step) {
        long steps = -Math.floorDiv(-length, step);
        if (steps > MOST_STEPS || length < 0) {
            throw new IllegalArgumentException("step must be at least "
                    + (length < 0
                            ? "292 years"
                            : Text.exactDuration(Duration.ofNanos(-Math.floorDiv(-length, MOST_STEPS))))
                    + " for a record of "
                    + (length < 0 ? "more than 292 years" : Text.exactDuration(Duration.ofNanos(length))) + ", at most "
                    + MOST_STEPS
                    + " steps, was " + Text.exactDuration(Duration.ofNanos(step)));
        }
        try {
            Math.addExact(start, Math.multiplyExact(steps + 1, step));
        } catch (ArithmeticException e) {
            throw new IllegalArgumentException(
                    "steps of " + Text.exactDuration(Duration.ofNanos(step)) + " from " + EpochNanos.toInstant(start)
                            + " must end a step before 2262-04-11, did not",
                    e);
        }
        return (int) steps;
    }

    private RegularSeries toSeries() {
        return RegularSeries.of(EpochNanos.toInstant(start), Duration.ofNanos(step), depths);
    }

    private void addAll(Fillings fillings, boolean smooth) {
        SmoothSlopes slopes = smooth ? SmoothSlopes.of(fillings) : SmoothSlopes.NONE;
        for (int i = 0; i < fillings.size(); i++) {
            long from = fillings.from()[i];
            long to = fillings.to()[i];
            if (smooth) {
                add(from, to, fillings.depths()[i], slopes.atStart()[i], slopes.atEnd()[i]);
            } else {
                add(from, to, fillings.depths()[i]);
            }
        }
    }

    /** Adds a depth that fell evenly from one instant, included, to another, or all at that instant if they agree. */
    private void add(long from, long to, double depth) {
        if (isWholeInOneStep(from, to)) {
            open.add(depth);
            return;
        }
        // Every share is computed by itself, not as what is left, so that rounding does not pile up.
        double duration = (double) (to - from);
        long at = from;
        while (to > end) {
            open.add(depth * ((end - at) / duration));
            close();
            at = end;
            index++;
            end += step;
        }
        open.add(depth * ((to - at) / duration));
    }

    /** Adds a depth along a cubic with the given slopes at its ends. */
    private void add(long from, long to, double depth, double atStart, double atEnd) {
        if (isWholeInOneStep(from, to)) {
            open.add(depth);
            return;
        }
        double duration = (double) (to - from);
        double before = 0;
        while (to > end) {
            double share = SmoothSlopes.share((end - from) / duration, atStart, atEnd);
            open.add(depth * (share - before));
            before = share;
            close();
            index++;
            end += step;
        }
        open.add(depth * (1 - before));
    }

    /** Opens the step in which a depth begins, and tells whether it ends there too. */
    private boolean isWholeInOneStep(long from, long to) {
        if (from >= end) {
            close();
            index = (int) ((from - start) / step);
            end = start + step * (index + 1L);
        }
        return to <= end || to == from;
    }

    private void close() {
        if (index < depths.length) {
            depths[index] = open.value();
        }
        open.reset();
    }
}
