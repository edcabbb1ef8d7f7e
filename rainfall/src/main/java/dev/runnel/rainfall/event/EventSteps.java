package dev.runnel.rainfall.event;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;

/**
 * The steps of a record that share time with an event, however the event lies to them. One of no duration, a single tip, shares
 * the step it fell in.
 *
 * @param rain the steps that the record has
 * @param missing steps among them without a value, and steps that the record does not reach
 */
record EventSteps(RegularSeries rain, int missing) {
    static EventSteps of(RegularSeries rain, Interval event) {
        long start = EpochNanos.of(rain.start());
        long step = rain.step().toNanos();
        long first = Math.floorDiv(EpochNanos.of(event.start()) - start, step);
        long last = event.isEmpty() ? first : Math.floorDiv(EpochNanos.of(event.end()) - 1 - start, step);
        RegularSeries steps = rain.slice(Interval.of(
                EpochNanos.toInstant(start + step * first), EpochNanos.toInstant(start + step * (last + 1))));
        return new EventSteps(steps, Math.toIntExact(last - first + 1 - steps.size() + steps.missing()));
    }
}
