package dev.runnel.hydraulics.watch;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Collection;
import java.util.Iterator;
import java.util.NoSuchElementException;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The readings of a site in columns: depth, and where they are measured velocity and rain. Immutable and thread-safe.
 *
 * <p>Readings whose quality is not usable are missing here. Velocities count at the instants of depth readings; those that
 * have none are lost and counted. Rain of a regular series is given to the first reading at or after the end of its step;
 * where no reading comes for more than an hour, hours without readings that hold the rain are put in.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SiteRecord implements Iterable<SiteReading> {
    private static final long HOUR = 3_600_000_000_000L;

    /** Over such a gap nothing is put in. */
    private static final long LONGEST_GAP = 400L * 24 * HOUR;

    private final long[] times;
    private final double[] depths;
    private final double[] velocities;
    private final double[] rains;
    private final int velocitiesAlone;

    private SiteRecord(long[] times, double[] depths, double[] velocities, double[] rains, int velocitiesAlone) {
        this.times = times;
        this.depths = depths;
        this.velocities = velocities;
        this.rains = rains;
        this.velocitiesAlone = velocitiesAlone;
    }

    /**
     * Returns a record of depth alone.
     *
     * @param depth depth readings, m, as the sensor gives them
     * @return the record; without velocity and rain
     */
    public static SiteRecord ofDepth(Series depth) {
        double[] missing = new double[depth.size()];
        Arrays.fill(missing, Double.NaN);
        return new SiteRecord(depth.toEpochNanos(), usable(depth), missing, missing, 0);
    }

    /**
     * Returns a record of depth and velocity.
     *
     * @param depth depth readings, m, as the sensor gives them
     * @param velocity velocity readings, m/s
     * @return the record; without rain
     */
    public static SiteRecord of(Series depth, Series velocity) {
        Objects.requireNonNull(velocity, "velocity");
        double[] velocities = new double[depth.size()];
        Arrays.fill(velocities, Double.NaN);
        double[] usable = usable(velocity);
        int matched = 0;
        int at = 0;
        for (int i = 0; i < velocities.length; i++) {
            while (at < usable.length && velocity.epochNanos(at) < depth.epochNanos(i)) {
                at++;
            }
            if (at < usable.length && velocity.epochNanos(at) == depth.epochNanos(i)) {
                velocities[i] = usable[at];
                matched++;
            }
        }
        double[] noRain = new double[depth.size()];
        Arrays.fill(noRain, Double.NaN);
        return new SiteRecord(depth.toEpochNanos(), usable(depth), velocities, noRain, velocity.size() - matched);
    }

    /**
     * Returns a record of readings.
     *
     * @param readings readings whose times rise
     * @return the record
     * @throws IllegalArgumentException if a time does not come after the one before
     */
    public static SiteRecord ofReadings(Collection<SiteReading> readings) {
        long[] times = new long[readings.size()];
        double[] depths = new double[times.length];
        double[] velocities = new double[times.length];
        double[] rains = new double[times.length];
        int size = 0;
        for (SiteReading reading : readings) {
            times[size] = EpochNanos.of(reading.time());
            if (size > 0 && times[size] <= times[size - 1]) {
                throw new IllegalArgumentException("time must be after that of the reading before, "
                        + EpochNanos.toInstant(times[size - 1]) + ", was " + reading.time());
            }
            depths[size] = reading.depth();
            velocities[size] = reading.velocity();
            rains[size++] = reading.rain();
        }
        return new SiteRecord(times, depths, velocities, rains, 0);
    }

    /**
     * Returns this record with the rain of a gauge.
     *
     * @param rain rain of each step, mm, NaN where it is not known
     * @return the record
     * @throws IllegalArgumentException if a value is negative
     */
    public SiteRecord withRain(RegularSeries rain) {
        for (int k = 0; k < rain.size(); k++) {
            if (rain.value(k) < 0) {
                throw new IllegalArgumentException("rain must be 0 or greater, or NaN, was "
                        + Text.number(rain.value(k)) + " mm at " + rain.time(k));
            }
        }
        return new RainMerge(rain).merge();
    }

    private static double[] usable(Series series) {
        double[] values = series.toValues();
        for (int i = 0; i < values.length; i++) {
            Quality quality = series.quality(i);
            values[i] = quality.isUsable() ? values[i] : Double.NaN;
        }
        return values;
    }

    /** Puts rain beside the readings. */
    private final class RainMerge {
        private final RegularSeries rain;
        private final long[] mergedTimes;
        private final double[] mergedDepths;
        private final double[] mergedVelocities;
        private final double[] mergedRains;
        private int size;
        private final long rainStart;
        private final long rainStep;
        private int step;

        RainMerge(RegularSeries rain) {
            this.rain = rain;
            this.rainStart = EpochNanos.of(rain.start());
            this.rainStep = EpochNanos.positive("step of the rain", rain.step());
            int all = times.length + fillers();
            mergedTimes = new long[all];
            mergedDepths = new double[all];
            mergedVelocities = new double[all];
            mergedRains = new double[all];
        }

        /** Hours that will be put in. */
        private int fillers() {
            int fillers = 0;
            for (int i = 1; i < times.length; i++) {
                fillers += fillers(times[i - 1], times[i]);
            }
            return fillers;
        }

        /** Hours that are put in between two readings: those after the first one, none of them within an hour of the other. */
        private static int fillers(long before, long time) {
            long step = time - before;
            return step <= HOUR || step >= LONGEST_GAP ? 0 : (int) Math.max(0, (time - firstFiller(before) - 1) / HOUR);
        }

        private static long firstFiller(long before) {
            return (before / HOUR + 1) * HOUR;
        }

        SiteRecord merge() {
            for (int i = 0; i < times.length; i++) {
                if (i > 0) {
                    fill(times[i - 1], times[i]);
                } else {
                    skipTo(times[0] - HOUR);
                }
                add(times[i], depths[i], velocities[i]);
            }
            return new SiteRecord(mergedTimes, mergedDepths, mergedVelocities, mergedRains, velocitiesAlone);
        }

        private void fill(long before, long time) {
            int fillers = fillers(before, time);
            for (int k = 0; k < fillers; k++) {
                add(firstFiller(before) + k * HOUR, Double.NaN, Double.NaN);
            }
        }

        /** Rain long before the first reading belongs to no reading. */
        private void skipTo(long time) {
            while (step < rain.size() && endOfStep() <= time) {
                step++;
            }
        }

        private long endOfStep() {
            return rainStart + (step + 1) * rainStep;
        }

        private void add(long time, double depth, double velocity) {
            double sum = 0;
            boolean known = rainCovers(time);
            while (step < rain.size() && endOfStep() <= time) {
                double value = rain.value(step++);
                if (!Double.isNaN(value)) {
                    sum += value;
                    known = true;
                } else {
                    known = false;
                }
            }
            mergedTimes[size] = time;
            mergedDepths[size] = depth;
            mergedVelocities[size] = velocity;
            mergedRains[size++] = known || sum > 0 ? sum : Double.NaN;
        }

        /** A reading within a step whose rain is not NaN is at least not without a gauge. */
        private boolean rainCovers(long time) {
            return step < rain.size() && rainStart + step * rainStep <= time && !Double.isNaN(rain.value(step));
        }
    }

    /**
     * Returns the number of readings.
     *
     * @return count
     */
    public int size() {
        return times.length;
    }

    /**
     * Returns the number of velocity readings without a depth reading at the same instant, which are not in the record.
     *
     * @return count
     */
    public int velocitiesAlone() {
        return velocitiesAlone;
    }

    /**
     * Returns a reading.
     *
     * @param index index from 0
     * @return the reading
     * @throws IndexOutOfBoundsException if there is no such reading
     */
    public SiteReading get(int index) {
        return new SiteReading(EpochNanos.toInstant(times[index]), depths[index], velocities[index], rains[index]);
    }

    /**
     * Returns the time from the first reading to the last.
     *
     * @return the interval, just after the last reading its end
     * @throws IllegalArgumentException if the record is empty
     */
    public Interval interval() {
        if (times.length == 0) {
            throw new IllegalArgumentException("record must have a reading, was empty");
        }
        return Interval.of(
                EpochNanos.toInstant(times[0]),
                EpochNanos.toInstant(times[times.length - 1]).plusNanos(1));
    }

    /**
     * Returns the readings in an interval.
     *
     * @param interval the interval
     * @return the readings in it
     */
    public SiteRecord slice(Interval interval) {
        int from = firstAtOrAfter(interval.start());
        int to = Math.max(from, firstAtOrAfter(interval.end()));
        return new SiteRecord(
                Arrays.copyOfRange(times, from, to),
                Arrays.copyOfRange(depths, from, to),
                Arrays.copyOfRange(velocities, from, to),
                Arrays.copyOfRange(rains, from, to),
                velocitiesAlone);
    }

    int firstAtOrAfter(Instant time) {
        int found = Arrays.binarySearch(times, EpochNanos.of(time));
        return found >= 0 ? found : -found - 1;
    }

    long time(int index) {
        return times[index];
    }

    double depth(int index) {
        return depths[index];
    }

    double velocity(int index) {
        return velocities[index];
    }

    double rain(int index) {
        return rains[index];
    }

    /** Whether a velocity was read at all. */
    boolean hasVelocity() {
        return Arrays.stream(velocities).anyMatch(v -> !Double.isNaN(v));
    }

    /**
     * Returns the median time from one depth reading to the next.
     *
     * @return the step; zero if there are fewer than two readings
     */
    public Duration medianStep() {
        if (times.length < 2) {
            return Duration.ZERO;
        }
        long[] steps = new long[times.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = times[i + 1] - times[i];
        }
        Arrays.sort(steps);
        return Duration.ofNanos(steps[steps.length / 2]);
    }

    @Override
    public Iterator<SiteReading> iterator() {
        return new Iterator<>() {
            private int next;

            @Override
            public boolean hasNext() {
                return next < times.length;
            }

            @Override
            public SiteReading next() {
                if (next >= times.length) {
                    throw new NoSuchElementException();
                }
                return get(next++);
            }
        };
    }

    @Override
    public String toString() {
        return "SiteRecord[" + size() + " readings"
                + (times.length == 0
                        ? ""
                        : ", " + interval().start() + " to " + EpochNanos.toInstant(times[times.length - 1]))
                + "]";
    }
}
