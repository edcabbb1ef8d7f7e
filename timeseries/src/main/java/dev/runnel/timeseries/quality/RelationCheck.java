package dev.runnel.timeseries.quality;

import dev.runnel.internal.Interpolation;
import dev.runnel.internal.MachineClock;
import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.TextState;
import java.time.Instant;
import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * Calls unusual a reading that contradicts its companion: it lies outside the band that is usual at the companion's value.
 * The band is given at some values of the companion and is linear between them; outside of them nothing is judged. For a
 * velocity beside a depth the band comes from the site's own record, or from the hydraulics. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RelationCheck implements PairCheck {
    private static final String STATE = "relation-check";

    private final double[] companions;
    private final double[] lowest;
    private final double[] highest;

    private RelationCheck(double[] companions, double[] lowest, double[] highest) {
        this.companions = companions;
        this.lowest = lowest;
        this.highest = highest;
    }

    /**
     * Returns the check with a band.
     *
     * @param companions values of the companion, rising, at least two; copied
     * @param lowest lowest usual reading at each; copied
     * @param highest highest usual reading at each, not below the lowest; copied
     * @return the check
     * @throws IllegalArgumentException if lengths differ, there are fewer than two, the companions do not rise, or a limit
     *     is not finite or not in order
     */
    public static RelationCheck of(double[] companions, double[] lowest, double[] highest) {
        Require.atLeast("number of companions", companions.length, 2);
        Require.sameLength("lowest", companions.length, lowest.length);
        Require.sameLength("highest", companions.length, highest.length);
        for (int i = 0; i < companions.length; i++) {
            Require.finite("companions", companions[i], "");
            Require.finite("lowest", lowest[i], "");
            Require.inRange("highest", highest[i], lowest[i], Double.MAX_VALUE, "");
            if (i > 0 && !(companions[i] > companions[i - 1])) {
                throw new IllegalArgumentException("companions must rise, was " + Text.number(companions[i]) + " after "
                        + Text.number(companions[i - 1]));
            }
        }
        return new RelationCheck(companions.clone(), lowest.clone(), highest.clone());
    }

    @Override
    public String name() {
        return "relation";
    }

    @Override
    public Machine<ReadingPair, QualityFlag, TextState> start() {
        return new RelationMachine(new MachineClock());
    }

    @Override
    public Machine<ReadingPair, QualityFlag, TextState> start(TextState state) {
        return new RelationMachine(MachineClock.from(StateText.parse(STATE, 1, state.toText())));
    }

    private double at(double companion, double[] limits) {
        return Interpolation.held(companions, limits, companion);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RelationCheck that
                && Arrays.equals(companions, that.companions)
                && Arrays.equals(lowest, that.lowest)
                && Arrays.equals(highest, that.highest);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * Arrays.hashCode(companions) + Arrays.hashCode(lowest)) + Arrays.hashCode(highest);
    }

    @Override
    public String toString() {
        return "RelationCheck[at " + Arrays.toString(companions) + ", lowest " + Arrays.toString(lowest) + ", highest "
                + Arrays.toString(highest) + "]";
    }

    private final class RelationMachine extends PairMachine {
        RelationMachine(MachineClock clock) {
            super(clock);
        }

        @Override
        QualityFlag judge(Instant time, double value, double companion) {
            if (companion < companions[0] || companion > companions[companions.length - 1]) {
                return QualityFlag.notEvaluated(time, "no band at " + Text.number(companion));
            }
            double low = at(companion, lowest);
            double high = at(companion, highest);
            if (value >= low && value <= high) {
                return QualityFlag.pass(time);
            }
            return new QualityFlag(
                    time,
                    Verdict.UNUSUAL,
                    Text.number(value) + " is outside [" + Text.significant(low, 4) + ", " + Text.significant(high, 4)
                            + "], usual beside " + Text.number(companion));
        }

        @Override
        StateText keep() {
            return StateText.of(STATE, 1);
        }
    }
}
