package dev.runnel.rainfall.event;

import dev.runnel.internal.Require;
import dev.runnel.rainfall.internal.Rain;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Runs of days with little rain: when the sewer carries dry weather flow alone, sediment settles, and inflow dries up. A day that is not
 * complete ends a run, since rain may have fallen in it; so does the end of the record, and both are said.
 *
 * <p>In Britain 15 days or more with less than 0.2 mm on each were called an absolute drought (British Rainfall 1887, from memory).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DrySpells {
    private DrySpells() {}

    /**
     * A run of dry days.
     *
     * @param first first day
     * @param last last day
     * @param days number of days
     * @param isAtLeast true if the day before or after it is not known, so that it may have been longer
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Spell(LocalDate first, LocalDate last, int days, boolean isAtLeast) {
        /**
         * Checks that nothing is missing.
         *
         * @param first first day
         * @param last last day
         * @param days number of days
         * @param isAtLeast true if the day before or after it is not known, so that it may have been longer
         */
        public Spell {
            Objects.requireNonNull(first, "first");
            Objects.requireNonNull(last, "last");
        }

        @Override
        public String toString() {
            return (isAtLeast ? "at least " : "") + days + (days == 1 ? " day, " : " days, ") + first + " to " + last;
        }
    }

    /**
     * Returns the runs of dry days.
     *
     * @param rain the days
     * @param mostMm greatest depth on a dry day, mm; 0 or greater; a depth within 1e-9 mm of it counts as equal
     * @param leastDays least number of days of a run; 1 or more
     * @return the runs in order of time
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static List<Spell> of(DailyRain rain, double mostMm, int leastDays) {
        Require.nonNegative("mostMm", mostMm, "mm");
        Require.atLeast("leastDays", leastDays, 1);
        List<DailyRain.Day> days = rain.days();
        List<Spell> spells = new ArrayList<>();
        int from = 0;
        while (from < days.size()) {
            if (!isDry(days.get(from), mostMm)) {
                from++;
                continue;
            }
            int to = from;
            while (to < days.size() && isDry(days.get(to), mostMm)) {
                to++;
            }
            if (to - from >= leastDays) {
                boolean isOpen = mayBeDry(days, from - 1, mostMm) || mayBeDry(days, to, mostMm);
                spells.add(new Spell(days.get(from).date(), days.get(to - 1).date(), to - from, isOpen));
            }
            from = to;
        }
        return List.copyOf(spells);
    }

    private static boolean isDry(DailyRain.Day day, double mostMm) {
        return day.isComplete() && Rain.reaches(mostMm, day.depthMm());
    }

    /** A day outside the record, or one that is not complete and not yet too wet. */
    private static boolean mayBeDry(List<DailyRain.Day> days, int index, double mostMm) {
        return index < 0
                || index >= days.size()
                || Rain.reaches(mostMm, days.get(index).depthMm());
    }
}
