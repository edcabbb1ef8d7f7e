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
            Require.sameLength("depthMm of " + durations.get(row), years.length, depths[row].length);
        }
        for (int column = 0; column < years.length; column++) {
            checkYears(years, column, basis);
        }
        for (int row = 0; row < depths.length; row++) {
            for (int column = 0; column < years.length; column++) {
                checkDepth(durations, years, depths, row, column);
            }
        }
    }

    static void checkDuration(List<Duration> durations, int row) {
        EpochNanos.positive("duration", durations.get(row));
        if (row > 0 && durations.get(row).compareTo(durations.get(row - 1)) <= 0) {
            throw new IllegalArgumentException(
                    "duration must be longer than " + durations.get(row - 1) + " before it, was " + durations.get(row));
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
        String place = " for " + durations.get(row) + " and " + Text.number(years[column]) + " years";
        if (!(depth > 0 && depth < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "depth must be greater than 0 and finite (mm), was " + Text.number(depth) + place);
        }
        if (column > 0 && !(depth > depths[row][column - 1])) {
            throw new IllegalArgumentException("depth must rise with return period, above "
                    + Text.number(depths[row][column - 1]) + " mm at " + Text.number(years[column - 1])
                    + " years, was " + Text.number(depth) + " mm" + place);
        }
        if (row > 0 && !(depth >= depths[row - 1][column])) {
            throw new IllegalArgumentException("depth must not fall with duration, below "
                    + Text.number(depths[row - 1][column]) + " mm in " + durations.get(row - 1) + ", was "
                    + Text.number(depth) + " mm" + place);
        }
    }
}
