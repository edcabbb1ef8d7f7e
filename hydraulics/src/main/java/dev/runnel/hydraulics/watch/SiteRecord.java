package dev.runnel.hydraulics.watch;

import dev.runnel.internal.SeriesArrays;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
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
        double[] missing = missing(depth.size());
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        return new SiteRecord(keeper.times(depth), keeper.usableValues(depth), missing, missing, 0);
    }

    /**
     * Returns a record of depth and velocity.
     *
     * @param depth depth readings, m, as the sensor gives them
     * @param velocity velocity readings, m/s
     * @return the record; without rain
     */
    public static SiteRecord of(Series depth, Series velocity) {
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(velocity, "velocity");
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        long[] times = keeper.times(depth);
        double[] depths = keeper.usableValues(depth);
        double[] usable = keeper.usableValues(velocity);
        double[] noRain = missing(times.length);
        if (depth.hasTimesOf(velocity)) {
            return new SiteRecord(times, depths, usable, noRain, 0);
        }
        double[] velocities = missing(times.length);
        long[] ofVelocity = keeper.times(velocity);
        int matched = 0;
        int at = 0;
        for (int i = 0; i < times.length; i++) {
            while (at < ofVelocity.length && ofVelocity[at] < times[i]) {
                at++;
            }
            if (at < ofVelocity.length && ofVelocity[at] == times[i]) {
                velocities[i] = usable[at];
                matched++;
            }
        }
        return new SiteRecord(times, depths, velocities, noRain, velocity.size() - matched);
    }

    private static double[] missing(int size) {
        double[] missing = new double[size];
        Arrays.fill(missing, Double.NaN);
        return missing;
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
        SiteRecord whole = withHoursInGaps();
        return new SiteRecord(
                whole.times, whole.depths, whole.velocities, new RainSums(rain).at(whole.times), velocitiesAlone);
    }

    /** Puts hours without readings into gaps; this record if it has none. */
    private SiteRecord withHoursInGaps() {
        int all = times.length;
        for (int i = 1; i < times.length; i++) {
            all += fillers(times[i - 1], times[i]);
        }
        if (all == times.length) {
            return this;
        }
        long[] newTimes = new long[all];
        double[] newDepths = missing(all);
        double[] newVelocities = missing(all);
        int from = 0;
        int size = 0;
        for (int i = 1; i <= times.length; i++) {
            int hours = i < times.length ? fillers(times[i - 1], times[i]) : 0;
            if (hours > 0 || i == times.length) {
                System.arraycopy(times, from, newTimes, size, i - from);
                System.arraycopy(depths, from, newDepths, size, i - from);
                System.arraycopy(velocities, from, newVelocities, size, i - from);
                size += i - from;
                from = i;
            }
            for (int k = 0; k < hours; k++) {
                newTimes[size++] = firstFiller(times[i - 1]) + k * HOUR;
            }
        }
        return new SiteRecord(newTimes, newDepths, newVelocities, missing(all), velocitiesAlone);
    }

    /** Hours that are put in between two readings: those after the first one, none of them within an hour of the other. */
    private static int fillers(long before, long time) {
        long step = time - before;
        return step <= HOUR || step >= LONGEST_GAP ? 0 : (int) Math.max(0, (time - firstFiller(before) - 1) / HOUR);
    }

    private static long firstFiller(long before) {
        return (before / HOUR + 1) * HOUR;
    }

    /** Gives the rain to the readings, from the first to the last. */
    private static final class RainSums {
        private final RegularSeries rain;
        private final long rainStart;
        private final long rainStep;
        private int step;

        RainSums(RegularSeries rain) {
            this.rain = rain;
            this.rainStart = EpochNanos.of(rain.start());
            this.rainStep = EpochNanos.positive("step of the rain", rain.step());
        }

        double[] at(long[] times) {
            if (times.length > 0) {
                skipTo(times[0] - HOUR);
            }
            double[] sums = new double[times.length];
            for (int i = 0; i < times.length; i++) {
                sums[i] = until(times[i]);
            }
            return sums;
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

        private double until(long time) {
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
            return known || sum > 0 ? sum : Double.NaN;
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
