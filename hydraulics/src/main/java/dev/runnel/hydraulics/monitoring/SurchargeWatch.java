package dev.runnel.hydraulics.monitoring;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import java.time.Instant;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Finds surcharge periods reading by reading; {@link Surcharge#periods} is the fold of it. Holds a few numbers, whatever
 * the length of the record. Not thread-safe.
 *
 * @see Surcharge#start()
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class SurchargeWatch {
    private static final long NEVER = Long.MIN_VALUE;

    private final Surcharge rule;
    private final long maximumGap;
    private long last = NEVER;
    private long lastUsable = NEVER;

    /** State of the period that is open; {@code readings} is 0 if there is none. */
    private int readings;

    private long start;
    private boolean startSeen;
    private double peak;
    private long peakTime;

    SurchargeWatch(Surcharge rule) {
        this.rule = rule;
        this.maximumGap = EpochNanos.positive("maximumGap", rule.maximumGap());
    }

    /**
     * Takes one reading.
     *
     * @param level water level above the invert, m, later than the reading before; skipped if it is not usable
     * @return the period that this reading showed to be over, if any
     * @throws IllegalArgumentException if the time does not increase
     */
    public Optional<SurchargePeriod> next(Reading level) {
        long time = EpochNanos.of(level.time());
        if (last != NEVER && time <= last) {
            throw new IllegalArgumentException(
                    "level must be later than the reading at " + EpochNanos.toInstant(last) + ", was " + level.time());
        }
        last = time;
        if (!level.quality().isUsable()) {
            return Optional.empty();
        }
        boolean follows = lastUsable != NEVER && time - lastUsable <= maximumGap;
        boolean above = rule.isAbove(level.value());
        Optional<SurchargePeriod> ended = Optional.empty();
        if (readings > 0 && !(follows && above)) {
            ended = Optional.of(period(follows ? time : lastUsable, follows));
            readings = 0;
        }
        if (above) {
            add(time, level.value(), follows);
        }
        lastUsable = time;
        return ended;
    }

    /**
     * Returns the period that has not ended yet, as far as it is seen. The watch is not changed.
     *
     * @return the period up to its last reading above the level, if one is open
     */
    public Optional<SurchargePeriod> ongoing() {
        return readings == 0 ? Optional.empty() : Optional.of(period(lastUsable, false));
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
