package dev.runnel.hydraulics.watch;

import java.util.List;
import java.util.stream.DoubleStream;
import java.util.stream.Stream;

/** What storms said before those in a row that are asked: the usual ones and those that nothing was said of yet. */
final class StormsBefore {
    private StormsBefore() {}

    /** Returns the last of both, at most so many. */
    static double[] of(List<Double> usual, List<Double> pending, int most) {
        DoubleStream all = Stream.concat(usual.stream(), pending.stream()).mapToDouble(Double::doubleValue);
        return all.skip(Math.max(0, usual.size() + pending.size() - most)).toArray();
    }
}
