package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Require;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.rainfall.internal.Share;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.OptionalDouble;
import java.util.TreeMap;
import org.apache.commons.math3.stat.correlation.SpearmansCorrelation;
import org.apiguardian.api.API;

/**
 * Which gauges have the same rain, so that one may be set against the others. Immutable and thread-safe.
 *
 * <p>Two gauges are compared by Spearman's rank correlation of their daily depths (UTC), mm, over the days that count: both records
 * hold the whole day, one of the two depths is at least 1 mm, and the day is not in a spell of more than 15 days, of those that both
 * hold, without any rain at one of the two (a dead gauge tells nothing of where it stands). With 20 days or more the pair decides: it is joined from 0.25 on. Gauges of one network stand
 * far above (0.68 to 0.99 between four loggers at two places of one forest, 10 to 60 days), gauges without a storm in common
 * below 0, since on most of these days only one of the two had rain. Gauges joined directly or through others are one group; a
 * gauge with no pair that decides is held to be of the greatest group, the first of equals. The limits are chosen here.
 *
 * <p>What this is not: a test of a gauge. One that stands alone may have rain of its own, a clock that is a day off, or a fault
 * that leaves nothing of its rain.
 *
 * @see Neighbours
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class GaugeGroups {
    private static final double WET_MM = 1;
    private static final double LEAST_CORRELATION = 0.25;
    private static final int LEAST_DAYS = 20;
    private static final int LONGEST_SPELL_DAYS = 15;
    private static final long DAY = Duration.ofDays(1).toNanos();

    private final List<String> names;
    /** By pair of gauges; not a number where too few days count; not modified once made. */
    private final double[][] correlations;

    private final List<List<String>> groups;

    private GaugeGroups(List<String> names, double[][] correlations, List<List<String>> groups) {
        this.names = names;
        this.correlations = correlations;
        this.groups = groups;
    }

    /**
     * Finds the groups.
     *
     * @param rainMm depth in each step, mm, by name of gauge; 0 or greater, NaN for missing; at least one gauge, each with its own
     *     steps, of a day at most, and record
     * @return the groups
     * @throws IllegalArgumentException if there is no gauge, a depth is negative or a step longer than a day
     */
    public static GaugeGroups of(Map<String, RegularSeries> rainMm) {
        Require.atLeast("gauges", rainMm.size(), 1);
        TreeMap<String, RegularSeries> sorted = new TreeMap<>(rainMm);
        List<Days> days = new ArrayList<>();
        sorted.forEach((name, series) -> {
            Rain.requireNonNegative("rainMm of " + name, series, "mm");
            Require.inRange("step of " + name, series.step().toNanos() / 1e9, 0, DAY / 1e9, "s");
            days.add(Days.of(series));
        });
        double[][] correlations = new double[days.size()][days.size()];
        for (int one = 0; one < days.size(); one++) {
            for (int other = 0; other < one; other++) {
                correlations[one][other] = correlation(days.get(one), days.get(other));
                correlations[other][one] = correlations[one][other];
            }
            correlations[one][one] = Double.NaN;
        }
        List<String> names = List.copyOf(sorted.keySet());
        return new GaugeGroups(names, correlations, named(names, joined(correlations)));
    }

    /**
     * Depths of whole days.
     *
     * @param first day since 1970
     * @param depthMm depths from it on; not a number where a part of the day is unknown
     */
    private record Days(long first, double[] depthMm) {
        static Days of(RegularSeries series) {
            long first = Math.floorDiv(EpochNanos.of(series.start()), DAY);
            long end = -Math.floorDiv(-EpochNanos.of(series.end()), DAY);
            double[] depths = new double[Math.toIntExact(end - first)];
            Arrays.setAll(depths, i -> {
                Share share = Share.of(series, (first + i) * DAY, (first + i + 1) * DAY);
                return share.unknown().isZero() ? share.sum() : Double.NaN;
            });
            return new Days(first, depths);
        }

        double on(long day) {
            long at = day - first;
            return at < 0 || at >= depthMm.length ? Double.NaN : depthMm[(int) at];
        }

        long end() {
            return first + depthMm.length;
        }
    }

    /** Not a number where too few days count. */
    private static double correlation(Days one, Days other) {
        long begin = Math.max(one.first(), other.first());
        int most = (int) Math.max(0, Math.min(one.end(), other.end()) - begin);
        double[] depths = new double[most];
        double[] others = new double[most];
        int common = 0;
        for (int i = 0; i < most; i++) {
            depths[common] = one.on(begin + i);
            others[common] = other.on(begin + i);
            common += Double.isNaN(depths[common] + others[common]) ? 0 : 1;
        }
        boolean[] isLong = inLongSpell(depths, common);
        boolean[] isLongOther = inLongSpell(others, common);
        int counting = 0;
        for (int i = 0; i < common; i++) {
            if (!isLong[i] && !isLongOther[i] && Rain.reaches(Math.max(depths[i], others[i]), WET_MM)) {
                depths[counting] = depths[i];
                others[counting++] = others[i];
            }
        }
        if (counting < LEAST_DAYS) {
            return Double.NaN;
        }
        double found = new SpearmansCorrelation()
                .correlation(Arrays.copyOf(depths, counting), Arrays.copyOf(others, counting));
        // Depths that never change have no ranks to compare.
        return Double.isNaN(found) ? 0 : found;
    }

    /** Which days lie in a spell without rain that is too long to be weather. */
    private static boolean[] inLongSpell(double[] depths, int count) {
        boolean[] inSpell = new boolean[count];
        int begin = 0;
        for (int i = 0; i <= count; i++) {
            if (i == count || depths[i] > 0) {
                Arrays.fill(inSpell, begin, i, i - begin > LONGEST_SPELL_DAYS);
                begin = i + 1;
            }
        }
        return inSpell;
    }

    /** The groups, each of places in ascending order, by their first. */
    private static List<List<Integer>> joined(double[][] correlations) {
        boolean[] placed = new boolean[correlations.length];
        List<List<Integer>> groups = new ArrayList<>();
        List<Integer> undecided = new ArrayList<>();
        for (int i = 0; i < correlations.length; i++) {
            if (Arrays.stream(correlations[i]).allMatch(Double::isNaN)) {
                undecided.add(i);
            } else if (!placed[i]) {
                groups.add(reached(i, correlations, placed));
            }
        }
        if (!undecided.isEmpty()) {
            List<Integer> greatest = groups.stream()
                    .reduce((a, b) -> b.size() > a.size() ? b : a)
                    .orElseGet(ArrayList::new);
            groups.remove(greatest);
            greatest.addAll(undecided);
            groups.add(greatest);
        }
        groups.forEach(group -> group.sort(Comparator.naturalOrder()));
        groups.sort(Comparator.comparing(group -> group.get(0)));
        return groups;
    }

    private static List<Integer> reached(int from, double[][] correlations, boolean[] placed) {
        List<Integer> group = new ArrayList<>(List.of(from));
        placed[from] = true;
        for (int next = 0; next < group.size(); next++) {
            double[] row = correlations[group.get(next)];
            for (int other = 0; other < row.length; other++) {
                if (!placed[other] && row[other] >= LEAST_CORRELATION) {
                    placed[other] = true;
                    group.add(other);
                }
            }
        }
        return group;
    }

    private static List<List<String>> named(List<String> names, List<List<Integer>> groups) {
        return groups.stream()
                .map(group -> group.stream().map(names::get).toList())
                .toList();
    }

    /**
     * Returns the groups.
     *
     * @return names in their order, groups in that of their first; each gauge in one of them
     */
    public List<List<String>> groups() {
        return groups;
    }

    /**
     * Returns the rank correlation of two gauges on the days that count.
     *
     * @param gauge name of one
     * @param other name of the other
     * @return from -1 to 1, 0 if one of the two never changes; empty if fewer than 20 days count
     * @throws IllegalArgumentException if there is no such gauge, or both are the same
     */
    public OptionalDouble rankCorrelation(String gauge, String other) {
        int one = index("gauge", gauge);
        int two = index("other", other);
        if (one == two) {
            throw new IllegalArgumentException("other must be another gauge than \"" + gauge + "\"");
        }
        return Double.isNaN(correlations[one][two])
                ? OptionalDouble.empty()
                : OptionalDouble.of(correlations[one][two]);
    }

    private int index(String parameter, String gauge) {
        Objects.requireNonNull(gauge, parameter);
        int at = names.indexOf(gauge);
        if (at < 0) {
            throw new IllegalArgumentException(parameter + " must be one of " + names + ", was \"" + gauge + "\"");
        }
        return at;
    }

    /**
     * Returns the greatest rank correlation of a gauge with any other.
     *
     * @param gauge name of the gauge
     * @return from -1 to 1; empty if no pair has enough days
     * @throws IllegalArgumentException if there is no such gauge
     */
    public OptionalDouble greatestCorrelation(String gauge) {
        return Arrays.stream(correlations[index("gauge", gauge)])
                .filter(each -> !Double.isNaN(each))
                .max();
    }

    @Override
    public String toString() {
        return "GaugeGroups" + groups;
    }
}
