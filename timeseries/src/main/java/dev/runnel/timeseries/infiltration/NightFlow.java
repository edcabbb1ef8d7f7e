package dev.runnel.timeseries.infiltration;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The smallest flow of one night. Immutable and thread-safe.
 *
 * @param date local date on which the night's window begins
 * @param interval when the flow was smallest
 * @param flow mean flow over that interval, m³/s
 * @param dayMean mean flow of the local day, m³/s; NaN if the day is not complete
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record NightFlow(LocalDate date, Interval interval, double flow, double dayMean) {
    /**
     * Checks that nothing is missing.
     *
     * @param date local date on which the night's window begins
     * @param interval when the flow was smallest
     * @param flow mean flow over that interval, m³/s
     * @param dayMean mean flow of the local day, m³/s; NaN if the day is not complete
     */
    public NightFlow {
        Objects.requireNonNull(date, "date");
        Objects.requireNonNull(interval, "interval");
    }

    /**
     * Returns night flows as a series, for the tests of {@link dev.runnel.timeseries.change}.
     *
     * @param nights night flows in order of time
     * @return flow at the begin of each window, m³/s
     * @throws IllegalArgumentException if they are not in order of time
     */
    public static Series series(List<NightFlow> nights) {
        SeriesBuilder builder = Series.builder();
        nights.forEach(night -> builder.add(night.interval.start(), night.flow));
        return builder.build();
    }

    /**
     * Returns the infiltration as a share of the night flow, I = f Qₙ.
     *
     * @param share f, in [0, 1]; 0.9 at about 02:00 (Wellington Water, draft 2020)
     * @return infiltration, m³/s
     * @throws IllegalArgumentException if the share is outside [0, 1] or NaN
     */
    public double infiltrationByShare(double share) {
        return Require.inRange("share", share, 0, 1, "") * flow;
    }

    /**
     * Returns the infiltration as what the foul flow of the night leaves, I = Qₙ − Q<sub>foul,n</sub>.
     *
     * @param foulFlow foul flow at that hour, m³/s; 0 or greater
     * @return infiltration, m³/s; 0 if the foul flow is greater
     * @throws IllegalArgumentException if the foul flow is negative or not finite
     */
    public double infiltrationLess(double foulFlow) {
        return Math.max(0, flow - Require.nonNegative("foulFlow", foulFlow, "m3/s"));
    }

    /**
     * Returns the night flow over the mean of the day.
     *
     * @return ratio; NaN if the day is not complete or had no flow
     */
    public double shareOfDay() {
        return dayMean > 0 ? flow / dayMean : Double.NaN;
    }

    @Override
    public String toString() {
        return "NightFlow[" + date + ", " + Text.significant(1000 * flow, 4) + " l/s in " + interval + ", "
                + (dayMean > 0
                        ? Text.significant(100 * shareOfDay(), 3) + " % of the day's mean"
                        : "no mean of the day")
                + "]";
    }
}
