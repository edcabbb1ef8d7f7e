package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.apiguardian.api.API;

/**
 * Finds the times between two usable values that are longer than a limit. What lies before the first value and after the
 * last is not known to be a gap. Immutable and thread-safe.
 *
 * @param maximum longest time between two values that is no gap; greater than 0
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record GapCheck(Duration maximum) implements Rule<Reading, Interval, TextState> {
    private static final String STATE = "gap-check";
    private static final String VALUE = "value";

    /**
     * Checks the limit.
     *
     * @param maximum longest time between two values that is no gap
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public GapCheck {
        EpochNanos.positive("maximum", maximum);
    }

    /**
     * Returns the check.
     *
     * @param maximum longest time between two values that is no gap; greater than 0
     * @return the check
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public static GapCheck longerThan(Duration maximum) {
        return new GapCheck(maximum);
    }

    /**
     * Starts a machine that gives each gap, from the last value before it to the first after, with the reading that ends
     * it.
     */
    @Override
    public Machine<Reading, Interval, TextState> start() {
        return new GapMachine(new MachineClock(), Instant.MAX);
    }

    @Override
    public Machine<Reading, Interval, TextState> start(TextState state) {
        StateText text = StateText.parse(STATE, 1, state.toText());
        return new GapMachine(
                MachineClock.from(text), text.has(VALUE) ? EpochNanos.toInstant(text.count(VALUE)) : Instant.MAX);
    }

    /** Of a series no object is made of a reading. */
    @Override
    public List<Interval> over(Iterable<? extends Reading> inputs) {
        if (!(inputs instanceof Series series)) {
            return Rule.super.over(inputs);
        }
        long longest = maximum.toNanos();
        List<Interval> gaps = new ArrayList<>();
        int last = -1;
        for (int i = 0; i < series.size(); i++) {
            if (series.quality(i).isUsable()) {
                // Unsigned: two readings centuries apart overflow a long, and are apart all the same.
                if (last >= 0 && Long.compareUnsigned(series.epochNanos(i) - series.epochNanos(last), longest) > 0) {
                    gaps.add(Interval.of(series.time(last), series.time(i)));
                }
                last = i;
            }
        }
        return List.copyOf(gaps);
    }

    @Override
    public TextState parseState(String text) {
        return TextState.readBy(text, this::start);
    }

    @Override
    public String toString() {
        return "GapCheck[longer than " + Text.duration(maximum) + "]";
    }

    private final class GapMachine extends ReadingMachine<Interval> {
        /** Time of the last usable value; the end of time before there is one. */
        private Instant last;

        GapMachine(MachineClock clock, Instant last) {
            super(clock);
            this.last = last;
        }

        @Override
        List<Interval> take(Reading reading) {
            if (!reading.quality().isUsable()) {
                return List.of();
            }
            Instant before = last;
            last = reading.time();
            boolean isGap =
                    before.isBefore(last) && Duration.between(before, last).compareTo(maximum) > 0;
            return isGap ? List.of(Interval.of(before, last)) : List.of();
        }

        @Override
        StateText keep() {
            StateText text = StateText.of(STATE, 1);
            return last.equals(Instant.MAX) ? text : text.with(VALUE, EpochNanos.of(last));
        }
    }
}
