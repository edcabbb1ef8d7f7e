package dev.runnel.verification.simulation;

import java.time.LocalDate;
import java.util.HashSet;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.math3.util.FastMath;

/** Days on which people stay at home, and the season of a site. */
final class Calendar {
    private static final double YEAR = 365.25;

    private final Set<Long> holidays = new HashSet<>();
    private final double wettestDay;

    /** Draws a calendar: eight to twelve holidays a year, some in pairs, and when the wet season is. */
    Calendar(Grid grid, Draws draws) {
        wettestDay = draws.uniform(0, YEAR);
        int first = grid.start().atZone(grid.zone()).getYear();
        int count = 8 + draws.below(5);
        for (int k = 0; k < count; k++) {
            int day = 1 + draws.below(364);
            boolean pair = draws.chance(0.3);
            for (int year = first; year <= first + 2; year++) {
                long date = LocalDate.ofYearDay(year, day).toEpochDay();
                holidays.add(date);
                if (pair) {
                    holidays.add(date + 1);
                }
            }
        }
    }

    /** Saturday, Sunday or a holiday; days counted from 1970-01-01, a Thursday. */
    boolean isAtHome(long civilDay) {
        return Math.floorMod(civilDay + 3, 7) >= 5 || holidays.contains(civilDay);
    }

    Set<LocalDate> holidays() {
        return holidays.stream().map(LocalDate::ofEpochDay).collect(Collectors.toUnmodifiableSet());
    }

    /** From -1 in the middle of the dry season to 1 in the middle of the wet one. */
    double wetness(double epochDays) {
        return FastMath.cos(2 * FastMath.PI * (epochDays - wettestDay) / YEAR);
    }
}
