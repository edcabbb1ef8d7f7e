package dev.runnel.timeseries.csv;

import java.time.LocalDate;
import java.time.Month;
import java.time.Year;

/** Turns dates into days since 1970-01-01; the last one is remembered, for lines come by the hundred from one day. */
final class Calendar {
    /** Stands for a date that is not in the calendar. */
    static final long NO_DAY = Long.MIN_VALUE;

    private int lastDate = -1;
    private long lastDay;

    /** Returns the day since 1970-01-01, or {@link #NO_DAY}; the year has up to four digits, none is negative. */
    long epochDay(int year, int month, int day) {
        int date = (year * 100 + month) * 100 + day;
        if (date != lastDate) {
            if (month < 1 || month > 12 || day < 1 || day > Month.of(month).length(Year.isLeap(year))) {
                return NO_DAY;
            }
            lastDay = LocalDate.of(year, month, day).toEpochDay();
            lastDate = date;
        }
        return lastDay;
    }
}
