package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Interpolation;
import dev.runnel.internal.Require;
import java.util.Arrays;
import java.util.stream.IntStream;

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
        return Interpolation.between(
                logOfPeaks(returnPeriodYears, basis),
                logYears[upper - 1],
                depths[upper - 1],
                logYears[upper],
                depths[upper]);
    }

    /** Return period, years, of a depth among the depths of one duration; of several with that depth the shortest. */
    double years(double[] depths, double depthMm) {
        int upper = 0;
        while (depths[upper] < depthMm) {
            upper++;
        }
        if (depths[upper] == depthMm) {
            return years[upper];
        }
        double log =
                Interpolation.between(depthMm, depths[upper - 1], logYears[upper - 1], depths[upper], logYears[upper]);
        double found = ReturnPeriodBasis.PEAKS_OVER_THRESHOLD.convert(Math.exp(log), basis);
        return Math.max(years[upper - 1], Math.min(years[upper], found));
    }

    /** Return period of a depth in a relation of these columns, from the depths of one duration, which never fall. */
    ReturnPeriod returnPeriod(double[] depths, double depthMm) {
        ReturnPeriod found = ReturnPeriod.of(
                basis, smallest(), greatest(), depthMm, years -> depthMm(depths, years), depth -> years(depths, depth));
        int last = depths.length - 1;
        boolean isTop = found.isWithin() && found.years() == years[last];
        return isTop && last > 0 && depths[last] == depths[last - 1]
                ? new ReturnPeriod(ReturnPeriod.Standing.WITHIN, years(depths, depths[last]), basis)
                : found;
    }

    /** These columns without those that are blank (NaN) in a row. */
    ReturnPeriodColumns without(double[] depths) {
        int[] known = IntStream.range(0, depths.length)
                .filter(i -> !Double.isNaN(depths[i]))
                .toArray();
        return known.length == depths.length
                ? this
                : new ReturnPeriodColumns(picked(years, known), picked(logYears, known), basis);
    }

    private static double[] picked(double[] values, int[] at) {
        return IntStream.of(at).mapToDouble(i -> values[i]).toArray();
    }
}
