package dev.runnel.hydraulics.monitoring;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Finds the periods in which the water stood above a level, by default the soffit of a pipe. Immutable and thread-safe.
 *
 * <p>Only usable readings count ({@link dev.runnel.timeseries.Quality#isUsable()}). A level within 1e-9 relative above the
 * limit is rounding and not above. Where two usable readings lie further apart than the longest allowed gap, nothing is
 * assumed about the time between: a period that reaches the gap ends there with its end not seen, and one that begins
 * behind it has its start not seen.
 *
 * <p>What this is not: an alarm. There is no deadband and no delay here, so a level that trembles about the soffit gives
 * many short periods; nor does it say why the pipe was full (too much flow, or a limit downstream).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SurchargeRule implements Rule<Reading, SurchargePeriod, TextState> {
    /** Chosen here: seven readings at the two minutes that are common practice for sewer monitors. */
    private static final Duration DEFAULT_GAP = Duration.ofMinutes(15);

    /** Relative; far above rounding, far below any sensor's resolution. */
    private static final double ROUNDING = 1e-9;

    private final double level;
    private final Duration maximumGap;

    private SurchargeRule(double level, Duration maximumGap) {
        this.level = level;
        this.maximumGap = maximumGap;
    }

    /**
     * Returns the rule for the soffit of a monitored pipe.
     *
     * @param monitor a monitor in a closed section
     * @return the rule, with gaps of up to 15 minutes bridged
     * @throws IllegalArgumentException if the section is open
     */
    public static SurchargeRule of(PipeMonitor monitor) {
        if (Double.isInfinite(monitor.soffit())) {
            throw new IllegalArgumentException("monitor must be in a closed section, was " + monitor);
        }
        return above(monitor.soffit());
    }

    /**
     * Returns the rule for any level, for example the soffit, a weir crest or the ground at a manhole.
     *
     * @param level level above the invert, m; 0 or greater
     * @return the rule, with gaps of up to 15 minutes bridged
     * @throws IllegalArgumentException if {@code level} is negative, infinite or NaN
     */
    public static SurchargeRule above(double level) {
        return new SurchargeRule(Require.nonNegative("level", level, "m"), DEFAULT_GAP);
    }

    /**
     * Returns this rule with another longest gap between usable readings that is bridged.
     *
     * @param maximumGap longest time between two readings that are taken to follow each other; longer than 0
     * @return the rule
     * @throws IllegalArgumentException if it is 0 or negative
     */
    public SurchargeRule withMaximumGap(Duration maximumGap) {
        EpochNanos.positive("maximumGap", maximumGap);
        return new SurchargeRule(level, maximumGap);
    }

    /**
     * Returns the level that must be exceeded.
     *
     * @return level above the invert, m
     */
    public double level() {
        return level;
    }

    /**
     * Returns the longest gap that is bridged.
     *
     * @return duration
     */
    public Duration maximumGap() {
        return maximumGap;
    }

    /**
     * Starts a watch that takes one reading of the water level above the invert, m, after another, as
     * {@link FlowRecord#level()} holds them. {@link #over} gives the periods of a record; the last may still have gone on
     * at its end.
     *
     * @return a new watch
     */
    @Override
    public SurchargeWatch start() {
        return new SurchargeWatch(this);
    }

    @Override
    public List<SurchargePeriod> over(Iterable<? extends Reading> inputs) {
        return inputs instanceof Series series ? start().all(series) : Rule.super.over(inputs);
    }

    @Override
    public SurchargeWatch start(TextState state) {
        return new SurchargeWatch(this, state);
    }

    @Override
    public TextState parseState(String text) {
        return TextState.readBy(text, this::start);
    }

    boolean isAbove(double reading) {
        return isAbove(reading, level);
    }

    static boolean isAbove(double reading, double limit) {
        return reading > highestNotAbove(limit);
    }

    static double highestNotAbove(double limit) {
        return limit * (1 + ROUNDING);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SurchargeRule that
                && Double.compare(level, that.level) == 0
                && maximumGap.equals(that.maximumGap);
    }

    @Override
    public int hashCode() {
        return Objects.hash(level, maximumGap);
    }

    @Override
    public String toString() {
        return "SurchargeRule[above " + Text.significant(level, 6) + " m, gaps up to " + Text.duration(maximumGap)
                + "]";
    }
}
