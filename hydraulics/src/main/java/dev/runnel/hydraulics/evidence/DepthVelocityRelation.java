package dev.runnel.hydraulics.evidence;

import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.monitoring.DepthCondition;
import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.monitoring.VelocityCondition;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Series;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.apiguardian.api.API;

/**
 * How measured depth and velocity hang together, against the law of resistance. Made of the usable readings that are part
 * full and flow forward; the others are counted. Immutable and thread-safe.
 *
 * <p>In uniform flow all points (y, V) lie on the one curve of the law, V = V(R(y), S). Points at one constant ratio to it
 * say that gradient, roughness or velocity factor are not as stated; points that leave it towards greater depth and smaller
 * velocity say that something downstream holds the water up; a ratio that changes with time says that something changes.
 * With a sediment bed R is that of the area above the bed, whose roughness is taken to be that of the wall.
 *
 * <p>What this is not: a calibration. A relation fitted to readings tells nothing about depths that were not seen, and it
 * cannot tell a wrong sensor from a rough pipe; for that, gauge by hand.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DepthVelocityRelation {
    /** Of a class width. */
    private static final double CLASS_ROUNDING = 1e-9;

    private final PipeMonitor monitor;
    private final double[] levels;
    private final double[] velocities;
    private final int leftOut;

    private DepthVelocityRelation(PipeMonitor monitor, double[] levels, double[] velocities, int leftOut) {
        this.monitor = monitor;
        this.levels = levels;
        this.velocities = velocities;
        this.leftOut = leftOut;
    }

    /**
     * Returns the relation of a record.
     *
     * @param record the record of a monitor
     * @return the relation, possibly of no readings
     * @throws IllegalArgumentException if the monitor's settings changed within the record, so that there is no one law to
     *     compare with: take its stretches one by one
     */
    public static DepthVelocityRelation of(FlowRecord record) {
        if (!record.monitors().isConstant()) {
            throw new IllegalArgumentException(
                    "record must be of one setting of its monitor, was of several: take each stretch by itself");
        }
        double[] levels = new double[record.size()];
        double[] velocities = new double[record.size()];
        int used = 0;
        Series flow = record.flow();
        for (int i = 0; i < levels.length; i++) {
            if (record.depthCondition(i) == DepthCondition.PART_FULL
                    && record.velocityCondition(i) == VelocityCondition.FORWARD
                    && flow.quality(i).isUsable()) {
                levels[used] = record.level().value(i);
                velocities[used] = record.velocity().value(i);
                used++;
            }
        }
        return new DepthVelocityRelation(
                record.monitors().first(),
                Arrays.copyOf(levels, used),
                Arrays.copyOf(velocities, used),
                record.size() - used);
    }

    /**
     * Returns this relation narrowed to a range of levels, for example without the shallow flows that sensors read badly.
     *
     * @param from lowest level, m; inclusive
     * @param to highest level, m; exclusive
     * @return the relation of the readings in the range; the others count as left out
     * @throws IllegalArgumentException if not {@code from} &lt; {@code to}
     */
    public DepthVelocityRelation betweenLevels(double from, double to) {
        if (!(from < to)) {
            throw new IllegalArgumentException(
                    "from must be less than to, was " + Text.number(from) + " and " + Text.number(to) + " m");
        }
        double[] keptLevels = new double[levels.length];
        double[] keptVelocities = new double[levels.length];
        int kept = 0;
        for (int i = 0; i < levels.length; i++) {
            if (levels[i] >= from && levels[i] < to) {
                keptLevels[kept] = levels[i];
                keptVelocities[kept] = velocities[i];
                kept++;
            }
        }
        return new DepthVelocityRelation(
                monitor,
                Arrays.copyOf(keptLevels, kept),
                Arrays.copyOf(keptVelocities, kept),
                leftOut + levels.length - kept);
    }

    /**
     * Returns the number of readings in the relation.
     *
     * @return count
     */
    public int size() {
        return levels.length;
    }

    /**
     * Returns the number of pairs of the record that are not in the relation.
     *
     * @return count
     */
    public int leftOut() {
        return leftOut;
    }

    /**
     * Returns the ratio of measured mean velocity to the velocity of the law at the same depth.
     *
     * @return median and scatter; empty if there are no readings
     */
    public Optional<MedianAndSpread> ratio() {
        double[] ratios = new double[levels.length];
        for (int i = 0; i < ratios.length; i++) {
            ratios[i] = velocities[i] / monitor.uniformVelocity(levels[i]);
        }
        return MedianAndSpread.of(ratios);
    }

    /**
     * Returns Manning's n as the readings would have it, n = R^(2/3) S^(1/2) / V for each, with the stated gradient.
     *
     * @return estimate, s/m^(1/3); empty if there are no readings
     */
    public Optional<RoughnessEstimate> manning() {
        MeasuredRoughness measured = new MeasuredRoughness(monitor);
        double[] n = new double[levels.length];
        for (int i = 0; i < n.length; i++) {
            n[i] = measured.manning(levels[i], velocities[i]);
        }
        return MedianAndSpread.of(n).map(spread -> new RoughnessEstimate(spread, 0, 0));
    }

    /**
     * Returns the equivalent sand roughness as the readings would have it, from the law of Colebrook and White solved for
     * ks, with the stated gradient. It answers far more strongly than Manning's n: a velocity 10 % off can halve or double ks.
     *
     * @param viscosity a law with the viscosity of the water; its roughness plays no part
     * @return estimate, m, each reading kept in [0, 4R]; empty if there are no readings
     */
    public Optional<RoughnessEstimate> sandRoughness(ColebrookWhite viscosity) {
        Objects.requireNonNull(viscosity, "viscosity");
        MeasuredRoughness measured = new MeasuredRoughness(monitor);
        double[] roughness = new double[levels.length];
        int tooFast = 0;
        int tooSlow = 0;
        for (int i = 0; i < roughness.length; i++) {
            double ks = measured.sandRoughness(levels[i], velocities[i], viscosity);
            double largest = measured.largestSandRoughness(levels[i]);
            tooFast += ks < 0 ? 1 : 0;
            tooSlow += ks > largest ? 1 : 0;
            roughness[i] = Math.min(Math.max(ks, 0), largest);
        }
        RoughnessCounts counts = new RoughnessCounts(tooFast, tooSlow);
        return MedianAndSpread.of(roughness).map(counts::estimate);
    }

    private record RoughnessCounts(int tooFast, int tooSlow) {
        RoughnessEstimate estimate(MedianAndSpread spread) {
            return new RoughnessEstimate(spread, tooFast, tooSlow);
        }
    }

    /**
     * Returns the readings in classes of level, class k from k times the width up to (k + 1) times.
     *
     * @param width width of a class, m; greater than 0
     * @return the classes that have readings, by rising level
     * @throws IllegalArgumentException if {@code width} is not greater than 0
     */
    public List<DepthClass> classes(double width) {
        Require.positive("width", width, "m");
        SortedMap<Long, List<Integer>> members = new TreeMap<>();
        for (int i = 0; i < levels.length; i++) {
            members.computeIfAbsent(classNumber(levels[i], width), key -> new ArrayList<>())
                    .add(i);
        }
        List<DepthClass> classes = new ArrayList<>();
        members.forEach((number, indices) -> {
            double level =
                    MedianAndSpread.of(pick(levels, indices)).orElseThrow().median();
            MedianAndSpread velocity =
                    MedianAndSpread.of(pick(velocities, indices)).orElseThrow();
            classes.add(new DepthClass(
                    number * width, (number + 1) * width, level, velocity, monitor.uniformVelocity(level)));
        });
        return List.copyOf(classes);
    }

    /** Readings come in whole millimetres: 0.3 m must not fall into the class below because 0.3 / 0.1 is 2.9999999999999996. */
    private static long classNumber(double level, double width) {
        return (long) Math.floor(level / width + CLASS_ROUNDING);
    }

    private static double[] pick(double[] values, List<Integer> indices) {
        return indices.stream().mapToDouble(index -> values[index]).toArray();
    }

    @Override
    public String toString() {
        return "DepthVelocityRelation[" + size() + " readings, " + leftOut + " left out"
                + ratio().map(ratio -> ", measured over law velocity " + ratio).orElse("")
                + manning().map(n -> ", Manning n " + n.spread()).orElse("") + "]";
    }
}
