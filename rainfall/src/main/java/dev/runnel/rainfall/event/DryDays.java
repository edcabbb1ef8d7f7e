package dev.runnel.rainfall.event;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.SortedSet;
import java.util.TreeSet;
import org.apiguardian.api.API;

/**
 * The days of a rain record, sorted into dry, not dry and unknown by a {@link DryDayRule}. Immutable and thread-safe.
 *
 * <p>Days are those of a time zone, 23 or 25 hours long when clocks change. A step counts for the day in which it
 * starts. A day with missing rain is not dry if what was recorded is already too much, and unknown otherwise; so are days
 * whose run or days before are unknown or lie outside the record. An unknown day is never called dry.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DryDays {
    private final DryDayRule rule;
    private final SortedSet<LocalDate> dry;
    private final SortedSet<LocalDate> wet;
    private final SortedSet<LocalDate> unknown;

    private DryDays(DryDayRule rule, SortedSet<LocalDate> dry, SortedSet<LocalDate> wet, SortedSet<LocalDate> unknown) {
        this.rule = rule;
        this.dry = Collections.unmodifiableSortedSet(dry);
        this.wet = Collections.unmodifiableSortedSet(wet);
        this.unknown = Collections.unmodifiableSortedSet(unknown);
    }

    /**
     * Sorts the days of a record.
     *
     * @param rule what makes a day dry
     * @param rain depth in each step, mm; 0 or greater, NaN for missing
     * @param zone time zone in which days begin and end
     * @return the days
     * @throws IllegalArgumentException if a depth is negative or a step longer than a day
     */
    public static DryDays of(DryDayRule rule, RegularSeries rain, ZoneId zone) {
        Objects.requireNonNull(zone, "zone");
        Rain.requireNonNegative("rain", rain, "mm");
        if (rain.step().compareTo(Duration.ofDays(1)) > 0) {
            throw new IllegalArgumentException(
                    "step of rain must be at most a day, was " + Text.exactDuration(rain.step()));
        }
        List<DayOfRain> days = DayOfRain.of(rain, zone, rule.missingAllowed());
        Verdict[] windows = windows(rule, days);
        TreeSet<LocalDate> dry = new TreeSet<>();
        TreeSet<LocalDate> wet = new TreeSet<>();
        TreeSet<LocalDate> unknown = new TreeSet<>();
        for (int day = 0; day < days.size(); day++) {
            LocalDate date = days.get(day).date();
            switch (best(windows, day, rule.run())) {
                case DRY -> dry.add(date);
                case WET -> wet.add(date);
                default -> unknown.add(date);
            }
        }
        return new DryDays(rule, dry, wet, unknown);
    }

    /** In this order the worst of several is the greatest, and the best the least. */
    enum Verdict {
        DRY,
        UNKNOWN,
        WET
    }

    /** Verdict on each run of days, by its first day, which may lie before the first of the record. */
    private static Verdict[] windows(DryDayRule rule, List<DayOfRain> days) {
        Verdict[] windows = new Verdict[days.size() + rule.run() - 1];
        for (int i = 0; i < windows.length; i++) {
            int first = i - rule.run() + 1;
            Verdict inRun = worst(days, first, first + rule.run(), rule.maximumMm());
            Verdict before = worst(days, first - rule.daysBefore(), first, rule.maximumBeforeMm());
            windows[i] = inRun.compareTo(before) >= 0 ? inRun : before;
        }
        return windows;
    }

    private static Verdict worst(List<DayOfRain> days, int from, int to, double maximumMm) {
        Verdict worst = Verdict.DRY;
        for (int i = from; i < to; i++) {
            Verdict verdict =
                    i < 0 || i >= days.size() ? Verdict.UNKNOWN : days.get(i).verdict(maximumMm);
            if (verdict.compareTo(worst) > 0) {
                worst = verdict;
            }
        }
        return worst;
    }

    private static Verdict best(Verdict[] windows, int day, int run) {
        Verdict best = Verdict.WET;
        for (int i = day; i < day + run; i++) {
            if (windows[i].compareTo(best) < 0) {
                best = windows[i];
            }
        }
        return best;
    }

    /**
     * Returns the dry days.
     *
     * @return dates in order; cannot be changed
     */
    public SortedSet<LocalDate> dates() {
        return dry;
    }

    /**
     * Returns the days that are not dry by the rule: those with too much rain, and those without that lie too near one.
     *
     * @return dates in order; cannot be changed
     */
    public SortedSet<LocalDate> notDry() {
        return wet;
    }

    /**
     * Returns the days of which too little is known.
     *
     * @return dates in order; cannot be changed
     */
    public SortedSet<LocalDate> unknown() {
        return unknown;
    }

    /**
     * Returns the rule.
     *
     * @return what made a day dry
     */
    public DryDayRule rule() {
        return rule;
    }

    @Override
    public String toString() {
        return "DryDays[" + dry.size() + " dry, " + wet.size() + " not dry, " + unknown.size() + " unknown; " + rule
                + "]";
    }
}
