package dev.runnel.rainfall.event;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.rainfall.internal.Share;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The rain of each day that a record touches. A step that lies in two days is divided by time, rain taken as steady in it, so that the
 * days add up to the record. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DailyRain {
    private final RainDay rule;
    private final List<Day> days;

    private DailyRain(RainDay rule, List<Day> days) {
        this.rule = rule;
        this.days = List.copyOf(days);
    }

    /**
     * The rain of one day.
     *
     * @param date name of the day
     * @param depthMm rain recorded in it, mm
     * @param unknown time of the day of which the record says nothing
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Day(LocalDate date, double depthMm, Duration unknown) {
        /**
         * Checks that nothing is missing.
         *
         * @param date name of the day
         * @param depthMm rain recorded in it, mm
         * @param unknown time of the day of which the record says nothing
         */
        public Day {
            Objects.requireNonNull(date, "date");
            Objects.requireNonNull(unknown, "unknown");
        }

        /**
         * Tells whether all of the day was recorded.
         *
         * @return true if nothing is unknown
         */
        public boolean isComplete() {
            return unknown.isZero();
        }

        @Override
        public String toString() {
            return date + ": " + (isComplete() ? "" : "at least ") + Text.significant(depthMm, 4) + " mm"
                    + (isComplete() ? "" : ", " + Text.duration(unknown) + " not known");
        }
    }

    /**
     * Returns the rain of each day.
     *
     * @param rain depth in each step, mm; 0 or greater, NaN for missing
     * @param rule when a day begins
     * @return one day for each that the record touches, in order
     * @throws IllegalArgumentException if a depth is negative
     */
    public static DailyRain of(RegularSeries rain, RainDay rule) {
        Objects.requireNonNull(rule, "rule");
        Rain.requireNonNegative("rain", rain, "mm");
        List<Day> days = new ArrayList<>();
        if (!rain.isEmpty()) {
            LocalDate last = rule.dateOf(rain.end().minusNanos(1));
            for (LocalDate date = rule.dateOf(rain.start()); !date.isAfter(last); date = date.plusDays(1)) {
                Share share = Share.of(rain, rule.interval(date));
                days.add(new Day(date, share.sum(), share.unknown()));
            }
        }
        return new DailyRain(rule, days);
    }

    /**
     * Returns the days.
     *
     * @return in order of date
     */
    public List<Day> days() {
        return days;
    }

    /**
     * Returns when a day begins.
     *
     * @return the rule
     */
    public RainDay rule() {
        return rule;
    }

    /**
     * Returns the rain of all days.
     *
     * @return depth, mm; that of the record
     */
    public double depthMm() {
        CompensatedSum sum = new CompensatedSum();
        days.forEach(day -> sum.add(day.depthMm()));
        return sum.value();
    }

    @Override
    public String toString() {
        return "DailyRain[" + days.size() + " days, " + Text.significant(depthMm(), 6) + " mm, "
                + days.stream().filter(day -> !day.isComplete()).count() + " not complete; " + rule + "]";
    }
}
