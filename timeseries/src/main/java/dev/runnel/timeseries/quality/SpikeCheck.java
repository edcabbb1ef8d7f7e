package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Compares each reading with the mean of its two neighbours. It is not evaluated at the ends of the record, beside a
 * missing or suspect reading, or where a neighbour is further away than the maximum gap. Immutable and thread-safe.
 *
 * @param unusualAbove deviation above which a reading is unusual, in its unit; 0 or greater
 * @param failAbove deviation above which it fails; not below {@code unusualAbove}
 * @param maximumGap longest time to a neighbour; greater than 0
 * @param sparing whether a reading beside a larger spike is spared
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record SpikeCheck(double unusualAbove, double failAbove, Duration maximumGap, boolean sparing)
        implements QualityCheck {
    private static final String STATE = "spike-check";

    /**
     * Checks the limits.
     *
     * @param unusualAbove deviation above which a reading is unusual
     * @param failAbove deviation above which it fails
     * @param maximumGap longest time to a neighbour
     * @param sparing whether a reading beside a larger spike is spared
     * @throws IllegalArgumentException if a deviation is negative or NaN, they are not in order, or the gap is not
     *     greater than 0
     */
    public SpikeCheck {
        Require.nonNegative("unusualAbove", unusualAbove, "");
        Require.inRange("failAbove", failAbove, unusualAbove, Double.POSITIVE_INFINITY, "");
        EpochNanos.positive("maximumGap", maximumGap);
    }

    /**
     * Returns the check with neighbours at any distance.
     *
     * @param unusualAbove deviation above which a reading is unusual, in its unit; 0 or greater
     * @param failAbove deviation above which it fails; not below {@code unusualAbove}
     * @return the check
     * @throws IllegalArgumentException if a deviation is negative or NaN, or they are not in order
     */
    public static SpikeCheck of(double unusualAbove, double failAbove) {
        return new SpikeCheck(unusualAbove, failAbove, Duration.ofNanos(Long.MAX_VALUE), false);
    }

    /**
     * Returns the check with a longest time to a neighbour.
     *
     * @param maximumGap greater than 0
     * @return the new check
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public SpikeCheck withMaximumGap(Duration maximumGap) {
        return new SpikeCheck(unusualAbove, failAbove, maximumGap, sparing);
    }

    /**
     * Returns the check that spares the neighbours of a spike. By the published formula a spike of height h puts each
     * good reading beside it h/2 off its own neighbours, so that one spike can fail three readings. Here a reading beside
     * one with a larger deviation is not evaluated, and the neighbours are the nearest usable readings with at most ten
     * others between; so a spike beside a failure is found, and the good reading behind it is not taken for one. Verdicts
     * come later by as much. The sparing is ours, not part of the published test.
     *
     * @return the new check
     */
    public SpikeCheck withNeighboursSpared() {
        return new SpikeCheck(unusualAbove, failAbove, maximumGap, true);
    }

    @Override
    public String name() {
        return "spike";
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start() {
        return new SpikeMachine(new MachineClock(), SpikeWindow.of(this));
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start(TextState state) {
        StateText text = StateText.parse(STATE, 1, state.toText());
        SpikeWindow window = SpikeWindow.of(this);
        window.read(text, STATE);
        return new SpikeMachine(MachineClock.from(text), window);
    }

    /** Checks a record at once: of most readings a look at the two beside it says all, and no object is made of them. */
    @Override
    public QualityFlags apply(Series series) {
        Objects.requireNonNull(series, "series");
        return SpikeWindow.of(this, series).judgeAll(name());
    }

    @Override
    public String toString() {
        return "SpikeCheck[" + "unusual above " + Text.significant(unusualAbove, 6) + ", fails above "
                + Text.significant(failAbove, 6) + ", neighbours within " + Text.duration(maximumGap)
                + (sparing ? ", sparing" : "") + "]";
    }

    private static final class SpikeMachine extends ReadingMachine<QualityFlag> {
        private final SpikeWindow window;

        SpikeMachine(MachineClock clock, SpikeWindow window) {
            super(clock);
            this.window = window;
        }

        @Override
        List<QualityFlag> take(Reading reading) {
            window.add(reading);
            return window.judgeWhatIsKnown(false);
        }

        @Override
        List<QualityFlag> end() {
            return window.judgeWhatIsKnown(true);
        }

        @Override
        StateText keep() {
            return window.into(StateText.of(STATE, 1));
        }
    }
}
