package dev.runnel.hydraulics.watch;

import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.CholeskyDecomposition;

/**
 * Whether the velocities of some weeks follow their depths much better if the depths are taken for shifted from some day on: a
 * depth sensor that was moved. The law between the two holds in all weather, so that wet hours tell it as dry ones do, and all
 * of them tell the law and the shift together: a law that was learned from both states fits both.
 */
final class DepthShift {
    // Every number of this class is chosen here; docs/methods/site-baseline.md states them.

    /** Share of the mean of a day that is taken from its hours, for they stray together. */
    private static final double DAY_SHARE = 0.75;

    /** Hours that make a day count, and such days on each side of a shift. */
    private static final int LEAST_HOURS = 6;

    private static final int LEAST_SIDE = 3;

    /** Shifts that are tried are so many times this, m: less than hardware moves is a law that wanders. */
    private static final double STEP = 0.005;

    private static final int FEWEST_STEPS = 2;
    private static final int MOST_STEPS = 12;

    /** No shift is tried that leaves less than this of any depth, m. */
    private static final double LEAST_DEPTH = 0.005;

    /** Hours beyond so many scatters weigh less, after Huber, in so many rounds. */
    private static final double FAR = 2;

    private static final int ROUNDS = 3;

    /** Keeps the sums of weeks of one depth apart from 0. */
    private static final double RIDGE = 1e-6;

    /** Squares, in those of the scatter, that a shift must save; a mere factor of the velocity must save so much of it. */
    private static final double LEAST_GAIN = 30;

    private static final double LEAST_SHARE_OF_FACTOR = 1 / 3.0;

    /** Rise of the velocity by which a lower depth is an obstruction that went. */
    private static final double LEAST_CHANGE_OF_RELEASE = 0.06;

    private final double[] lnDepth;
    private final double[] lnVelocity;
    private final double middle;

    /** Days since 1970 that have hours, how many, and which of them each hour is of. */
    private final long[] days;

    private final int[] hoursOf;
    private final int[] dayOf;

    private final double[] weights;
    private final double[] velocity;

    private DepthShift(StretchHours of) {
        boolean[] known = of.moving();
        lnDepth = StretchHours.pick(of.lnDepth, known);
        lnVelocity = StretchHours.pick(of.lnVelocity, known);
        middle = Medians.of(lnDepth);
        dayOf = new int[lnDepth.length];
        long[] numbers = new long[lnDepth.length];
        int[] counts = new int[lnDepth.length];
        int used = 0;
        int hour = 0;
        for (int i = 0; i < of.size; i++) {
            if (known[i]) {
                long number = Math.floorDiv(of.hours[i], 24L);
                if (used == 0 || numbers[used - 1] != number) {
                    numbers[used++] = number;
                }
                counts[used - 1]++;
                dayOf[hour++] = used - 1;
            }
        }
        days = Arrays.copyOf(numbers, used);
        hoursOf = Arrays.copyOf(counts, used);
        velocity = within(lnVelocity);
        weights = new double[lnDepth.length];
        Arrays.fill(weights, 1);
    }

    /**
     * A shift.
     *
     * @param hour hours since 1970, the beginning of the first day that is shifted
     * @param metres by how much the depth is read higher since, m
     */
    record Found(long hour, double metres) {
        BaselineSearch.Shift told(boolean isLearned) {
            return new BaselineSearch.Shift(Instant.ofEpochSecond(hour * 3600), metres, isLearned);
        }
    }

    /** The shift that explains most, if it explains enough. */
    static Optional<Found> of(StretchHours hours) {
        return hours.both < UsualVelocity.leastHours()
                ? Optional.empty()
                : new DepthShift(hours).found().filter(found -> !isRelease(found, hours));
    }

    /** Whether the velocity rose while the depth fell: the end of an obstruction, whose days are none to learn from. */
    private static boolean isRelease(Found found, StretchHours of) {
        if (found.metres > 0 || StretchHours.count(of.lnVelocity, of.dry) < BaselineFit.LEAST_DRY_HOURS_BEFORE_STEP) {
            return false;
        }
        double[] left = of.residuals(of.curve(of.lnVelocity, of.dry), of.lnVelocity, of.dry);
        return new StabilityTest("velocity", of.hours, left, LEAST_HOURS, LEAST_CHANGE_OF_RELEASE)
                        .changeAt(found.hour, 0)
                > LEAST_CHANGE_OF_RELEASE;
    }

