package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.stat.correlation.PearsonsCorrelation;
import org.apiguardian.api.API;

/**
 * How closely a distribution follows a sample, by several measures. The measures have no common scale, and critical
 * values depend on the family, the size and how the parameters were found: {@link Bootstrap#criticalValues} gives them for
 * the fit at hand, {@link Bootstrap#significance} says how rare its Anderson-Darling statistic is.
 *
 * @param plotCorrelation correlation of the ordered sample with the quantiles at its plotting positions; 1 is perfect.
 *     Source: Filliben (1975), The probability plot correlation coefficient test for normality, Technometrics 17(1)
 * @param andersonDarling A&sup2; = -n - &Sigma; (2i - 1)/n [ln F(x<sub>i</sub>) + ln(1 - F(x<sub>n+1-i</sub>))]; 0 is
 *     perfect, infinite if a value lies outside the bounds. Source: Anderson and Darling (1954), A test of goodness of
 *     fit, Journal of the American Statistical Association 49
 * @param kolmogorovSmirnov D, the greatest distance between F and the steps of the sample; in [0, 1]
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record GoodnessOfFit(double plotCorrelation, double andersonDarling, double kolmogorovSmirnov) {
    /**
     * Compares a sample with a distribution.
     *
     * @param distribution the distribution
     * @param position plotting position for the correlation
     * @param sample at least 3 values that are not all equal; not modified
     * @return the measures
     * @throws IllegalArgumentException if the sample is too small, not finite or all equal
     */
    public static GoodnessOfFit of(Distribution distribution, PlottingPosition position, double... sample) {
        return of(distribution, List.of(PlottedPositions.of(distribution, position, sample.length)), sample)
                .get(0);
    }

    /** The same with the correlation at each of several plotting positions: nothing else depends on them. */
    static List<GoodnessOfFit> of(Distribution distribution, List<PlottedPositions> positions, double... sample) {
        SampleMoments.of(sample);
        double[] x = sample.clone();
        Arrays.sort(x);
        int n = x.length;
        double squared = 0;
        double distance = 0;
        for (int i = 0; i < n; i++) {
            double below = distribution.cdf(x[i]);
            squared += (2 * i + 1.0) / n * (Math.log(below) + Math.log(distribution.exceedance(x[n - 1 - i])));
            distance = Math.max(distance, Math.max((i + 1.0) / n - below, below - (double) i / n));
        }
        List<GoodnessOfFit> measures = new ArrayList<>();
        for (PlottedPositions position : positions) {
            double correlation = new PearsonsCorrelation().correlation(x, position.quantiles(distribution));
            measures.add(new GoodnessOfFit(correlation, -n - squared, distance));
        }
        return measures;
    }

    /**
     * Returns how far the L-kurtosis of a sample lies from that of a distribution: the distance in the L-moment ratio
     * diagram of a family that matches the L-skewness.
     *
     * @param distribution a distribution with the L-skewness of the sample
     * @param moments L-moments of the sample
     * @return &tau;<sub>4</sub> of the sample minus that of the distribution
     */
    public static double lKurtosisDistance(Distribution distribution, LMoments moments) {
        return Require.finite("tau4", moments.tau4(), "")
                - distribution.lMoments().tau4();
    }

    @Override
    public String toString() {
        return "GoodnessOfFit[plot correlation " + Text.significant(plotCorrelation, 5) + ", Anderson-Darling "
                + Text.significant(andersonDarling, 4) + ", Kolmogorov-Smirnov "
                + Text.significant(kolmogorovSmirnov, 4) + "]";
    }
}
