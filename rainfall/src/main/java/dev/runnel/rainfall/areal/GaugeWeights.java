package dev.runnel.rainfall.areal;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.RegularSeries;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.IntStream;
import org.apiguardian.api.API;

/**
 * The share of each gauge in the rain of a catchment or a place. Immutable and thread-safe.
 *
 * <p>When gauges are missing the shares are worked out anew from the others: polygons are drawn again without them, and
 * given shares are raised in proportion.
 *
 * <p>Sources: Thiessen (1911), Precipitation averages for large areas, Monthly Weather Review 39, 1082-1084; inverse
 * distance: Shepard (1968), Proceedings of the 23rd ACM National Conference, 517-524.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class GaugeWeights {
    private final List<String> gauges;
    private final Weighing weighing;
    private final double[] weights;

    /** Weights that add up to 1, by position, for the gauges that are present. */
    private interface Weighing {
        double[] of(BitSet present);
    }

    private GaugeWeights(List<String> gauges, Weighing weighing) {
        this.gauges = gauges;
        this.weighing = weighing;
        this.weights = weighing.of(all(gauges.size()));
    }

    private static BitSet all(int size) {
        BitSet all = new BitSet(size);
        all.set(0, size);
        return all;
    }

    /**
     * Returns given weights.
     *
     * @param weights weight by name of gauge; each 0 or greater, together above 0; they are scaled to add up to 1
     * @return the weights
     * @throws IllegalArgumentException if there is no gauge, or a weight is out of range
     */
    public static GaugeWeights of(Map<String, Double> weights) {
        Objects.requireNonNull(weights, "weights");
        requireSome(weights);
        TreeMap<String, Double> sorted = new TreeMap<>(weights);
        sorted.forEach((gauge, weight) -> Require.nonNegative("weight of " + gauge, weight, ""));
        double[] given =
                sorted.values().stream().mapToDouble(Double::doubleValue).toArray();
        Require.positive("sum of weights", Arrays.stream(given).sum(), "");
        return new GaugeWeights(List.copyOf(sorted.keySet()), present -> scaled(given, present));
    }

    /**
     * Returns the share of the catchment that is nearest to each gauge (Thiessen's polygons).
     *
     * @param catchment the catchment
     * @param places place of each gauge by name, inside the catchment or not; no two at one place
     * @return the weights; 0 for a gauge nearest to no part of it
     * @throws IllegalArgumentException if there is no gauge, or two are at one place
     */
    public static GaugeWeights thiessen(Catchment catchment, Map<String, Location> places) {
        Objects.requireNonNull(places, "places");
        requireSome(places);
        TreeMap<String, Location> sorted = new TreeMap<>(places);
        List<Location> locations = List.copyOf(sorted.values());
        requireApart(sorted);
        return new GaugeWeights(List.copyOf(sorted.keySet()), present -> {
            double[] areas = new double[locations.size()];
            present.stream().forEach(gauge -> {
                List<Location> others = present.stream()
                        .filter(other -> other != gauge)
                        .mapToObj(locations::get)
                        .toList();
                areas[gauge] = catchment.areaNearestTo(locations.get(gauge), others);
            });
            return scaled(areas, present);
        });
    }

    /**
     * Returns the weights for a place by a rule, such as inverse distance or kriging.
     *
     * @param target the place
     * @param places where the gauges stand, by name; at least one, all at different places
     * @param rule how gauges are weighed
     * @return the weights; of a step without some gauges those of the others alone
     * @throws IllegalArgumentException if there is no gauge, or two are at one place
     */
    public static GaugeWeights at(Location target, Map<String, Location> places, SpatialEstimator rule) {
        Objects.requireNonNull(target, "target");
        Objects.requireNonNull(places, "places");
        requireSome(places);
        TreeMap<String, Location> sorted = new TreeMap<>(places);
        requireApart(sorted);
        List<Location> locations = List.copyOf(sorted.values());
        return new GaugeWeights(List.copyOf(sorted.keySet()), present -> {
            double[] weights = new double[locations.size()];
            int[] at = present.stream().toArray();
            if (at.length > 0) {
                double[] some = rule.weights(
                                target,
                                IntStream.of(at).mapToObj(locations::get).toList())
                        .weights();
                for (int i = 0; i < at.length; i++) {
                    weights[at[i]] = some[i];
                }
            }
            return weights;
        });
    }

    private static void requireSome(Map<String, ?> gauges) {
        if (gauges.isEmpty()) {
            throw new IllegalArgumentException("gauges must be at least one, were none");
        }
    }

    private static void requireApart(SortedMap<String, Location> places) {
        Map<Location, String> taken = new HashMap<>();
        places.forEach((gauge, place) -> {
            String other = taken.put(place, gauge);
            if (other != null) {
                throw new IllegalArgumentException(
                        "gauges must be at different places, " + other + " and " + gauge + " are both at " + place);
            }
        });
    }

    private static double[] scaled(double[] given, BitSet present) {
        double sum = present.stream().mapToDouble(i -> given[i]).sum();
        double[] weights = new double[given.length];
        if (sum > 0) {
            present.stream().forEach(i -> weights[i] = given[i] / sum);
        }
        return weights;
    }

    /**
     * Returns the weight of a gauge when none is missing.
     *
     * @param gauge name
     * @return weight, from 0 to 1
     * @throws IllegalArgumentException if there is no such gauge
     */
    public double weight(String gauge) {
        Objects.requireNonNull(gauge, "gauge");
        int found = gauges.indexOf(gauge);
        if (found < 0) {
            throw new IllegalArgumentException("gauge must be one of " + gauges + ", was " + gauge);
        }
        return weights[found];
    }

    /**
     * Returns the names of the gauges.
     *
     * @return names in alphabetical order
     */
    public List<String> gauges() {
        return gauges;
    }

    /**
     * Returns the weighted mean of the gauges in each step, weights worked out anew wherever a gauge is missing.
     *
     * @param rainByGauge depth in each step, mm, for each of the gauges and no other; NaN for missing; the same start,
     *     step and number of steps
     * @return mean rain, missing where no gauge with any weight is present, and how many steps were weighted anew
     * @throws IllegalArgumentException if a gauge is lacking or unknown, the records do not agree, or a depth is negative
     */
    public ArealRain mean(Map<String, RegularSeries> rainByGauge) {
        List<RegularSeries> records = GaugeRecords.of(gauges, rainByGauge);
        RegularSeries first = records.get(0);
        Map<BitSet, double[]> known = new HashMap<>();
        double[] means = new double[first.size()];
        int reweighted = 0;
        for (int step = 0; step < means.length; step++) {
            BitSet present = new BitSet(gauges.size());
            for (int i = 0; i < records.size(); i++) {
                present.set(i, !Double.isNaN(records.get(i).value(step)));
            }
            double[] shares = known.computeIfAbsent(present, weighing::of);
            means[step] = mean(records, step, shares);
            if (present.cardinality() < gauges.size()) {
                reweighted++;
            }
        }
        return new ArealRain(RegularSeries.of(first.start(), first.step(), means), reweighted);
    }

    private static double mean(List<RegularSeries> records, int step, double[] shares) {
        CompensatedSum sum = new CompensatedSum();
        boolean any = false;
        for (int i = 0; i < shares.length; i++) {
            if (shares[i] != 0) {
                sum.add(shares[i] * records.get(i).value(step));
                any = true;
            }
        }
        return any ? Math.max(0, sum.value()) : Double.NaN;
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("GaugeWeights[");
        for (int i = 0; i < weights.length; i++) {
            text.append(i == 0 ? "" : ", ").append(gauges.get(i)).append(' ').append(Text.significant(weights[i], 4));
        }
        return text.append(']').toString();
    }
}