    private Optional<Found> found() {
        double[][] law = law(0, 0);
        double scatter = weigh(law);
        double before = squares(law);
        double least = before - LEAST_GAIN * scatter * scatter;
        Optional<Found> best = Optional.empty();
        for (int k = 1; k < days.length; k++) {
            // What fewer days show is not believed, but may explain what more days seem to show.
            boolean believed = count(0, k) >= LEAST_SIDE && count(k, days.length) >= LEAST_SIDE;
            double factor = before - squares(with(law, from(k)));
            for (int step = -MOST_STEPS; step <= MOST_STEPS; step++) {
                if (Math.abs(step) < FEWEST_STEPS || !leavesDepth(k, step * STEP)) {
                    continue;
                }
                double squares = squares(law(k, step * STEP));
                if (squares < least) {
                    least = squares;
                    best = Optional.of(new Found(days[k] * 24, step * STEP))
                            .filter(found -> believed && factor >= LEAST_SHARE_OF_FACTOR * (before - squares));
                }
            }
        }
        return best;
    }

    /** Weighs the hours by how far they are from the law, and returns the scatter about it. */
    private double weigh(double[][] law) {
        double[] left = left(law);
        for (int round = 0; round < ROUNDS; round++) {
            double far = FAR * Medians.scatter(left);
            for (int i = 0; i < weights.length; i++) {
                weights[i] = Math.abs(left[i]) <= far ? 1 : far / Math.abs(left[i]);
            }
            left = left(law);
        }
        return Medians.scatter(left);
    }

    /** Days of enough hours. */
    private int count(int from, int to) {
        return (int) Arrays.stream(hoursOf, from, to)
                .filter(hours -> hours >= LEAST_HOURS)
                .count();
    }

    private boolean leavesDepth(int k, double shift) {
        double lowest = Double.POSITIVE_INFINITY;
        for (int i = 0; i < lnDepth.length; i++) {
            lowest = dayOf[i] < k ? lowest : Math.min(lowest, lnDepth[i]);
        }
        return Math.exp(lowest) - shift >= LEAST_DEPTH;
    }

    /** The terms of the law, a parabola of the logarithms, by depths that are lower by the shift from day k on. */
    private double[][] law(int k, double shift) {
        double[] first = new double[lnDepth.length];
        double[] second = new double[lnDepth.length];
        for (int i = 0; i < lnDepth.length; i++) {
            first[i] = (dayOf[i] < k ? lnDepth[i] : Math.log(Math.exp(lnDepth[i]) - shift)) - middle;
            second[i] = first[i] * first[i];
        }
        return new double[][] {within(from(0)), within(first), within(second)};
    }

    /** 1 from day k on. */
    private double[] from(int k) {
        return Arrays.stream(dayOf).mapToDouble(day -> day < k ? 0 : 1).toArray();
    }

    private double[][] with(double[][] law, double[] term) {
        double[][] more = Arrays.copyOf(law, law.length + 1);
        more[law.length] = within(term);
        return more;
    }

    private double[] within(double[] values) {
        double[] sums = new double[days.length];
        for (int i = 0; i < values.length; i++) {
            sums[dayOf[i]] += values[i];
        }
        double[] within = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            within[i] = values[i] - DAY_SHARE * sums[dayOf[i]] / hoursOf[dayOf[i]];
        }
        return within;
    }

    /** Weighted squares that the best figures of the terms leave over. */
    private double squares(double[][] terms) {
        double[] left = left(terms);
        double sum = 0;
        for (int i = 0; i < left.length; i++) {
            sum += weights[i] * left[i] * left[i];
        }
        return sum;
    }

    private double[] left(double[][] terms) {
        double[] figures = figures(terms);
        double[] left = velocity.clone();
        for (int a = 0; a < terms.length; a++) {
            for (int i = 0; i < left.length; i++) {
                left[i] -= figures[a] * terms[a][i];
            }
        }
        return left;
    }

    private double[] figures(double[][] terms) {
        double[][] products = new double[terms.length][terms.length];
        double[] right = new double[terms.length];
        for (int a = 0; a < terms.length; a++) {
            for (int b = 0; b <= a; b++) {
                products[a][b] = product(terms[a], terms[b]);
                products[b][a] = products[a][b];
            }
            products[a][a] += RIDGE;
            right[a] = product(terms[a], velocity);
        }
        return new CholeskyDecomposition(new Array2DRowRealMatrix(products, false))
                .getSolver()
                .solve(new ArrayRealVector(right, false))
                .toArray();
    }

    private double product(double[] one, double[] other) {
        double sum = 0;
        for (int i = 0; i < weights.length; i++) {
            sum += weights[i] * one[i] * other[i];
        }
        return sum;
    }
}
