package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import org.apiguardian.api.API;

/**
 * Counts equal values in a row: a reading is unusual when it and those just before it make so many, and fails when they
 * make more. The first readings of a run pass, since nothing was known yet. A missing or suspect reading ends a run. Immutable and
 * thread-safe.
 *
 * @param unusualCount values in a row that are unusual; at least 2
 * @param failCount values in a row that fail; not below {@code unusualCount}, at most 100 000
 * @param tolerance difference from this reading up to which one before it is equal, in the unit of the readings; 0 or
 *     greater
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record FlatLineCheck(int unusualCount, int failCount, double tolerance) implements QualityCheck {
    private static final String STATE = "flat-line-check";
    private static final int MOST = 100_000;

    /**
     * Checks the limits.
     *
     * @param unusualCount values in a row that are unusual
     * @param failCount values in a row that fail
     * @param tolerance difference up to which values are equal
     * @throws IllegalArgumentException if a count is out of its range or the tolerance negative or NaN
     */
    public FlatLineCheck {
        Require.atLeast("unusualCount", unusualCount, 2);
        Require.inRange("failCount", failCount, unusualCount, MOST, "");
        Require.nonNegative("tolerance", tolerance, "");
    }

    /**
     * Returns the check.
     *
     * @param unusualCount values in a row that are unusual; at least 2
     * @param failCount values in a row that fail; not below {@code unusualCount}, at most 100 000
     * @param tolerance difference up to which values are equal, in the unit of the readings; 0 or greater
     * @return the check
     * @throws IllegalArgumentException if a count is out of its range or the tolerance negative or NaN
     */
    public static FlatLineCheck of(int unusualCount, int failCount, double tolerance) {
        return new FlatLineCheck(unusualCount, failCount, tolerance);
    }

    @Override
    public String name() {
        return "flat line";
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start() {
        return new FlatLineMachine(new MachineClock(), new double[0]);
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start(TextState state) {
        StateText text = StateText.parse(STATE, 1, state.toText());
        double[] run = text.numbers("run");
        Require.inRange("state " + STATE + ": length of run", run.length, 0, failCount, "");
        for (double each : run) {
            Require.finite("state " + STATE + ": run", each, "");
        }
        return new FlatLineMachine(MachineClock.from(text), run);
    }

    private final class FlatLineMachine extends PromptMachine {
        /** The last values in a row, in a ring; no more than can matter. */
        private final double[] recent = new double[failCount];

        private int available;
        private int next;

        /** How many of the last values are the same; no more than can matter. */
        private int same;

        FlatLineMachine(MachineClock clock, double[] run) {
            super(clock);
            for (double value : run) {
                note(value);
            }
        }

        private void note(double value) {
            same = available > 0 && value == before(1) ? Math.min(same + 1, recent.length) : 1;
            recent[next] = value;
            next = next + 1 == recent.length ? 0 : next + 1;
            available = Math.min(available + 1, recent.length);
        }

        private double before(int back) {
            int at = next - back;
            return recent[at < 0 ? at + recent.length : at];
        }

        @Override
        boolean passes(double value) {
            if (available > 0 && Math.abs(value - before(1)) <= tolerance) {
                return false;
            }
            note(value);
            return true;
        }

        /** How many values in a row a new one makes with those just before it. */
        private int equalWith(double value) {
            int equal = 0;
            // Without a tolerance the values equal to the last one are those equal to it.
            if (tolerance == 0 && available > 0 && value == before(1)) {
                return same + 1;
            }
            while (equal < available && Math.abs(value - before(equal + 1)) <= tolerance) {
                equal++;
            }
            return equal + 1;
        }

        @Override
        QualityFlag judge(Reading reading) {
            int equal = equalWith(reading.value());
            note(reading.value());
            if (equal < unusualCount) {
                return QualityFlag.pass(reading.time());
            }
            boolean fails = equal >= failCount;
            return new QualityFlag(
                    reading.time(),
                    fails ? Verdict.FAIL : Verdict.UNUSUAL,
                    Text.number(reading.value()) + " for " + (fails ? "at least " + failCount : Integer.toString(equal))
                            + " readings in a row");
        }

        @Override
        void passOver(Reading reading) {
            available = 0;
        }

        @Override
        StateText keep() {
            double[] run = new double[available];
            for (int i = 0; i < available; i++) {
                run[i] = before(available - i);
            }
            return StateText.of(STATE, 1).with("run", run);
        }
    }
}
