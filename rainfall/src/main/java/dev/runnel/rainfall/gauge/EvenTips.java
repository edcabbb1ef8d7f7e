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
    private EvenTips() {}

    /** Lays out tips from a start on, at which the gauge began to work; all tips lie within the length. */
    static RegularSeries of(Tips tips, double tipMm, TipSpreading spreading, long start, long step, long length) {
        return of(tips, tipMm, spreading, start, start, step, length);
    }

    static RegularSeries of(
            Tips tips, double tipMm, TipSpreading spreading, long workStart, long start, long step, long length) {
        int size = Apportionment.stepCount(start, length, step);
        return RegularSeries.filled(EpochNanos.toInstant(start), Duration.ofNanos(step), size, depths -> {
            layOut(tips.times(), tipMm, spreading, workStart, start, step, depths);
        });
    }

    /** One method, since the processor's compiler keeps the place in registers only if it sees all of it at once. */
    private static void layOut(
            long[] times,
            double tipMm,
            TipSpreading spreading,
            long workStart,
            long start,
            long step,
            double[] depths) {
        long cap = spreading.cap().toNanos();
        long previous = Long.MIN_VALUE;
        int size = times.length;
        // The step that is open, its end, and what of it is known: whole tips, and a part of one.
        int index = 0;
        long end = start + step;
        long whole = 0;
        double part = 0;
        for (int i = 0; i < size; ) {
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
            from = Math.max(workStart, from);
            int count = next - i;
            previous = to;
            i = next;
            if (from >= end) {
                close(depths, index, tipMm * (whole + part));
                long further = from - end < step ? 1 : (from - end) / step + 1;
                index += (int) further;
                end += further * step;
                whole = 0;
                part = 0;
            }
            if (to <= end || to == from) {
                whole += count;
                continue;
            }
            double each = count / (double) (to - from);
            depths[index++] = tipMm * (whole + (part + (end - from) * each));
            end += step;
            if (to > end) {
                // Each step that lies within the time of one tip has the same share of it.
                double share = tipMm * (step * each);
                do {
                    depths[index++] = share;
                    end += step;
                } while (to > end);
            }
            whole = 0;
            part = (to - (end - step)) * each;
        }
        close(depths, index, tipMm * (whole + part));
    }

    /** The last tip may stand at the very end, behind all steps. */
    private static void close(double[] depths, int index, double depth) {
        if (index < depths.length) {
            depths[index] = depth;
        }
    }
}
