package dev.runnel.rainfall.response;

import dev.runnel.internal.Require;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import dev.runnel.timeseries.change.BeforeAfter;
import dev.runnel.timeseries.change.MannKendall;
import dev.runnel.timeseries.change.TheilSen;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The responses to the storms of a record, and how they changed.
 *
 * @param all one for each storm looked at, in order of time, those of doubt with their marks
 * @param outside storms that do not lie whole within the records of rain and flow, of which nothing is said
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record StormResponses(List<StormResponse> all, int outside) {
    private static final double HOURS_PER_YEAR = 365.25 * 24;

    /**
     * Checks the order.
     *
     * @param all one for each storm looked at, in order of time
     * @param outside storms of which nothing is said; 0 or more
     * @throws IllegalArgumentException if a storm does not begin after the one before it, or the count is negative
     */
    public StormResponses {
        Objects.requireNonNull(all, "all");
        all = List.copyOf(all);
        for (int i = 1; i < all.size(); i++) {
            Instant earlier = all.get(i - 1).storm().start();
            if (!all.get(i).storm().start().isAfter(earlier)) {
                throw new IllegalArgumentException("storms must begin one after the other, was "
                        + all.get(i).storm().start() + " after " + earlier);
            }
        }
        Require.atLeast("outside", outside, 0);
    }

    /**
     * Returns a figure from storm to storm, of the storms against which nothing speaks.
     *
     * @param measure the figure
     * @return its values at the begin of each storm, in the unit of the measure
     */
    public Series series(ResponseMeasure measure) {
        Objects.requireNonNull(measure, "measure");
        SeriesBuilder builder = Series.builder();
        for (StormResponse each : all) {
            if (measure.isSound(each)) {
                builder.add(each.storm().start(), measure.of(each).orElseThrow());
            }
        }
        return builder.build();
    }

    /**
     * Returns the trend of a figure, with limits of 95 % confidence. Look at that of {@link ResponseMeasure#DEPTH} too: if the storms
     * grew, so may the figure, without any change of the sewer.
     *
     * @param measure the figure
     * @return the trend
     * @throws IllegalArgumentException if fewer than three storms can be used
     */
    public ResponseTrend trend(ResponseMeasure measure) {
        Series series = series(measure);
        Require.atLeast("storms with a sound " + measure, series.size(), 3);
        double[] years = new double[series.size()];
        double[] values = new double[series.size()];
        for (int i = 0; i < values.length; i++) {
            years[i] = Duration.between(series.time(0), series.time(i)).toMillis() / (HOURS_PER_YEAR * 3_600_000);
            values[i] = series.value(i);
        }
        return new ResponseTrend(
                measure, TheilSen.of(years, values, 0.95), MannKendall.of(values), all.size() - values.length);
    }

    /**
     * Compares a figure before and after a time, with limits of 95 % confidence.
     *
     * @param measure the figure
     * @param date when the change was made
     * @return the comparison
     * @throws IllegalArgumentException if fewer than two storms on one side can be used
     */
    public ResponseChange change(ResponseMeasure measure, Instant date) {
        Series series = series(measure);
        return new ResponseChange(measure, date, BeforeAfter.of(series, date), all.size() - series.size());
    }

    @Override
    public String toString() {
        long sound = all.stream().filter(StormResponse::isSound).count();
        return "StormResponses[" + all.size() + " storms, " + sound + " without doubt, " + outside
                + " outside the records]";
    }
}
