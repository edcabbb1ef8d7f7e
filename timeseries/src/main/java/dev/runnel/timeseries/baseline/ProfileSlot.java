package dev.runnel.timeseries.baseline;

import dev.runnel.internal.Text;
import java.time.LocalTime;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * One slot of a {@link DiurnalProfile}. Immutable and thread-safe.
 *
 * @param dayClass the days it is of
 * @param start local time at which it starts
 * @param days days with readings in it
 * @param mean mean over the days, in the unit of the readings; NaN if there are too few days
 * @param median median over the days, in the unit of the readings; NaN if there are too few days
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ProfileSlot(DayClass dayClass, LocalTime start, int days, double mean, double median) {
    /**
     * Checks that nothing is missing.
     *
     * @param dayClass the days it is of
     * @param start local time at which it starts
     * @param days days with readings in it
     * @param mean mean over the days, in the unit of the readings; NaN if there are too few days
     * @param median median over the days, in the unit of the readings; NaN if there are too few days
     */
    public ProfileSlot {
        Objects.requireNonNull(dayClass, "dayClass");
        Objects.requireNonNull(start, "start");
    }

    @Override
    public String toString() {
        return "ProfileSlot[" + dayClass.toText() + " " + start + ", " + days + " days, mean "
                + Text.significant(mean, 6) + ", median " + Text.significant(median, 6) + "]";
    }
}
