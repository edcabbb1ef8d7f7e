package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.internal.ShortSort;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import java.util.Arrays;
import java.util.function.Consumer;

/**
 * Makes hours of readings: the tests of single readings (range, frozen) first, what they fail is missing for all that
 * follows; then the medians.
 */
final class HourGatherer {
    /** Readings of an hour that are kept; those beyond are left out, so that no feed can fill the memory:
     * two a second; chosen here. */
    private static final int LARGEST_HOUR = 7200;

    /** Depths from here to the next are looked at, m: a little below 0 is an offset, all else no sewer; chosen here. */
    private static final double LEAST_DEPTH = -0.1;

    private static final double LARGEST_DEPTH = 30;

    /** Depth up to which there may as well be none, if it is not of another unit, m; chosen here. */
    private static final double ODD_DEPTH = 0.002;

    /** No sewer is faster, m/s; chosen here. */
    private static final double LARGEST_VELOCITY = 12;

    /** At a lower level a velocity sensor may well see nothing, m; chosen here. */
    private static final double UNDER_WATER = 0.03;

    /** Magnitude up to which a velocity is none, m/s; chosen here, the last digit of many sensors. */
    private static final double ZERO_VELOCITY = 0.005;

    /** Level up to which there is no water, m; chosen here. */
    private static final double LEAST_LEVEL = 0.001;

    /** Velocity without water that contradicts it, m/s; chosen here. */
    private static final double MOVING = 0.1;

    /** Steps of the velocity, as a share of it, that are no scatter any more, and that are none; chosen here. */
    private static final double LARGE_STEP = 0.5;

    private static final double SAME_READING = 1e-9;

    /** Share of the upper quartile of an hour below which a velocity is low; chosen here. */
    private static final double LOW_WIDE = 0.6;

    /** The same for a sensor whose hours scatter little; chosen here. */
    private static final double LOW_NARROW = 0.75;

    /** Within an hour of rising or falling water, low velocities are no sign of a weak echo: range
     * of ln depth, a quarter of the depth; chosen here. */
    private static final double STEADY = 0.22;

    /** Readings of an hour from which on their quartiles tell a scatter; chosen here. */
    private static final int LEAST_OF_HOUR = 4;

    /** Distance of the quartiles of a normal law over its standard deviation, 2 · 0.6745. */
    private static final double QUARTILES_APART = 1.349;

    /** How far from the median a reading counts in the mean of an hour, as a factor: a spike is no mean; chosen here. */
    private static final double FARTHEST = 2;

    /** So many of these make no product that a double cannot hold. */
    private static final int FACTORS = 512;

    /**
     * A level above this times the highest of the usual dry day, a velocity below that times the lowest, is one that the
     * longest equal runs of the baseline say nothing of: water that is held up hardly moves and runs slowly; chosen here.
     */
    private static final double UNUSUAL_LEVEL = 1.25;

    private static final double UNUSUAL_VELOCITY = 0.6;

    /** A level of at most this share of the lowest of the usual dry day is next to nothing; chosen here. */
    private static final double NEXT_TO_NOTHING = 0.1;

    /** Room for a reading a minute; an hour of more makes it grow. */
    private static final int ROOM = 64;

    private final MonitorHistory monitors;
    private final double offset;
    private final double unusualLevel;
    private final double unusualVelocity;
    private final double nothing;
    private final ChanceRun chanceRun;
    private final boolean learning;
    private final double soffit;
    private final Consumer<SiteHour> hours;
    private final EqualRun depthRun;
    private final EqualRun velocityRun;
    private double[] levels = new double[ROOM];
    private double[] velocities = new double[ROOM];
    private double[] sorted = new double[ROOM];
    private final ShortSort shortSort = new ShortSort();

    /** Positive readings that no sewer has, which may be of another unit. */
    private double[] oddDepths = new double[0];

    private double[] oddVelocities = new double[0];
    private int oddDepthCount;
    private int oddVelocityCount;

    /** Levels at which the velocity was 0. */
    private double[] zeroLevels = new double[0];

