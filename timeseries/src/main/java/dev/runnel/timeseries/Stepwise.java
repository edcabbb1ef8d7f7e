package dev.runnel.timeseries;

import java.util.Arrays;

/**
 * The value of each step as readings are added one by one; NaN where none was. Of a mean it holds the sum.
 */
final class Stepwise {
    /** What is made of the values of a step. */
    enum Statistic {
        MEAN,
        SUM,
        MAXIMUM,
        MINIMUM,
        LAST
    }

    private final Statistic statistic;
    private final double[] values;
    private final double[] lost;

    Stepwise(Statistic statistic, int count) {
        this.statistic = statistic;
        this.values = new double[count];
        this.lost = statistic == Statistic.SUM ? new double[count] : new double[0];
        Arrays.fill(values, Double.NaN);
    }

    void add(int at, double value) {
        double before = values[at];
        if (Double.isNaN(before)) {
            values[at] = value;
            return;
        }
        values[at] = switch (statistic) {
            case MEAN -> before + value;
            case SUM -> compensated(at, before, value);
            case MAXIMUM -> Math.max(before, value);
            case MINIMUM -> Math.min(before, value);
            case LAST -> value;
        };
    }

    /** Kahan's sum: the steps of a long record must add up to its total. */
    private double compensated(int at, double before, double value) {
        double corrected = value - lost[at];
        double next = before + corrected;
        lost[at] = (next - before) - corrected;
        return next;
    }

    /** The values themselves, not a copy. */
    double[] values() {
        return values;
    }
}
