package dev.runnel.hydraulics.watch;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneRules;
import java.util.Set;

/** The civil day that an hour belongs to, and where in it. */
final class LocalHours {
    private static final int DAY_SECONDS = 86_400;

    private final ZoneId zone;
    private final ZoneRules rules;
    private final Set<DayOfWeek> restDays;
    private final Set<LocalDate> holidays;
    private long offsetHour = Long.MIN_VALUE;
    private int offset;
    private long restDay = Long.MIN_VALUE;
    private boolean rest;

    LocalHours(ZoneId zone, Set<DayOfWeek> restDays, Set<LocalDate> holidays) {
        this.zone = zone;
        this.rules = zone.getRules();
        this.restDays = restDays;
        this.holidays = holidays;
    }

    private long localSecond(long hour) {
        if (hour != offsetHour) {
            ZoneOffset found = rules.getOffset(Instant.ofEpochSecond(hour * 3600));
            offset = found.getTotalSeconds();
            offsetHour = hour;
        }
        return hour * 3600 + offset;
    }

    /** Days since 1970 of the civil day in which the hour begins. */
    long day(long hour) {
        return Math.floorDiv(localSecond(hour), (long) DAY_SECONDS);
    }

    /** The middle of the hour as hour of the civil day, in [0, 24). */
    double hourOfDay(long hour) {
        double middle = (Math.floorMod(localSecond(hour), (long) DAY_SECONDS) + 1800) / 3600.0;
        return middle < 24 ? middle : middle - 24;
    }

    boolean isRest(long hour) {
        long day = day(hour);
        if (day != restDay) {
            LocalDate date = LocalDate.ofEpochDay(day);
            rest = restDays.contains(date.getDayOfWeek()) || holidays.contains(date);
            restDay = day;
        }
        return rest;
    }

    /** The first hour of a civil day. */
    long firstHour(long day) {
        return Math.floorDiv(LocalDate.ofEpochDay(day).atStartOfDay(zone).toEpochSecond(), 3600L);
    }
}
