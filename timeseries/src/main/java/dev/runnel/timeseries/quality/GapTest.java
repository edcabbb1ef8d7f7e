package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import java.io.Serializable;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Finds the times between two values that are longer than a limit. Missing readings count as none. What lies before the
 * first value and after the last is not known to be a gap. Immutable and thread-safe.
 *
 * @param maximum longest time between two values that is no gap; greater than 0
 * @serial exclude
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public record GapTest(Duration maximum) implements Serializable {
    /**
     * Checks the limit.
     *
     * @param maximum longest time between two values that is no gap
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public GapTest {
        EpochNanos.positive("maximum", maximum);
    }

    /**
     * Returns the test.
     *
     * @param maximum longest time between two values that is no gap; greater than 0
     * @return the test
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public static GapTest longerThan(Duration maximum) {
        return new GapTest(maximum);
    }

    /**
     * Finds the gaps of a record.
     *
     * @param series the readings
     * @return gaps in order of time, each from the last value before it to the first after
     */
    public List<Interval> gaps(Series series) {
        Machine machine = start();
        List<Interval> gaps = new ArrayList<>();
        for (int i = 0; i < series.size(); i++) {
            machine.next(series.get(i)).ifPresent(gaps::add);
        }
        return List.copyOf(gaps);
    }

    /**
     * Starts a machine that takes one reading after another.
     *
     * @return a new machine
     */
    public Machine start() {
        return new Machine(this);
    }

    /**
     * A gap test that takes one reading after another. Not thread-safe; serialisable.
     *
     * @serial exclude
     * @since 0.1
     */
    @API(status = API.Status.STABLE, since = "0.1")
    public static final class Machine implements Serializable {
        private static final long serialVersionUID = 1;

        /** The settings. */
        private final GapTest test;

        /** Time of the last value; meaningful once there was one. */
        private Instant last = Instant.MAX;

        Machine(GapTest test) {
            this.test = test;
        }

        /**
         * Takes the next reading.
         *
         * @param reading at a time after that of the one before
         * @return the gap that this reading ends, if any
         */
        public Optional<Interval> next(Reading reading) {
            if (reading.isMissing()) {
                return Optional.empty();
            }
            Instant before = last;
            last = reading.time();
            boolean isGap =
                    before.isBefore(last) && Duration.between(before, last).compareTo(test.maximum) > 0;
            return isGap ? Optional.of(Interval.of(before, last)) : Optional.empty();
        }
    }
}
