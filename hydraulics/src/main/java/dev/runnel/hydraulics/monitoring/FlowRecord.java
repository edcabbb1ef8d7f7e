package dev.runnel.hydraulics.monitoring;

import dev.runnel.internal.QualityCodes;
import dev.runnel.internal.SeriesArrays;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.apiguardian.api.API;
import org.jspecify.annotations.Nullable;

/**
 * The flow of a monitor over a record, with the level and mean velocity it was found from and with what was done to each
 * pair of readings. Immutable and thread-safe. All its series share the same instants.
 *
 * <p>What this is not: a corrected record. No reading is changed, filled or left out.
 *
 * @see PipeMonitor#flow(Series, Series)
 * @see MonitorHistory#flow(Series, Series)
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class FlowRecord {
    private final MonitorHistory monitors;
    private final ReadingPairs pairs;
    private final Series level;
    private final Series velocity;
    private final Series flow;

    /** Made on first need, since many ask for the flow only; two threads make the same. */
    private volatile @Nullable PairCodes codes;

    /** Made on first need, as the law of the pipe takes its time; two threads make the same. */
    private volatile @Nullable Series velocityRatio;

    private FlowRecord(MonitorHistory monitors, ReadingPairs pairs, Series level, Series velocity, Series flow) {
        this.monitors = monitors;
        this.pairs = pairs;
        this.level = level;
        this.velocity = velocity;
        this.flow = flow;
    }

    static FlowRecord of(PipeMonitor monitor, ReadingPairs pairs) {
        PairConversion conversion = monitor.conversion();
        int size = pairs.size();
        double[] depths = pairs.depths();
        double[] readings = pairs.velocities();
        double[] flows = new double[size];
        PairConversion.Products products = conversion.products(depths, readings, flows);
        // What nothing is written to stays the array of the readings.
        double[] levels = conversion.levels(depths);
        QualityCodes ofDepth = pairs.depthQualities();
        QualityCodes ofVelocity = pairs.velocityQualities();
        QualityCodes levelQualities = ofDepth;
        QualityCodes flowQualities = ofDepth.worse(ofVelocity, flows);
        if (products.hasOthers()) {
            levels = levels == depths ? depths.clone() : levels;
            byte[] ofLevels = levelQualities.all().clone();
            byte[] ofFlows = flowQualities.all().clone();
            for (int i = 0; i < size; i++) {
                if (conversion.isOther(depths[i])) {
                    DepthCondition condition = conversion.depthCondition(depths[i]);
                    byte quality = ofDepth.at(i);
                    levels[i] = conversion.level(depths[i], condition);
                    ofLevels[i] = PairConversion.levelQuality(levels[i], condition, quality);
                    ofFlows[i] = PairConversion.quality(flows[i], condition, quality, readings[i], ofVelocity.at(i));
                }
            }
            levelQualities = QualityCodes.of(ofLevels, levels);
            flowQualities = QualityCodes.of(ofFlows, flows);
        }
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        return new FlowRecord(
                MonitorHistory.of(monitor),
                pairs,
                (Series) keeper.withRightReadings(pairs.clock(), levels, levelQualities),
                velocity(pairs, monitor.velocityFactor()),
                // What is missing has that quality by the way it was made; an overflow is refused.
                (Series)
                        (products.overflows()
                                ? keeper.withReadings(pairs.clock(), flows, flowQualities.all())
                                : keeper.withRightReadings(pairs.clock(), flows, flowQualities)));
    }

    /** Puts the records of the stretches of a history together; they follow each other and hold all pairs. */
    static FlowRecord joined(MonitorHistory monitors, ReadingPairs pairs, List<FlowRecord> parts) {
        int size = pairs.size();
        double[][] values = new double[3][size];
        byte[][] qualities = new byte[3][size];
        int at = 0;
        for (FlowRecord part : parts) {
            List<Series> all = List.of(part.level, part.velocity, part.flow);
            for (int which = 0; which < values.length; which++) {
                System.arraycopy(all.get(which).toValues(), 0, values[which], at, part.size());
                System.arraycopy(all.get(which).toQualityCodes(), 0, qualities[which], at, part.size());
            }
            at += part.size();
        }
        Series clock = pairs.clock();
        return new FlowRecord(
                monitors,
                pairs,
                clock.withReadings(values[0], qualities[0]),
                clock.withReadings(values[1], qualities[1]),
                clock.withReadings(values[2], qualities[2]));
    }

    private static Series velocity(ReadingPairs pairs, double factor) {
        double[] readings = pairs.velocities();
        SeriesArrays.Keeper keeper = SeriesArrays.keeper();
        if (factor == 1) {
            return (Series) keeper.withRightReadings(pairs.clock(), readings, pairs.velocityQualities());
        }
        double[] velocities = new double[readings.length];
        for (int i = 0; i < velocities.length; i++) {
            velocities[i] = factor * readings[i];
        }
        return (Series) keeper.withReadings(
                pairs.clock(), velocities, pairs.velocityQualities().all());
    }

    /**
     * Returns the monitor that made this record, with its settings of each time.
     *
     * @return the history; constant where all pairs were made with the same settings
     */
    public MonitorHistory monitors() {
        return monitors;
    }

    /**
     * Returns the monitor that made one pair.
     *
     * @param index position, 0 to size - 1
     * @return the monitor with the settings of that time
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public PipeMonitor monitor(int index) {
        return monitors.at(level.epochNanos(index));
    }

    /**
     * Returns the number of pairs of readings.
     *
     * @return count
     */
    public int size() {
        return pairs.size();
    }

    /**
     * Returns the flow.
     *
     * @return flow, m³/s, negative upstream, missing where it is not known
     */
    public Series flow() {
        return flow;
    }

    /**
     * Returns the water level above the invert.
     *
     * @return level, m; missing where the depth reading does not tell it; above the soffit when surcharged
     */
    public Series level() {
        return level;
    }

    /**
     * Returns the mean velocity over the flow area.
     *
     * @return velocity reading times velocity factor, m/s, negative upstream
     */
    public Series velocity() {
        return velocity;
    }

    /**
     * Returns what one depth reading says.
     *
     * @param index position, 0 to size - 1
     * @return the condition
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public DepthCondition depthCondition(int index) {
        return FlowCounts.depthCondition(code(index));
    }

    /** What was done with a pair, by {@link FlowCounts#code}. */
    byte code(int index) {
        return codes().each()[index];
    }

    private PairCodes codes() {
        PairCodes known = codes;
        if (known == null) {
            known = PairCodes.of(monitors, pairs);
            codes = known;
        }
        return known;
    }

    /** Quality of the depth reading itself, which the level loses where it does not follow from the reading. */
    Quality depthQuality(int index) {
        return Quality.ofCode(pairs.depthQualities().at(index));
    }

    /**
     * Returns what one velocity reading says.
     *
     * @param index position, 0 to size - 1
     * @return the condition
     * @throws IndexOutOfBoundsException if there is no such position
     */
    public VelocityCondition velocityCondition(int index) {
        return FlowCounts.velocityCondition(code(index));
    }

    /**
     * Returns how many pairs had which conditions.
     *
     * @return counts that add up to {@link #size()}
     */
    public FlowCounts counts() {
        return codes().counts();
    }

    /**
     * Returns how many depth readings had no velocity reading of the same instant.
     *
     * @return count; a reading without a value is a reading
     */
    public int depthsAlone() {
        return pairs.depthsAlone();
    }

    /**
     * Returns how many velocity readings had no depth reading of the same instant.
     *
     * @return count; a reading without a value is a reading
     */
    public int velocitiesAlone() {
        return pairs.velocitiesAlone();
    }

    /**
     * Returns how full the pipe was: level over height of the section.
     *
     * @return 1 at the soffit, more when surcharged; missing where the level is
     * @throws IllegalStateException if the section is open and has no soffit
     */
    public Series fullness() {
        return level.map(shareOf(closedHeight()));
    }

    /**
     * Returns how much of the capacity was used: flow over the full-bore discharge of the clean conduit.
     *
     * @return 1 at full-bore discharge; negative upstream; missing where the flow is
     * @throws IllegalStateException if the section is open and has no full bore
     */
    public Series capacityUse() {
        closedHeight();
        if (monitors.isConstant()) {
            return flow.map(shareOf(cleanFullBore(monitors.first())));
        }
        Map<PipeMonitor, Double> fullBores = new HashMap<>();
        double[] shares = flow.toValues();
        for (int i = 0; i < shares.length; i++) {
            shares[i] /= fullBores.computeIfAbsent(monitor(i), FlowRecord::cleanFullBore);
        }
        return flow.withReadings(shares, flow.toQualityCodes());
    }

    private static double cleanFullBore(PipeMonitor monitor) {
        return monitor.withoutSediment().conduit().fullBore().discharge();
    }

    /**
     * Returns the measured mean velocity over the velocity of uniform flow at the same level; above the soffit, over that
     * of the full section.
     *
     * @return 1 where they agree, less where the water is slower, negative upstream; missing where the flow is missing or
     *     there is no flow area
     */
    public Series velocityRatio() {
        Series known = velocityRatio;
        if (known == null) {
            known = ratioToUniform();
            velocityRatio = known;
        }
        return known;
    }

    private Series ratioToUniform() {
        double[] levels = SeriesArrays.keeper().values(level);
        double[] velocities = SeriesArrays.keeper().values(velocity);
        double[] ratios = new double[size()];
        boolean[] flowing = flowing();
        for (int from = 0; from < ratios.length; ) {
            LevelMemory uniform = new LevelMemory(monitor(from)::uniformVelocity);
            int to = monitors.endOfSettings(level, from);
            for (int i = from; i < to; i++) {
                ratios[i] = flowing[i] ? velocities[i] / uniform.at(levels[i]) : Double.NaN;
            }
            from = to;
        }
        return whereFlowing(ratios, flowing);
    }

    /** Whether there is a flow, and an area through which it goes. */
    private boolean[] flowing() {
        double[] flows = SeriesArrays.keeper().values(flow);
        boolean[] hasArea = FlowCounts.where(DepthCondition::isFlowing);
        byte[] conditions = codes().each();
        boolean[] flowing = new boolean[flows.length];
        for (int i = 0; i < flowing.length; i++) {
            flowing[i] = hasArea[conditions[i]] && !Double.isNaN(flows[i]);
        }
        return flowing;
    }

    /** A series with the quality of the flow where there are values, and missing elsewhere. */
    private Series whereFlowing(double[] values, boolean[] flowing) {
        byte[] qualities = flow.toQualityCodes();
        byte missing = Quality.MISSING.toCode();
        for (int i = 0; i < qualities.length; i++) {
            qualities[i] = flowing[i] ? qualities[i] : missing;
        }
        return (Series) SeriesArrays.keeper().withReadings(flow, values, qualities);
    }

    /**
     * Returns the standard uncertainty of the flow.
     *
     * @param inputs standard uncertainties of what the flow is made of
     * @return u(Q), m³/s, with the quality of the flow; missing where the flow is missing or there is no flow area
     * @see PipeMonitor#uncertainty
     */
    public Series uncertainty(SensorUncertainty inputs) {
        Objects.requireNonNull(inputs, "inputs");
        boolean[] flowing = flowing();
        return whereFlowing(standardUncertainty(inputs, flowing), flowing);
    }

    /** Not a number where nothing flows. */
    private double[] standardUncertainty(SensorUncertainty inputs, boolean[] flowing) {
        double[] levels = level.toValues();
        double[] velocities = SeriesArrays.keeper().values(velocity);
        for (int i = 0; i < levels.length; i++) {
            levels[i] = flowing[i] ? levels[i] : Double.NaN;
        }
        double[] standard = new double[levels.length];
        for (int from = 0; from < levels.length; ) {
            int to = monitors.endOfSettings(level, from);
            FlowUncertainty.standard(monitor(from), inputs, levels, velocities, from, to, standard);
            from = to;
        }
        return standard;
    }

    /**
     * Returns the standard uncertainty of the flow as a share of its magnitude, u(Q)/|Q|.
     *
     * @param inputs standard uncertainties of what the flow is made of
     * @return share of the flow, a pure number, with the quality of the flow; missing where the uncertainty is missing or
     *     nothing flows
     * @see #uncertainty
     */
    public Series relativeUncertainty(SensorUncertainty inputs) {
        Objects.requireNonNull(inputs, "inputs");
        double[] shares = standardUncertainty(inputs, flowing());
        double[] flows = SeriesArrays.keeper().values(flow);
        byte[] qualities = flow.toQualityCodes();
        byte missing = Quality.MISSING.toCode();
        for (int i = 0; i < shares.length; i++) {
            double share = shares[i] / Math.abs(flows[i]);
            boolean known = Double.isFinite(share);
            shares[i] = known ? share : Double.NaN;
            qualities[i] = known ? qualities[i] : missing;
        }
        return (Series) SeriesArrays.keeper().withReadings(flow, shares, qualities);
    }

    private double closedHeight() {
        PipeMonitor monitor = monitors.first();
        double height = monitor.soffit();
        if (Double.isInfinite(height)) {
            throw new IllegalStateException("section must be closed to be full, was " + monitor.conduit());
        }
        return height;
    }

    private static DoubleUnaryOperator shareOf(double whole) {
        return value -> value / whole;
    }

    @Override
    public String toString() {
        return "FlowRecord[" + flow + ", " + counts() + "]";
    }
}
