package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.time.Instant;
import org.apiguardian.api.API;

/**
 * Calls unusual a reading that jumps while its companion stays (multivariate test): |x<sub>n</sub> − x<sub>n−1</sub>| &gt; N s
 * and |y<sub>n</sub> − y<sub>n−1</sub>| &lt; M t, with s and t the standard deviations (divisor n − 1) of both over the window
 * before this reading. In a sewer: depth that jumps with no change of velocity, or the other way round. With fewer than
 * ten pairs in the window nothing is judged (chosen here). Immutable and thread-safe.
 *
 * @param deviations N, of the reading; greater than 0
 * @param companionDeviations M, of the companion; greater than 0
 * @param window time over which the deviations are taken; greater than 0, at most 31 days
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record MultivariateCheck(double deviations, double companionDeviations, Duration window) implements PairCheck {
    private static final String STATE = "multivariate-check";

    /**
     * Checks the limits.
     *
     * @param deviations N, of the reading
     * @param companionDeviations M, of the companion
     * @param window time over which the deviations are taken
     * @throws IllegalArgumentException if one is not greater than 0, or the window longer than 31 days
     */
    public MultivariateCheck {
        Require.positive("deviations", deviations, "");
        Require.positive("companionDeviations", companionDeviations, "");
        Windows.require(window);
    }

    /**
     * Returns the check.
     *
     * @param deviations N, of the reading; greater than 0
     * @param companionDeviations M, of the companion; greater than 0
     * @param window time over which the deviations are taken; greater than 0, at most 31 days
     * @return the check
     * @throws IllegalArgumentException if one is not greater than 0, or the window longer than 31 days
     */
    public static MultivariateCheck ofJumpAboveAndStayBelow(
            double deviations, double companionDeviations, Duration window) {
        return new MultivariateCheck(deviations, companionDeviations, window);
    }

    @Override
    public String name() {
        return "multivariate";
    }

    @Override
    public Machine<ReadingPair, QualityFlag, TextState> start() {
        return new MultivariateMachine(new MachineClock(), new Recent(), new Recent());
    }

    @Override
    public Machine<ReadingPair, QualityFlag, TextState> start(TextState state) {
        StateText text = StateText.parse(STATE, 1, state.toText());
        Recent readings = Recent.from(text, "");
        Recent companions = Recent.from(text, "companion");
        Require.sameLength("state " + STATE + ": companionvalues", readings.size(), companions.size());
        return new MultivariateMachine(MachineClock.from(text), readings, companions);
    }

    @Override
    public String toString() {
        return "MultivariateCheck[" + Text.significant(deviations, 6) + " deviations, companion "
                + Text.significant(companionDeviations, 6) + ", over " + Text.duration(window) + "]";
    }

    private final class MultivariateMachine extends PairMachine {
        private final Recent readings;
        private final Recent companions;

        MultivariateMachine(MachineClock clock, Recent readings, Recent companions) {
            super(clock);
            this.readings = readings;
            this.companions = companions;
        }

        @Override
        QualityFlag judge(Instant time, double value, double companion) {
            long nanos = EpochNanos.of(time);
            long from = Recent.before(nanos, window.toNanos());
            readings.dropBefore(from);
            companions.dropBefore(from);
            QualityFlag flag = flag(time, value, companion);
            readings.add(nanos, value);
            companions.add(nanos, companion);
            return flag;
        }

        private QualityFlag flag(Instant time, double value, double companion) {
            if (readings.size() < DeviationRateCheck.LEAST) {
                return QualityFlag.notEvaluated(
                        time, "fewer than " + DeviationRateCheck.LEAST + " values in the window");
            }
            double change = Math.abs(value - readings.value(readings.size() - 1));
            double beside = Math.abs(companion - companions.value(companions.size() - 1));
            boolean jumps = change > deviations * readings.standardDeviation();
            boolean stays = beside < companionDeviations * companions.standardDeviation();
            return !(jumps && stays)
                    ? QualityFlag.pass(time)
                    : new QualityFlag(
                            time,
                            Verdict.UNUSUAL,
                            "changed by " + Text.significant(change, 4) + " while its companion changed by "
                                    + Text.significant(beside, 4));
        }

        @Override
        StateText keep() {
            return companions.into(readings.into(StateText.of(STATE, 1), ""), "companion");
        }
    }
}
