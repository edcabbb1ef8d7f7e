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
 * Calls unusual a reading that differs from the one before by more than so many standard deviations of the readings just
 * past (rate of change test in its statistical form): |x<sub>n</sub> − x<sub>n−1</sub>| &gt; N s, s over the readings in the
 * window before this one, divisor n − 1. With fewer than ten readings in the window nothing is judged (chosen here).
 * Immutable and thread-safe.
 *
 * <p>In a flat record s is 0 and any change is unusual: a flow with a dead sensor that comes back. Use it where signals
 * move.
 *
 * @param deviations N, standard deviations; greater than 0
 * @param window time over which the deviation is taken; greater than 0, at most 31 days
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record DeviationRateCheck(double deviations, Duration window) implements QualityCheck {
    private static final String STATE = "deviation-rate-check";

    /** Chosen here: the standard deviation of ten values is known to about a quarter. */
    static final int LEAST = 10;

    /**
     * Checks the limits.
     *
     * @param deviations N, standard deviations
     * @param window time over which the deviation is taken
     * @throws IllegalArgumentException if one of them is not greater than 0, or the window longer than 31 days
     */
    public DeviationRateCheck {
        Require.positive("deviations", deviations, "");
        Windows.require(window);
    }

    /**
     * Returns the check.
     *
     * @param deviations N, standard deviations; greater than 0
     * @param window time over which the deviation is taken; greater than 0, at most 31 days
     * @return the check
     * @throws IllegalArgumentException if one of them is not greater than 0, or the window longer than 31 days
     */
    public static DeviationRateCheck of(double deviations, Duration window) {
        return new DeviationRateCheck(deviations, window);
    }

    @Override
    public String name() {
        return "rate of change";
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start() {
        return new DeviationMachine(new MachineClock(), new Recent());
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start(TextState state) {
        StateText text = StateText.parse(STATE, 1, state.toText());
        return new DeviationMachine(MachineClock.from(text), Recent.from(text, ""));
    }

    @Override
    public String toString() {
        return "DeviationRateCheck[" + Text.significant(deviations, 6) + " deviations, over " + Text.duration(window)
                + "]";
    }

    private final class DeviationMachine extends PromptMachine {
        private final Recent recent;

        DeviationMachine(MachineClock clock, Recent recent) {
            super(clock);
            this.recent = recent;
        }

        @Override
        QualityFlag judge(Reading reading) {
            long time = EpochNanos.of(reading.time());
            recent.dropBefore(Recent.before(time, window.toNanos()));
            QualityFlag flag = flag(reading);
            recent.add(time, reading.value());
            return flag;
        }

        private QualityFlag flag(Reading reading) {
            if (recent.size() < LEAST) {
                return QualityFlag.notEvaluated(reading.time(), "fewer than " + LEAST + " values in the window");
            }
            double change = Math.abs(reading.value() - recent.value(recent.size() - 1));
            double limit = deviations * recent.standardDeviation();
            return change <= limit
                    ? QualityFlag.pass(reading.time())
                    : new QualityFlag(
                            reading.time(),
                            Verdict.UNUSUAL,
                            "changed by " + Text.significant(change, 4) + ", at most " + Text.significant(limit, 4)
                                    + " is usual");
        }

        @Override
        StateText keep() {
            return recent.into(StateText.of(STATE, 1), "");
        }
    }
}