    private int zeroLevelCount;
    private final ReadingSteps steps = new ReadingSteps(LEAST_LEVEL);
    private final LoneDepths lone = new LoneDepths();
    private final StrayVelocities stray = new StrayVelocities();
    private int levelCount;
    private int velocityCount;
    private int upstreamCount;
    private SiteHour hour = new SiteHour(Long.MIN_VALUE);
    private long hourEnd = Long.MIN_VALUE;
    private long last = Long.MIN_VALUE;
    private long lastStep;

    /** For learning: every level and velocity may be usual. */
    HourGatherer(MonitorHistory monitors, long depthLimit, long velocityLimit, Consumer<SiteHour> hours) {
        this(
                monitors,
                depthLimit,
                velocityLimit,
                Double.POSITIVE_INFINITY,
                0,
                Double.NEGATIVE_INFINITY,
                new ChanceRun(0, 0),
                true,
                hours);
    }

    /** For the watch: at levels above the unusual one and velocities below it, equal readings are borne for a day. */
    HourGatherer(SiteBaseline baseline, MonitorHistory monitors, Consumer<SiteHour> hours) {
        this(
                monitors,
                baseline.sensor.depthFrozen(),
                baseline.sensor.velocityFrozen(),
                UNUSUAL_LEVEL * baseline.highestUsual(Quantity.DEPTH),
                UNUSUAL_VELOCITY * baseline.lowestUsual(Quantity.VELOCITY),
                nothing(baseline),
                baseline.sensor.chanceRun(),
                false,
                hours);
    }

    private HourGatherer(
            MonitorHistory monitors,
            long depthLimit,
            long velocityLimit,
            double unusualLevel,
            double unusualVelocity,
            double nothing,
            ChanceRun chanceRun,
            boolean learning,
            Consumer<SiteHour> hours) {
        this.monitors = monitors;
        this.offset = monitors.isConstant() ? monitors.first().sensorOffset() : Double.NaN;
        this.unusualLevel = unusualLevel;
        this.unusualVelocity = unusualVelocity;
        this.nothing = nothing;
        this.chanceRun = chanceRun;
        this.learning = learning;
        this.soffit = monitors.first().soffit();
        this.hours = hours;
        this.depthRun = new EqualRun(depthLimit);
        this.velocityRun = new EqualRun(velocityLimit);
    }

    /** Behind pumps water comes and goes: there nothing is usual. */
    private static double nothing(SiteBaseline baseline) {
        double lowest = baseline.lowestUsual(Quantity.DEPTH);
        return lowest > 0 && !baseline.isPumped() && !baseline.swings
                ? NEXT_TO_NOTHING * lowest
                : Double.NEGATIVE_INFINITY;
    }

    void add(long time, double depth, double velocity, double rain) {
        // Most readings stay within the hour; a division is slow.
        if (time >= hourEnd || hour.readings == 0) {
            end();
            long number = Math.floorDiv(time, SiteHour.NANOS);
            hour = new SiteHour(number);
            hourEnd = (number + 1) * SiteHour.NANOS;
        }
        hour.readings++;
        stamp(time);
        if (!Double.isNaN(rain)) {
            hour.rain = Double.isNaN(hour.rain) ? rain : hour.rain + rain;
        }
        double level = Double.NaN;
        if (!Double.isNaN(depth)) {
            level = level(time, depth);
        }
        if (!Double.isNaN(velocity)) {
            velocity(time, level, velocity);
        }
    }

    private void stamp(long time) {
        long step = last == Long.MIN_VALUE ? 0 : time - last;
        if (step >= SiteHour.NANOS && step > hour.gap) {
            hour.gap = step;
            hour.gapFrom = last;
            hour.gapStep = lastStep;
        }
        last = time;
        lastStep = step;
    }

