package dev.runnel.rainfall.gauge;

import dev.runnel.rainfall.internal.Share;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;

/** Rain of the gauges in equal cells of time in and around a storm, each gauge as shares of its own depth. */
final class StormCells {
    private final Interval storm;
    private final Duration cell;
    /** By gauge and cell; none of a gauge that tells nothing of the storm. */
    private final List<Optional<double[]>> shares;

    private StormCells(Interval storm, Duration cell, List<Optional<double[]>> shares) {
        this.storm = storm;
        this.cell = cell;
        this.shares = shares;
    }

    /**
     * Cuts the rain into cells from the given time before the storm to as long after it.
     *
     * @param leastMm a gauge with less, or with anything missing, tells nothing
     */
    static StormCells of(List<RegularSeries> gauges, Interval storm, Duration cell, Duration around, double leastMm) {
        long nanos = storm.duration().plus(around.multipliedBy(2)).toNanos();
        int size = Math.toIntExact((nanos - 1) / cell.toNanos() + 1);
        List<Optional<double[]>> shares = new ArrayList<>();
        for (RegularSeries gauge : gauges) {
            shares.add(shares(gauge, storm, cell, around, size, leastMm));
        }
        return new StormCells(storm, cell, shares);
    }

    private static Optional<double[]> shares(
            RegularSeries gauge, Interval storm, Duration cell, Duration around, int size, double leastMm) {
        long cellNanos = cell.toNanos();
        long from = EpochNanos.of(storm.start().minus(around));
        // Most gauges are dry in most storms, and that is soon known.
        Share whole = Share.of(gauge, from, from + size * cellNanos);
        if (!whole.unknown().isZero() || whole.sum() < leastMm) {
            return Optional.empty();
        }
        double[] depths = new double[size];
        for (int i = 0; i < size; i++) {
            depths[i] = Share.of(gauge, from + i * cellNanos, from + (i + 1) * cellNanos)
                    .sum();
        }
        return Optional.of(smooth(depths, whole.sum()));
    }

    /** Sums of three cells, so that a tip just beyond the edge of a cell changes little. */
    private static double[] smooth(double[] depths, double total) {
        double[] smooth = new double[depths.length];
        for (int i = 0; i < depths.length; i++) {
            double before = i == 0 ? 0 : depths[i - 1];
            double after = i == depths.length - 1 ? 0 : depths[i + 1];
            smooth[i] = (before + depths[i] + after) / total;
        }
        return smooth;
    }

    /** The shift at which a gauge is most like the others together; none if it or all of them tell nothing. */
    Optional<StormShift> shift(int gauge, IntPredicate others, Duration widest) {
        List<double[]> telling = IntStream.range(0, shares.size())
                .filter(other -> other != gauge && others.test(other))
                .mapToObj(shares::get)
                .flatMap(Optional::stream)
                .toList();
        return telling.isEmpty()
                ? Optional.empty()
                : shares.get(gauge).map(own -> mostAlike(own, sum(telling), widest));
    }

    private static double[] sum(List<double[]> gauges) {
        double[] sum = new double[gauges.get(0).length];
        for (double[] gauge : gauges) {
            for (int i = 0; i < sum.length; i++) {
                sum[i] += gauge[i];
            }
        }
        return sum;
    }

    /** Of equally good shifts the shortest. */
    private StormShift mostAlike(double[] own, double[] others, Duration widest) {
        int most = (int) (widest.toNanos() / cell.toNanos());
        double norm = Math.sqrt(product(own, own, 0) * product(others, others, 0));
        int best = 0;
        double highest = product(own, others, 0);
        for (int size = 1; size <= most; size++) {
            for (int shift : new int[] {size, -size}) {
                double product = product(own, others, shift);
                if (product > highest) {
                    highest = product;
                    best = shift;
                }
            }
        }
        return new StormShift(storm, cell.multipliedBy(best), Math.min(1, highest / norm));
    }

    private static double product(double[] own, double[] others, int shift) {
        double sum = 0;
        for (int i = Math.max(0, shift); i < Math.min(own.length, own.length + shift); i++) {
            sum += own[i] * others[i - shift];
        }
        return sum;
    }
}
