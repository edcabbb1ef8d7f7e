package dev.runnel.timeseries.balance;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.BetweenReadings;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.internal.TimeIntegral;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Adds a rate up over local days: a flow in m³/s to m³ a day. Immutable and thread-safe.
 *
 * <p>What lies between two readings is taken as in {@link dev.runnel.timeseries.Resample}: by default joined by a
 * straight line if they are no further apart than 1.5 times the record's usual spacing. Days on which clocks change have
 * 23 or 25 hours. A day covered less than the minimum, 0.9 unless said (common practice), is flagged partial; its measured
 * part is given and nothing is added for the rest.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DailyTotals {
    /** Stands for the gap that follows from the record's usual spacing. */
    private static final long FROM_SPACING = 0;

    private final ZoneId zone;
    private final BetweenReadings between;
    private final long maximumGap;
    private final double minimumCoverage;

    private DailyTotals(ZoneId zone, BetweenReadings between, long maximumGap, double minimumCoverage) {
        this.zone = zone;
        this.between = between;
        this.maximumGap = maximumGap;
        this.minimumCoverage = minimumCoverage;
    }

    /**
     * Returns the rule for the days of a zone.
     *
     * @param zone zone of the local day
     * @return the rule
     */
    public static DailyTotals in(ZoneId zone) {
        Objects.requireNonNull(zone, "zone");
        return new DailyTotals(zone, BetweenReadings.LINEAR, FROM_SPACING, 0.9);
    }

    /**
     * Returns the rule with another longest time that a line spans or a reading holds.
     *
     * @param maximumGap greater than 0
     * @return the new rule
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public DailyTotals withMaximumGap(Duration maximumGap) {
        return new DailyTotals(zone, between, EpochNanos.positive("maximumGap", maximumGap), minimumCoverage);
    }

    /**
     * Returns the rule with another reading of what lies between two readings.
     *
     * @param between hold or straight line
     * @return the new rule
     */
    public DailyTotals withBetweenReadings(BetweenReadings between) {
        Objects.requireNonNull(between, "between");
        return new DailyTotals(zone, between, maximumGap, minimumCoverage);
    }

    /**
     * Returns the rule with another least coverage.
     *
     * @param minimumCoverage fraction of a day, in [0, 1]
     * @return the new rule
     * @throws IllegalArgumentException if it is outside [0, 1] or NaN
     */
    public DailyTotals withMinimumCoverage(double minimumCoverage) {
        return new DailyTotals(
                zone, between, maximumGap, Require.inRange("minimumCoverage", minimumCoverage, 0, 1, ""));
    }

    /**
     * Adds up a series.
     *
     * @param rate readings of a rate per second
     * @return one total for each local day from that of the first reading to that of the last, or to the day into which
     *     the last one holds; empty if there is none
     */
    public List<DailyTotal> totals(Series rate) {
        if (rate.isEmpty()) {
            return List.of();
        }
        long gap = maximumGap == FROM_SPACING ? TimeIntegral.usualGap(rate) : maximumGap;
        long last = rate.epochNanos(rate.size() - 1);
        return totals(rate, gap, Math.max(last, lastInstant(heldUntil(rate, gap))));
    }

    /**
     * Adds up a regular series; each value holds for the whole of its step.
     *
     * @param rate mean rates per second
     * @return one total for each local day that a step touches; empty if there is none. The measured parts of all days
     *     add up to the sum of the values times the step.
     */
    public List<DailyTotal> totals(RegularSeries rate) {
        if (rate.isEmpty()) {
            return List.of();
        }
        return withBetweenReadings(BetweenReadings.HOLD)
                .totals(
                        rate.toSeries(),
                        EpochNanos.positive("step", rate.step()),
                        lastInstant(EpochNanos.of(rate.end())));
    }

    /** The end of what the last usable reading holds for; before all time if none holds. */
    private long heldUntil(Series rate, long gap) {
        int at = rate.size() - 1;
        while (at >= 0 && !rate.quality(at).isUsable()) {
            at--;
        }
        if (between != BetweenReadings.HOLD || at < 0) {
            return Long.MIN_VALUE;
        }
        long from = rate.epochNanos(at);
        // Too late to be counted in ns: what holds beyond 2262 is left out, as it is in the integral.
        return from > Long.MAX_VALUE - gap ? from : from + gap;
    }

    /** An end does not belong to what it ends. */
    private static long lastInstant(long end) {
        return end == Long.MIN_VALUE ? end : end - 1;
    }

    private List<DailyTotal> totals(Series rate, long gap, long lastInstant) {
        LocalDate first = rate.time(0).atZone(zone).toLocalDate();
        LocalDate last = EpochNanos.toInstant(lastInstant).atZone(zone).toLocalDate();
        List<LocalDate> dates = first.datesUntil(last.plusDays(1)).toList();
        long[] edges = new long[dates.size() + 1];
        for (int i = 0; i < edges.length; i++) {
            edges[i] = EpochNanos.of(first.plusDays(i).atStartOfDay(zone).toInstant());
        }
        return totals(dates, edges, TimeIntegral.of(rate, between, gap, edges));
    }

    private List<DailyTotal> totals(List<LocalDate> dates, long[] edges, TimeIntegral integral) {
        List<DailyTotal> totals = new ArrayList<>();
        for (int i = 0; i < dates.size(); i++) {
            Interval day = Interval.of(EpochNanos.toInstant(edges[i]), EpochNanos.toInstant(edges[i + 1]));
            double coverage = integral.coverage(i);
            totals.add(new DailyTotal(dates.get(i), day, integral.integral(i), coverage, coverage >= minimumCoverage));
        }
        return List.copyOf(totals);
    }

    @Override
    public String toString() {
        return "DailyTotals[" + zone + ", " + between.name().toLowerCase(Locale.ROOT) + " up to "
                + (maximumGap == FROM_SPACING ? "1.5 usual spacings" : Text.duration(Duration.ofNanos(maximumGap)))
                + ", coverage at least " + Text.significant(minimumCoverage, 6) + "]";
    }
}
