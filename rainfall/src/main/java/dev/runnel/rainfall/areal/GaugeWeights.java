package dev.runnel.rainfall.areal;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.RegularSeries;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.TreeSet;
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
     * Returns weights in proportion to a power of the inverse distance, 1/d<sup>p</sup>.
     *
     * @param target the place for which rain is wanted
     * @param places place of each gauge by name
     * @param power exponent p; above 0, mostly 2
     * @return the weights; a gauge at the target itself has all of it
     * @throws IllegalArgumentException if there is no gauge, two are at one place, or the power is not above 0
     */
    public static GaugeWeights inverseDistance(Location target, Map<String, Location> places, double power) {
        requireSome(places);
        Require.positive("power", power, "");
        TreeMap<String, Location> sorted = new TreeMap<>(places);
        requireApart(sorted);
        double[] distances =
                sorted.values().stream().mapToDouble(target::distanceTo).toArray();
        return new GaugeWeights(List.copyOf(sorted.keySet()), present -> {
            double nearest =
                    present.stream().mapToDouble(i -> distances[i]).min().orElse(0);
            double[] inverse = new double[distances.length];
            // Relative to the nearest, so that no power overflows.
            present.stream()
                    .forEach(i -> inverse[i] =
                            nearest == 0 ? (distances[i] == 0 ? 1 : 0) : Math.pow(nearest / distances[i], power));
            return scaled(inverse, present);
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
        List<RegularSeries> records = records(rainByGauge);
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
            if (shares[i] > 0) {
                sum.add(shares[i] * records.get(i).value(step));
                any = true;
            }
        }
        return any ? sum.value() : Double.NaN;
    }

    private List<RegularSeries> records(Map<String, RegularSeries> rainByGauge) {
        if (!rainByGauge.keySet().equals(Set.copyOf(gauges))) {
            throw new IllegalArgumentException(
                    "rainByGauge must hold " + gauges + ", held " + new TreeSet<>(rainByGauge.keySet()));
        }
        List<RegularSeries> records = new ArrayList<>();
        for (String gauge : gauges) {
            RegularSeries rain = Objects.requireNonNull(rainByGauge.get(gauge));
            Rain.requireNonNegative("rain of " + gauge, rain, "mm");
            if (!records.isEmpty()) {
                RegularSeries first = records.get(0);
                if (!rain.interval().equals(first.interval()) || !rain.step().equals(first.step())) {
                    throw new IllegalArgumentException("rain of " + gauge + " must have the steps of " + gauges.get(0)
                            + ", " + first.interval() + " by " + first.step() + ", had " + rain.interval() + " by "
                            + rain.step());
                }
            }
            records.add(rain);
        }
        return records;
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
