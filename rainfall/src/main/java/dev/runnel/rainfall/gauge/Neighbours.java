package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.RegularSeries;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apiguardian.api.API;

/**
 * Gauges near each other, compared period by period: each against the mean of all others. Immutable and thread-safe.
 *
 * <p>A gauge far from its neighbours in depth has a doubtful bucket or place; one whose ranks do not follow theirs has a doubtful
 * clock; one that is dry while they are wet is stuck, and one that is wet while they are dry drips or was worked on. A period in
 * which any gauge is missing is left out of the comparison of all, so that the mean is always one of the same gauges.
 *
 * <p>Choose periods long enough for rain to reach all gauges: days rather than minutes, made by
 * {@link dev.runnel.timeseries.Resample#sum}.
 *
 * <p>What this is not: a proof. Storms are patchy, mountains make rain, and the neighbours may be wrong.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Neighbours {
    private final List<String> names;
    private final List<RegularSeries> rain;

    private Neighbours(List<String> names, List<RegularSeries> rain) {
        this.names = names;
        this.rain = rain;
    }

    /**
     * How one gauge stands among the others.
     *
     * @param gauge its name
     * @param periods periods that all gauges have
     * @param depthMm its depth in them, mm
     * @param ratio that depth over the mean of the others
     * @param rankCorrelation Spearman's rank correlation with the mean of the others; 0 if one of the two never changes
     * @param dryAlone periods in which it had no rain and every other gauge at least the wet limit
     * @param wetAlone periods in which it had at least the wet limit and no other gauge any rain
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Finding(
            String gauge,
            int periods,
            double depthMm,
            double ratio,
            double rankCorrelation,
            int dryAlone,
            int wetAlone) {
        @Override
        public String toString() {
            return gauge + ": " + Text.significant(depthMm, 6) + " mm in " + periods + " periods, ratio "
                    + Text.significant(ratio, 4) + ", rank correlation " + Text.significant(rankCorrelation, 4) + ", "
                    + dryAlone + " dry alone, " + wetAlone + " wet alone";
        }
    }

    /**
     * Returns the comparison of gauges.
     *
     * @param depthMm depth in each period, mm, by name of gauge; 0 or greater, NaN for missing; at least two gauges, all with the
     *     same periods
     * @return the comparison, gauges by name
     * @throws IllegalArgumentException if there are fewer than two gauges, their periods differ or a depth is negative
     */
    public static Neighbours of(Map<String, RegularSeries> depthMm) {
        Require.atLeast("gauges", depthMm.size(), 2);
        TreeMap<String, RegularSeries> sorted = new TreeMap<>(depthMm);
        RegularSeries first = sorted.firstEntry().getValue();
        sorted.forEach((name, series) -> {
            Rain.requireNonNegative("depthMm of " + name, series, "mm");
            if (!series.interval().equals(first.interval()) || !series.step().equals(first.step())) {
                throw new IllegalArgumentException("depthMm of " + name + " must have the periods of "
                        + sorted.firstKey() + ", " + first.interval() + " in steps of " + first.step() + ", was "
                        + series.interval() + " in steps of " + series.step());
            }
        });
        return new Neighbours(List.copyOf(sorted.keySet()), List.copyOf(sorted.values()));
    }

    /**
     * Returns one gauge against the mean of all others, for the double-mass curve and its break.
     *
     * @param gauge name of the gauge
     * @return the comparison over the periods that all gauges have
     * @throws IllegalArgumentException if there is no such gauge, or the others have no rain
     */
    public DoubleMass against(String gauge) {
        int at = index(gauge);
        return DoubleMass.of(rain.get(at).toValues(), meanOfOthers(at));
    }

    /**
     * Returns Spearman's rank correlation of two gauges.
     *
     * @param gauge name of one
     * @param other name of the other
     * @return from -1 to 1 over the periods that both have; 0 if one of the two never changes
     * @throws IllegalArgumentException if there is no such gauge, the second has no rain, or they share fewer than two periods
     */
    public double rankCorrelation(String gauge, String other) {
        return DoubleMass.of(
                        rain.get(index(gauge)).toValues(),
                        rain.get(index(other)).toValues())
                .rankCorrelation();
    }

    /**
     * Returns how every gauge stands among the others.
     *
     * @param wetMm depth from which a period is surely wet, mm; greater than 0, such as a few tips
     * @return one finding for each gauge, by name
     * @throws IllegalArgumentException if the limit is not greater than 0, fewer than two periods are common to all, or the other
     *     gauges of one have no rain
     */
    public List<Finding> findings(double wetMm) {
        Require.positive("wetMm", wetMm, "mm");
        List<Finding> findings = new ArrayList<>();
        for (int at = 0; at < names.size(); at++) {
            DoubleMass mass = against(names.get(at));
            double[] depths = mass.cumulativeGauge();
            findings.add(new Finding(
                    names.get(at),
                    mass.periods(),
                    depths[depths.length - 1],
                    mass.ratio(),
                    mass.rankCorrelation(),
                    alone(at, wetMm, true),
                    alone(at, wetMm, false)));
        }
        return findings;
    }

    private double[] meanOfOthers(int at) {
        double[] mean = new double[rain.get(at).size()];
        for (int i = 0; i < mean.length; i++) {
            double sum = 0;
            for (int other = 0; other < rain.size(); other++) {
                sum += other == at ? 0 : rain.get(other).value(i);
            }
            mean[i] = sum / (rain.size() - 1);
        }
        return mean;
    }

    private int alone(int at, double wetMm, boolean isDry) {
        int count = 0;
        for (int i = 0; i < rain.get(at).size(); i++) {
            boolean alone =
                    isDry ? rain.get(at).value(i) == 0 : isWet(rain.get(at).value(i), wetMm);
            for (int other = 0; other < rain.size(); other++) {
                double depth = rain.get(other).value(i);
                alone &= other == at || (isDry ? isWet(depth, wetMm) : depth == 0);
            }
            count += alone ? 1 : 0;
        }
        return count;
    }

    /** A sum of tips may lie a rounding below the limit. */
    private static boolean isWet(double depthMm, double wetMm) {
        return depthMm >= wetMm - 1e-9;
    }

    private int index(String gauge) {
        int at = names.indexOf(gauge);
        if (at < 0) {
            throw new IllegalArgumentException("gauge must be one of " + names + ", was \"" + gauge + "\"");
        }
        return at;
    }

    @Override
    public String toString() {
        return "Neighbours" + names + " in " + rain.get(0).size() + " periods of "
                + Text.duration(rain.get(0).step());
    }
}
