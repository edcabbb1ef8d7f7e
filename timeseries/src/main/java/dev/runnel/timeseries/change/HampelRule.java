package dev.runnel.timeseries.change;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.TextState;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.apiguardian.api.API;

/**
 * The identifier of Hampel for single wild values: a reading that lies too far from the median of the readings about it.
 * Immutable and thread-safe.
 *
 * <pre>
 * wild:   |xᵢ − m| &gt; t · 1.4826 · median |xⱼ − m|,   m = median of xⱼ, j = i − k … i + k
 * </pre>
 *
 * <p>Readings without value are left out of the windows. The first and last k readings have no whole window and are not
 * judged. A verdict comes k readings late. Where more than half of a window is equal, its scatter is 0 and every other value
 * is wild: quantised readings need a longer window or a {@link #withLeastScatter least scatter}.
 *
 * <p>What this is not: a detector of lasting changes, which it is built not to see.
 *
 * <p>The window is kept in order of value while it moves, and the median distance is found in it by halving.
 *
 * <p>Source: F. R. Hampel (1974), The influence curve and its role in robust estimation, Journal of the American Statistical
 * Association 69, 383-393 (from memory); use in a moving window: common practice.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class HampelRule implements Rule<Reading, HampelRule.Wild, TextState> {
    private static final String NAME = "hampel";
    private static final int LONGEST = 10_000;

    /** Makes the median distance of a normal law its standard deviation, 1 / 0.67449. */
    private static final double NORMAL = 1.482602218505602;

    private final int halfWidth;
    private final double limit;
    private final double leastScatter;

    private HampelRule(int halfWidth, double limit, double leastScatter) {
        this.halfWidth = halfWidth;
        this.limit = limit;
        this.leastScatter = leastScatter;
    }

    /**
     * Returns a rule.
     *
     * @param halfWidth readings of the window before and after the one that is judged, k; from 1 to 10000
     * @param limit number of scatters from the median that is allowed, t; greater than 0; 3 is common practice
     * @return the rule
     * @throws IllegalArgumentException if a figure is out of range
     */
    public static HampelRule of(int halfWidth, double limit) {
        Require.inRange("halfWidth", halfWidth, 1, LONGEST, "");
        return new HampelRule(halfWidth, Require.positive("limit", limit, ""), 0);
    }

    /**
     * Returns this rule with a scatter that a window is never taken to fall below.
     *
     * @param leastScatter scatter, in the unit of the values; 0 or greater
     * @return the rule
     * @throws IllegalArgumentException if it is negative or not finite
     */
    public HampelRule withLeastScatter(double leastScatter) {
        return new HampelRule(halfWidth, limit, Require.nonNegative("leastScatter", leastScatter, ""));
    }

    /**
     * A wild reading.
     *
     * @param time its time
     * @param value its value
     * @param median median of its window
     * @param scatter scatter of its window, 1.4826 times the median distance from the median
     */
    public record Wild(Instant time, double value, double median, double scatter) {
        /**
         * Checks that the time is there.
         *
         * @param time its time
         * @param value its value
         * @param median median of its window
         * @param scatter scatter of its window
         */
        public Wild {
            Objects.requireNonNull(time, "time");
        }

        @Override
        public String toString() {
            return "Wild[" + time + " " + Text.number(value) + ", median " + Text.significant(median, 6) + ", scatter "
                    + Text.significant(scatter, 4) + "]";
        }
    }

    private boolean isWild(SortedWindow window) {
        double distance = Math.abs(window.middle() - window.median());
        // Few values are so far off that the scatter itself need be known.
        return distance > limit * scatter(window.leastMedianDistance())
                && distance > limit * scatter(window.medianDistance());
    }

    private double scatter(double medianDistance) {
        return Math.max(leastScatter, NORMAL * medianDistance);
    }

    /**
     * Returns where the wild values of an array are, the same ones as of readings one by one.
     *
     * @param values values, any unit; NaN for missing; not modified
     * @return indices of wild values, ascending; a new array
     * @throws IllegalArgumentException if a value is infinite; names the index
     */
    public int[] wildAmong(double[] values) {
        IntStream.Builder found = IntStream.builder();
        Windows.over(values, halfWidth, (window, index) -> {
            if (isWild(window)) {
                found.add(index);
            }
        });
        return found.build().toArray();
    }

    @Override
    public Machine<Reading, Wild, TextState> start() {
        return new Window(this);
    }

    @Override
    public Machine<Reading, Wild, TextState> start(TextState state) {
        return new Window(this, StateText.parse(NAME, 1, state.toText()));
    }

    @Override
    public TextState parseState(String text) {
        return TextState.readBy(text, this::start);
    }

    /** The window at work; its newest reading is the last one. */
    private static final class Window implements Machine<Reading, Wild, TextState> {
        private final HampelRule rule;
        private final int size;
        private final MachineClock clock;
        private final SortedWindow window;
        /** Times of the readings of the window, each in the place of its number. */
        private final long[] times;

        private long taken;

        @Override
        public String toString() {
            return "machine of " + rule + ", " + clock;
        }

        Window(HampelRule rule) {
            this.rule = rule;
            this.size = 2 * rule.halfWidth + 1;
            this.clock = new MachineClock();
            this.window = new SortedWindow(rule.halfWidth);
            this.times = new long[size];
        }

        Window(HampelRule rule, StateText text) {
            this.rule = rule;
            this.size = 2 * rule.halfWidth + 1;
            this.clock = MachineClock.from(text);
            this.window = new SortedWindow(rule.halfWidth);
            this.times = new long[size];
            double[] values = text.numbers("values");
            long[] timesOfValues = text.counts("times");
            if (values.length != timesOfValues.length || values.length >= size) {
                throw new IllegalArgumentException("state hampel must hold fewer than " + size
                        + " values and as many times, was " + values.length + " and " + timesOfValues.length);
            }
            for (int i = 0; i < values.length; i++) {
                take(timesOfValues[i], values[i]);
            }
        }

        private void take(long time, double value) {
            window.add(value);
            times[(int) (taken++ % size)] = time;
        }

        @Override
        public List<Wild> next(Reading reading) {
            long time = EpochNanos.of(reading.time());
            clock.requireAfter(time);
            clock.moveTo(time);
            if (Double.isNaN(reading.value())) {
                return List.of();
            }
            take(time, reading.value());
            if (!window.isFull() || !rule.isWild(window)) {
                return List.of();
            }
            long middle = times[(int) ((taken - 1 - rule.halfWidth) % size)];
            return List.of(new Wild(
                    EpochNanos.toInstant(middle),
                    window.middle(),
                    window.median(),
                    rule.scatter(window.medianDistance())));
        }

        @Override
        public List<Wild> finish() {
            clock.end();
            return List.of();
        }

        @Override
        public TextState state() {
            // The oldest of a full window goes with the next reading.
            int kept = Math.min(window.size(), size - 1);
            double[] values = window.values();
            long[] ofValues = new long[kept];
            for (int i = 0; i < kept; i++) {
                ofValues[i] = times[(int) ((taken - kept + i) % size)];
            }
            return TextState.of(clock.into(StateText.of(NAME, 1)
                            .with("values", Arrays.copyOfRange(values, values.length - kept, values.length))
                            .with("times", ofValues))
                    .toString());
        }
    }

    @Override
    public String toString() {
        return "HampelRule[half width " + halfWidth + ", limit " + Text.significant(limit, 6)
                + (leastScatter > 0 ? ", least scatter " + Text.significant(leastScatter, 6) : "") + "]";
    }
}
