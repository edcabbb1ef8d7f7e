package dev.runnel.rainfall.frequency;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.time.Month;
import java.time.MonthDay;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * How a record is cut into years, and how much of a year must have been measured for its maximum to count. Immutable and
 * thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class YearRule {
    private static final double USUAL_COVERAGE = 0.8;
    private static final int MONTHS_OF_YEAR = 12;
    private static final Duration ANY_GAP = Duration.ofDays(366);

    private final MonthDay firstDay;
    private final ZoneId zone;
    private final double minimumCoverage;
    private final Duration longestGap;
    private final boolean isNamedByEnd;
    private final int months;

    private YearRule(
            MonthDay firstDay,
            ZoneId zone,
            double minimumCoverage,
            Duration longestGap,
            boolean isNamedByEnd,
            int months) {
        this.firstDay = Objects.requireNonNull(firstDay, "firstDay");
        this.zone = Objects.requireNonNull(zone, "zone");
        this.minimumCoverage = minimumCoverage;
        this.longestGap = longestGap;
        this.isNamedByEnd = isNamedByEnd;
        this.months = months;
    }

    /**
     * Returns calendar years in UTC, of which four fifths must have been measured (common practice).
     *
     * @return the rule
     */
    public static YearRule calendar() {
        return startingIn(Month.JANUARY);
    }

    /**
     * Returns years that start on the first of a month in UTC, of which four fifths must have been measured. A water
     * year starts in the dry season, so that no storm is cut in two.
     *
     * @param month first month of the year
     * @return the rule
     */
    public static YearRule startingIn(Month month) {
        return new YearRule(MonthDay.of(month, 1), ZoneOffset.UTC, USUAL_COVERAGE, ANY_GAP, false, MONTHS_OF_YEAR);
    }

    /**
     * Returns a season of each year, in UTC, of which four fifths must have been measured: only what falls in it counts, for the
     * maxima, for the coverage and for the longest gap. A season may run over the turn of the year.
     *
     * @param first first month
     * @param last last month, included; that before {@code first} for a whole year
     * @return the rule
     */
    public static YearRule season(Month first, Month last) {
        int months = Math.floorMod(last.getValue() - first.getValue(), MONTHS_OF_YEAR) + 1;
        return new YearRule(MonthDay.of(first, 1), ZoneOffset.UTC, USUAL_COVERAGE, ANY_GAP, false, months);
    }

    /**
     * Returns the rule with another time zone.
     *
     * @param zone zone in whose midnight a year starts
     * @return the new rule
     */
    public YearRule withZone(ZoneId zone) {
        return new YearRule(firstDay, zone, minimumCoverage, longestGap, isNamedByEnd, months);
    }

    /**
     * Returns the rule with another least coverage.
     *
     * @param minimumCoverage least share of the steps of a year that are not missing; in [0, 1]. A year without any never
     *     counts
     * @return the new rule
     * @throws IllegalArgumentException if it is outside [0, 1] or NaN
     */
    public YearRule withMinimumCoverage(double minimumCoverage) {
        return new YearRule(
                firstDay,
                zone,
                Require.inRange("minimumCoverage", minimumCoverage, 0, 1, ""),
                longestGap,
                isNamedByEnd,
                months);
    }

    /**
     * Returns the rule that also refuses a year with a longer gap: a fifth of a year lost in one piece may be the season
     * of the heaviest storms, the same share in scattered hours hardly loses the maximum.
     *
     * @param longestGap longest time without a measured step; 0 or longer
     * @return the new rule
     * @throws IllegalArgumentException if it is negative
     */
    public YearRule withLongestGap(Duration longestGap) {
        EpochNanos.nonNegative("longestGap", longestGap);
        return new YearRule(firstDay, zone, minimumCoverage, longestGap, isNamedByEnd, months);
    }

    /**
     * Returns the rule with years named by their end: the calendar year in which their last day lies, as the US Geological Survey
     * names water years. Unless said, a year has the name of the calendar year in which it starts.
     *
     * @return the new rule
     */
    public YearRule withNamesByEnd() {
        return new YearRule(firstDay, zone, minimumCoverage, longestGap, true, months);
    }

    /**
     * Returns how years are named.
     *
     * @return {@code years named by their start} or {@code years named by their end}; empty for calendar years, which have but one name
     */
    public String namingText() {
        return isCalendar() ? "" : "years named by their " + (isNamedByEnd ? "end" : "start");
    }

    /** Tells whether start and end lie in one calendar year, so that there is but one name. */
    private boolean isCalendar() {
        return firstDay.getMonthValue() + months <= MONTHS_OF_YEAR + 1;
    }

    /**
     * Returns the least share of a year that must have been measured.
     *
     * @return share, in [0, 1]
     */
    public double minimumCoverage() {
        return minimumCoverage;
    }

    /**
     * Returns the longest gap that a year may have.
     *
     * @return the time; 366 days, which no year exceeds, unless {@link #withLongestGap} was asked for
     */
    public Duration longestGap() {
        return longestGap;
    }

    /** Returns the share of a year that was measured; the slice is the part of a record in that year. */
    double coverage(RegularSeries slice, int year) {
        double steps = interval(year).hours() / Rain.hours(slice.step());
        return Math.min(1, (slice.size() - slice.missing()) / steps);
    }

    /** Returns the longest time of a year without a measured step. */
    Duration longestGap(RegularSeries slice, int year) {
        Interval whole = interval(year);
        Duration longest = Duration.ZERO;
        Instant measuredUntil = whole.start();
        for (int i = 0; i < slice.size(); i++) {
            if (!Double.isNaN(slice.value(i))) {
                longest = longer(longest, measuredUntil, slice.time(i));
                measuredUntil = slice.time(i).plus(slice.step());
            }
        }
        return longer(longest, measuredUntil, whole.end());
    }

    private static Duration longer(Duration longest, Instant from, Instant to) {
        Duration gap = Duration.between(from, to);
        return gap.compareTo(longest) > 0 ? gap : longest;
    }

    /**
     * Returns the time of one year.
     *
     * @param year name of the year: the calendar year in which it starts, or in which its last day lies, as the rule names them
     * @return from its first day to the first day of the next; of a season to its end
     */
    public Interval interval(int year) {
        int start = isNamedByEnd && !isCalendar() ? year - 1 : year;
        return Interval.of(
                firstDay.atYear(start).atStartOfDay(zone).toInstant(),
                firstDay.atYear(start).plusMonths(months).atStartOfDay(zone).toInstant());
    }

    @Override
    public String toString() {
        return "YearRule[from " + firstDay + " in " + zone
                + (months == MONTHS_OF_YEAR ? "" : ", " + months + (months == 1 ? " month" : " months"))
                + (isCalendar() ? "" : ", " + namingText())
                + ", coverage at least " + Text.significant(minimumCoverage, 6)
                + (longestGap.equals(ANY_GAP) ? "]" : ", no gap longer than " + Text.duration(longestGap) + "]");
    }
}