    private double level(long time, double depth) {
        if (depth > 0 && (depth > LARGEST_DEPTH || depth <= ODD_DEPTH) && oddDepthCount < LARGEST_HOUR) {
            oddDepths = room(oddDepths, oddDepthCount);
            oddDepths[oddDepthCount++] = depth;
        }
        if (!(depth >= LEAST_DEPTH && depth <= LARGEST_DEPTH)) {
            hour.outOfRange++;
            steps.unknown(hour);
            return Double.NaN;
        }
        double level = Math.max(0, depth) + offset(time);
        if (level <= nothing) {
            hour.outOfRange++;
        }
        if (level > soffit || depth <= 0 || level <= nothing) {
            depthRun.reset();
        } else {
            boolean patient = level > unusualLevel;
            boolean frozen = depthRun.add(time, depth, patient);
            long length = depthRun.length(time);
            if (length > hour.depthRun && (frozen || !patient)) {
                hour.depthRun = length;
                hour.depthRunFrom = depthRun.from();
            }
            if (frozen) {
                steps.unknown(hour);
                return Double.NaN;
            }
        }
        steps.add(hour, time, level, depth);
        lone.add(hour, time, level);
        if (levelCount < LARGEST_HOUR) {
            levels = room(levels, levelCount);
            levels[levelCount++] = level;
        }
        return level;
    }

    /** Where the sensor stood; most never move. */
    private double offset(long time) {
        return Double.isNaN(offset) ? monitors.at(EpochNanos.toInstant(time)).sensorOffset() : offset;
    }

    /** A velocity that half leaves the one before it is no scatter. */
    private void learnStep(double step, double before) {
        if (step < LARGE_STEP * before) {
            hour.velocitySteps += step;
            hour.velocitiesBefore += before;
            if (step > SAME_READING * before) {
                hour.velocityStep = Math.min(hour.velocityStep, step);
            }
        }
    }

    private void velocity(long time, double level, double velocity) {
        if (velocity > 0
                && (velocity > LARGEST_VELOCITY || velocity <= ZERO_VELOCITY)
                && oddVelocityCount < LARGEST_HOUR) {
            oddVelocities = room(oddVelocities, oddVelocityCount);
            oddVelocities[oddVelocityCount++] = velocity;
        }
        if (!(Math.abs(velocity) <= LARGEST_VELOCITY)) {
            return;
        }
        double size = Math.abs(velocity);
        if (size > ZERO_VELOCITY) {
            if (learning) {
                learnStep(velocityRun.step(time, velocity), Math.abs(velocityRun.last()));
            }
            int run = velocityRun.tooLong(time, velocity);
            boolean patient = size < unusualVelocity || run > 0 && run <= chanceRun.most(size);
            boolean frozen = velocityRun.add(time, velocity, patient);
            long length = velocityRun.length(time);
            if (length > hour.velocityRun && (frozen || !patient)) {
                hour.velocityRun = length;
                hour.velocityRunFrom = velocityRun.from();
            }
            if (frozen) {
                return;
            }
        }
        if (level <= LEAST_LEVEL && velocity > MOVING) {
            hour.withoutWater++;
        }
        // Of a frozen or missing depth nothing says that there is water; the velocity still counts.
        boolean shallow = level <= UNDER_WATER;
        if (shallow && size <= ZERO_VELOCITY) {
            return;
        }
        hour.looked++;
        if (size <= ZERO_VELOCITY) {
            hour.zeros++;
            if (!Double.isNaN(level) && zeroLevelCount < LARGEST_HOUR) {
                zeroLevels = room(zeroLevels, zeroLevelCount);
                zeroLevels[zeroLevelCount++] = level;
            }
        } else if (velocityCount + upstreamCount < LARGEST_HOUR) {
            velocities = room(velocities, velocityCount + upstreamCount);
            velocities[velocityCount + upstreamCount] = velocity;
            if (velocity > 0) {
                velocityCount++;
                if (level > UNDER_WATER) {
                    stray.add(hour, time, level, velocity);
                }
            } else {
                upstreamCount++;
            }
        }
    }

    private static double[] room(double[] values, int used) {
        return used < values.length ? values : Arrays.copyOf(values, Math.max(ROOM, 2 * values.length));
    }

