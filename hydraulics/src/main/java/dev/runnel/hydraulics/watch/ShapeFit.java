package dev.runnel.hydraulics.watch;

import java.util.Arrays;

/**
 * Step or ramp, and since when: least squares of a series that is 0 before an onset, against a step and against ramps of
 * some lengths that then hold; the information criterion of Schwarz (1978) with one figure more for the ramp.
 */
final class ShapeFit {
    private static final int[] LENGTHS = {3, 6, 12, 24, 48, 80, 120, 180, 240};

    /** Blocks follow each other, and a level wanders: of three, one counts. */
    private static final double INDEPENDENT = 0.3;

    /** For the bounds of the beginning days count, not blocks: a level, and a law, wander from day to day; chosen here. */
    private static final double SURE = 0.1;

    /** 95 % point of chi-squared with one degree of freedom. */
    private static final double CHI_SQUARED_95 = 3.841458820694124;

    /** Known values before a change without which it may have begun earlier; chosen here. */
    private static final int LEAST_BEFORE = 4;

    /** Difference of the criterion that is called plain. */
    private static final double PLAIN = 2;

    final ChangeShape shape;

    /** Index of the first value of the change, and the range of it. */
    final int onset;

    final int earliest;
    final int latest;

    /** Whether hardly anything is known before it, so that it may have begun at any time earlier. */
    final boolean isOpen;

    private ShapeFit(ChangeShape shape, int onset, int earliest, int latest, boolean isOpen) {
        this.isOpen = isOpen;
        this.shape = shape;
        this.onset = onset;
        this.earliest = earliest;
        this.latest = latest;
    }

    /**
     * Fits values about 0 before the change, NaN for missing ones.
     *
     * @param lastOnset largest index at which the change may begin: it was told of then
     */
    static ShapeFit of(double[] values, int lastOnset) {
        int n = values.length;
        int most = Math.max(0, Math.min(n - 1, lastOnset));
        // The change began no later than it was told, so that no later beginning is tried.
        int tried = most + 1;
        double[] stepFit = new double[tried];
        double[] rampFit = new double[tried];
        Sums sums = new Sums(values);
        double total = sums.squares;
        double count = sums.counts[n];
        int step = 0;
        int ramp = 0;
        for (int k = 0; k < tried; k++) {
            stepFit[k] = total - sums.gain(k, 0);
            rampFit[k] = total;
            for (int length : LENGTHS) {
                if (length <= n - k) {
                    rampFit[k] = Math.min(rampFit[k], total - sums.gain(k, length));
                }
            }
            rampFit[k] = Math.min(rampFit[k], total - sums.gain(k, n - k));
            step = stepFit[k] < stepFit[step] ? k : step;
            ramp = rampFit[k] < rampFit[ramp] ? k : ramp;
        }
        double effective = Math.max(2, INDEPENDENT * count);
        double floor = 1e-12 + total * 1e-9;
        double criterion =
                effective * Math.log((stepFit[step] + floor) / (rampFit[ramp] + floor)) - Math.log(effective);
        boolean isRamp = criterion > 0;
        ChangeShape shape =
                Math.abs(criterion) < PLAIN ? ChangeShape.UNCERTAIN : isRamp ? ChangeShape.RAMP : ChangeShape.STEP;
        double[] fit = isRamp ? rampFit : stepFit;
        int best = isRamp ? ramp : step;
        boolean open = Medians.known(Arrays.copyOf(values, best)).length < LEAST_BEFORE;
        if (shape == ChangeShape.STEP && open) {
            // Where nothing is known before it, nothing tells how it came.
            shape = ChangeShape.UNCERTAIN;
        }
        double limit = (fit[best] + floor) * (1 + CHI_SQUARED_95 / Math.max(2, SURE * count));
        int earliest = best;
        int latest = best;
        while (earliest > 0 && fit[earliest - 1] <= limit) {
            earliest--;
        }
        while (latest < most && fit[latest + 1] <= limit) {
            latest++;
        }
        return new ShapeFit(shape, best, earliest, latest, open);
    }

    /** Sums over the known values ahead of each place, so that no step or ramp goes through the values anew. */
    private static final class Sums {
        private final int size;
        private final double[] counts;
        private final double[] places;
        private final double[] squaresOfPlaces;
        private final double[] values;
        private final double[] moments;

        /** Sum of the squares of all known values. */
        private double squares;

        Sums(double[] each) {
            size = each.length;
            int ends = size + 1;
            counts = new double[ends];
            places = new double[ends];
            squaresOfPlaces = new double[ends];
            values = new double[ends];
            moments = new double[ends];
            for (int t = 0; t < size; t++) {
                boolean isKnown = !Double.isNaN(each[t]);
                double value = isKnown ? each[t] : 0;
                double one = isKnown ? 1 : 0;
                squares += value * value;
                counts[t + 1] = counts[t] + one;
                places[t + 1] = places[t] + one * t;
                squaresOfPlaces[t + 1] = squaresOfPlaces[t] + one * t * t;
                values[t + 1] = values[t] + value;
                moments[t + 1] = moments[t] + value * t;
            }
        }

        /**
         * By how much a step (length 0) or a ramp from k lessens the sum of squares: at place t a ramp is at
         * (t - k + 0.5)/length until it ends, then at 1.
         */
        double gain(int k, int length) {
            int end = k + length;
            double product = values[size] - values[end];
            double square = counts[size] - counts[end];
            if (length > 0) {
                double shift = 0.5 - k;
                double ramp = moments[end] - moments[k] + shift * (values[end] - values[k]);
                double ofRamp = squaresOfPlaces[end]
                        - squaresOfPlaces[k]
                        + shift * (2 * (places[end] - places[k]) + shift * (counts[end] - counts[k]));
                product += ramp / length;
                square += ofRamp / length / length;
            }
            return square > 0 ? product * product / square : 0;
        }
    }
}
