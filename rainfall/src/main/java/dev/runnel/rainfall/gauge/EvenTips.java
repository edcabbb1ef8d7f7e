package dev.runnel.rainfall.gauge;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;

/**
 * Lays out tips that all stand for the same depth, counted or evenly over their time: the usual case, in one pass and
 * without an object. Whole tips of a step are counted as whole numbers; only the tip that crosses an edge is divided, once.
 * Where depths differ or the curve is smooth, {@link Apportionment} does the same by the general way.
 */
final class EvenTips {
    private final double[] depths;
    private final double tipMm;
    private final long step;

    private int index;
    private long end;
    private long whole;
    private double part;

    private EvenTips(double[] depths, double tipMm, long start, long step) {
        this.depths = depths;
        this.tipMm = tipMm;
        this.step = step;
        this.end = start + step;
    }

    /** Lays out tips from a start on, at which the gauge began to work; all tips lie within the length. */
    static RegularSeries of(Tips tips, double tipMm, TipSpreading spreading, long start, long step, long length) {
        return of(tips, tipMm, spreading, start, start, step, length);
    }

    static RegularSeries of(
            Tips tips, double tipMm, TipSpreading spreading, long workStart, long start, long step, long length) {
        int size = Apportionment.stepCount(start, length, step);
        return RegularSeries.filled(EpochNanos.toInstant(start), Duration.ofNanos(step), size, depths -> {
            EvenTips laid = new EvenTips(depths, tipMm, start, step);
            laid.addAll(tips.times(), spreading, workStart);
        });
    }

    private void addAll(long[] times, TipSpreading spreading, long workStart) {
        long cap = spreading.cap().toNanos();
        long previous = Long.MIN_VALUE;
        int size = times.length;
        int i = 0;
        while (i < size) {
            long to = times[i];
            int next = i + 1;
            while (next < size && times[next] == to) {
                next++;
            }
            long from;
            // The difference of times centuries apart overflows to a negative one; the general rule knows.
            if (previous != Long.MIN_VALUE && to - previous <= cap && to - previous > 0) {
                from = previous;
            } else {
                from = spreading.start(previous, to, next < size ? times[next] : Long.MAX_VALUE);
            }
            add(Math.max(workStart, from), to, next - i);
            previous = to;
            i = next;
        }
        close();
    }

    private void add(long from, long to, int tips) {
        if (from >= end) {
            open(from);
        }
        if (to <= end || to == from) {
            whole += tips;
            return;
        }
        double each = tips / (double) (to - from);
        long at = from;
        while (to > end) {
            part += (end - at) * each;
            close();
            at = end;
            index++;
            end += step;
        }
        part += (to - at) * each;
    }

    /** Goes to the step of an instant. */
    private void open(long time) {
        close();
        long further = time - end < step ? 1 : (time - end) / step + 1;
        index += (int) further;
        end += further * step;
    }

    private void close() {
        if (index < depths.length) {
            depths[index] = tipMm * (whole + part);
        }
        whole = 0;
        part = 0;
    }
}
