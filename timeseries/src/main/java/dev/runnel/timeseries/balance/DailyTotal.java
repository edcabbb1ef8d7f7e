package dev.runnel.timeseries.balance;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import java.time.LocalDate;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What a rate adds up to over one local day. Immutable and thread-safe.
 *
 * @param date local date
 * @param interval from the start of the day to the start of the next: 23, 24 or 25 hours
 * @param measured integral over the covered part of the day; of a flow in m³/s, the volume in m³
 * @param coverage fraction of the day that the record speaks for, in [0, 1]
 * @param isComplete whether the coverage is at least the minimum asked for
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record DailyTotal(LocalDate date, Interval interval, double measured, double coverage, boolean isComplete) {
    /**
     * Checks that nothing is missing.
     *
     * @param date local date
     * @param interval from the start of the day to the start of the next: 23, 24 or 25 hours
     * @param measured integral over the covered part of the day; of a flow in m³/s, the volume in m³
     * @param coverage fraction of the day that the record speaks for, in [0, 1]
     * @param isComplete whether the coverage is at least the minimum asked for
     */
    public DailyTotal {
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(interval, "interval");
    }

    /**
     * Returns the total of a day that is covered well enough.
     *
     * @return the integral over the covered part, nothing added for the rest; NaN if the day is not complete
     */
    public double total() {
        return isComplete ? measured : Double.NaN;
    }

    /**
     * Returns the mean rate over the covered part of the day.
     *
     * @return mean in the unit of the readings; NaN if nothing is covered
     */
    public double mean() {
        return coverage == 0
                ? Double.NaN
                : measured / (coverage * interval.duration().getSeconds());
    }

    @Override
    public String toString() {
        return "DailyTotal[" + date + ", " + Text.significant(measured, 6) + " over "
                + Text.significant(100 * coverage, 4) + " % of " + Text.significant(interval.hours(), 6) + " h"
                + (isComplete ? "" : ", partial") + "]";
    }
}
