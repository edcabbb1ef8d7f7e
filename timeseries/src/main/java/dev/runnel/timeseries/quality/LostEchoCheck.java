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
 * Fails the value that a sensor writes when it loses its echo: 0, the end of its range, a value all its own. Such a value
 * may be true, so it fails only if it comes by a jump: from the last other value it differs by more than the jump, and
 * that value is not older than the gap. It goes on failing until another value comes. Immutable and thread-safe.
 *
 * @param value value that stands for a lost echo, in the unit of the readings; finite
 * @param jump smallest difference to the last other value that water does not make between two readings; greater than 0
 * @param maximumGap longest time since that value over which the jump is judged; greater than 0
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record LostEchoCheck(double value, double jump, Duration maximumGap) implements QualityCheck {
    private static final String STATE = "lost-echo-check";

    /**
     * Checks the limits.
     *
     * @param value value that stands for a lost echo
     * @param jump smallest difference to the last other value
     * @param maximumGap longest time since that value
     * @throws IllegalArgumentException if the value is not finite, or one of the others not greater than 0
     */
    public LostEchoCheck {
        Require.finite("value", value, "");
        Require.positive("jump", jump, "");
        EpochNanos.positive("maximumGap", maximumGap);
    }

    /**
     * Returns the check.
     *
     * @param value value that stands for a lost echo, in the unit of the readings; finite
     * @param jump smallest difference to the last other value; greater than 0
     * @param maximumGap longest time since that value over which the jump is judged; greater than 0
     * @return the check
     * @throws IllegalArgumentException if the value is not finite, or one of the others not greater than 0
     */
    public static LostEchoCheck ofValueAndJump(double value, double jump, Duration maximumGap) {
        return new LostEchoCheck(value, jump, maximumGap);
    }

    @Override
    public String name() {
        return "lost echo";
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start() {
        return new EchoMachine(new MachineClock(), 0, Double.NaN, false);
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start(TextState state) {
        StateText text = StateText.parse(STATE, 1, state.toText());
        return new EchoMachine(MachineClock.from(text), text.count("time"), text.number("value"), text.flag("lost"));
    }

    @Override
    public String toString() {
        return "LostEchoCheck[" + "jump of " + Text.significant(jump, 6) + " or more to " + Text.significant(value, 6)
                + ", within " + Text.duration(maximumGap) + "]";
    }

    private final class EchoMachine extends PromptMachine {
        /** The last value that did not stand for a lost echo; NaN if there was none. */
        private double lastOther;

        private long lastTime;
        private boolean lost;

        EchoMachine(MachineClock clock, long lastTime, double lastOther, boolean lost) {
            super(clock);
            this.lastTime = lastTime;
            this.lastOther = lastOther;
            this.lost = lost;
        }

        @Override
        QualityFlag judge(Reading reading) {
            long time = EpochNanos.of(reading.time());
            if (reading.value() != value) {
                lastOther = reading.value();
                lastTime = time;
                lost = false;
                return QualityFlag.pass(reading.time());
            }
            lost = lost
                    || Math.abs(value - lastOther) > jump
                            && Long.compareUnsigned(time - lastTime, maximumGap.toNanos()) <= 0;
            return lost
                    ? new QualityFlag(
                            reading.time(),
                            Verdict.FAIL,
                            Text.number(value) + " after " + Text.number(lastOther) + ", the value of a lost echo")
                    : QualityFlag.pass(reading.time());
        }

        @Override
        StateText keep() {
            return StateText.of(STATE, 1)
                    .with("time", lastTime)
                    .with("value", lastOther)
                    .with("lost", lost);
        }
    }
}
