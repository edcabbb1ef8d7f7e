package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import org.apiguardian.api.API;

/**
 * Calls unusual a reading that has changed faster than a limit since the last one with a value. It is not evaluated at
 * the first value, or where the last one is further back than the maximum gap. Immutable and thread-safe.
 *
 * @param perSecond fastest usual change, unit of the readings per second; greater than 0
 * @param maximumGap longest time over which a change is judged; greater than 0
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record RateOfChangeCheck(double perSecond, Duration maximumGap) implements QualityCheck {
    private static final String STATE = "rate-of-change-check";

    /**
     * Checks the limits.
     *
     * @param perSecond fastest usual change
     * @param maximumGap longest time over which a change is judged
     * @throws IllegalArgumentException if one of them is not greater than 0
     */
    public RateOfChangeCheck {
        Require.positive("perSecond", perSecond, "1/s");
        EpochNanos.positive("maximumGap", maximumGap);
    }

    /**
     * Returns the check for a change over a time, judged at any distance.
     *
     * @param change greatest usual change, in the unit of the readings; greater than 0
     * @param over the time it takes; greater than 0
     * @return the check
     * @throws IllegalArgumentException if one of them is not greater than 0
     */
    public static RateOfChangeCheck of(double change, Duration over) {
        Require.positive("change", change, "");
        double seconds = EpochNanos.positive("over", over) / 1e9;
        return new RateOfChangeCheck(change / seconds, Duration.ofNanos(Long.MAX_VALUE));
    }

    /**
     * Returns the check with a longest time over which a change is judged.
     *
     * @param maximumGap greater than 0
     * @return the new check
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public RateOfChangeCheck withMaximumGap(Duration maximumGap) {
        return new RateOfChangeCheck(perSecond, maximumGap);
    }

    @Override
    public String name() {
        return "rate of change";
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start() {
        return new RateMachine(new MachineClock(), 0, Double.NaN);
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start(TextState state) {
        StateText text = StateText.parse(STATE, 1, state.toText());
        return new RateMachine(MachineClock.from(text), text.count("time"), text.number("value"));
    }

    @Override
    public String toString() {
        return "RateOfChangeCheck[" + "faster than " + Text.significant(perSecond, 6) + " a second, over at most "
                + Text.duration(maximumGap) + "]";
    }

    private final class RateMachine extends PromptMachine {
        /** The last usable value; NaN if there was none. */
        private double lastValue;

        private long lastTime;

        RateMachine(MachineClock clock, long lastTime, double lastValue) {
            super(clock);
            this.lastTime = lastTime;
            this.lastValue = lastValue;
        }

        @Override
        QualityFlag judge(Reading reading) {
            QualityFlag flag = flag(reading);
            lastTime = EpochNanos.of(reading.time());
            lastValue = reading.value();
            return flag;
        }

        private QualityFlag flag(Reading reading) {
            Duration time = Duration.between(EpochNanos.toInstant(lastTime), reading.time());
            if (Double.isNaN(lastValue) || time.compareTo(maximumGap) > 0) {
                return QualityFlag.notEvaluated(reading.time(), "no value before it near enough");
            }
            double seconds = time.getSeconds() + time.getNano() / 1e9;
            double change = reading.value() - lastValue;
            if (Math.abs(change) <= perSecond * seconds) {
                return QualityFlag.pass(reading.time());
            }
            return new QualityFlag(
                    reading.time(),
                    Verdict.UNUSUAL,
                    "from " + Text.number(lastValue) + " to " + Text.number(reading.value()) + " in "
                            + Text.duration(time) + ", at most " + Text.significant(perSecond * seconds, 4)
                            + " is usual");
        }

        @Override
        StateText keep() {
            return StateText.of(STATE, 1).with("time", lastTime).with("value", lastValue);
        }
    }
}
