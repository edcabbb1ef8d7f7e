package dev.runnel.hydraulics.monitoring;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.SeriesArrays;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.TextState;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Finds surcharge periods reading by reading; {@link SurchargeRule#over} is the fold of it. Holds a few numbers, whatever
 * the length of the record. Not thread-safe.
 *
 * @see SurchargeRule#start()
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SurchargeWatch implements Machine<Reading, SurchargePeriod, TextState> {
    private static final String STATE = "surcharge";

    private final SurchargeRule rule;
    private final long maximumGap;
    private final MachineClock clock;

    /** Time of the last usable reading; only once there was one. */
    private long lastUsable;

    private boolean usable;

    /** State of the period that is open; {@code readings} is 0 if there is none. */
    private int readings;

    private long start;
    private boolean startSeen;
    private double peak;
    private long peakTime;

    SurchargeWatch(SurchargeRule rule) {
        this(rule, new MachineClock());
    }

    private SurchargeWatch(SurchargeRule rule, MachineClock clock) {
        this.rule = rule;
        this.maximumGap = EpochNanos.positive("maximumGap", rule.maximumGap());
        this.clock = clock;
    }

    SurchargeWatch(SurchargeRule rule, TextState state) {
        this(rule, StateText.parse(STATE, 1, state.toText()));
    }

    private SurchargeWatch(SurchargeRule rule, StateText state) {
        this(rule, MachineClock.from(state));
        usable = state.has("usable");
        lastUsable = usable ? state.count("usable") : 0;
        readings = state.index("readings");
        if (readings > 0) {
            start = state.count("start");
            startSeen = state.flag("startseen");
            peak = state.number("peak");
            peakTime = state.count("peaktime");
        }
    }

    /**
     * Takes one reading.
     *
     * @param level water level above the invert, m, later than the reading before; skipped if it is not usable
     * @return the period that this reading showed to be over, if any
     * @throws IllegalArgumentException if the time does not increase
     * @throws IllegalStateException after {@link #finish}
     */
    @Override
    public List<SurchargePeriod> next(Reading level) {
        long time = EpochNanos.of(level.time());
        clock.requireAfter(time);
        clock.moveTo(time);
        return level.quality().isUsable() ? usable(time, level.value()) : List.of();
    }

    private List<SurchargePeriod> usable(long time, double level) {
        boolean follows = usable && Long.compareUnsigned(time - lastUsable, maximumGap) <= 0;
        boolean above = rule.isAbove(level);
        List<SurchargePeriod> ended = List.of();
        if (readings > 0 && !(follows && above)) {
            ended = List.of(period(follows ? time : lastUsable, follows));
            readings = 0;
        }
        if (above) {
            add(time, level, follows);
        }
        lastUsable = time;
        usable = true;
        return ended;
    }

    /** Takes all readings of a record and ends it; below the level, where nothing is open, only the time counts. */
    List<SurchargePeriod> all(Series levels) {
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        long[] times = keeper.times(levels);
        double[] values = keeper.values(levels);
        byte[] qualities = keeper.qualities(levels);
        byte suspect = Quality.SUSPECT.toCode();
        List<SurchargePeriod> periods = new ArrayList<>();
        for (int i = 0; i < times.length; i++) {
            if (qualities[i] >= suspect) {
                continue;
            }
            if (readings > 0 || rule.isAbove(values[i])) {
                periods.addAll(usable(times[i], values[i]));
            } else {
                lastUsable = times[i];
                usable = true;
            }
        }
        periods.addAll(finish());
        return List.copyOf(periods);
    }

    /**
     * Returns the period that has not ended yet, as far as it is seen. The watch is not changed.
     *
     * @return the period up to its last reading above the level, if one is open
     */
    public Optional<SurchargePeriod> ongoing() {
        return readings == 0 ? Optional.empty() : Optional.of(period(lastUsable, false));
    }

    /**
     * Ends the record.
     *
     * @return the period that has not ended yet, up to its last reading above the level, if one is open
     * @throws IllegalStateException if called a second time
     */
    @Override
    public List<SurchargePeriod> finish() {
        clock.end();
        return ongoing().map(List::of).orElse(List.of());
    }

    @Override
    public TextState state() {
        StateText text = clock.into(StateText.of(STATE, 1)).with("readings", readings);
        if (usable) {
            text.with("usable", lastUsable);
        }
        if (readings > 0) {
            text.with("start", start)
                    .with("startseen", startSeen)
                    .with("peak", peak)
                    .with("peaktime", peakTime);
        }
        return TextState.of(text.toString());
    }

    @Override
    public String toString() {
        return "SurchargeWatch[" + rule + ", " + clock + "]";
    }

    private void add(long time, double value, boolean follows) {
        if (readings == 0) {
            start = time;
            startSeen = follows;
        }
        if (readings == 0 || value > peak) {
            peak = value;
            peakTime = time;
        }
        readings++;
    }

    private SurchargePeriod period(long end, boolean endSeen) {
        Instant from = EpochNanos.toInstant(start);
        return new SurchargePeriod(
                Interval.of(from, EpochNanos.toInstant(end)),
                peak - rule.level(),
                EpochNanos.toInstant(peakTime),
                readings,
                startSeen,
                endSeen);
    }
}
