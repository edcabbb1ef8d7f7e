package dev.runnel.rainfall.event;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.time.Duration;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What makes a day dry. Immutable and thread-safe.
 *
 * <p>A day is dry if it belongs to a run of r consecutive days with no more than a given depth on each, before which lie
 * n days with no more than another depth on each. Depths within 1e-9 mm of a limit count as equal to it.
 *
 * <p>Definitions differ between countries and offices, and with them the dry weather flow that follows; name the rule
 * beside the result.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DryDayRule {
    /** Ten years: no rule looks further back (chosen here). */
    private static final int MOST_DAYS = 3660;

    private final double maximumMm;
    private final int run;
    private final int daysBefore;
    private final double maximumBeforeMm;
    private final Duration missingAllowed;

    private DryDayRule(double maximumMm, int run, int daysBefore, double maximumBeforeMm, Duration missingAllowed) {
        this.maximumMm = maximumMm;
        this.run = run;
        this.daysBefore = daysBefore;
        this.maximumBeforeMm = maximumBeforeMm;
        this.missingAllowed = missingAllowed;
    }

    /**
     * Returns the rule that looks at the day alone.
     *
     * @param maximumMm greatest depth on a dry day, mm; 0 or greater
     * @return the rule
     * @throws IllegalArgumentException if the depth is negative, infinite or NaN
     */
    public static DryDayRule of(double maximumMm) {
        return new DryDayRule(Require.nonNegative("maximumMm", maximumMm, "mm"), 1, 0, 0, Duration.ZERO);
    }

    /**
     * Returns the older British rule for dry weather flow: seven consecutive days without rain, after seven days with no
     * more than 0.25 mm on any of them. Source: Institute of Water Pollution Control (1970), Glossary, as quoted by
     * UKWIR (2005), report 05/WW/21/6. It also leaves out public holidays, which is up to the caller. In wet years it
     * may find no day at all.
     *
     * @return the rule
     */
    public static DryDayRule sevenDaysAfterSeven() {
        return of(0).withRun(7).withDaysBefore(7, 0.25);
    }

    /**
     * Returns the rule for diurnal profiles that leaves out days above 2 mm and the two days after them. Source:
     * Wellington Water (2020), Wastewater modelling specification, draft 11.
     *
     * @return the rule
     */
    public static DryDayRule twoMillimetresAndTwoDays() {
        return of(2).withDaysBefore(2, 2);
    }

    /**
     * Returns the same rule that asks for a run of dry days.
     *
     * @param days least number of consecutive days; 1 to 3660
     * @return the rule
     * @throws IllegalArgumentException if it is out of range
     */
    public DryDayRule withRun(int days) {
        return new DryDayRule(maximumMm, days("days", days, 1), daysBefore, maximumBeforeMm, missingAllowed);
    }

    /**
     * Returns the same rule that also looks at the days before the run.
     *
     * @param days number of days; 0 to 3660
     * @param maximumEachMm greatest depth on each of them, mm; 0 or greater
     * @return the rule
     * @throws IllegalArgumentException if an argument is out of range
     */
    public DryDayRule withDaysBefore(int days, double maximumEachMm) {
        return new DryDayRule(
                maximumMm,
                run,
                days("days", days, 0),
                Require.nonNegative("maximumEachMm", maximumEachMm, "mm"),
                missingAllowed);
    }

    /**
     * Returns the same rule that lets some of a day's rain record be missing. Without this, none may be.
     *
     * @param time longest missing time on a day whose depth still counts as known; 0 or longer
     * @return the rule
     * @throws IllegalArgumentException if it is negative
     */
    public DryDayRule withMissingAllowed(Duration time) {
        EpochNanos.nonNegative("time", time);
        return new DryDayRule(maximumMm, run, daysBefore, maximumBeforeMm, time);
    }

    private static int days(String name, int days, int least) {
        if (days < least || days > MOST_DAYS) {
            throw new IllegalArgumentException(name + " must be in [" + least + ", " + MOST_DAYS + "], was " + days);
        }
        return days;
    }

    double maximumMm() {
        return maximumMm;
    }

    int run() {
        return run;
    }

    int daysBefore() {
        return daysBefore;
    }

    double maximumBeforeMm() {
        return maximumBeforeMm;
    }

    Duration missingAllowed() {
        return missingAllowed;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DryDayRule that
                && Double.compare(maximumMm, that.maximumMm) == 0
                && run == that.run
                && daysBefore == that.daysBefore
                && Double.compare(maximumBeforeMm, that.maximumBeforeMm) == 0
                && missingAllowed.equals(that.missingAllowed);
    }

    @Override
    public int hashCode() {
        return Objects.hash(maximumMm, run, daysBefore, maximumBeforeMm, missingAllowed);
    }

    @Override
    public String toString() {
        return "DryDayRule[at most " + Text.significant(maximumMm, 6) + " mm a day"
                + (run == 1 ? "" : " on " + run + " days running")
                + (daysBefore == 0
                        ? ""
                        : ", at most " + Text.significant(maximumBeforeMm, 6) + " mm on each of " + daysBefore
                                + " days before")
                + "]";
    }
}
