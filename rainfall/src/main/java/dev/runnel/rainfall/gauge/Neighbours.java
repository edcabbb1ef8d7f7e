package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.rainfall.internal.Share;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.IntFunction;
import org.apiguardian.api.API;
import org.jspecify.annotations.Nullable;

/**
 * Gauges near each other, compared period by period: each against the median of the others. Immutable and thread-safe.
 *
 * <p>A gauge far from its neighbours in depth has a doubtful bucket or place; one whose ranks do not follow theirs has a doubtful
 * clock; one that is dry while they are wet is stuck, and one that is wet while they are dry drips or was worked on.
 *
 * <p>The median is that of the others that tell something of the period. A gauge is left out where it is missing or in one of its
 * {@linkplain #withOutages outages}, and where it was silent: no rain at all while more than half of the gauges had at least the
 * {@linkplain #withWetLimit wet limit}. So a dead gauge and a blocked one of five do not accuse the good ones. A period counts for
 * a gauge if at least half of the others tell something.
 *
 * <p>Of three gauges a bad one is half of the median of the others, and accuses both good ones. {@link #settingAside} leaves out
 * the one that stands farthest off and asks again, until the rest agree.
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

    /** Of these two nobody can tell which one is wrong. */
    private static final int FEWEST = 2;

    private final List<String> names;
    /** By gauge and period, mm; not modified once made. */
    private final double[][] depths;

    private final Periods periods;
    private final double wetMm;
    private final List<String> aside;

    /** Made on first need; two threads make the same. */
    private volatile @Nullable TellingDepths telling;

    private Neighbours(List<String> names, double[][] depths, Periods periods, double wetMm, List<String> aside) {
        this.names = names;
        this.depths = depths;
        this.periods = periods;
        this.wetMm = wetMm;
        this.aside = aside;
    }

    private record Periods(int count, IntFunction<Interval> at, String text) {}

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
        /**
         * Checks that nothing is missing.
         *
         * @param gauge its name
         * @param periods periods that it has, and at least half of the others
         * @param depthMm its depth in them, mm
         * @param ratio that depth over the sum of the medians of the others
         * @param rankCorrelation Spearman's rank correlation with these medians; 0 if one of the two never changes
         * @param dryAlone periods in which it had no rain and the median of the others was at least the wet limit
         * @param wetAlone periods in which it had at least the wet limit and the median of the others was 0
         */
        public Finding {
            Objects.requireNonNull(gauge, "gauge");
        }

        @Override
        public String toString() {
            return gauge + ": " + Text.significant(depthMm, 6) + " mm in " + periods + " periods, ratio "
                    + Text.significant(ratio, 4) + ", rank correlation " + Text.significant(rankCorrelation, 4) + ", "
                    + dryAlone + " dry alone, " + wetAlone + " wet alone";
        }
    }

    /**
     * One gauge in one period that counts for it.
     *
     * @param period the period
     * @param depthMm its depth, mm
     * @param othersMm median of the others, mm
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Compared(Interval period, double depthMm, double othersMm) {
        /**
         * Checks that nothing is missing.
         *
         * @param period the period
         * @param depthMm its depth, mm
         * @param othersMm median of the others, mm
         */
        public Compared {
            Objects.requireNonNull(period, "period");
        }

        @Override
        public String toString() {
            return period + ": " + Text.significant(depthMm, 4) + " mm, others " + Text.significant(othersMm, 4)
                    + " mm";
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
        Require.atLeast("gauges", depthMm.size(), FEWEST);
        TreeMap<String, RegularSeries> sorted = new TreeMap<>(depthMm);
        RegularSeries first = sorted.firstEntry().getValue();
        sorted.forEach((name, series) -> {
            Rain.requireNonNegative("depthMm of " + name, series, "mm");
            if (!series.interval().equals(first.interval()) || !series.step().equals(first.step())) {
                throw new IllegalArgumentException("depthMm of " + name + " must have the periods of "
                        + sorted.firstKey() + ", " + first.interval() + " in steps of "
                        + Text.exactDuration(first.step()) + ", was " + series.interval() + " in steps of "
                        + Text.exactDuration(series.step()));
            }
        });
        return new Neighbours(
                List.copyOf(sorted.keySet()),
                sorted.values().stream().map(RegularSeries::toValues).toArray(double[][]::new),
                new Periods(first.size(), first::interval, first.size() + " periods of " + Text.duration(first.step())),
                WET_MM,
                List.of());
    }

    /**
     * Returns the comparison of gauges in periods such as their storms, {@linkplain Interval#joined joined}. A period of which a
     * record says nothing in a part, or beyond whose ends it lies, is missing for its gauge; within a step rain is taken as
     * steady.
     *
     * @param rainMm depth in each step, mm, by name of gauge; 0 or greater, NaN for missing; at least two gauges, each with its own
     *     steps and record
     * @param periods the periods; none empty
     * @return the comparison, gauges by name
     * @throws IllegalArgumentException if there are fewer than two gauges, a depth is negative or a period empty
     */
    public static Neighbours inPeriods(Map<String, RegularSeries> rainMm, List<Interval> periods) {
        Objects.requireNonNull(periods, "periods");
        Require.atLeast("gauges", rainMm.size(), FEWEST);
        List<Interval> kept = List.copyOf(periods);
        for (Interval period : kept) {
            if (period.isEmpty()) {
                throw new IllegalArgumentException("periods must not be empty, was " + period);
            }
        }
        TreeMap<String, RegularSeries> sorted = new TreeMap<>(rainMm);
        sorted.forEach((name, series) -> Rain.requireNonNegative("rainMm of " + name, series, "mm"));
        double[][] depths = sorted.values().stream()
                .map(series -> kept.stream()
                        .mapToDouble(period -> depth(series, period))
                        .toArray())
                .toArray(double[][]::new);
        return new Neighbours(
                List.copyOf(sorted.keySet()),
                depths,
                new Periods(kept.size(), kept::get, kept.size() + " periods"),
                WET_MM,
                List.of());
    }

    private static double depth(RegularSeries series, Interval period) {
        Share share = Share.of(series, period);
        return share.unknown().isZero() ? share.sum() : Double.NaN;
    }

    /**
     * Returns the same comparison with another limit from which a period is surely wet.
     *
     * @param depthMm depth, mm; greater than 0, such as a few tips; 1 mm unless said
     * @return the comparison
     * @throws IllegalArgumentException if the limit is not greater than 0
     */
    public Neighbours withWetLimit(double depthMm) {
        return new Neighbours(names, depths, periods, Require.positive("depthMm", depthMm, "mm"), aside);
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
        Objects.requireNonNull(gauge, "gauge");
        Objects.requireNonNull(outages, "outages");
        double[][] known = depths.clone();
        double[] own = depths[index(gauge)].clone();
        for (int i = 0; i < own.length; i++) {
            Interval period = periods.at().apply(i);
            if (outages.stream().anyMatch(period::overlaps)) {
                own[i] = Double.NaN;
            }
        }
        known[index(gauge)] = own;
        return new Neighbours(names, known, periods, wetMm, aside);
    }

    /**
     * Returns the same comparison with the medians freed of gauges that stand apart: the one whose ratio is farthest from 1, as a
     * factor, is set aside if it is off by more than a tolerance, and the rest are compared anew, as long as more than two are left.
     * A gauge that is set aside is still set against the others.
     *
     * @param tolerance greatest |ratio − 1| that is let be; greater than 0, at most 10
     * @return the comparison
     * @throws IllegalArgumentException if {@code tolerance} is out of range
     */
    public Neighbours settingAside(double tolerance) {
        Require.positive("tolerance", tolerance, "");
        Require.inRange("tolerance", tolerance, 0, 10, "");
        Neighbours settled = this;
        while (names.size() - settled.aside.size() > FEWEST) {
            int farthest = settled.farthest(tolerance);
            if (farthest < 0) {
                break;
            }
            List<String> more = new ArrayList<>(settled.aside);
            more.add(names.get(farthest));
            Neighbours fewer = new Neighbours(names, depths, periods, wetMm, List.copyOf(more));
            fewer.telling = settled.telling().without(farthest);
            settled = fewer;
        }
        return settled;
    }

    /** The gauge whose ratio to the others is farthest from 1, or -1 if that is within the tolerance. */
    private int farthest(double tolerance) {
        int farthest = -1;
        double most = -1;
        double ratioOfFarthest = Double.NaN;
        for (int at = 0; at < names.size(); at++) {
            double[] others = aside.contains(names.get(at)) ? new double[0] : medianOfOthers(at);
            if (isTelling(depths[at], others)) {
                double ratio = DoubleMass.of(depths[at], others).ratio();
                double distance = Math.abs(Math.log(ratio));
                if (distance > most) {
                    most = distance;
                    farthest = at;
                    ratioOfFarthest = ratio;
                }
            }
        }
        return Math.abs(ratioOfFarthest - 1) <= tolerance ? -1 : farthest;
    }

    /** Whether two periods count at least, and it rained in one of them. */
    private static boolean isTelling(double[] own, double[] others) {
        int compared = 0;
        boolean rained = false;
        for (int i = 0; i < others.length; i++) {
            if (!Double.isNaN(own[i]) && !Double.isNaN(others[i])) {
                compared++;
                rained |= others[i] > 0;
            }
        }
        return compared >= 2 && rained;
    }

    /**
     * Returns the gauges that are left out of the medians.
     *
     * @return names, the farthest off first; empty unless {@link #settingAside} found one
     */
    public List<String> setAside() {
        return aside;
    }

    /**
     * Returns one gauge against the median of the others, for the double-mass curve and its break.
     *
     * @param gauge name of the gauge
     * @return the comparison over the periods that count
     * @throws IllegalArgumentException if there is no such gauge, or the others have no rain
     */
    public DoubleMass against(String gauge) {
        Objects.requireNonNull(gauge, "gauge");
        int at = index(gauge);
        return DoubleMass.of(depths[at], medianOfOthers(at));
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
        Objects.requireNonNull(gauge, "gauge");
        Objects.requireNonNull(other, "other");
        return DoubleMass.of(depths[index(gauge)], depths[index(other)]).rankCorrelation();
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
            findings.add(finding(at, medianOfOthers(at)));
        }
        return findings;
    }

    /**
     * Returns how one gauge stands among the others.
     *
     * @param gauge name of the gauge
     * @return the finding; empty if fewer than two periods count, or the others have no rain in them
     * @throws IllegalArgumentException if there is no such gauge
     */
    public Optional<Finding> finding(String gauge) {
        Objects.requireNonNull(gauge, "gauge");
        int at = index(gauge);
        double[] others = medianOfOthers(at);
        return isTelling(depths[at], others) ? Optional.of(finding(at, others)) : Optional.empty();
    }

    /**
     * Returns one gauge beside the median of the others, period by period.
     *
     * @param gauge name of the gauge
     * @return the periods that count for it, in the order given
     * @throws IllegalArgumentException if there is no such gauge
     */
    public List<Compared> compared(String gauge) {
        Objects.requireNonNull(gauge, "gauge");
        int at = index(gauge);
        double[] own = depths[at];
        double[] others = medianOfOthers(at);
        List<Compared> compared = new ArrayList<>();
        for (int i = 0; i < own.length; i++) {
            if (!Double.isNaN(own[i]) && !Double.isNaN(others[i])) {
                compared.add(new Compared(periods.at().apply(i), own[i], others[i]));
            }
        }
        return List.copyOf(compared);
    }

    private Finding finding(int at, double[] others) {
        double[] own = depths[at];
        DoubleMass mass = DoubleMass.of(own, others);
        double[] running = mass.cumulativeGauge();
        int dryAlone = 0;
        int wetAlone = 0;
        for (int i = 0; i < own.length; i++) {
            dryAlone += own[i] == 0 && isWet(others[i]) ? 1 : 0;
            wetAlone += isWet(own[i]) && others[i] == 0 ? 1 : 0;
        }
        return new Finding(
                names.get(at),
                mass.periods(),
                running[running.length - 1],
                mass.ratio(),
                mass.rankCorrelation(),
                dryAlone,
                wetAlone);
    }

    /** The median of the others in each period, mm; NaN where fewer than half of them tell something. */
    private double[] medianOfOthers(int at) {
        boolean isAmong = !aside.contains(names.get(at));
        int others = names.size() - aside.size() - (isAmong ? 1 : 0);
        return telling().mediansOfOthers(at, isAmong, Math.max(1, (others + 1) / 2));
    }

    private TellingDepths telling() {
        TellingDepths ready = telling;
        if (ready == null) {
            ready = TellingDepths.of(depths, periods.count(), this::isWet);
            for (String name : aside) {
                ready = ready.without(index(name));
            }
            telling = ready;
        }
        return ready;
    }

    private boolean isWet(double depthMm) {
        return Rain.reaches(depthMm, wetMm);
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
        return "Neighbours" + names + " in " + periods.text() + (aside.isEmpty() ? "" : ", set aside " + aside);
    }
}
