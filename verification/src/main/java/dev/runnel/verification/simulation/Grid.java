package dev.runnel.verification.simulation;

import java.time.Instant;
import java.time.ZoneId;
import java.time.zone.ZoneRules;
import java.util.Arrays;

/**
 * The times of a record, and what the civil clock shows at each of them.
 *
 * @param start time of the first reading
 * @param minutes from one reading to the next
 * @param size count of readings
 * @param zone whose clock the people follow
 */
record Grid(Instant start, int minutes, int size, ZoneId zone) {
    static final int MINUTES_OF_DAY = 1440;

    /** Readings that one day holds. */
    int perDay() {
        return MINUTES_OF_DAY / minutes;
    }

    /** Position of a time given in days from the start, 0 to size. */
    int at(double days) {
        return Math.max(0, Math.min(size, (int) Math.round(days * perDay())));
    }

    double days(int i) {
        return (double) i * minutes / MINUTES_OF_DAY;
    }

    Instant time(int i) {
        return start.plusSeconds(60L * minutes * i);
    }

    Instant end() {
        return time(size);
    }

    /** Count of whole hours; the steps of an hour are those from hour × 60 / minutes on. */
    int hours() {
        return size * minutes / 60;
    }

    /** Minutes since 1970 on the civil clock, for each step. */
    long[] civilMinutes() {
        ZoneRules rules = zone.getRules();
        long[] civil = new long[size];
        long offset = 0;
        for (int i = 0; i < size; i++) {
            Instant time = time(i);
            if (i == 0 || time.getEpochSecond() % 900 < 60L * minutes) {
                offset = rules.getOffset(time).getTotalSeconds() / 60;
            }
            civil[i] = Math.floorDiv(time.getEpochSecond(), 60L) + offset;
        }
        return civil;
    }

    /** Medians of the whole hours; NaN where fewer than half of the values are there. */
    double[] hourly(double[] values) {
        int each = 60 / minutes;
        double[] medians = new double[hours()];
        double[] hour = new double[each];
        for (int h = 0; h < medians.length; h++) {
            int n = 0;
            for (int k = 0; k < each; k++) {
                double value = values[h * each + k];
                if (!Double.isNaN(value)) {
                    hour[n++] = value;
                }
            }
            Arrays.sort(hour, 0, n);
            medians[h] = 2 * n < each ? Double.NaN : n % 2 == 1 ? hour[n / 2] : (hour[n / 2 - 1] + hour[n / 2]) / 2;
        }
        return medians;
    }
}
