package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.apiguardian.api.API;

/**
 * Clocks of gauges near each other, compared storm by storm: at which shift is the rain of one most like that of the others?
 * Immutable and thread-safe.
 *
 * <p>Rain is summed in equal cells of time from 6 h before a storm to 6 h after it, smoothed by sums of three cells and divided by the
 * depth of its gauge, so that a bucket that is off says nothing of the clock. With x of the gauge and y, the sum of the others, the
 * shift is the k that makes Σ x(i) y(i - k) greatest; divided by √(Σx² Σy²) this is the likeness. Cells are as long as the longest step
 * of the gauges, at least 10 min: to a cell the shift is exact.
 *
 * <p>A gauge tells nothing of a storm with anything missing around it or with less than 2 mm, and a storm is not compared where the
 * likeness is below 0.6 at every shift: showers that others did not see.
 *
 * <p>Storms move: between gauges 10 km apart at 10 m/s rain comes a quarter of an hour later, now here and now there. So one storm
 * proves nothing. {@link #shiftedStorms} asks for a row of storms that are shifted alike.
 *
 * <p>What this is not: a proof. Of two gauges nobody can tell whose clock is wrong, and storms that always come from one side shift all
 * of them a little.
 *
 * <p>Source: cross-correlation is common practice; limits chosen here.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class GaugeClocks {
    /** Of these two nobody can tell which one is wrong. */
    private static final int FEWEST = 2;

    private static final Duration WIDEST = Duration.ofHours(6);
    private static final Duration SHORTEST_CELL = Duration.ofMinutes(10);
    private static final Duration LONGEST_STEP = Duration.ofHours(1);

    private static final Duration LONGEST_STORM = Duration.ofDays(100);

    /** Chosen here: ten tips of most buckets. */
    private static final double LEAST_MM = 2;

    private static final double LEAST_LIKENESS = 0.6;

    private final List<String> names;
    private final Duration cell;
    private final List<StormCells> storms;
    private final List<String> aside;

    private GaugeClocks(List<String> names, Duration cell, List<StormCells> storms, List<String> aside) {
        this.names = names;
        this.cell = cell;
        this.storms = storms;
        this.aside = aside;
    }

    /**
     * Returns the comparison of the clocks of gauges.
     *
     * @param rainMm depth in each step, mm, by name of gauge; 0 or greater, NaN for missing; at least two gauges, each with its own
     *     record and steps of at most 1 h
     * @param storms when it rained, such as the storms of all gauges {@linkplain Interval#joined joined}; longer than 0, at most 100 d
     * @return the comparison, gauges by name
     * @throws IllegalArgumentException if there are fewer than two gauges, a step is longer than 1 h, a depth is negative or a storm
     *     out of range
     */
    public static GaugeClocks of(Map<String, RegularSeries> rainMm, List<Interval> storms) {
        Objects.requireNonNull(storms, "storms");
        Require.atLeast("gauges", rainMm.size(), FEWEST);
        TreeMap<String, RegularSeries> sorted = new TreeMap<>(rainMm);
        sorted.forEach((name, series) -> {
            Rain.requireNonNegative("rainMm of " + name, series, "mm");
            if (series.step().compareTo(LONGEST_STEP) > 0) {
                throw new IllegalArgumentException("step of " + name + " must be at most 1 h to tell of a clock, was "
                        + Text.exactDuration(series.step()));
            }
        });
        List<RegularSeries> gauges = List.copyOf(sorted.values());
        List<Duration> steps =
                new ArrayList<>(gauges.stream().map(RegularSeries::step).toList());
        steps.add(SHORTEST_CELL);
        Duration cell = Collections.max(steps);
        List<StormCells> cells = new ArrayList<>();
        for (Interval storm : List.copyOf(storms)) {
            if (storm.isEmpty() || storm.duration().compareTo(LONGEST_STORM) > 0) {
                throw new IllegalArgumentException(
                        "storms must be longer than 0 and at most " + Text.duration(LONGEST_STORM) + ", was " + storm);
            }
            cells.add(StormCells.of(gauges, storm, cell, WIDEST, LEAST_MM));
        }
        return new GaugeClocks(List.copyOf(sorted.keySet()), cell, List.copyOf(cells), List.of());
    }

    /**
     * Returns the same comparison with the sums freed of gauges whose clock is off: those with more than half of the greatest shift
     * over a row of storms are set aside, and the rest are compared anew, as long as more than two are left. Without it a gauge that is
     * an hour late can make good ones look half an hour early. A gauge that is set aside is still set against the others.
     *
     * @param tolerance shift from which a storm counts as shifted; greater than 0, at most 6 h
     * @return the comparison
     * @throws IllegalArgumentException if {@code tolerance} is out of range
     */
    public GaugeClocks settingAside(Duration tolerance) {
        requireTolerance(tolerance);
        GaugeClocks settled = this;
        while (names.size() - settled.aside.size() > FEWEST) {
            List<String> farthest = settled.farthest(tolerance);
            if (farthest.isEmpty()) {
                break;
            }
            List<String> more = new ArrayList<>(settled.aside);
            farthest.stream().limit(names.size() - FEWEST - more.size()).forEach(more::add);
            settled = new GaugeClocks(names, cell, storms, List.copyOf(more));
        }
        return settled;
    }

    /** Halving the greatest shift bounds the rounds, however many gauges disagree. */
    private List<String> farthest(Duration tolerance) {
        Map<String, Duration> shifts = new TreeMap<>();
        for (String name : names) {
            if (!aside.contains(name)) {
                shiftedStorms(name, tolerance)
                        .ifPresent(found -> shifts.put(name, found.shift().abs()));
            }
        }
        Duration half = shifts.isEmpty()
                ? Duration.ZERO
                : Collections.max(shifts.values()).dividedBy(2);
        return shifts.entrySet().stream()
                .filter(entry -> entry.getValue().compareTo(half) > 0)
                .sorted(Map.Entry.<String, Duration>comparingByValue().reversed())
                .map(Map.Entry::getKey)
                .toList();
    }

    /**
     * Returns the gauges that are left out of the sums.
     *
     * @return names, the farthest off first; empty unless {@link #settingAside} found one
     */
    public List<String> setAside() {
        return aside;
    }

    /**
     * Returns how long a cell of the comparison is.
     *
     * @return the duration; shifts are whole multiples of it
     */
    public Duration cell() {
        return cell;
    }

    /**
     * Returns how much later one gauge shows each storm.
     *
     * @param gauge name of the gauge
     * @return the shifts of the storms that can be compared, by time
     * @throws IllegalArgumentException if there is no such gauge
     */
    public List<StormShift> shifts(String gauge) {
        Objects.requireNonNull(gauge, "gauge");
        int at = names.indexOf(gauge);
        if (at < 0) {
            throw new IllegalArgumentException("gauge must be one of " + names + ", was \"" + gauge + "\"");
        }
        return storms.stream()
                .flatMap(storm -> storm.shift(at, other -> !aside.contains(names.get(other)), WIDEST).stream())
                .filter(shift -> shift.likeness() >= LEAST_LIKENESS)
                .sorted(Comparator.comparing(shift -> shift.storm().start()))
                .toList();
    }

    /**
     * Returns the row of storms that one gauge shows later, or earlier, than the others: the one in which shifted storms outnumber the
     * rest most, by at least four, if as many as three in four of the shifted ones lie within the tolerance of their middle.
     *
     * @param gauge name of the gauge
     * @param tolerance shift from which a storm counts as shifted; greater than 0, at most 6 h. 25 min leaves moving storms alone
     *     and sees a clock that is half an hour off
     * @return the storms; empty if there is no such row
     * @throws IllegalArgumentException if there is no such gauge, or {@code tolerance} is out of range
     */
    public Optional<ShiftedStorms> shiftedStorms(String gauge, Duration tolerance) {
        requireTolerance(tolerance);
        return ShiftedStorms.in(shifts(gauge), tolerance);
    }

    private static void requireTolerance(Duration tolerance) {
        if (tolerance.isNegative() || tolerance.isZero() || tolerance.compareTo(WIDEST) > 0) {
            throw new IllegalArgumentException(
                    "tolerance must be greater than 0 and at most 6 h, was " + Text.exactDuration(tolerance));
        }
    }

    @Override
    public String toString() {
        return "GaugeClocks" + names + " in " + storms.size() + " storms, cells of " + Text.duration(cell)
                + (aside.isEmpty() ? "" : ", set aside " + aside);
    }
}
