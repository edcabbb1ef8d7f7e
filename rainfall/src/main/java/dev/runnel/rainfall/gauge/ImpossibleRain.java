package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * Rain of a record by the step that fell nowhere on earth, such as that of a column of depths. Immutable and thread-safe.
 *
 * <p>Above the greatest rains known at a point are 491 h<sup>0.452</sup> mm in h hours (Galmarini, Steyn and Ainslie 2004, The
 * scaling law relating world point-precipitation records to duration, abstract; from memory). Impossible is a step with more
 * than that for its length, and each wet step of any 24 h in a row (of a whole number of steps) that hold more than that for
 * a day. Steps of more than a day are judged by themselves alone.
 *
 * <p>What this is not: a check of rain that a climate makes likely. What passes may still be wrong by a factor of ten.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ImpossibleRain {
    private static final double WORLD_MM = 491;
    private static final double WORLD_EXPONENT = 0.452;
    private static final Duration DAY = Duration.ofDays(1);

    private final RegularSeries rain;
    private final boolean[] impossible;

    private ImpossibleRain(RegularSeries rain, boolean[] impossible) {
        this.rain = rain;
        this.impossible = impossible;
    }

    /**
     * Looks through a record.
     *
     * @param rain depth in each step, mm; NaN for missing
     * @return what of it is impossible
     */
    public static ImpossibleRain of(RegularSeries rain) {
        double[] depths = rain.toValues();
        boolean[] impossible = new boolean[depths.length];
        double ofStep = greatestMm(rain.step());
        double ofDay = greatestMm(DAY);
        int steps = (int) (DAY.toNanos() / rain.step().toNanos());
        double day = 0;
        int marked = 0;
        for (int i = 0; i < depths.length; i++) {
            impossible[i] = depths[i] > ofStep;
            day += known(depths[i]) - (i >= steps ? known(depths[i - steps]) : 0);
            if (steps > 0 && day > ofDay) {
                // Days overlap: what the one before has marked stays so.
                for (int k = Math.max(marked, i - steps + 1); k <= i; k++) {
                    impossible[k] |= depths[k] > 0;
                }
                marked = i + 1;
            }
        }
        return new ImpossibleRain(rain, impossible);
    }

    private static double known(double depth) {
        return Double.isNaN(depth) ? 0 : depth;
    }

    /**
     * Returns a depth above the greatest rains known at a point.
     *
     * @param duration greater than 0
     * @return 491 h<sup>0.452</sup>, mm, of the duration h in hours
     * @throws IllegalArgumentException if it is not greater than 0
     */
    public static double greatestMm(Duration duration) {
        return WORLD_MM * Math.pow(EpochNanos.positive("duration", duration) / 3.6e12, WORLD_EXPONENT);
    }

    /**
     * Returns the record without it.
     *
     * @return the other rain, mm; impossible steps are missing
     */
    public RegularSeries others() {
        List<Interval> runs = new ArrayList<>();
        for (int i = 0; i < impossible.length; i++) {
            int from = i;
            while (i < impossible.length && impossible[i]) {
                i++;
            }
            if (i > from) {
                runs.add(Interval.of(rain.time(from), rain.interval(i - 1).end()));
            }
        }
        return runs.isEmpty() ? rain : rain.withMissing(runs.toArray(Interval[]::new));
    }

    /**
     * Returns how many steps are impossible.
     *
     * @return count
     */
    public int steps() {
        int steps = 0;
        for (boolean each : impossible) {
            steps += each ? 1 : 0;
        }
        return steps;
    }

    /**
     * Returns what they hold.
     *
     * @return sum of their depths, mm
     */
    public double depthMm() {
        double sum = 0;
        for (int i = 0; i < impossible.length; i++) {
            sum += impossible[i] ? rain.value(i) : 0;
        }
        return sum;
    }

    /**
     * Returns when the first of them began.
     *
     * @return the time; empty if there is none
     */
    public Optional<Instant> first() {
        for (int i = 0; i < impossible.length; i++) {
            if (impossible[i]) {
                return Optional.of(rain.time(i));
            }
        }
        return Optional.empty();
    }

    /**
     * Returns a part of the record, judged as in the whole.
     *
     * @param part the time; steps that lie in it are taken, as {@link RegularSeries#slice} does
     * @return what of the part is impossible
     */
    public ImpossibleRain within(Interval part) {
        Objects.requireNonNull(part, "part");
        RegularSeries inside = rain.slice(part);
        if (inside.size() == 0) {
            return new ImpossibleRain(inside, new boolean[0]);
        }
        int from = (int) (Duration.between(rain.time(0), inside.time(0)).toNanos()
                / rain.step().toNanos());
        return new ImpossibleRain(inside, Arrays.copyOfRange(impossible, from, from + inside.size()));
    }

    @Override
    public String toString() {
        return "ImpossibleRain[" + steps() + " of " + impossible.length + " steps, " + Text.fixed(depthMm(), 1)
                + " mm]";
    }
}
