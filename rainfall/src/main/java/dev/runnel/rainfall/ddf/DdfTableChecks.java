package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import java.util.List;

/** What a table must be for depth and return period to be functions of each other. */
final class DdfTableChecks {
    private DdfTableChecks() {}

    static void check(List<Duration> durations, double[] years, double[][] depths, ReturnPeriodBasis basis) {
        if (durations.isEmpty() || years.length == 0) {
            throw new IllegalArgumentException("table must have at least one duration and one return period, had "
                    + durations.size() + " and " + years.length);
        }
        Require.sameLength("depthMm", durations.size(), depths.length);
        for (int row = 0; row < depths.length; row++) {
            checkDuration(durations, row);
            Require.sameLength(
                    "depthMm of " + Text.exactDuration(durations.get(row)), years.length, depths[row].length);
        }
        for (int column = 0; column < years.length; column++) {
            checkYears(years, column, basis);
        }
        for (int row = 0; row < depths.length; row++) {
            for (int column = 0; column < years.length; column++) {
                checkDepth(durations, years, depths, row, column);
            }
            if (isAllBlank(depths[row])) {
                throw new IllegalArgumentException("depthMm of " + Text.exactDuration(durations.get(row))
                        + " must hold at least one depth, was blank");
            }
        }
    }

    static void checkDuration(List<Duration> durations, int row) {
        EpochNanos.positive("duration", durations.get(row));
        if (row > 0 && durations.get(row).compareTo(durations.get(row - 1)) <= 0) {
            throw new IllegalArgumentException(
                    "duration must be longer than " + Text.exactDuration(durations.get(row - 1)) + " before it, was "
                            + Text.exactDuration(durations.get(row)));
        }
    }

    static void checkYears(double[] years, int column, ReturnPeriodBasis basis) {
        basis.requireYears("return period", years[column]);
        if (column > 0 && !(years[column] > years[column - 1])) {
            throw new IllegalArgumentException("return period must be above " + Text.number(years[column - 1])
                    + " years before it, was " + Text.number(years[column]));
        }
    }

    static void checkDepth(List<Duration> durations, double[] years, double[][] depths, int row, int column) {
        double depth = depths[row][column];
        String place =
                " for " + Text.exactDuration(durations.get(row)) + " and " + Text.number(years[column]) + " years";
        if (Double.isNaN(depth)) {
            return;
        }
        if (!(depth > 0 && depth < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "depth must be greater than 0 and finite (mm), was " + Text.number(depth) + place);
        }
        int left = column - 1;
        while (left >= 0 && Double.isNaN(depths[row][left])) {
            left--;
        }
        if (left >= 0 && depth < depths[row][left]) {
            throw new IllegalArgumentException("depth must not fall with return period, below "
                    + Text.number(depths[row][left]) + " mm at " + Text.number(years[left]) + " years, was "
                    + Text.number(depth) + " mm" + place);
        }
        int above = row - 1;
        while (above >= 0 && Double.isNaN(depths[above][column])) {
            above--;
        }
        if (above >= 0 && depth < depths[above][column]) {
            throw new IllegalArgumentException("depth must not fall with duration, below "
                    + Text.number(depths[above][column]) + " mm in " + Text.exactDuration(durations.get(above))
                    + ", was "
                    + Text.number(depth) + " mm" + place);
        }
    }

    private static boolean isAllBlank(double[] row) {
        for (double depth : row) {
            if (!Double.isNaN(depth)) {
                return false;
            }
        }
        return true;
    }
}
