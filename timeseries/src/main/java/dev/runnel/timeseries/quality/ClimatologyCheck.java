package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import java.time.Month;
import java.time.ZoneId;
import java.util.Arrays;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Calls unusual what lies outside the range of the time of year (climatology test). In months without a range nothing is
 * judged. The limits themselves pass. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ClimatologyCheck implements QualityCheck {
    private static final String STATE = "climatology-check";

    private final ZoneId zone;
    private final double[] lowest;
    private final double[] highest;

    private ClimatologyCheck(ZoneId zone, double[] lowest, double[] highest) {
        this.zone = zone;
        this.lowest = lowest;
        this.highest = highest;
    }

    /**
     * Returns the check without any range.
     *
     * @param zone zone of the local months
     * @return the check
     */
    public static ClimatologyCheck in(ZoneId zone) {
        Objects.requireNonNull(zone, "zone");
        double[] none = new double[12];
        Arrays.fill(none, Double.NaN);
        return new ClimatologyCheck(zone, none, none);
    }

    /**
     * Returns the check with a range for some months.
     *
     * @param from first month
     * @param to last month, included; may lie before the first, as in November to February
     * @param lowest lowest usual value, in the unit of the readings
     * @param highest highest usual value; not below the lowest
     * @return the new check
     * @throws IllegalArgumentException if a limit is NaN or the range is empty
     */
    public ClimatologyCheck withMonths(Month from, Month to, double lowest, double highest) {
        Objects.requireNonNull(from, "from");
        Objects.requireNonNull(to, "to");
        Require.inRange("highest", highest, lowest, Double.POSITIVE_INFINITY, "");
        double[] low = this.lowest.clone();
        double[] high = this.highest.clone();
        for (Month month = from; ; month = month.plus(1)) {
            low[month.getValue() - 1] = lowest;
            high[month.getValue() - 1] = highest;
            if (month == to) {
                return new ClimatologyCheck(zone, low, high);
            }
        }
    }

    @Override
    public String name() {
        return "climatology";
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start() {
        return new SeasonMachine(new MachineClock());
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start(TextState state) {
        return new SeasonMachine(MachineClock.from(StateText.parse(STATE, 1, state.toText())));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ClimatologyCheck that
                && zone.equals(that.zone)
                && Arrays.equals(lowest, that.lowest)
                && Arrays.equals(highest, that.highest);
    }

    @Override
    public int hashCode() {
        return 31 * (31 * zone.hashCode() + Arrays.hashCode(lowest)) + Arrays.hashCode(highest);
    }

    @Override
    public String toString() {
        return "ClimatologyCheck[" + zone + ", lowest " + Arrays.toString(lowest) + ", highest "
                + Arrays.toString(highest) + "]";
    }

    private final class SeasonMachine extends PromptMachine {
        SeasonMachine(MachineClock clock) {
            super(clock);
        }

        @Override
        QualityFlag judge(Reading reading) {
            Month month = reading.time().atZone(zone).getMonth();
            double low = lowest[month.getValue() - 1];
            double high = highest[month.getValue() - 1];
            double value = reading.value();
            if (Double.isNaN(low)) {
                return QualityFlag.notEvaluated(reading.time(), "no range for this month");
            }
            if (value >= low && value <= high) {
                return QualityFlag.pass(reading.time());
            }
            return new QualityFlag(
                    reading.time(),
                    Verdict.UNUSUAL,
                    Text.number(value) + " is outside [" + Text.number(low) + ", " + Text.number(high)
                            + "], usual in month " + month.getValue());
        }

        @Override
        StateText keep() {
            return StateText.of(STATE, 1);
        }
    }
}
