package dev.runnel.rainfall.gauge;

import java.util.Arrays;
import java.util.function.DoublePredicate;

/**
 * What gauges tell of each period, in the order of the depths: the median of the others than one of them is then found in a
 * few steps, so that the time of all grows with the gauges and not with their square. Immutable.
 */
final class TellingDepths {
    /** By gauge and period, mm. */
    private final double[][] depths;

    private final boolean[] wetForMost;

    /** By period. */
    private final double[][] ordered;

    private TellingDepths(double[][] depths, boolean[] wetForMost, double[][] ordered) {
        this.depths = depths;
        this.wetForMost = wetForMost;
        this.ordered = ordered;
    }

    /** A gauge tells something of a period unless it is missing, or silent while most of those that are there are wet. */
    static TellingDepths of(double[][] depths, int periods, DoublePredicate isWet) {
        boolean[] wetForMost = new boolean[periods];
        double[][] ordered = new double[periods][];
        double[] telling = new double[depths.length];
        for (int period = 0; period < periods; period++) {
            int known = 0;
            int wet = 0;
            for (double[] each : depths) {
                known += Double.isNaN(each[period]) ? 0 : 1;
                wet += isWet.test(each[period]) ? 1 : 0;
            }
            wetForMost[period] = 2 * wet > known;
            int count = 0;
            for (double[] each : depths) {
                if (tells(each[period], wetForMost[period])) {
                    telling[count++] = each[period];
                }
            }
            Arrays.sort(telling, 0, count);
            ordered[period] = Arrays.copyOf(telling, count);
        }
        return new TellingDepths(depths, wetForMost, ordered);
    }

    private static boolean tells(double depth, boolean isWetForMost) {
        return !Double.isNaN(depth) && !(isWetForMost && depth == 0);
    }

    /** The same when a gauge is set aside; what most of the gauges had is still asked of all of them. */
    TellingDepths without(int gauge) {
        double[][] fewer = ordered.clone();
        for (int period = 0; period < fewer.length; period++) {
            double own = depths[gauge][period];
            if (tells(own, wetForMost[period])) {
                double[] all = ordered[period];
                int at = Arrays.binarySearch(all, own);
                double[] others = Arrays.copyOf(all, all.length - 1);
                System.arraycopy(all, at + 1, others, at, others.length - at);
                fewer[period] = others;
            }
        }
        return new TellingDepths(depths, wetForMost, fewer);
    }

    /**
     * Returns the median of the others in each period, mm.
     *
     * @param gauge the gauge that is left out
     * @param isAmong whether it is among these, and not set aside already
     * @param needed how many must tell something, at least 1; of fewer the median is NaN
     */
    double[] mediansOfOthers(int gauge, boolean isAmong, int needed) {
        double[] medians = new double[ordered.length];
        for (int period = 0; period < medians.length; period++) {
            double[] all = ordered[period];
            double own = depths[gauge][period];
            int left = isAmong && tells(own, wetForMost[period]) ? Arrays.binarySearch(all, own) : all.length;
            int count = left < all.length ? all.length - 1 : all.length;
            if (count < needed) {
                medians[period] = Double.NaN;
                continue;
            }
            int half = count / 2;
            double middle = at(all, half, left);
            medians[period] = count % 2 == 1 ? middle : (at(all, half - 1, left) + middle) / 2;
        }
        return medians;
    }

    /** The value at a place among all but the one that is left out. */
    private static double at(double[] all, int place, int left) {
        return all[place < left ? place : place + 1];
    }
}
