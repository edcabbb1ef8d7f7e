package dev.runnel.timeseries.balance;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The balance over one interval. Immutable and thread-safe.
 *
 * @param interval when, at the site downstream
 * @param upstream volumes of the sites upstream in their order, each over the interval earlier by its travel time, m³
 * @param downstream volume of the site downstream, m³
 * @param uncertainty expanded uncertainty of the difference, m³
 * @param coverage the smallest coverage of all sites, in [0, 1]
 * @param verdict what it comes to
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record BalanceLine(
        Interval interval,
        List<MeasuredVolume> upstream,
        MeasuredVolume downstream,
        double uncertainty,
        double coverage,
        Verdict verdict) {
    /**
     * What a balance comes to.
     *
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public enum Verdict {
        /** The difference lies within its uncertainty. */
        WITHIN,
        /** More comes out than goes in, by more than the uncertainty: inflow between the sites, or a monitor that is wrong. */
        GAIN,
        /** Less comes out than goes in, by more than the uncertainty: a way out between the sites, or a monitor that is wrong. */
        LOSS,
        /** A record does not cover the interval well enough. */
        NOT_COVERED
    }

    /**
     * Copies the list.
     *
     * @param interval when
     * @param upstream volumes upstream
     * @param downstream volume downstream
     * @param uncertainty of the difference, m³
     * @param coverage smallest coverage
     * @param verdict what it comes to
     */
    public BalanceLine {
        Objects.requireNonNull(interval, "interval");
        Objects.requireNonNull(upstream, "upstream");
        Objects.requireNonNull(downstream, "downstream");
        Objects.requireNonNull(verdict, "verdict");
        upstream = List.copyOf(upstream);
    }

    /**
     * Returns what all sites upstream sent.
     *
     * @return sum of their volumes, m³
     */
    public double inflow() {
        return upstream.stream().mapToDouble(MeasuredVolume::measured).sum();
    }

    /**
     * Returns how much more came out than went in.
     *
     * @return volume, m³; negative if less
     */
    public double difference() {
        return downstream.measured() - inflow();
    }

    /**
     * Returns volume out over volume in.
     *
     * @return ratio; NaN if nothing went in
     */
    public double ratio() {
        double in = inflow();
        return in == 0 ? Double.NaN : downstream.measured() / in;
    }

    @Override
    public String toString() {
        return "BalanceLine[" + interval + ", in " + Text.significant(inflow(), 4) + " m3, out "
                + Text.significant(downstream.measured(), 4) + " m3, difference " + Text.significant(difference(), 3)
                + " +/- " + Text.significant(uncertainty, 3) + " m3, " + Text.significant(100 * coverage, 3)
                + " % covered: " + verdict.name().toLowerCase(Locale.ROOT).replace('_', ' ') + "]";
    }
}
