package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.gauge.StorageComparison.Row;
import dev.runnel.rainfall.gauge.StorageComparison.Verdict;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.rainfall.internal.Share;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The storage gauge at the side of a recording one (check gauge): it keeps all rain until it is read and emptied. Immutable and
 * thread-safe.
 *
 * <p>For every time between two readings the depth that the recording gauge should have found is known, whatever the
 * intensity. The ratio Σrecorded/Σstored tells the state of bucket, funnel and calibration together; a ratio that falls from
 * reading to reading tells of dirt or a blockage, and {@link StorageComparison#doubleMass} of a sudden change.
 *
 * <p>What this is not: the truth. A storage gauge loses to evaporation and wetting, spills when it is full, and catches less in
 * wind if its rim stands higher.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class StorageGauge {
    private record Stored(Interval period, double depthMm) {}

    private final Instant emptied;
    private final List<Stored> readings;

    private StorageGauge(Instant emptied, List<Stored> readings) {
        this.emptied = emptied;
        this.readings = readings;
    }

    /**
     * Returns a storage gauge without readings.
     *
     * @param installed when it was set up, empty
     * @return the gauge
     * @throws IllegalArgumentException if the instant lies outside 1677-09-21 to 2262-04-11
     */
    public static StorageGauge installed(Instant installed) {
        Objects.requireNonNull(installed, "installed");
        return new StorageGauge(EpochNanos.toInstant(EpochNanos.of(installed)), List.of());
    }

    /**
     * Returns the same gauge with one more reading, at which it was emptied.
     *
     * @param time when it was read; after the reading before, and after it was set up
     * @param depthMm rain in it, mm; 0 or greater
     * @return the gauge
     * @throws IllegalArgumentException if the time does not increase or the depth is negative, infinite or NaN
     */
    public StorageGauge withReading(Instant time, double depthMm) {
        if (!time.isAfter(emptied)) {
            throw new IllegalArgumentException("time must be after " + emptied + ", was " + time);
        }
        List<Stored> more = new ArrayList<>(readings);
        more.add(new Stored(Interval.of(emptied, time), Require.nonNegative("depthMm", depthMm, "mm")));
        return new StorageGauge(time, List.copyOf(more));
    }

    /**
     * Compares a recording gauge with this one, reading by reading.
     *
     * <p>A step in which the storage gauge was emptied is divided by time, rain taken as steady in it. Times of which the record
     * says nothing leave a reading open, unless more was recorded already than the allowance lets be.
     *
     * @param rain depth in each step of the recording gauge, mm; 0 or greater, NaN for missing
     * @param allowance greatest difference that is let be, as a share of what was stored; 0 to 1. 0.05 to 0.1 are in use
     *     (common practice)
     * @param resolutionMm difference that is always let be, mm, such as one tip; 0 or greater
     * @return one row for each reading
     * @throws IllegalArgumentException if there is no reading, a depth is negative, or an argument out of range
     */
    public StorageComparison compareByAllowanceAndResolution(
            RegularSeries rain, double allowance, double resolutionMm) {
        Require.atLeast("readings", readings.size(), 1);
        Rain.requireNonNegative("rain", rain, "mm");
        Require.inRange("allowance", allowance, 0, 1, "");
        Require.nonNegative("resolutionMm", resolutionMm, "mm");
        List<Row> rows = new ArrayList<>();
        for (Stored stored : readings) {
            double limit = Math.max(allowance * stored.depthMm(), resolutionMm);
            rows.add(row(rain, stored, limit));
        }
        return new StorageComparison(allowance, rows);
    }

    private static Row row(RegularSeries rain, Stored stored, double limitMm) {
        Share recorded = Share.of(rain, stored.period());
        double difference = recorded.sum() - stored.depthMm();
        boolean isWithin = Rain.reaches(limitMm, Math.abs(difference));
        Verdict verdict = !isWithin && difference > 0
                ? Verdict.HIGH
                : !recorded.unknown().isZero() ? Verdict.UNKNOWN : isWithin ? Verdict.WITHIN : Verdict.LOW;
        return new Row(stored.period(), stored.depthMm(), recorded.sum(), recorded.unknown(), verdict);
    }

    @Override
    public String toString() {
        return "StorageGauge[" + readings.size() + " readings, "
                + Text.significant(
                        readings.stream().mapToDouble(Stored::depthMm).sum(), 6)
                + " mm, emptied " + emptied + "]";
    }
}
