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
 * Fails readings that stand still while their companion moves: a velocity that is stuck while the depth goes through its
 * day, or a depth that is stuck while the velocity does. Range is highest less lowest over the window up to this reading.
 * Nothing is judged until the record is as long as the window. Immutable and thread-safe.
 *
 * @param window time over which both ranges are taken; greater than 0, at most 31 days
 * @param standsBelow range of the readings up to which they stand still; 0 or greater
 * @param movesAbove range of the companion above which it moves; greater than 0
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record DeadSensorCheck(Duration window, double standsBelow, double movesAbove) implements PairCheck {
    private static final String STATE = "dead-sensor-check";
    private static final String SINCE = "since";

    /**
     * Checks the limits.
     *
     * @param window time over which both ranges are taken
     * @param standsBelow range of the readings up to which they stand still
     * @param movesAbove range of the companion above which it moves
     * @throws IllegalArgumentException if one of them is out of its range
     */
    public DeadSensorCheck {
        Windows.require(window);
        Require.nonNegative("standsBelow", standsBelow, "");
        Require.positive("movesAbove", movesAbove, "");
    }

    /**
     * Returns the check.
     *
     * @param window time over which both ranges are taken; greater than 0, at most 31 days
     * @param standsBelow range of the readings up to which they stand still; 0 or greater
     * @param movesAbove range of the companion above which it moves; greater than 0
     * @return the check
     * @throws IllegalArgumentException if one of them is out of its range
     */
    public static DeadSensorCheck ofStandBelowAndMoveAbove(Duration window, double standsBelow, double movesAbove) {
        return new DeadSensorCheck(window, standsBelow, movesAbove);
    }

    @Override
    public String name() {
        return "dead sensor";
    }

    @Override
    public Machine<ReadingPair, QualityFlag, TextState> start() {
        return new DeadMachine(new MachineClock(), new Recent(), new Recent(), Long.MAX_VALUE);
    }

    @Override
    public Machine<ReadingPair, QualityFlag, TextState> start(TextState state) {
        StateText text = StateText.parse(STATE, 1, state.toText());
        return new DeadMachine(
                MachineClock.from(text), Recent.from(text, ""), Recent.from(text, "companion"), text.count(SINCE));
    }

    @Override
    public String toString() {
        return "DeadSensorCheck[" + "stands within " + Text.significant(standsBelow, 6)
                + " while the companion moves more than " + Text.significant(movesAbove, 6) + ", over "
                + Text.duration(window)
                + "]";
    }

    private final class DeadMachine extends PairMachine {
        private final Recent readings;
        private final Recent companions;
        private long since;

        DeadMachine(MachineClock clock, Recent readings, Recent companions, long since) {
            super(clock);
            this.readings = readings;
            this.companions = companions;
            this.since = since;
        }

        @Override
        QualityFlag judge(Instant time, double value, double companion) {
            long nanos = EpochNanos.of(time);
            since = Math.min(since, nanos);
            long from = Recent.before(nanos, window.toNanos());
            readings.dropBefore(from);
            companions.dropBefore(from);
            readings.add(nanos, value);
            companions.add(nanos, companion);
            if (Long.compareUnsigned(nanos - since, window.toNanos()) < 0 || readings.size() < 2) {
                return QualityFlag.notEvaluated(time, "no record over the whole window");
            }
            double still = readings.range();
            double moving = companions.range();
            if (still > standsBelow || !(moving > movesAbove)) {
                return QualityFlag.pass(time);
            }
            return new QualityFlag(
                    time,
                    Verdict.FAIL,
                    "moved by " + Text.significant(still, 4) + " in " + Text.duration(window)
                            + " while its companion moved by " + Text.significant(moving, 4));
        }

        @Override
        StateText keep() {
            return companions.into(readings.into(StateText.of(STATE, 1).with(SINCE, since), ""), "companion");
        }
    }
}
