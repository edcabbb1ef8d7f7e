package dev.runnel.timeseries.balance;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A site of a balance: its flow, how long its water takes, and how far its volumes can be relied on. Immutable and
 * thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class BalanceSite {
    private final String name;
    private final Series flow;
    private final Duration travelTime;
    private final double uncertainty;

    private BalanceSite(String name, Series flow, Duration travelTime, double uncertainty) {
        this.name = name;
        this.flow = flow;
        this.travelTime = travelTime;
        this.uncertainty = uncertainty;
    }

    /**
     * Returns a site.
     *
     * @param name its name
     * @param flow its flow, m³/s
     * @param uncertainty relative standard uncertainty of its volumes, for example 0.05; 0 or greater
     * @return the site, whose water takes no time to the balance
     * @throws IllegalArgumentException if the uncertainty is negative or not finite
     */
    public static BalanceSite of(String name, Series flow, double uncertainty) {
        Objects.requireNonNull(name, "name");
        Objects.requireNonNull(flow, "flow");
        return new BalanceSite(name, flow, Duration.ZERO, Require.nonNegative("uncertainty", uncertainty, ""));
    }

    /**
     * Returns the site with the time its water takes to the site downstream.
     *
     * @param travelTime 0 or longer
     * @return the new site
     * @throws IllegalArgumentException if it is negative
     */
    public BalanceSite withTravelTime(Duration travelTime) {
        EpochNanos.nonNegative("travelTime", travelTime);
        return new BalanceSite(name, flow, travelTime, uncertainty);
    }

    /**
     * Returns what the site is called.
     *
     * @return its name
     */
    public String name() {
        return name;
    }

    /**
     * Returns its flow.
     *
     * @return flow, m³/s
     */
    public Series flow() {
        return flow;
    }

    /**
     * Returns how long its water takes to the site downstream.
     *
     * @return time
     */
    public Duration travelTime() {
        return travelTime;
    }

    /**
     * Returns how far its volumes can be relied on.
     *
     * @return relative standard uncertainty
     */
    public double uncertainty() {
        return uncertainty;
    }

    @Override
    public String toString() {
        return "BalanceSite[" + name + ", " + flow.size() + " readings, "
                + (travelTime.isZero() ? "" : Text.duration(travelTime) + " upstream, ") + "standard uncertainty "
                + Text.significant(100 * uncertainty, 3) + " %]";
    }
}
