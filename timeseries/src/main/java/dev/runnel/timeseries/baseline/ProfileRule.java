package dev.runnel.timeseries.baseline;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.LocalDate;
import java.util.Objects;
import java.util.Set;
import org.apiguardian.api.API;

/**
 * How a {@link DiurnalProfile} is made. Immutable and thread-safe.
 *
 * <p>The standard is slots of 15 minutes, weekdays and weekends apart, no holidays, and at least three days for a slot
 * to count (common practice).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ProfileRule {
    private static final Duration DAY = Duration.ofDays(1);
    private static final ProfileRule STANDARD = new ProfileRule(Duration.ofMinutes(15), WeekSplit.WEEKEND, 3, Set.of());

    private final Duration slot;
    private final WeekSplit split;
    private final int minimumDays;
    private final Set<LocalDate> holidays;

    private ProfileRule(Duration slot, WeekSplit split, int minimumDays, Set<LocalDate> holidays) {
        this.slot = slot;
        this.split = split;
        this.minimumDays = minimumDays;
        this.holidays = holidays;
    }

    /**
     * Returns the standard rule.
     *
     * @return 15 minutes, weekday and weekend, three days
     */
    public static ProfileRule standard() {
        return STANDARD;
    }

    /**
     * Returns the rule with slots of another length.
     *
     * @param slot whole seconds that divide 24 hours
     * @return the new rule
     * @throws IllegalArgumentException if they do not
     */
    public ProfileRule withSlot(Duration slot) {
        boolean divides = !slot.isNegative()
                && slot.getNano() == 0
                && slot.getSeconds() > 0
                && DAY.getSeconds() % slot.getSeconds() == 0;
        if (!divides) {
            throw new IllegalArgumentException(
                    "slot must be whole seconds that divide 24 hours, was " + Text.exactDuration(slot));
        }
        return new ProfileRule(slot, split, minimumDays, holidays);
    }

    /**
     * Returns the rule with other days kept apart.
     *
     * @param split which days of the week are kept apart
     * @return the new rule
     */
    public ProfileRule withSplit(WeekSplit split) {
        Objects.requireNonNull(split, "split");
        return new ProfileRule(slot, split, minimumDays, holidays);
    }

    /**
     * Returns the rule with another least number of days.
     *
     * @param minimumDays days a slot needs to have a value; at least 1
     * @return the new rule
     * @throws IllegalArgumentException if it is less than 1
     */
    public ProfileRule withMinimumDays(int minimumDays) {
        return new ProfileRule(slot, split, Require.atLeast("minimumDays", minimumDays, 1), holidays);
    }

    /**
     * Returns the rule with public holidays, which count as Sundays.
     *
     * @param holidays local dates
     * @return the new rule
     */
    public ProfileRule withHolidays(Set<LocalDate> holidays) {
        Objects.requireNonNull(holidays, "holidays");
        return new ProfileRule(slot, split, minimumDays, Set.copyOf(holidays));
    }

    /**
     * Returns the length of a slot.
     *
     * @return whole seconds that divide 24 hours
     */
    public Duration slot() {
        return slot;
    }

    /**
     * Returns which days are kept apart.
     *
     * @return the split
     */
    public WeekSplit split() {
        return split;
    }

    /**
     * Returns the days a slot needs to have a value.
     *
     * @return at least 1
     */
    public int minimumDays() {
        return minimumDays;
    }

    /**
     * Returns the class of a date.
     *
     * @param date local date
     * @return its class; that of Sunday for a holiday
     */
    public DayClass classOf(LocalDate date) {
        Objects.requireNonNull(date, "date");
        return split.classOf(holidays.contains(date) ? DayOfWeek.SUNDAY : date.getDayOfWeek());
    }

    @Override
    public String toString() {
        return "ProfileRule[slots of " + Text.duration(slot) + ", " + split.classes() + ", at least " + minimumDays
                + " days, " + holidays.size() + " holidays]";
    }
}
