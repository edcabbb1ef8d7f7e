package dev.runnel.timeseries;

import dev.runnel.internal.Text;
import java.time.Duration;
import java.util.Objects;
import java.util.function.DoubleBinaryOperator;
import org.apiguardian.api.API;

/**
 * Brings two series onto one clock: the times of the first. Immutable and thread-safe.
 *
 * <p>Every reading of the first series gives one reading of the result. The second series lends it the value stamped at
 * the same time; else, if the rule allows, the last value before it or the straight line between its neighbours. Where
 * the rule finds nothing the reading is missing: nothing is invented. Readings without a value are passed over when a
 * value is looked for; a suspect one lends its value and its suspicion. A value taken from another time is
 * {@link Quality#ESTIMATE} at best; a combined reading has the worst quality of what it was made of.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Alignment {
    private enum Rule {
        EXACT,
        HOLD,
        LINEAR
    }

    private static final Alignment EXACT = new Alignment(Rule.EXACT, 0);

    private final Rule rule;
    private final long limit;

    private Alignment(Rule rule, long limit) {
        this.rule = rule;
        this.limit = limit;
    }

    /**
     * Returns the rule that takes a value only from the very same instant.
     *
     * @return the rule
     */
    public static Alignment exact() {
        return EXACT;
    }

    /**
     * Returns the rule that takes the last value at or before the instant.
     *
     * @param limit how old that value may be, the limit included; greater than 0
     * @return the rule
     * @throws IllegalArgumentException if the limit is not greater than 0
     */
    public static Alignment holdLast(Duration limit) {
        return new Alignment(Rule.HOLD, EpochNanos.positive("limit", limit));
    }

    /**
     * Returns the rule that interpolates linearly between the value before and the value after the instant.
     *
     * @param limit how far apart those two may be, the limit included; greater than 0
     * @return the rule
     * @throws IllegalArgumentException if the limit is not greater than 0
     */
    public static Alignment linear(Duration limit) {
        return new Alignment(Rule.LINEAR, EpochNanos.positive("limit", limit));
    }

    /**
     * Returns a series at the times of another.
     *
     * @param clock the series whose times are wanted; its values do not matter
     * @param series the series to bring to them
     * @return one reading for each of the clock's, missing where the rule finds no value
     */
    public Series align(Series clock, Series series) {
        Objects.requireNonNull(series, "series");
        if (rule == Rule.EXACT) {
            return clock.hasTimesOf(series) ? series : atSameInstants(clock, series);
        }
        int size = clock.size();
        double[] values = new double[size];
        byte[] qualities = new byte[size];
        int before = -1;
        int next = 0;
        for (int i = 0; i < size; i++) {
            long time = clock.epochNanos(i);
            while (next < series.size() && series.epochNanos(next) <= time) {
                if (!Double.isNaN(series.value(next))) {
                    before = next;
                }
                next++;
            }
            while (next < series.size() && Double.isNaN(series.value(next))) {
                next++;
            }
            Quality quality = Quality.MISSING;
            double value = Double.NaN;
            if (before >= 0) {
                long age = time - series.epochNanos(before);
                if (age == 0) {
                    value = series.value(before);
                    quality = series.quality(before);
                } else if (rule == Rule.HOLD && isWithinLimit(age)) {
                    value = series.value(before);
                    quality = Quality.ESTIMATE.worst(series.quality(before));
                } else if (rule == Rule.LINEAR && next < series.size()) {
                    long apart = series.epochNanos(next) - series.epochNanos(before);
                    if (isWithinLimit(apart)) {
                        double weight = (double) age / apart;
                        value = series.value(before) + weight * (series.value(next) - series.value(before));
                        quality = Quality.ESTIMATE.worst(series.quality(before)).worst(series.quality(next));
                    }
                }
            }
            values[i] = value;
            qualities[i] = quality.toCode();
        }
        return clock.sharing(values, qualities);
    }

    /** The exact rule needs no neighbours: one pass over both series, which is all that most records take. */
    private static Series atSameInstants(Series clock, Series series) {
        int size = clock.size();
        double[] values = new double[size];
        byte[] qualities = new byte[size];
        int next = 0;
        for (int i = 0; i < size; i++) {
            long time = clock.epochNanos(i);
            while (next < series.size() && series.epochNanos(next) < time) {
                next++;
            }
            boolean isThere = next < series.size() && series.epochNanos(next) == time;
            values[i] = isThere ? series.value(next) : Double.NaN;
            qualities[i] = (isThere ? series.quality(next) : Quality.MISSING).toCode();
        }
        return clock.sharing(values, qualities);
    }

    /**
     * Combines two series reading by reading.
     *
     * @param first the series that gives the clock
     * @param second the other series
     * @param function from a value of the first and a value of the second to the new value; NaN makes it missing
     * @return one reading for each of the first's; missing where either value is
     * @throws IllegalArgumentException if the function returns an infinity
     */
    public Series apply(Series first, Series second, DoubleBinaryOperator function) {
        Objects.requireNonNull(first, "first");
        Objects.requireNonNull(second, "second");
        Objects.requireNonNull(function, "function");
        Series other = align(first, second);
        int size = first.size();
        double[] values = new double[size];
        byte[] qualities = new byte[size];
        for (int i = 0; i < size; i++) {
            double a = first.value(i);
            double b = other.value(i);
            values[i] = Double.isNaN(a) || Double.isNaN(b) ? Double.NaN : function.applyAsDouble(a, b);
            if (Double.isInfinite(values[i])) {
                throw new IllegalArgumentException("function must return finite values or NaN, was "
                        + Text.number(values[i]) + " at " + first.time(i));
            }
            Quality quality =
                    Double.isNaN(values[i]) ? Quality.MISSING : first.quality(i).worst(other.quality(i));
            qualities[i] = quality.toCode();
        }
        return first.sharing(values, qualities);
    }

    /** Unsigned: a distance of more than 292 years overflows a long, and is beyond the limit all the same. */
    private boolean isWithinLimit(long distance) {
        return Long.compareUnsigned(distance, limit) <= 0;
    }

    @Override
    public String toString() {
        return switch (rule) {
            case EXACT -> "Alignment[same instant]";
            case HOLD -> "Alignment[last value, at most " + Text.duration(Duration.ofNanos(limit)) + " old]";
            case LINEAR -> "Alignment[straight line over at most " + Text.duration(Duration.ofNanos(limit)) + "]";
        };
    }
}
