package dev.runnel.timeseries.balance;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.balance.BalanceLine.Verdict;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Balances any number of sites upstream with one downstream: D = V − Σ Vᵢ, with each Vᵢ taken earlier by the travel time
 * of its site. Immutable and thread-safe.
 *
 * <p>The uncertainty of D is U = k √((u V)² + Σ (uᵢ Vᵢ)²), the relative standard uncertainties u of the volumes taken as
 * independent from site to site and wholly systematic within each (JCGM 100:2008, GUM, 5.1.2). k is 2 unless set: about
 * 95 %. There is a verdict only where every record covers at least 0.9 of the interval (common practice), and only where
 * |D| exceeds U.
 *
 * <p>What this is not: a finding of infiltration or of a leak. A difference beyond its uncertainty says that something is
 * not as assumed, and a monitor is often the likeliest.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class VolumeBalance {
    private static final long MOST_DAYS = 36_525;

    private final List<BalanceSite> upstream;
    private final BalanceSite downstream;
    private final double coverageFactor;
    private final double minimumCoverage;

    private VolumeBalance(
            List<BalanceSite> upstream, BalanceSite downstream, double coverageFactor, double minimumCoverage) {
        this.upstream = List.copyOf(upstream);
        this.downstream = downstream;
        this.coverageFactor = coverageFactor;
        this.minimumCoverage = minimumCoverage;
    }

    /**
     * Returns the balance of some sites.
     *
     * @param upstream the sites upstream, at least one
     * @param downstream the site downstream; its travel time does not matter
     * @return the balance
     * @throws IllegalArgumentException if there is no site upstream
     */
    public static VolumeBalance of(List<BalanceSite> upstream, BalanceSite downstream) {
        Objects.requireNonNull(downstream, "downstream");
        Require.atLeast("number of sites upstream", upstream.size(), 1);
        return new VolumeBalance(upstream, downstream, 2, 0.9);
    }

    /**
     * Returns the balance with another factor between standard and expanded uncertainty.
     *
     * @param coverageFactor k; greater than 0
     * @return the new balance
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public VolumeBalance withCoverageFactor(double coverageFactor) {
        return new VolumeBalance(
                upstream, downstream, Require.positive("coverageFactor", coverageFactor, ""), minimumCoverage);
    }

    /**
     * Returns the balance with another least coverage.
     *
     * @param minimumCoverage fraction of an interval, in [0, 1]
     * @return the new balance
     * @throws IllegalArgumentException if it is outside [0, 1] or NaN
     */
    public VolumeBalance withMinimumCoverage(double minimumCoverage) {
        return new VolumeBalance(
                upstream, downstream, coverageFactor, Require.inRange("minimumCoverage", minimumCoverage, 0, 1, ""));
    }

    /**
     * Balances over intervals, such as storms.
     *
     * @param intervals at the site downstream; none empty
     * @return one line for each
     * @throws IllegalArgumentException if an interval is empty or begins less than a travel time after 1677
     */
    public List<BalanceLine> over(List<Interval> intervals) {
        List<BalanceLine> lines = new ArrayList<>();
        for (Interval interval : intervals) {
            lines.add(line(interval));
        }
        return List.copyOf(lines);
    }

    /**
     * Balances over local days.
     *
     * @param zone zone of the days
     * @return one line for each day from the first reading downstream to the last; empty if there is none
     * @throws IllegalArgumentException if the record spans more than 36,525 days
     */
    public List<BalanceLine> daily(ZoneId zone) {
        Objects.requireNonNull(zone, "zone");
        if (downstream.flow().isEmpty()) {
            return List.of();
        }
        LocalDate first = downstream.flow().time(0).atZone(zone).toLocalDate();
        LocalDate last = downstream
                .flow()
                .time(downstream.flow().size() - 1)
                .atZone(zone)
                .toLocalDate();
        if (last.toEpochDay() - first.toEpochDay() >= MOST_DAYS) {
            throw new IllegalArgumentException(
                    "flow downstream must span at most " + MOST_DAYS + " days, was " + first + " to " + last);
        }
        return over(first.datesUntil(last.plusDays(1))
                .map(day -> Interval.of(
                        day.atStartOfDay(zone).toInstant(),
                        day.plusDays(1).atStartOfDay(zone).toInstant()))
                .toList());
    }

    private BalanceLine line(Interval interval) {
        MeasuredVolume out = MeasuredVolume.of(downstream.flow(), interval);
        double variance = square(downstream.uncertainty() * out.measured());
        double coverage = out.coverage();
        List<MeasuredVolume> in = new ArrayList<>();
        double sum = 0;
        for (BalanceSite site : upstream) {
            Interval earlier = Interval.of(
                    interval.start().minus(site.travelTime()), interval.end().minus(site.travelTime()));
            EpochNanos.of(earlier.start());
            MeasuredVolume volume = MeasuredVolume.of(site.flow(), earlier);
            in.add(volume);
            sum += volume.measured();
            variance += square(site.uncertainty() * volume.measured());
            coverage = Math.min(coverage, volume.coverage());
        }
        double uncertainty = coverageFactor * Math.sqrt(variance);
        double difference = out.measured() - sum;
        Verdict verdict;
        if (coverage < minimumCoverage) {
            verdict = Verdict.NOT_COVERED;
        } else if (Math.abs(difference) <= uncertainty) {
            verdict = Verdict.WITHIN;
        } else {
            verdict = difference > 0 ? Verdict.GAIN : Verdict.LOSS;
        }
        return new BalanceLine(interval, in, out, uncertainty, coverage, verdict);
    }

    private static double square(double value) {
        return value * value;
    }

    @Override
    public String toString() {
        return "VolumeBalance[" + upstream.stream().map(BalanceSite::name).toList() + " to " + downstream.name()
                + ", k = " + Text.significant(coverageFactor, 6) + ", coverage at least "
                + Text.significant(minimumCoverage, 6) + "]";
    }
}
