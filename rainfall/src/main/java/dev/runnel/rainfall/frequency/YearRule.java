package dev.runnel.rainfall.frequency;

import dev.runnel.base.Require;
import dev.runnel.base.Text;
import dev.runnel.timeseries.Interval;
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

    private final MonthDay firstDay;
    private final ZoneId zone;
    private final double minimumCoverage;

    private YearRule(MonthDay firstDay, ZoneId zone, double minimumCoverage) {
        this.firstDay = Objects.requireNonNull(firstDay, "firstDay");
        this.zone = Objects.requireNonNull(zone, "zone");
        this.minimumCoverage = minimumCoverage;
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
        return new YearRule(MonthDay.of(month, 1), ZoneOffset.UTC, USUAL_COVERAGE);
    }

    /**
     * Returns the rule with another time zone.
     *
     * @param zone zone in whose midnight a year starts
     * @return the new rule
     */
    public YearRule withZone(ZoneId zone) {
        return new YearRule(firstDay, zone, minimumCoverage);
    }

    /**
     * Returns the rule with another least coverage.
     *
     * @param minimumCoverage least share of the steps of a year that are not missing; in [0, 1]
     * @return the new rule
     * @throws IllegalArgumentException if it is outside [0, 1] or NaN
     */
    public YearRule withMinimumCoverage(double minimumCoverage) {
        return new YearRule(firstDay, zone, Require.inRange("minimumCoverage", minimumCoverage, 0, 1, ""));
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
     * Returns the time of one year.
     *
     * @param year calendar year in which it starts
     * @return from its first day to the first day of the next
     */
    public Interval interval(int year) {
        return Interval.of(
                firstDay.atYear(year).atStartOfDay(zone).toInstant(),
                firstDay.atYear(year + 1).atStartOfDay(zone).toInstant());
    }

    @Override
    public String toString() {
        return "YearRule[from " + firstDay + " in " + zone + ", coverage at least " + Text.number(minimumCoverage)
                + "]";
    }
}
