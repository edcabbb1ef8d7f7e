package dev.runnel.timeseries.baseline;

/**
 * The rows of a {@link DayCurve}, column by column, so that each sum stays in a register; columns of days of rest hold the rows
 * of such days alone, since all others are 0 there. Every sum goes over the rows in their order.
 */
final class DayColumns {
    /** Columns that all days have; behind them stand those of days of rest. */
    private final int common;

    private final double[][] all;

    /** Numbers of the rows of days of rest, and those rows by column. */
    private final int[] places;

    private final double[][] atRest;
    private int taken;

    DayColumns(int common, int size, boolean[] rest) {
        this.common = common;
        int resting = 0;
        for (boolean each : rest) {
            resting += each ? 1 : 0;
        }
        all = new double[common][rest.length];
        places = new int[resting];
        atRest = new double[size][resting];
        int next = 0;
        for (int i = 0; i < rest.length; i++) {
            if (rest[i]) {
                places[next++] = i;
            }
        }
    }

    /** Puts a row, one after the other. */
    void put(int i, double[] row) {
        for (int a = 0; a < common; a++) {
            all[a][i] = row[a];
        }
        if (taken < places.length && places[taken] == i) {
            for (int a = 0; a < row.length; a++) {
                atRest[a][taken] = row[a];
            }
            taken++;
        }
    }

    /** The weighted sums of products of each two columns, in the lower half. */
    double[][] products(double[] weights) {
        double[][] products = new double[atRest.length][atRest.length];
        for (int a = 0; a < common; a++) {
            double[] weighted = times(weights, all[a]);
            for (int b = 0; b <= a; b++) {
                products[a][b] = sum(weighted, all[b]);
            }
        }
        double[] weightsAtRest = gathered(weights);
        for (int a = common; a < products.length; a++) {
            double[] weighted = times(weightsAtRest, atRest[a]);
            for (int b = 0; b <= a; b++) {
                products[a][b] = sum(weighted, atRest[b]);
            }
        }
        return products;
    }

    /** The weighted sums of products of each column and the values. */
    double[] products(double[] weights, double[] values) {
        double[] products = new double[atRest.length];
        double[] weightsAtRest = gathered(weights);
        double[] valuesAtRest = gathered(values);
        for (int a = 0; a < products.length; a++) {
            products[a] = a < common
                    ? sum(times(weights, all[a]), values)
                    : sum(times(weightsAtRest, atRest[a]), valuesAtRest);
        }
        return products;
    }

    /** What figures leave of values. */
    void residuals(double[] figures, double[] values, double[] residuals) {
        double[] fitted = new double[values.length];
        for (int a = 0; a < common; a++) {
            double[] column = all[a];
            for (int i = 0; i < fitted.length; i++) {
                fitted[i] += figures[a] * column[i];
            }
        }
        for (int a = common; a < figures.length; a++) {
            for (int k = 0; k < places.length; k++) {
                fitted[places[k]] += figures[a] * atRest[a][k];
            }
        }
        for (int i = 0; i < values.length; i++) {
            residuals[i] = values[i] - fitted[i];
        }
    }

    private double[] gathered(double[] values) {
        double[] gathered = new double[places.length];
        for (int k = 0; k < gathered.length; k++) {
            gathered[k] = values[places[k]];
        }
        return gathered;
    }

    private static double[] times(double[] first, double[] second) {
        double[] products = new double[first.length];
        for (int i = 0; i < products.length; i++) {
            products[i] = first[i] * second[i];
        }
        return products;
    }

    private static double sum(double[] first, double[] second) {
        double sum = 0;
        for (int i = 0; i < first.length; i++) {
            sum += first[i] * second[i];
        }
        return sum;
    }
}
