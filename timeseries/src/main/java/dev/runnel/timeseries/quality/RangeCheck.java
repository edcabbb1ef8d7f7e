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
 * Fails readings outside the range of the sensor and calls unusual those outside the range of the site. The limits
 * themselves pass. Immutable and thread-safe.
 *
 * @param failBelow lowest value the sensor can give
 * @param failAbove highest value the sensor can give
 * @param unusualBelow lowest usual value; not below {@code failBelow}
 * @param unusualAbove highest usual value; not above {@code failAbove}
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record RangeCheck(double failBelow, double failAbove, double unusualBelow, double unusualAbove)
        implements QualityCheck {
    private static final String STATE = "range-check";

    /**
     * Checks the order of the limits.
     *
     * @param failBelow lowest value the sensor can give
     * @param failAbove highest value the sensor can give
     * @param unusualBelow lowest usual value
     * @param unusualAbove highest usual value
     * @throws IllegalArgumentException if a limit is NaN, or the usual range is empty or not within that of the sensor
     */
    public RangeCheck {
        Require.inRange("failAbove", failAbove, failBelow, Double.POSITIVE_INFINITY, "");
        Require.inRange("unusualBelow", unusualBelow, failBelow, failAbove, "");
        Require.inRange("unusualAbove", unusualAbove, unusualBelow, failAbove, "");
    }

    /**
     * Returns the check with a range of the sensor only.
     *
     * @param lowest lowest value the sensor can give
     * @param highest highest value the sensor can give
     * @return the check
     * @throws IllegalArgumentException if a limit is NaN or the range is empty
     */
    public static RangeCheck of(double lowest, double highest) {
        return new RangeCheck(lowest, highest, lowest, highest);
    }

    /**
     * Returns the check with a range of the site.
     *
     * @param lowest lowest usual value
     * @param highest highest usual value
     * @return the new check
     * @throws IllegalArgumentException if the range is empty or not within that of the sensor
     */
    public RangeCheck withUsual(double lowest, double highest) {
        return new RangeCheck(failBelow, failAbove, lowest, highest);
    }

    @Override
    public String name() {
        return "range";
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start() {
        return new RangeMachine(new MachineClock());
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start(TextState state) {
        return new RangeMachine(MachineClock.from(StateText.parse(STATE, 1, state.toText())));
    }

    private QualityFlag flag(Reading reading) {
        double value = reading.value();
        if (value < failBelow || value > failAbove) {
            return new QualityFlag(reading.time(), Verdict.FAIL, outside(value, failBelow, failAbove));
        }
        if (value < unusualBelow || value > unusualAbove) {
            return new QualityFlag(reading.time(), Verdict.UNUSUAL, outside(value, unusualBelow, unusualAbove));
        }
        return QualityFlag.pass(reading.time());
    }

    private static String outside(double value, double from, double to) {
        return Text.number(value) + " is outside [" + Text.number(from) + ", " + Text.number(to) + "]";
    }

    private final class RangeMachine extends PromptMachine {
        RangeMachine(MachineClock clock) {
            super(clock);
        }

        @Override
        boolean passes(double value) {
            // The usual range lies within the possible one.
            return !(value < unusualBelow || value > unusualAbove);
        }

        @Override
        QualityFlag judge(Reading reading) {
            return flag(reading);
        }

        @Override
        StateText keep() {
            return StateText.of(STATE, 1);
        }
    }
}
