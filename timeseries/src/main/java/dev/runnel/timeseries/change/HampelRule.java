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
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
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
        TextState state = TextState.of(text);
        start(state);
        return state;
    }

    /** The window at work; its newest reading is the last one. */
    private static final class Window implements Machine<Reading, Wild, TextState> {
        private final HampelRule rule;
        private final int size;
        private final MachineClock clock;
        private final List<Double> values = new ArrayList<>();
        private final List<Long> times = new ArrayList<>();

        Window(HampelRule rule) {
            this.rule = rule;
            this.size = 2 * rule.halfWidth + 1;
            this.clock = new MachineClock();
        }

        Window(HampelRule rule, StateText text) {
            this.rule = rule;
            this.size = 2 * rule.halfWidth + 1;
            this.clock = MachineClock.from(text);
            for (double value : text.numbers("values")) {
                values.add(value);
            }
            for (long time : text.counts("times")) {
                times.add(time);
            }
            if (values.size() != times.size() || values.size() >= size) {
                throw new IllegalArgumentException("state hampel must hold fewer than " + size
                        + " values and as many times, was " + values.size() + " and " + times.size());
            }
        }

        @Override
        public List<Wild> next(Reading reading) {
            long time = EpochNanos.of(reading.time());
            clock.requireAfter(time);
            clock.moveTo(time);
            if (Double.isNaN(reading.value())) {
                return List.of();
            }
            values.add(reading.value());
            times.add(time);
            if (values.size() < size) {
                return List.of();
            }
            List<Wild> found = judge();
            values.remove(0);
            times.remove(0);
            return found;
        }

        private List<Wild> judge() {
            double[] sorted =
                    values.stream().mapToDouble(Double::doubleValue).sorted().toArray();
            double median = sorted[rule.halfWidth];
            double[] distances = Arrays.stream(sorted)
                    .map(x -> Math.abs(x - median))
                    .sorted()
                    .toArray();
            double scatter = Math.max(rule.leastScatter, NORMAL * distances[rule.halfWidth]);
            double value = values.get(rule.halfWidth);
            return Math.abs(value - median) > rule.limit * scatter
                    ? List.of(new Wild(EpochNanos.toInstant(times.get(rule.halfWidth)), value, median, scatter))
                    : List.of();
        }

        @Override
        public List<Wild> finish() {
            clock.end();
            return List.of();
        }

        @Override
        public TextState state() {
            return TextState.of(clock.into(StateText.of(NAME, 1)
                            .with(
                                    "values",
                                    values.stream()
                                            .mapToDouble(Double::doubleValue)
                                            .toArray())
                            .with(
                                    "times",
                                    times.stream().mapToLong(Long::longValue).toArray()))
                    .toString());
        }
    }

    @Override
    public String toString() {
        return "HampelRule[half width " + halfWidth + ", limit " + Text.significant(limit, 6)
                + (leastScatter > 0 ? ", least scatter " + Text.significant(leastScatter, 6) : "") + "]";
    }
}
