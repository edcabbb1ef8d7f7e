package dev.runnel.timeseries.quality;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import java.time.LocalDate;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * How much of one local day is good. Immutable and thread-safe.
 *
 * <p>The share is of time, not of lines: a usable reading speaks for the time to the next usable one, at most for 1.5 times the usual (median)
 * time between readings, and of that for what lies within the day. A day that begins before the first reading, or ends
 * behind what the last one speaks for, is so much less good.
 *
 * @param date local date
 * @param interval from the start of the day to the start of the next: 23, 24 or 25 hours
 * @param expected readings that a whole day holds, by the usual time between readings
 * @param usable readings that calculations use
 * @param poor readings among them that are poor or estimated
 * @param suspect readings that are left out as suspect
 * @param missing readings without a value; lines that are not there are not among them
 * @param share part of the day that usable readings speak for, in [0, 1]
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record GoodDay(
        LocalDate date, Interval interval, int expected, int usable, int poor, int suspect, int missing, double share) {
    /**
     * Checks that nothing is missing.
     *
     * @param date local date
     * @param interval from the start of the day to the start of the next: 23, 24 or 25 hours
     * @param expected readings that a whole day holds, by the usual time between readings
     * @param usable readings that calculations use
     * @param poor readings among them that are poor or estimated
     * @param suspect readings that are left out as suspect
     * @param missing readings without a value; lines that are not there are not among them
     * @param share part of the day that usable readings speak for, in [0, 1]
     */
    public GoodDay {
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(interval, "interval");
    }

    @Override
    public String toString() {
        return "GoodDay[" + date + ", " + Text.significant(100 * share, 4) + " % good: " + usable + " of " + expected
                + " usable, " + poor + " of them poor, " + suspect + " suspect, " + missing + " missing]";
    }
}
