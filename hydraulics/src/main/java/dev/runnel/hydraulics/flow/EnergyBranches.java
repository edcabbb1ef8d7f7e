package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Roots;
import java.util.Arrays;
import java.util.Comparator;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/**
 * The stretches of depth on which specific energy and momentum function only rise or only fall: they turn where the flow
 * is critical, and at benches where Froude's number jumps across 1.
 */
final class EnergyBranches {
    private static final double ROUNDING = 1e-14;

    /** The square of this part of a depth is about {@link #ROUNDING} of what turns there. */
    private static final double SAME = 1e-6;

    private final double[] ends;
    private final double[] critical;

    private EnergyBranches(double[] ends, double[] critical) {
        this.ends = ends;
        this.critical = critical;
    }

    static EnergyBranches of(CrossSection section, double[] criticalDepths) {
        double[] ends = Stream.of(section.breakDepths(), criticalDepths, new double[] {section.height()})
                .flatMapToDouble(Arrays::stream)
                .sorted()
                .distinct()
                .toArray();
        return new EnergyBranches(ends, criticalDepths);
    }

    /** All depths in (0, soffit] where a quantity has a value; it is infinite at depth 0. */
    double[] depthsFor(DoubleUnaryOperator quantity, double value) {
        double[] found = new double[ends.length];
        int count = 0;
        for (int i = 0; i + 1 < ends.length; i++) {
            double depth = inStretch(quantity, value, ends[i], ends[i + 1]);
            // Where two stretches meet, both find the same depth.
            if (!Double.isNaN(depth) && (count == 0 || depth > found[count - 1])) {
                found[count++] = depth;
            }
        }
        return withTurns(Arrays.copyOf(found, count), quantity, value);
    }

    /**
     * With the turns that the value misses by rounding only: a critical depth is never exact. A depth as near as that to a
     * turn has been found beside it.
     */
    private double[] withTurns(double[] found, DoubleUnaryOperator quantity, double value) {
        double[] turns = Arrays.stream(critical)
                .filter(turn -> Math.abs(quantity.applyAsDouble(turn) - value) <= ROUNDING * value)
                .filter(turn -> Arrays.stream(found).noneMatch(depth -> Math.abs(depth / turn - 1) <= SAME))
                .toArray();
        return turns.length == 0
                ? found
                : DoubleStream.concat(Arrays.stream(found), Arrays.stream(turns))
                        .sorted()
                        .toArray();
    }

    private static double inStretch(DoubleUnaryOperator quantity, double value, double from, double to) {
        DoubleUnaryOperator excess = depth -> quantity.applyAsDouble(depth) - value;
        // The last of an open section, above its critical depths: it rises without end.
        double top = Double.isInfinite(to) ? Roots.doubled(excess, Math.max(from, 1)) : to;
        double atTop = quantity.applyAsDouble(top);
        if (from > 0) {
            double atFrom = quantity.applyAsDouble(from);
            if (value < Math.min(atFrom, atTop) || value > Math.max(atFrom, atTop)) {
                return Double.NaN;
            }
            return Roots.between(excess, from, top);
        }
        if (value < atTop) {
            return Double.NaN;
        }
        if (value == atTop) {
            return top;
        }
        // Towards depth 0 it grows like a power of the depth.
        return Roots.overDecades(depth -> Math.log(quantity.applyAsDouble(depth) / value), top);
    }

    /** The nearest depth with the value beyond the critical depth next to {@code depth}; NaN if there is none. */
    double across(DoubleUnaryOperator quantity, double depth, double value) {
        if (Arrays.binarySearch(critical, depth) >= 0) {
            return depth;
        }
        double between = Arrays.stream(critical)
                .boxed()
                .min(Comparator.comparingDouble(turn -> Math.abs(turn - depth)))
                .orElse(Double.NaN);
        DoubleStream all = Arrays.stream(depthsFor(quantity, value));
        return (depth < between
                        ? all.filter(candidate -> candidate > between).findFirst()
                        : all.filter(candidate -> candidate < between).max())
                .orElse(Double.NaN);
    }
}
