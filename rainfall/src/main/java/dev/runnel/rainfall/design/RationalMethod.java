package dev.runnel.rainfall.design;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.ddf.DepthDurationFrequency;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import org.apiguardian.api.API;

/**
 * The rational method: the greatest flow from an area when it rains for as long as its furthest water travels,
 *
 * <blockquote>Q = C<sub>R</sub> C i A/(3.6 · 10⁶), t<sub>c</sub> = t<sub>e</sub> + t<sub>f</sub></blockquote>
 *
 * <p>with the flow Q [m³/s], runoff coefficient C, mean intensity i over the time of concentration t<sub>c</sub> [mm/h], area A [m²], time of
 * entry t<sub>e</sub> and time of flow t<sub>f</sub>. The routing coefficient C<sub>R</sub> is 1; the British modified rational method has
 * 1.3, with a C of runoff alone (National Water Council 1981, Design and analysis of urban storm drainage, from memory). Sources: Kuichling
 * (1889), Transactions ASCE 20, 1-56; Lloyd-Davies (1906), Minutes of the Proceedings of the Institution of Civil Engineers 164, 41-67.
 *
 * <p>Use it up to about 1 km² (common practice: limits of 0.5 to 2 km² are printed). Not for design without the judgement of a qualified
 * engineer and the local code. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RationalMethod {
    private static final double BRITISH_ROUTING = 1.3;

    private final DrainedArea area;
    private final Duration entry;
    private final Duration flow;
    private final double routing;

    private RationalMethod(DrainedArea area, Duration entry, Duration flow, double routing) {
        this.area = area;
        this.entry = entry;
        this.flow = flow;
        this.routing = routing;
    }

    /**
     * Returns the method for an area.
     *
     * @param area the surfaces; at least one
     * @param entry time of entry, from the furthest surface to the sewer; greater than 0
     * @return the method, without time of flow
     * @throws IllegalArgumentException if there is no surface or the time is not greater than 0
     */
    public static RationalMethod of(DrainedArea area, Duration entry) {
        Require.positive("area", area.areaM2(), "m2");
        EpochNanos.positive("entry", entry);
        return new RationalMethod(area, entry, Duration.ZERO, 1);
    }

    /**
     * Returns the same method with a time of flow in the sewer.
     *
     * @param time from the first manhole to the point; 0 or longer
     * @return the method
     * @throws IllegalArgumentException if it is negative
     */
    public RationalMethod withTimeOfFlow(Duration time) {
        EpochNanos.nonNegative("time", time);
        return new RationalMethod(area, entry, time, routing);
    }

    /**
     * Returns the British modified method, with a routing coefficient of 1.3.
     *
     * @return the method
     */
    public RationalMethod modified() {
        return withRouting(BRITISH_ROUTING);
    }

    /**
     * Returns the same method with another routing coefficient.
     *
     * @param coefficient C<sub>R</sub>; 0.5 to 2
     * @return the method
     * @throws IllegalArgumentException if it is out of range
     */
    public RationalMethod withRouting(double coefficient) {
        return new RationalMethod(area, entry, flow, Require.inRange("coefficient", coefficient, 0.5, 2, ""));
    }

    /**
     * Returns the time of concentration.
     *
     * @return time of entry and of flow
     */
    public Duration concentrationTime() {
        return entry.plus(flow);
    }

    /**
     * Returns the greatest flow for an intensity.
     *
     * @param intensityMmPerHour mean intensity over the time of concentration, mm/h; 0 or greater
     * @return flow, m³/s
     * @throws IllegalArgumentException if the intensity is negative, infinite or NaN
     */
    public double peakM3PerS(double intensityMmPerHour) {
        Require.nonNegative("intensityMmPerHour", intensityMmPerHour, "mm/h");
        return routing * area.effectiveM2() * intensityMmPerHour / 3.6e6;
    }

    /**
     * Returns the greatest flow for a return period.
     *
     * @param rainfall depths by duration and frequency
     * @param years return period, years; in the range of the relation
     * @return flow, m³/s, for rain as long as the time of concentration
     * @throws IllegalArgumentException if the relation does not cover the time of concentration or the return period
     */
    public double peakM3PerS(DepthDurationFrequency rainfall, double years) {
        Duration time = concentrationTime();
        return peakM3PerS(rainfall.depthMm(time, years) / Rain.hours(time));
    }

    /**
     * Returns the flow of steady rain, which rises to its peak in the time of concentration and falls as long after the rain has ended
     * (the modified rational method of American handbooks; American Public Works Association 1974, from memory).
     *
     * @param rainfall depths by duration and frequency
     * @param years return period, years
     * @param duration how long it rains; no shorter than the time of concentration
     * @param step length of a step; greater than 0
     * @return mean flow in each step from the beginning of the rain, m³/s, the first at 1970-01-01T00:00:00Z; its volume is that of
     *     Q D
     * @throws IllegalArgumentException if an argument is out of range
     */
    public RegularSeries hydrograph(DepthDurationFrequency rainfall, double years, Duration duration, Duration step) {
        double peak = peakOf(rainfall, years, duration);
        long stepNanos = EpochNanos.positive("step", step);
        double rise = concentrationTime().toNanos();
        double rain = duration.toNanos();
        long steps = -Math.floorDiv(-(long) (rain + rise), stepNanos);
        if (steps > 1_000_000) {
            throw new IllegalArgumentException(
                    "step must be such that the flow has at most 1000000 of them, had " + steps);
        }
        double[] flows = new double[(int) steps];
        for (int i = 0; i < flows.length; i++) {
            double before = passed((double) i * stepNanos, rain, rise);
            flows[i] = peak * (passed((i + 1.0) * stepNanos, rain, rise) - before) / stepNanos;
        }
        return RegularSeries.of(Instant.EPOCH, step, flows);
    }

    /** The integral of a trapezium of height 1 up to a time; it rains no shorter than it rises. */
    private static double passed(double time, double rain, double rise) {
        double t = Math.min(time, rain + rise);
        double up = Math.min(t, rise);
        double rained = Math.min(t, rain);
        double sum = up * up / (2 * rise) + (rained - up);
        double down = t - rained;
        return sum + down - down * down / (2 * rise);
    }

    private double peakOf(DepthDurationFrequency rainfall, double years, Duration duration) {
        if (duration.compareTo(concentrationTime()) < 0) {
            throw new IllegalArgumentException("duration must be no shorter than the time of concentration, "
                    + Text.exactDuration(concentrationTime()) + ", was " + Text.exactDuration(duration));
        }
        return peakM3PerS(rainfall.depthMm(duration, years) / Rain.hours(duration));
    }

    /**
     * Returns the volume that must be held back for steady rain of a duration and a steady release,
     * V = Q D − Q<sub>out</sub>(D + t<sub>c</sub>)/2 (American Public Works Association 1974, from memory). The greatest over all durations is
     * wanted.
     *
     * @param rainfall depths by duration and frequency
     * @param years return period, years
     * @param duration how long it rains D; no shorter than the time of concentration
     * @param releaseM3PerS greatest release, m³/s; 0 or greater
     * @return volume, m³; 0 if the release takes all
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double storageM3(DepthDurationFrequency rainfall, double years, Duration duration, double releaseM3PerS) {
        Require.nonNegative("releaseM3PerS", releaseM3PerS, "m3/s");
        double peak = peakOf(rainfall, years, duration);
        double seconds = 3600 * Rain.hours(duration);
        double concentration = 3600 * Rain.hours(concentrationTime());
        return Math.max(0, peak * seconds - releaseM3PerS * (seconds + concentration) / 2);
    }

    @Override
    public String toString() {
        return "RationalMethod[" + area + ", entry " + Text.duration(entry) + ", flow " + Text.duration(flow)
                + (routing == 1 ? "]" : ", routing " + Text.significant(routing, 6) + "]");
    }
}
