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
 * Finds a signal that hardly moves (attenuated signal test): the range, highest less lowest, of the readings in a window
 * up to this one is below a limit. A silted sensor or a stilling well that is blocked still trembles and so passes the
 * flat line. Nothing is judged until the record is as long as the window. Immutable and thread-safe.
 *
 * @param window time over which the range is taken; greater than 0, at most 31 days
 * @param unusualBelow range below which a reading is unusual, in its unit; 0 or greater
 * @param failBelow range below which it fails; in [0, {@code unusualBelow}]
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record AttenuatedSignalCheck(Duration window, double unusualBelow, double failBelow) implements QualityCheck {
    private static final String STATE = "attenuated-signal-check";
    private static final String SINCE = "since";

    /**
     * Checks the limits.
     *
     * @param window time over which the range is taken
     * @param unusualBelow range below which a reading is unusual
     * @param failBelow range below which it fails
     * @throws IllegalArgumentException if the window is out of its range, a limit is negative or NaN, or they are not in
     *     order
     */
    public AttenuatedSignalCheck {
        Windows.require(window);
        Require.nonNegative("unusualBelow", unusualBelow, "");
        Require.inRange("failBelow", failBelow, 0, unusualBelow, "");
    }

    /**
     * Returns the check.
     *
     * @param window time over which the range is taken; greater than 0, at most 31 days
     * @param unusualBelow range below which a reading is unusual, in its unit; 0 or greater
     * @param failBelow range below which it fails; in [0, {@code unusualBelow}]
     * @return the check
     * @throws IllegalArgumentException if the window is out of its range, a limit is negative or NaN, or they are not in
     *     order
     */
    public static AttenuatedSignalCheck of(Duration window, double unusualBelow, double failBelow) {
        return new AttenuatedSignalCheck(window, unusualBelow, failBelow);
    }

    @Override
    public String name() {
        return "attenuated signal";
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start() {
        return new AttenuationMachine(new MachineClock(), new Recent(), Long.MAX_VALUE);
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start(TextState state) {
        StateText text = StateText.parse(STATE, 1, state.toText());
        return new AttenuationMachine(MachineClock.from(text), Recent.from(text, ""), text.count(SINCE));
    }

    @Override
    public String toString() {
        return "AttenuatedSignalCheck[" + "range unusual below " + Text.significant(unusualBelow, 6) + ", fails below "
                + Text.significant(failBelow, 6) + ", over " + Text.duration(window) + "]";
    }

    private final class AttenuationMachine extends PromptMachine {
        private final Recent recent;

        /** Time of the first value of all. */
        private long since;

        AttenuationMachine(MachineClock clock, Recent recent, long since) {
            super(clock);
            this.recent = recent;
            this.since = since;
        }

        @Override
        QualityFlag judge(Reading reading) {
            long time = EpochNanos.of(reading.time());
            since = Math.min(since, time);
            recent.dropBefore(Recent.before(time, window.toNanos()));
            recent.add(time, reading.value());
            if (Long.compareUnsigned(time - since, window.toNanos()) < 0 || recent.size() < 2) {
                return QualityFlag.notEvaluated(reading.time(), "no record over the whole window");
            }
            double range = recent.range();
            if (range >= unusualBelow) {
                return QualityFlag.pass(reading.time());
            }
            return new QualityFlag(
                    reading.time(),
                    range < failBelow ? Verdict.FAIL : Verdict.UNUSUAL,
                    "moved by " + Text.significant(range, 4) + " in " + Text.duration(window));
        }

        @Override
        StateText keep() {
            return recent.into(StateText.of(STATE, 1).with(SINCE, since), "");
        }
    }
}
