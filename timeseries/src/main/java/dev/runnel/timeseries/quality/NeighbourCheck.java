package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.TextState;
import java.time.Instant;
import org.apiguardian.api.API;

/**
 * Compares a reading with that of a second sensor, a neighbouring site or a forecast (neighbour test). Immutable and
 * thread-safe.
 *
 * @param unusualAbove difference above which a reading is unusual, in its unit; 0 or greater
 * @param failAbove difference above which it fails; not below {@code unusualAbove}
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record NeighbourCheck(double unusualAbove, double failAbove) implements PairCheck {
    private static final String STATE = "neighbour-check";

    /**
     * Checks the limits.
     *
     * @param unusualAbove difference above which a reading is unusual
     * @param failAbove difference above which it fails
     * @throws IllegalArgumentException if a limit is negative or NaN, or they are not in order
     */
    public NeighbourCheck {
        Require.nonNegative("unusualAbove", unusualAbove, "");
        Require.inRange("failAbove", failAbove, unusualAbove, Double.POSITIVE_INFINITY, "");
    }

    /**
     * Returns the check.
     *
     * @param unusualAbove difference above which a reading is unusual, in its unit; 0 or greater
     * @param failAbove difference above which it fails; not below {@code unusualAbove}
     * @return the check
     * @throws IllegalArgumentException if a limit is negative or NaN, or they are not in order
     */
    public static NeighbourCheck of(double unusualAbove, double failAbove) {
        return new NeighbourCheck(unusualAbove, failAbove);
    }

    @Override
    public String name() {
        return "neighbour";
    }

    @Override
    public Machine<ReadingPair, QualityFlag, TextState> start() {
        return new NeighbourMachine(new MachineClock());
    }

    @Override
    public Machine<ReadingPair, QualityFlag, TextState> start(TextState state) {
        return new NeighbourMachine(MachineClock.from(StateText.parse(STATE, 1, state.toText())));
    }

    private final class NeighbourMachine extends PairMachine {
        NeighbourMachine(MachineClock clock) {
            super(clock);
        }

        @Override
        QualityFlag judge(Instant time, double value, double companion) {
            double difference = Math.abs(value - companion);
            if (difference <= unusualAbove) {
                return QualityFlag.pass(time);
            }
            return new QualityFlag(
                    time,
                    difference > failAbove ? Verdict.FAIL : Verdict.UNUSUAL,
                    Text.number(value) + " beside " + Text.number(companion));
        }

        @Override
        StateText keep() {
            return StateText.of(STATE, 1);
        }
    }
}
