package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Require;
import java.util.Arrays;

/**
 * The return periods for which a relation knows depths, and the interpolation between them: P linear in ln T with T counted in
 * peaks over threshold. For annual maxima that is -ln(-ln(1 - 1/T)), so that one law is read alike in either basis.
 */
record ReturnPeriodColumns(double[] years, double[] logYears, ReturnPeriodBasis basis) {
    static ReturnPeriodColumns of(double[] years, ReturnPeriodBasis basis) {
        return new ReturnPeriodColumns(
                years, Arrays.stream(years).map(each -> logOfPeaks(each, basis)).toArray(), basis);
    }

    private static double logOfPeaks(double years, ReturnPeriodBasis basis) {
        return Math.log(basis.convert(years, ReturnPeriodBasis.PEAKS_OVER_THRESHOLD));
    }

    double smallest() {
        return years[0];
    }

    double greatest() {
        return years[years.length - 1];
    }

    /** Depth at a return period from the rising depths of one duration, one for each column. */
    double depthMm(double[] depths, double returnPeriodYears) {
        Require.inRange("returnPeriodYears", returnPeriodYears, smallest(), greatest(), "years");
        int found = Arrays.binarySearch(years, returnPeriodYears);
        if (found >= 0) {
            return depths[found];
        }
        int upper = -found - 1;
        double share =
                (logOfPeaks(returnPeriodYears, basis) - logYears[upper - 1]) / (logYears[upper] - logYears[upper - 1]);
        return depths[upper - 1] + share * (depths[upper] - depths[upper - 1]);
    }

    /** Return period, years, of a depth between the first and the last of the rising depths of one duration. */
    double years(double[] depths, double depthMm) {
        int column = Arrays.binarySearch(depths, depthMm);
        if (column >= 0) {
            return years[column];
        }
        int upper = -column - 1;
        double share = (depthMm - depths[upper - 1]) / (depths[upper] - depths[upper - 1]);
        double log = logYears[upper - 1] + share * (logYears[upper] - logYears[upper - 1]);
        double found = ReturnPeriodBasis.PEAKS_OVER_THRESHOLD.convert(Math.exp(log), basis);
        return Math.max(years[upper - 1], Math.min(years[upper], found));
    }

    /** Return period of a depth in a relation of these columns, from the rising depths of one duration. */
    ReturnPeriod returnPeriod(DepthDurationFrequency relation, double[] depths, double depthMm) {
        return ReturnPeriod.of(relation, depthMm, years -> depthMm(depths, years), depth -> years(depths, depth));
    }
}
