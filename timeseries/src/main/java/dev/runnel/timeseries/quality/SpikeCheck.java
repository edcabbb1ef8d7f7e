package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
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

    /** Chosen here: a state stays small, and over more than ten lost readings there is no neighbour to speak of. */
    private static final int MOST_BRIDGED = 10;

    /** No usable reading in reach. */
    private static final int NONE = -1;

    /** The end of what is held was reached before the reach was. */
    private static final int BEYOND = -2;

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
        return new SpikeMachine(new MachineClock(), List.of(), 0);
    }

    @Override
    public Machine<Reading, QualityFlag, TextState> start(TextState state) {
        StateText text = StateText.parse(STATE, 1, state.toText());
        long[] times = text.counts("times");
        double[] values = text.numbers("values");
        List<Quality> qualities = text.list("qualities", each -> Quality.valueOf(each));
        Require.sameLength("state " + STATE + ": values", times.length, values.length);
        Require.sameLength("state " + STATE + ": qualities", times.length, qualities.size());
        List<Reading> window = new ArrayList<>();
        for (int i = 0; i < times.length; i++) {
            window.add(new Reading(EpochNanos.toInstant(times[i]), values[i], qualities.get(i)));
        }
        int owed = text.index("owed");
        Require.inRange("state " + STATE + ": owed", owed, 0, times.length, "");
        return new SpikeMachine(MachineClock.from(text), window, owed);
    }

    private boolean isNear(Reading earlier, Reading later) {
        return Duration.between(earlier.time(), later.time()).compareTo(maximumGap) <= 0;
    }

    @Override
    public String toString() {
        return "SpikeCheck[" + "unusual above " + Text.significant(unusualAbove, 6) + ", fails above "
                + Text.significant(failAbove, 6) + ", neighbours within " + Text.duration(maximumGap)
                + (sparing ? ", sparing" : "") + "]";
    }

    private final class SpikeMachine extends ReadingMachine<QualityFlag> {
        /** The readings that can still matter, the last {@link #owed} of them without a verdict. */
        private final List<Reading> window;

        private int owed;

        SpikeMachine(MachineClock clock, List<Reading> window, int owed) {
            super(clock);
            this.window = new ArrayList<>(window);
            this.owed = owed;
        }

        @Override
        List<QualityFlag> take(Reading reading) {
            window.add(reading);
            owed++;
            return judgeWhatIsKnown(false);
        }

        @Override
        List<QualityFlag> end() {
            return judgeWhatIsKnown(true);
        }

        private List<QualityFlag> judgeWhatIsKnown(boolean ended) {
            List<QualityFlag> flags = new ArrayList<>();
            while (owed > 0 && (ended || isKnown(window.size() - owed))) {
                flags.add(judge(window.size() - owed));
                owed--;
                while (window.size() - owed > 2 * reach()) {
                    window.remove(0);
                }
            }
            return flags;
        }

        private boolean isKnown(int at) {
            if (!window.get(at).quality().isUsable()) {
                return true;
            }
            int after = neighbour(at, 1);
            return after != BEYOND && (!sparing || after == NONE || neighbour(after, 1) != BEYOND);
        }

        /** How far away in the record a neighbour is looked for. */
        private int reach() {
            return sparing ? MOST_BRIDGED + 1 : 1;
        }

        /** The place of the nearest usable reading before or after another, or why there is none. */
        private int neighbour(int at, int direction) {
            for (int i = 1; i <= reach(); i++) {
                int there = at + i * direction;
                if (there < 0 || there >= window.size()) {
                    return BEYOND;
                }
                if (window.get(there).quality().isUsable()) {
                    return there;
                }
            }
            return NONE;
        }

        /** The deviation from the mean of the neighbours; NaN where it cannot be told. */
        private double deviation(int at) {
            int before = at < 0 ? NONE : neighbour(at, -1);
            int after = at < 0 ? NONE : neighbour(at, 1);
            if (before < 0 || after < 0) {
                return Double.NaN;
            }
            Reading reading = window.get(at);
            boolean near = isNear(window.get(before), reading) && isNear(reading, window.get(after));
            double mean = (window.get(before).value() + window.get(after).value()) / 2;
            return near ? Math.abs(reading.value() - mean) : Double.NaN;
        }

        private QualityFlag judge(int at) {
            Reading reading = window.get(at);
            if (!reading.quality().isUsable()) {
                return QualityFlag.unusable(reading);
            }
            double deviation = deviation(at);
            if (Double.isNaN(deviation)) {
                return QualityFlag.notEvaluated(reading.time(), "no near neighbours with values");
            }
            if (!(deviation > unusualAbove)) {
                return QualityFlag.pass(reading.time());
            }
            int before = neighbour(at, -1);
            int after = neighbour(at, 1);
            if (sparing && (deviation(before) > deviation || deviation(after) > deviation)) {
                return QualityFlag.notEvaluated(reading.time(), "beside a larger spike");
            }
            return new QualityFlag(
                    reading.time(),
                    deviation > failAbove ? Verdict.FAIL : Verdict.UNUSUAL,
                    Text.number(reading.value()) + " is " + Text.significant(deviation, 4) + " off its neighbours "
                            + Text.number(window.get(before).value()) + " and "
                            + Text.number(window.get(after).value()));
        }

        @Override
        StateText keep() {
            return StateText.of(STATE, 1)
                    .with(
                            "times",
                            window.stream()
                                    .mapToLong(each -> EpochNanos.of(each.time()))
                                    .toArray())
                    .with("values", window.stream().mapToDouble(Reading::value).toArray())
                    .with(
                            "qualities",
                            window.stream().map(each -> each.quality().name()).toList())
                    .with("owed", owed);
        }
    }
}