    /** Hands over the hour that is being filled, if there is one. */
    void end() {
        if (hour.readings == 0) {
            return;
        }
        if (learning) {
            hour.depthRoughness = roughness(levels, levelCount);
            hour.velocityRoughness = roughness(velocities, velocityCount + upstreamCount);
        }
        depth();
        rests();
        velocity();
        if (hour.depthSpread >= STEADY) {
            // Where water rises or falls by much, velocities do as well.
            hour.held = 0;
            hour.strayHigh = 0;
            hour.strayLow = 0;
        }
        asRead();
        SiteHour ended = hour;
        hour = new SiteHour(Long.MIN_VALUE);
        levelCount = 0;
        velocityCount = 0;
        upstreamCount = 0;
        oddDepthCount = 0;
        oddVelocityCount = 0;
        zeroLevelCount = 0;
        hours.accept(ended);
    }

    private void depth() {
        if (levelCount == 0 || 2 * levelCount < hour.readings) {
            return;
        }
        sort(levels, levelCount);
        double median = median(0, levelCount);
        if (median > LEAST_LEVEL) {
            hour.lnDepth = Math.log(median);
            hour.meanLnDepth = hour.lnDepth + meanFrom(median, 0, levelCount);
            hour.depthSpread = Math.log(sorted[levelCount - 1] / Math.max(LEAST_LEVEL, sorted[0]));
        }
    }

    /** Water stands between two strokes of a pump: a velocity of 0 in the lower half of an hour that swings is none to look at. */
    private void rests() {
        if (zeroLevelCount == 0 || hour.depthSpread < STEADY) {
            return;
        }
        sort(levels, levelCount);
        double middle = Math.sqrt(Math.max(LEAST_LEVEL, sorted[0]) * sorted[levelCount - 1]);
        for (int i = 0; i < zeroLevelCount; i++) {
            if (zeroLevels[i] < middle) {
                hour.zeros--;
                hour.looked--;
            }
        }
    }

    /** Medians of the readings as they came, where most are such as no sewer has: of the others they are known already. */
    private void asRead() {
        double offset = offset((hour.hour + 1) * SiteHour.NANOS);
        double depth = Math.exp(hour.lnDepth) - offset;
        if (2 * oddDepthCount >= hour.readings) {
            sort(oddDepths, oddDepthCount);
            depth = median(0, oddDepthCount);
        }
        hour.lnReadDepth = depth > 0 ? Math.log(depth) : Double.NaN;
        hour.lnReadVelocity = hour.lnVelocity;
        if (2 * oddVelocityCount >= hour.readings) {
            sort(oddVelocities, oddVelocityCount);
            hour.lnReadVelocity = Math.log(median(0, oddVelocityCount));
        }
    }

    private void velocity() {
        int count = velocityCount + upstreamCount;
        if (count == 0) {
            return;
        }
        sort(velocities, count);
        if (upstreamCount > velocityCount) {
            hour.upstream = -median(0, upstreamCount);
            return;
        }
        hour.flips = upstreamCount;
        if (2 * velocityCount < hour.readings && 2 * velocityCount < hour.looked) {
            return;
        }
        double median = median(upstreamCount, count);
        if (2 * velocityCount >= hour.readings) {
            hour.lnVelocity = Math.log(median);
            hour.meanLnVelocity = hour.lnVelocity + meanFrom(median, upstreamCount, count);
        }
        if (hour.depthSpread < STEADY) {
            double upper = sorted[upstreamCount + (3 * (velocityCount - 1) + 2) / 4];
            for (int i = upstreamCount; i < count && sorted[i] < LOW_NARROW * upper; i++) {
                hour.lowNarrow++;
                hour.lowWide += sorted[i] < LOW_WIDE * upper ? 1 : 0;
            }
            double lower = sorted[upstreamCount + (velocityCount - 1) / 4];
            hour.velocityScatter =
                    velocityCount < LEAST_OF_HOUR ? Double.NaN : Math.log(upper / lower) / QUARTILES_APART;
        }
    }

    private static double roughness(double[] values, int count) {
        double bends = 0;
        double sum = 0;
        for (int i = 1; i < count - 1; i++) {
            bends += Math.abs(values[i - 1] - 2 * values[i] + values[i + 1]);
            sum += values[i];
        }
        return count < LEAST_OF_HOUR || !(sum > 0) ? Double.NaN : bends / sum;
    }

