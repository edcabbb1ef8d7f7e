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
 * Finds velocities of zero in water that is deep enough to be measured: the companion is the depth. A velocity of zero
 * there is unusual, for water may stand; when it lasts, it fails, for a sensor that is covered or blind writes zeros.
 * Immutable and thread-safe.
 *
 * @param zero highest magnitude that is zero, in the unit of the readings; 0 or greater
 * @param depthAbove depth above which a zero is looked at, in the unit of the companion; 0 or greater
 * @param failAfter how long zeros must last to fail; greater than 0
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ZeroWithDepthCheck(double zero, double depthAbove, Duration failAfter) implements PairCheck {
    private static final String STATE = "zero-with-depth-check";
    private static final String SINCE = "since";

    /**
     * Checks the limits.
     *
     * @param zero highest magnitude that is zero
     * @param depthAbove depth above which a zero is looked at
     * @param failAfter how long zeros must last to fail
     * @throws IllegalArgumentException if a limit is negative or NaN, or the time not greater than 0
     */
    public ZeroWithDepthCheck {
        Require.nonNegative("zero", zero, "");
        Require.nonNegative("depthAbove", depthAbove, "");
        EpochNanos.positive("failAfter", failAfter);
    }

    /**
     * Returns the check for zeros as the sensor writes them.
     *
     * @param depthAbove depth above which a zero is looked at, in the unit of the companion; 0 or greater
     * @param failAfter how long zeros must last to fail; greater than 0
     * @return the check
     * @throws IllegalArgumentException if the depth is negative or NaN, or the time not greater than 0
     */
    public static ZeroWithDepthCheck of(double depthAbove, Duration failAfter) {
        return new ZeroWithDepthCheck(0, depthAbove, failAfter);
    }

    @Override
    public String name() {
        return "zero with depth";
    }

    @Override
    public Machine<ReadingPair, QualityFlag, TextState> start() {
        return new ZeroMachine(StateText.of(STATE, 1));
    }

    @Override
    public Machine<ReadingPair, QualityFlag, TextState> start(TextState state) {
        return new ZeroMachine(StateText.parse(STATE, 1, state.toText()));
    }

    @Override
    public String toString() {
        return "ZeroWithDepthCheck[" + "up to " + Text.significant(zero, 6) + " with a depth above "
                + Text.significant(depthAbove, 6) + ", fails after " + Text.duration(failAfter) + "]";
    }

    private final class ZeroMachine extends PairMachine {
        private boolean running;
        private long since;

        ZeroMachine(StateText text) {
            super(MachineClock.from(text));
            running = text.has(SINCE);
            since = running ? text.count(SINCE) : 0;
        }

        @Override
        QualityFlag judge(Instant time, double value, double companion) {
            if (Math.abs(value) > zero || companion <= depthAbove) {
                running = false;
                return QualityFlag.pass(time);
            }
            long nanos = EpochNanos.of(time);
            if (!running) {
                running = true;
                since = nanos;
            }
            boolean fails = Long.compareUnsigned(nanos - since, failAfter.toNanos()) >= 0;
            return new QualityFlag(
                    time,
                    fails ? Verdict.FAIL : Verdict.UNUSUAL,
                    Text.number(value) + " at a depth of " + Text.number(companion) + " for "
                            + Text.duration(Duration.between(EpochNanos.toInstant(since), time)));
        }

        @Override
        StateText keep() {
            StateText text = StateText.of(STATE, 1);
            return running ? text.with(SINCE, since) : text;
        }
    }
}
