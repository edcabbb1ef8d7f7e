package dev.runnel.hydraulics.evidence;

import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.apiguardian.api.API;

/**
 * Looks for a drift in the daily evidence of a monitor over a window of days. Immutable and thread-safe.
 *
 * <p>Level, velocity and flow each get a {@link Trend}. A trend counts as up or down if its p-value is at most the
 * significance and its line changes by at least the minimum change; else as no drift found. The combination of the three
 * gives the {@link DriftPattern}. Days on which the velocity repeated one value for 95 % of the readings are listed and left
 * out of the trends. The defaults: significance 0.05 (common practice); minimum change 10 %, minimum coverage
 * 75 % of the hours and at least 7 days (chosen here, not published).
 *
 * <p>What this is not: a test at the stated significance for the combination. Three tests are made at once, the days are
 * not quite independent, and a window chosen because the plot looked odd is not a fair sample.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DriftRule {
    /** Share of equal velocities from which a day counts as frozen; chosen here. */
    private static final double FROZEN_SHARE = 0.95;

    /** Largest p-value of a trend that counts, unless given; common practice. */
    private static final double USUAL_SIGNIFICANCE = 0.05;

    /** Smallest relative change that counts, unless given; chosen here. */
    private static final double USUAL_CHANGE = 0.1;

    /** Share of the hours of a day that counts, unless given; chosen here. */
    private static final double USUAL_COVERAGE = 0.75;

    /** Days needed to say anything, unless given: every day of a week once; chosen here. */
    private static final int USUAL_DAYS = 7;

    /** The search for the onset fits three figures. */
    private static final int LEAST_MINIMUM_DAYS = 5;

    /** A line is prolonged to the soffit by at most a year, which no pipe keeps to; chosen here. */
    private static final int LONGEST_PROJECTION_DAYS = 365;

    /** The slowest rise the record allows may reach the soffit after at most ten years; chosen here. */
    private static final int LATEST_PROJECTION_DAYS = 3650;

    private final double soffit;
    private final double significance;
    private final double minimumChange;
    private final double minimumCoverage;
    private final int minimumDays;

    private DriftRule(
            double soffit, double significance, double minimumChange, double minimumCoverage, int minimumDays) {
        this.soffit = soffit;
        this.significance = significance;
        this.minimumChange = minimumChange;
        this.minimumCoverage = minimumCoverage;
        this.minimumDays = minimumDays;
    }

    /**
     * Returns the rule for a monitor with significance 0.05, minimum change 10 %, minimum coverage 75 % and 7 days.
     *
     * @param monitor the monitor, for its soffit
     * @return the rule
     */
    public static DriftRule of(PipeMonitor monitor) {
        return new DriftRule(monitor.soffit(), USUAL_SIGNIFICANCE, USUAL_CHANGE, USUAL_COVERAGE, USUAL_DAYS);
    }

    /**
     * Returns this rule with another significance.
     *
     * @param significance largest p-value of a trend that counts; in [1e-6, 0.5]
     * @return the rule
     * @throws IllegalArgumentException if it is outside that range or NaN
     */
    public DriftRule withSignificance(double significance) {
        Require.inRange("significance", significance, 1e-6, 0.5, "");
        return new DriftRule(soffit, significance, minimumChange, minimumCoverage, minimumDays);
    }

    /**
     * Returns this rule with another minimum change.
     *
     * @param minimumChange smallest relative change over the window that counts, for example 0.1; in [0, 10]
     * @return the rule
     * @throws IllegalArgumentException if it is outside that range or NaN
     */
    public DriftRule withMinimumChange(double minimumChange) {
        Require.inRange("minimumChange", minimumChange, 0, 10, "");
        return new DriftRule(soffit, significance, minimumChange, minimumCoverage, minimumDays);
    }

    /**
     * Returns this rule with another minimum coverage.
     *
     * @param minimumCoverage share of the hours of a day that must have readings for the day to count; in [0, 1]
     * @return the rule
     * @throws IllegalArgumentException if it is outside that range or NaN
     */
    public DriftRule withMinimumCoverage(double minimumCoverage) {
        Require.inRange("minimumCoverage", minimumCoverage, 0, 1, "");
        return new DriftRule(soffit, significance, minimumChange, minimumCoverage, minimumDays);
    }

    /**
     * Returns this rule with another least number of days.
     *
     * @param minimumDays days needed to say anything; at least 5
     * @return the rule
     * @throws IllegalArgumentException if it is less than 5
     */
    public DriftRule withMinimumDays(int minimumDays) {
        Require.atLeast("minimumDays", minimumDays, LEAST_MINIMUM_DAYS);
        return new DriftRule(soffit, significance, minimumChange, minimumCoverage, minimumDays);
    }

    /**
     * Returns the evidence of a window.
     *
     * @param days daily evidence, dates strictly increasing, as {@link DailyEvidence#of} gives it
     * @param from first date of the window
     * @param to last date of the window, inclusive; not before {@code from}
     * @return the evidence
     * @throws IllegalArgumentException if the window ends before it begins or the dates do not increase
     */
    public DriftEvidence evidence(List<DailyEvidence> days, LocalDate from, LocalDate to) {
        Objects.requireNonNull(from, "from");
        if (to.isBefore(from)) {
            throw new IllegalArgumentException("to must not be before from " + from + ", was " + to);
        }
        List<DailyEvidence> used = new ArrayList<>();
        List<LocalDate> frozen = new ArrayList<>();
        int leftOut = 0;
        for (int i = 0; i < days.size(); i++) {
            DailyEvidence day = days.get(i);
            if (i > 0 && !day.date().isAfter(days.get(i - 1).date())) {
                throw new IllegalArgumentException("days must have increasing dates, was " + day.date() + " after "
                        + days.get(i - 1).date());
            }
            if (day.date().isBefore(from) || day.date().isAfter(to)) {
                continue;
            }
            if (day.coverage() < minimumCoverage) {
                leftOut++;
            } else if (day.unchangedVelocityShare() >= FROZEN_SHARE) {
                frozen.add(day.date());
            } else {
                used.add(day);
            }
        }
        return used.size() < minimumDays
                ? tooFew(from, to, used.size(), leftOut, frozen)
                : evidence(used, from, to, leftOut, frozen);
    }

    private static DriftEvidence tooFew(LocalDate from, LocalDate to, int used, int leftOut, List<LocalDate> frozen) {
        DriftPattern pattern = frozen.isEmpty() ? DriftPattern.TOO_FEW_DAYS : DriftPattern.VELOCITY_FROZEN;
        return new DriftEvidence(
                pattern, from, to, used, leftOut, frozen, Optional.empty(), Optional.empty(), Optional.empty());
    }

    private DriftEvidence evidence(
            List<DailyEvidence> used, LocalDate from, LocalDate to, int leftOut, List<LocalDate> frozen) {
        double[] numbers = numbers(used);
        double[] levels = values(used, DailyEvidence::medianLevel);
        double[] velocities = values(used, DailyEvidence::medianVelocity);
        double[] flows = values(used, DailyEvidence::meanFlow);
        Drifts drifts = new Drifts(
                Trend.of(numbers, levels),
                Trend.of(numbers, velocities),
                Trend.of(numbers, flows),
                Trend.of(numbers, values(used, DailyEvidence::medianRatio)));
        Direction level = direction(drifts.level());
        Direction velocity = direction(drifts.velocity());
        Direction flow = direction(drifts.flow());
        DriftPattern pattern = DriftPattern.of(level, velocity, flow);
        if (pattern == DriftPattern.NONE && !frozen.isEmpty()) {
            pattern = DriftPattern.VELOCITY_FROZEN;
        }
        Optional<OnsetSearch> search = Optional.empty();
        if (level != Direction.NONE) {
            search = Optional.of(new OnsetSearch(numbers, levels));
        } else if (velocity != Direction.NONE) {
            search = Optional.of(new OnsetSearch(numbers, velocities));
        } else if (flow != Direction.NONE) {
            search = Optional.of(new OnsetSearch(numbers, flows));
        }
        Optional<SoffitProjection> projection = Optional.empty();
        if (level == Direction.UP) {
            int start = search.orElseThrow().best;
            List<DailyEvidence> rising =
                    used.size() - start >= LEAST_MINIMUM_DAYS ? used.subList(start, used.size()) : used;
            projection = projection(rising);
        }
        return new DriftEvidence(
                pattern,
                from,
                to,
                used.size(),
                leftOut,
                frozen,
                Optional.of(drifts),
                search.map(found -> new Onset(
                        used.get(found.best).date(),
                        used.get(found.earliest).date(),
                        used.get(found.latest).date())),
                projection);
    }

    private Optional<SoffitProjection> projection(List<DailyEvidence> rising) {
        Trend trend = Trend.of(numbers(rising), values(rising, DailyEvidence::medianLevel));
        double rise = soffit - trend.last();
        // An open section has no soffit; a level above it has arrived; a slope that may be 0 arrives nowhere.
        if (!(rise > 0 && trend.lowerSlope() > 0)
                || rise / trend.slope() > LONGEST_PROJECTION_DAYS
                || rise / trend.lowerSlope() > LATEST_PROJECTION_DAYS) {
            return Optional.empty();
        }
        LocalDate last = rising.get(rising.size() - 1).date();
        return Optional.of(new SoffitProjection(
                last.plusDays((long) Math.ceil(rise / trend.slope())),
                last.plusDays((long) Math.ceil(rise / trend.upperSlope())),
                last.plusDays((long) Math.ceil(rise / trend.lowerSlope()))));
    }

    private Direction direction(Trend trend) {
        return trend.direction(significance, minimumChange);
    }

    private static double[] numbers(List<DailyEvidence> days) {
        long first = days.get(0).date().toEpochDay();
        return values(days, day -> day.date().toEpochDay() - first);
    }

    private static double[] values(List<DailyEvidence> days, ToDoubleFunction<DailyEvidence> figure) {
        return days.stream().mapToDouble(figure).toArray();
    }

    @Override
    public String toString() {
        return "DriftRule[p up to " + Text.significant(significance, 6) + ", change of "
                + Text.significant(100 * minimumChange, 6)
                + " % or more, days with " + Text.significant(100 * minimumCoverage, 6) + " % of their hours, at least "
                + minimumDays + " of them]";
    }
}
