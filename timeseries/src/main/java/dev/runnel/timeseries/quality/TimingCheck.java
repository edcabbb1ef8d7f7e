package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.util.List;
import org.apiguardian.api.API;

/**
 * Calls unusual a reading that does not come a whole number of logging intervals after the one before: the clock was set,
 * or readings were taken by hand (timing test). A reading left out is a gap, not a fault of the timing. Immutable and
 * thread-safe.
 *
 * @param interval logging interval; greater than 0
 * @param tolerance largest difference to a whole number of intervals; 0 or longer, shorter than half an interval
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record TimingCheck(Duration interval, Duration tolerance) implements QualityCheck {
    private static final String STATE = "timing-check";
    private static final String BEFORE = "before";

    /**
     * Checks the limits.
     *
     * @param interval logging interval
     * @param tolerance largest difference to a whole number of intervals
     * @throws IllegalArgumentException if the interval is not greater than 0, or the tolerance negative or half an
     *     interval or longer
     */
    public TimingCheck {
        EpochNanos.positive("interval", interval);
        EpochNanos.nonNegative("tolerance", tolerance);
        if (tolerance.multipliedBy(2).compareTo(interval) >= 0) {
            throw new IllegalArgumentException("tolerance must be shorter than half of the interval, "
                    + Text.exactDuration(interval) + ", was " + Text.exactDuration(tolerance));
        }
    }

    /**
     * Returns the check.
     *
     * @param interval logging interval; greater than 0
     * @param tolerance largest difference to a whole number of intervals; shorter than half an interval
     * @return the check
     * @throws IllegalArgumentException if the interval is not greater than 0, or the tolerance out of its range
     */
    public static TimingCheck of(Duration interval, Duration tolerance) {
        return new TimingCheck(interval, tolerance);
    }

    @Override
    public String name() {
        return "timing";
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start() {
        return new TimingMachine(StateText.of(STATE, 1));
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start(TextState state) {
        return new TimingMachine(StateText.parse(STATE, 1, state.toText()));
    }

    @Override
    public String toString() {
        return "TimingCheck[" + "every " + Text.duration(interval) + ", to within " + Text.duration(tolerance) + "]";
    }

    private final class TimingMachine extends ReadingMachine<QualityFlag> {
        private boolean begun;
        private long before;

        TimingMachine(StateText text) {
            super(MachineClock.from(text));
            begun = text.has(BEFORE);
            before = begun ? text.count(BEFORE) : 0;
        }

        @Override
        List<QualityFlag> take(Reading reading) {
            long time = EpochNanos.of(reading.time());
            QualityFlag flag = flag(reading, time);
            begun = true;
            before = time;
            return List.of(flag);
        }

        private QualityFlag flag(Reading reading, long time) {
            if (!reading.quality().isUsable()) {
                return QualityFlag.unusable(reading);
            }
            if (!begun) {
                return QualityFlag.notEvaluated(reading.time(), "no reading before it");
            }
            long step = interval.toNanos();
            long past = Long.remainderUnsigned(time - before, step);
            boolean whole = Long.compareUnsigned(time - before, step / 2) > 0
                    && Math.min(past, step - past) <= tolerance.toNanos();
            return whole
                    ? QualityFlag.pass(reading.time())
                    : new QualityFlag(
                            reading.time(),
                            Verdict.UNUSUAL,
                            "came " + Text.duration(Duration.between(EpochNanos.toInstant(before), reading.time()))
                                    + " after the one before, not a multiple of " + Text.duration(interval));
        }

        @Override
        StateText keep() {
            StateText text = StateText.of(STATE, 1);
            return begun ? text.with(BEFORE, before) : text;
        }
    }
}
