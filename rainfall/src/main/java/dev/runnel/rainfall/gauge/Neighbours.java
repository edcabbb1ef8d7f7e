package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apiguardian.api.API;

/**
 * Gauges near each other, compared period by period: each against the median of the others. Immutable and thread-safe.
 *
 * <p>A gauge far from its neighbours in depth has a doubtful bucket or place; one whose ranks do not follow theirs has a doubtful
 * clock; one that is dry while they are wet is stuck, and one that is wet while they are dry drips or was worked on.
 *
 * <p>The median is that of the others that tell something of the period. A gauge is left out where it is missing or in one of its
 * {@linkplain #withOutages outages}, and where it was silent: no rain at all while more than half of the gauges had at least the
 * {@linkplain #withWetLimit wet limit}. So a dead gauge and a blocked one do not accuse the good ones. A period counts for a
 * gauge if at least half of the others tell something.
 *
 * <p>Choose periods long enough for rain to reach all gauges: days rather than minutes, made by
 * {@link dev.runnel.timeseries.Resample#sum}.
 *
 * <p>What this is not: a proof. Storms are patchy, mountains make rain, and the neighbours may be wrong; of two gauges nobody
 * can tell which one is.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Neighbours {
    /** Depth from which a period is surely wet: a few tips (chosen here). */
    private static final double WET_MM = 1;

    private final List<String> names;
    private final List<RegularSeries> rain;
    private final double wetMm;

    private Neighbours(List<String> names, List<RegularSeries> rain, double wetMm) {
        this.names = names;
        this.rain = rain;
        this.wetMm = wetMm;
    }

    /**
     * How one gauge stands among the others.
     *
     * @param gauge its name
     * @param periods periods that it has, and at least half of the others
     * @param depthMm its depth in them, mm
     * @param ratio that depth over the sum of the medians of the others
     * @param rankCorrelation Spearman's rank correlation with these medians; 0 if one of the two never changes
     * @param dryAlone periods in which it had no rain and the median of the others was at least the wet limit
     * @param wetAlone periods in which it had at least the wet limit and the median of the others was 0
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
        return new Neighbours(List.copyOf(sorted.keySet()), List.copyOf(sorted.values()), WET_MM);
    }

    /**
     * Returns the same comparison with another limit from which a period is surely wet.
     *
     * @param depthMm depth, mm; greater than 0, such as a few tips; 1 mm unless said
     * @return the comparison
     * @throws IllegalArgumentException if the limit is not greater than 0
     */
    public Neighbours withWetLimit(double depthMm) {
        return new Neighbours(names, rain, Require.positive("depthMm", depthMm, "mm"));
    }

    /**
     * Returns the same comparison that knows when a gauge told nothing of the rain. Every period that shares time with an outage is
     * missing for that gauge.
     *
     * @param gauge name of the gauge
     * @param outages when it was off, blocked or being worked on
     * @return the comparison
     * @throws IllegalArgumentException if there is no such gauge
     */
    public Neighbours withOutages(String gauge, Collection<Interval> outages) {
        int at = index(gauge);
        List<RegularSeries> known = new ArrayList<>(rain);
        known.set(at, rain.get(at).withMissing(outages.toArray(Interval[]::new)));
        return new Neighbours(names, List.copyOf(known), wetMm);
    }

    /**
     * Returns one gauge against the median of the others, for the double-mass curve and its break.
     *
     * @param gauge name of the gauge
     * @return the comparison over the periods that count
     * @throws IllegalArgumentException if there is no such gauge, or the others have no rain
     */
    public DoubleMass against(String gauge) {
        int at = index(gauge);
        return DoubleMass.of(rain.get(at).toValues(), medianOfOthers(at));
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
     * @return one finding for each gauge, by name
     * @throws IllegalArgumentException if fewer than two periods count for a gauge, or the others have no rain in them
     */
    public List<Finding> findings() {
        List<Finding> findings = new ArrayList<>();
        for (int at = 0; at < names.size(); at++) {
            double[] own = rain.get(at).toValues();
            double[] others = medianOfOthers(at);
            DoubleMass mass = DoubleMass.of(own, others);
            double[] depths = mass.cumulativeGauge();
            int dryAlone = 0;
            int wetAlone = 0;
            for (int i = 0; i < own.length; i++) {
                dryAlone += own[i] == 0 && isWet(others[i]) ? 1 : 0;
                wetAlone += isWet(own[i]) && others[i] == 0 ? 1 : 0;
            }
            findings.add(new Finding(
                    names.get(at),
                    mass.periods(),
                    depths[depths.length - 1],
                    mass.ratio(),
                    mass.rankCorrelation(),
                    dryAlone,
                    wetAlone));
        }
        return findings;
    }

    /** The median of the others in each period, mm; NaN where fewer than half of them tell something. */
    private double[] medianOfOthers(int at) {
        double[] medians = new double[rain.get(at).size()];
        double[] telling = new double[rain.size()];
        int needed = rain.size() / 2;
        for (int i = 0; i < medians.length; i++) {
            int known = 0;
            int wet = 0;
            for (RegularSeries each : rain) {
                known += Double.isNaN(each.value(i)) ? 0 : 1;
                wet += isWet(each.value(i)) ? 1 : 0;
            }
            boolean isWet = 2 * wet > known;
            int count = 0;
            for (int other = 0; other < rain.size(); other++) {
                double depth = rain.get(other).value(i);
                if (other != at && !Double.isNaN(depth) && !(isWet && depth == 0)) {
                    telling[count++] = depth;
                }
            }
            medians[i] = count >= Math.max(1, needed) ? median(telling, count) : Double.NaN;
        }
        return medians;
    }

    private static double median(double[] values, int size) {
        Arrays.sort(values, 0, size);
        int half = size / 2;
        return size % 2 == 1 ? values[half] : (values[half - 1] + values[half]) / 2;
    }

    /** A sum of tips may lie a rounding below the limit. */
    private boolean isWet(double depthMm) {
        return depthMm >= wetMm - Rain.ROUNDING_MM;
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