    private void sort(double[] values, int count) {
        if (sorted.length < count) {
            sorted = new double[values.length];
        }
        System.arraycopy(values, 0, sorted, 0, count);
        shortSort.sort(sorted, count);
    }

    private double median(int from, int to) {
        int count = to - from;
        int half = from + count / 2;
        return count % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }

    /** Mean of ln (reading / median), each reading held within half and double of it: that of their product, a logarithm being slow. */
    private double meanFrom(double median, int from, int to) {
        double sum = 0;
        double product = 1;
        for (int i = from; i < to; i++) {
            product *= Math.min(FARTHEST, Math.max(1 / FARTHEST, sorted[i] / median));
            if ((i - from) % FACTORS == FACTORS - 1) {
                sum += Math.log(product);
                product = 1;
            }
        }
        return (sum + Math.log(product)) / (to - from);
    }

    StateText write() {
        StateText text = StateText.of("hour", 1)
                .with("hour", hour.hour)
                .with("readings", hour.readings)
                .with("rain", hour.rain)
                .with("looked", hour.looked)
                .with("zeros", hour.zeros)
                .with("outOfRange", hour.outOfRange)
                .with("withoutWater", hour.withoutWater)
                .with("runs", new long[] {hour.depthRun, hour.depthRunFrom, hour.velocityRun, hour.velocityRunFrom})
                .with("stamps", new long[] {last, lastStep, hour.gap, hour.gapFrom, hour.gapStep})
                .with("levels", Arrays.copyOf(levels, levelCount))
                .with("velocities", Arrays.copyOf(velocities, velocityCount + upstreamCount))
                .with("oddDepths", Arrays.copyOf(oddDepths, oddDepthCount))
                .with("zeroLevels", Arrays.copyOf(zeroLevels, zeroLevelCount))
                .with("oddVelocities", Arrays.copyOf(oddVelocities, oddVelocityCount));
        steps.write(text, hour);
        lone.write(text, hour);
        stray.write(text, hour);
        depthRun.write(text, "depth");
        velocityRun.write(text, "velocity");
        return text;
    }

    void read(String state) {
        StateText text = StateText.parse("hour", 1, state);
        hour = new SiteHour(text.count("hour"));
        hourEnd = hour.hour == Long.MIN_VALUE ? Long.MIN_VALUE : (hour.hour + 1) * SiteHour.NANOS;
        hour.readings = text.index("readings");
        hour.rain = text.number("rain");
        hour.looked = text.index("looked");
        hour.zeros = text.index("zeros");
        hour.outOfRange = text.index("outOfRange");
        hour.withoutWater = text.index("withoutWater");
        long[] runs = text.counts("runs");
        hour.depthRun = runs[0];
        hour.depthRunFrom = runs[1];
        hour.velocityRun = runs[2];
        hour.velocityRunFrom = runs[3];
        long[] stamps = text.counts("stamps");
        last = stamps[0];
        lastStep = stamps[1];
        hour.gap = stamps[2];
        hour.gapFrom = stamps[3];
        hour.gapStep = stamps[4];
        double[] found = text.numbers("levels");
        levelCount = found.length;
        levels = Arrays.copyOf(found, Math.max(ROOM, found.length));
        found = text.numbers("velocities");
        velocities = Arrays.copyOf(found, Math.max(ROOM, found.length));
        upstreamCount = (int) Arrays.stream(found).filter(v -> v < 0).count();
        velocityCount = found.length - upstreamCount;
        steps.read(text, hour);
        lone.read(text, hour);
        stray.read(text, hour);
        oddDepths = text.numbers("oddDepths");
        oddDepthCount = oddDepths.length;
        zeroLevels = text.numbers("zeroLevels");
        zeroLevelCount = zeroLevels.length;
        oddVelocities = text.numbers("oddVelocities");
        oddVelocityCount = oddVelocities.length;
        depthRun.read(text, "depth");
        velocityRun.read(text, "velocity");
    }
}
