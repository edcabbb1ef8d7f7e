package dev.runnel.timeseries.alarm;

import dev.runnel.internal.Require;
import dev.runnel.internal.SeriesArrays;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.apiguardian.api.API;

/**
 * The settings of an alarm on a high or a low threshold; the package page says how it works. Immutable and thread-safe.
 * {@link #events(Series)} gives the alarms of a record, {@link #start()} a monitor that takes one reading after another,
 * with the same result; {@link #over} gives each change, so that an alarm stands there once when it becomes active and
 * once when it returns to normal or the record ends.
 *
 * <p>Readings that are not {@linkplain dev.runnel.timeseries.Quality#isUsable() usable} say nothing: the state is held
 * over them and they are counted. A time between two usable readings longer than the {@linkplain #withMaximumGap maximum
 * gap} is not taken to have continued either way: an active alarm stays active, but a running delay starts anew, a
 * pending onset moves behind the gap, and the gap is counted and, in an alarm, reported as unobserved. Unless set there
 * is no such limit.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ThresholdAlarm implements Rule<Reading, AlarmEvent, TextState> {
    private static final long UNLIMITED = Long.MAX_VALUE;

    private final boolean high;
    private final double limit;
    private final double deadband;
    private final long onDelay;
    private final long offDelay;
    private final long maximumGap;

    private ThresholdAlarm(boolean high, double limit, double deadband, long onDelay, long offDelay, long maximumGap) {
        this.high = high;
        this.limit = limit;
        this.deadband = deadband;
        this.onDelay = onDelay;
        this.offDelay = offDelay;
        this.maximumGap = maximumGap;
    }

    /**
     * Returns the alarm on values above a limit, without deadband and delays.
     *
     * @param limit highest value that is normal, in the unit of the readings
     * @return the alarm
     * @throws IllegalArgumentException if it is infinite or NaN
     */
    public static ThresholdAlarm high(double limit) {
        return new ThresholdAlarm(true, Require.finite("limit", limit, ""), 0, 0, 0, UNLIMITED);
    }

    /**
     * Returns the alarm on values below a limit, without deadband and delays.
     *
     * @param limit lowest value that is normal, in the unit of the readings
     * @return the alarm
     * @throws IllegalArgumentException if it is infinite or NaN
     */
    public static ThresholdAlarm low(double limit) {
        return new ThresholdAlarm(false, Require.finite("limit", limit, ""), 0, 0, 0, UNLIMITED);
    }

    /**
     * Returns the alarm with a deadband.
     *
     * @param deadband how far back past the limit a value must come, in the unit of the readings; 0 or greater
     * @return the new alarm
     * @throws IllegalArgumentException if it is negative, infinite or NaN
     */
    public ThresholdAlarm withDeadband(double deadband) {
        return new ThresholdAlarm(
                high, limit, Require.nonNegative("deadband", deadband, ""), onDelay, offDelay, maximumGap);
    }

    /**
     * Returns the alarm with an on-delay.
     *
     * @param onDelay how long values must lie beyond the limit; 0 or longer
     * @return the new alarm
     * @throws IllegalArgumentException if it is negative
     */
    public ThresholdAlarm withOnDelay(Duration onDelay) {
        long nanos = EpochNanos.nonNegative("onDelay", onDelay);
        return new ThresholdAlarm(high, limit, deadband, nanos, offDelay, maximumGap);
    }

    /**
     * Returns the alarm with an off-delay.
     *
     * @param offDelay how long values must be back past limit and deadband; 0 or longer
     * @return the new alarm
     * @throws IllegalArgumentException if it is negative
     */
    public ThresholdAlarm withOffDelay(Duration offDelay) {
        long nanos = EpochNanos.nonNegative("offDelay", offDelay);
        return new ThresholdAlarm(high, limit, deadband, onDelay, nanos, maximumGap);
    }

    /**
     * Returns the alarm with a limit to the time between two usable readings over which a delay runs on. It should be
     * longer than the usual time between readings, else no delay is ever completed.
     *
     * @param maximumGap greater than 0
     * @return the new alarm
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public ThresholdAlarm withMaximumGap(Duration maximumGap) {
        long nanos = EpochNanos.positive("maximumGap", maximumGap);
        return new ThresholdAlarm(high, limit, deadband, onDelay, offDelay, nanos);
    }

    /**
     * Starts a monitor that takes one reading after another.
     *
     * @return a new monitor in the normal state
     */
    @Override
    public AlarmMonitor start() {
        return new AlarmMonitor(this);
    }

    @Override
    public AlarmMonitor start(TextState state) {
        return new AlarmMonitor(this, state);
    }

    @Override
    public TextState parseState(String text) {
        return TextState.readBy(text, this::start);
    }

    /**
     * Finds the alarms of a record.
     *
     * @param series the readings
     * @return alarms in order of time; the last one may still be active
     */
    public List<AlarmEvent> events(Series series) {
        AlarmMonitor monitor = start();
        List<AlarmEvent> events = new ArrayList<>();
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        long[] times = keeper.times(series);
        double[] values = keeper.usableValues(series);
        for (int i = monitor.next(times, values, 0, times.length);
                i >= 0;
                i = monitor.next(times, values, i + 1, times.length)) {
            if (!monitor.isActive()) {
                events.add(monitor.latest().orElseThrow());
            }
        }
        events.addAll(monitor.finish());
        return List.copyOf(events);
    }

    boolean isHigh() {
        return high;
    }

    double limit() {
        return limit;
    }

    double deadband() {
        return deadband;
    }

    long onDelay() {
        return onDelay;
    }

    long offDelay() {
        return offDelay;
    }

    long maximumGap() {
        return maximumGap;
    }

    @Override
    public String toString() {
        return "ThresholdAlarm[" + (high ? "high " : "low ") + Text.significant(limit, 6) + ", deadband "
                + Text.significant(deadband, 6) + ", on-delay " + Text.duration(Duration.ofNanos(onDelay))
                + ", off-delay "
                + Text.duration(Duration.ofNanos(offDelay))
                + (maximumGap == UNLIMITED ? "" : ", maximum gap " + Text.duration(Duration.ofNanos(maximumGap))) + "]";
    }
}
