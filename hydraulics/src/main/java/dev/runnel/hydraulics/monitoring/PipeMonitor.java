package dev.runnel.hydraulics.monitoring;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Alignment;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * A depth and velocity monitor in a pipe: turns what its two sensors read into flow. Immutable and thread-safe.
 *
 * <p>With depth reading d, sensor offset o, bed depth b, velocity reading v and velocity factor f:
 *
 * <pre>
 * y = d + o                            level above the invert, m
 * Q = f v (A(min(y, H)) − A(b))        flow, m³/s; A the area of the section, H its height
 * </pre>
 *
 * <p>The cases in which that line does not hold as it stands:
 *
 * <table>
 * <caption>Treatment of one pair of readings</caption>
 * <tr><th>reading</th><th>condition</th><th>flow</th><th>quality</th></tr>
 * <tr><td>no depth</td><td>NO_DEPTH</td><td>missing</td><td>missing</td></tr>
 * <tr><td>d &lt; 0</td><td>NEGATIVE</td><td>as for d = 0</td><td>suspect at best</td></tr>
 * <tr><td>d = 0 and o ≤ b</td><td>DRY</td><td>0, with or without a velocity</td><td>that of the depth; poor at best if
 * the velocity is not 0</td></tr>
 * <tr><td>d = 0 and o &gt; b</td><td>BELOW_SENSOR</td><td>missing: the depth may be anything from 0 to o</td>
 * <td>missing</td></tr>
 * <tr><td>d &gt; 0 and y ≤ b</td><td>BELOW_BED</td><td>0, with or without a velocity</td><td>poor at best</td></tr>
 * <tr><td>b &lt; y, not above the soffit</td><td>PART_FULL</td><td>the formula; missing without a velocity</td>
 * <td>the worse of the two</td></tr>
 * <tr><td>|d| &gt; 50 m</td><td>IMPOSSIBLE</td><td>missing: another unit, or an error code</td><td>missing</td></tr>
 * <tr><td>y above the soffit</td><td>SURCHARGED</td><td>the formula with the whole area above the bed</td><td>the worse of
 * the two</td></tr>
 * </table>
 *
 * <p>A level within 1e-9 of the height above the soffit is rounding and counts as at the soffit. A negative velocity is
 * flow upstream and keeps its sign.
 *
 * <p>What this is not: a test of the readings (see the package of quality tests), or a law of resistance: the gradient
 * and the roughness of the conduit play no part in the flow; they are what the measured flow is compared with.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class PipeMonitor {
    /** Far wider than any factor in use; chosen here to keep out a percentage. */
    private static final double SMALLEST_VELOCITY_FACTOR = 0.1;

    private static final double LARGEST_VELOCITY_FACTOR = 2;

    private final Conduit conduit;
    /** With the bed in it, if there is one. */
    private final CrossSection section;

    private final CrossSection clean;
    private final double sensorOffset;
    private final double velocityFactor;
    private final PairConversion conversion;

    private PipeMonitor(Conduit conduit, double sensorOffset, double velocityFactor) {
        this.conduit = conduit;
        this.section = conduit.section();
        this.clean = section.withoutSediment();
        this.sensorOffset = sensorOffset;
        this.velocityFactor = velocityFactor;
        this.conversion = new PairConversion(section, sensorOffset, velocityFactor);
    }

    /**
     * Returns a monitor that reads depths as the conduit counts them, and the mean velocity over the flow area. The zero of
     * its depth sensor is at the lowest point of the section: the invert, or the top of the sediment in a section
     * {@linkplain CrossSection#withSediment with a bed}. Over a bed that comes and goes under a sensor that stays,
     * {@link #withSediment} is the other way round.
     *
     * @param conduit the pipe at the monitor
     * @return the monitor
     */
    public static PipeMonitor of(Conduit conduit) {
        return new PipeMonitor(conduit, conduit.section().bedAboveInvert(), 1);
    }

    /**
     * Returns this monitor with the depth sensor at another height.
     *
     * @param sensorAboveInvert height of the sensor's zero above the invert of the clean pipe, m; in [0, height)
     * @return the monitor
     * @throws IllegalArgumentException if {@code sensorAboveInvert} is outside that range or NaN
     */
    public PipeMonitor withSensorOffset(double sensorAboveInvert) {
        return new PipeMonitor(conduit, belowSoffit("sensorAboveInvert", sensorAboveInvert), velocityFactor);
    }

    /**
     * Returns this monitor with a flat bed of sediment in its pipe, the same bed as that of a section
     * {@linkplain CrossSection#withSediment with sediment}. The sensor stays where it is, above or under the surface of the
     * bed.
     *
     * @param bedAboveInvert top of the sediment above the invert of the clean pipe, m; in [0, height of the section)
     * @return the monitor
     * @throws IllegalArgumentException if {@code bedAboveInvert} is outside that range or NaN
     * @throws IllegalStateException if the pipe has a bed already
     */
    public PipeMonitor withSediment(double bedAboveInvert) {
        return new PipeMonitor(conduit.withSection(section.withSediment(bedAboveInvert)), sensorOffset, velocityFactor);
    }

    /**
     * Returns this monitor without the bed of sediment. The sensor stays where it is.
     *
     * @return the monitor of the clean pipe
     */
    public PipeMonitor withoutSediment() {
        return new PipeMonitor(conduit.withSection(clean), sensorOffset, velocityFactor);
    }

    /**
     * Returns this monitor with another factor from the measured velocity to the mean over the flow area. Which velocity
     * a sensor reports (a peak, a surface, a mean along its beam) is a matter of the sensor; the factor is best found by a
     * gauging at the site. Published values lie between about 0.7 and 1: mean over surface velocity 0.73 to 0.90 (5th to
     * 95th percentile of 3,611 river gaugings; Hauet, Morlot and Daubagnan, 2018, E3S Web of Conferences 40, 06015,
     * table 2), mean over centreline velocity of a full pipe 0.79 to 0.87 (Schlichting's power laws); 0.9 of the peak is
     * common practice. The allowed range is far wider and only keeps out a percentage or a slip of the pen.
     *
     * @param velocityFactor mean velocity over measured velocity; in [0.1, 2]
     * @return the monitor
     * @throws IllegalArgumentException if {@code velocityFactor} is outside that range or NaN
     */
    public PipeMonitor withVelocityFactor(double velocityFactor) {
        Require.inRange("velocityFactor", velocityFactor, SMALLEST_VELOCITY_FACTOR, LARGEST_VELOCITY_FACTOR, "");
        return new PipeMonitor(conduit, sensorOffset, velocityFactor);
    }

    /**
     * Returns the pipe. Its depths count from the bed, if there is one; levels of this monitor from the invert.
     *
     * @return the conduit, with the bed of sediment in its section
     */
    public Conduit conduit() {
        return conduit;
    }

    /**
     * Returns the height of the sensor's zero above the invert of the clean pipe.
     *
     * @return offset, m
     */
    public double sensorOffset() {
        return sensorOffset;
    }

    /**
     * Returns the top of the sediment above the invert of the clean pipe.
     *
     * @return level of the bed, m; 0 without sediment
     */
    public double bedAboveInvert() {
        return section.bedAboveInvert();
    }

    /**
     * Returns the factor from the measured velocity to the mean.
     *
     * @return factor
     */
    public double velocityFactor() {
        return velocityFactor;
    }

    /**
     * Returns the soffit above the invert.
     *
     * @return height of the clean section, m; infinite for an open one
     */
    public double soffit() {
        return clean.height();
    }

    /**
     * Returns the flow of one pair of readings.
     *
     * @param depthReading what the depth sensor reads, m; NaN for none
     * @param velocityReading what the velocity sensor reads, m/s, negative upstream; NaN for none
     * @return the flow and how it was found
     * @throws IllegalArgumentException if a reading is infinite, or a depth more than 50 m from the sensor: many readings
     *     at once are marked instead, {@link DepthCondition#IMPOSSIBLE}
     */
    public MonitoredFlow flow(double depthReading, double velocityReading) {
        notInfinite("depthReading", depthReading);
        if (Math.abs(depthReading) > PairConversion.LARGEST_DEPTH_READING) {
            throw new IllegalArgumentException("depthReading must be in [-"
                    + Text.number(PairConversion.LARGEST_DEPTH_READING)
                    + ", " + Text.number(PairConversion.LARGEST_DEPTH_READING) + "] m, was " + Text.number(depthReading)
                    + ": readings are in metres, divide millimetres by 1000");
        }
        notInfinite("velocityReading", velocityReading);
        DepthCondition condition = conversion.depthCondition(depthReading);
        double level = conversion.level(depthReading, condition);
        double area = Double.isNaN(level) ? Double.NaN : conversion.area(level);
        double discharge = conversion.discharge(depthReading, velocityReading, condition);
        double velocity = area == 0 ? 0 : velocityFactor * velocityReading;
        return new MonitoredFlow(level, area, velocity, discharge, condition, VelocityCondition.of(velocityReading));
    }

    /**
     * Computes the flow of many pairs of readings, bit for bit as {@link #flow(double, double)} does.
     *
     * @param depthReadings what the depth sensor reads, m; NaN for none; not modified
     * @param velocityReadings what the velocity sensor reads, m/s; NaN for none; same length; not modified
     * @param discharges flows, m³/s, NaN where not known; same length, overwritten; may be one of the other two
     * @throws IllegalArgumentException if the lengths differ or a reading is infinite
     */
    public void flow(double[] depthReadings, double[] velocityReadings, double[] discharges) {
        Require.sameLength("velocityReadings", depthReadings.length, velocityReadings.length);
        Require.sameLength("discharges", depthReadings.length, discharges.length);
        conversion.discharges(depthReadings, velocityReadings, discharges);
    }

    /**
     * Returns the flow of two records with the same clock. Readings are paired where they have the same instant; one without
     * a partner counts as a pair with a missing reading.
     *
     * @param depth depth readings, m
     * @param velocity velocity readings, m/s, negative upstream
     * @return the flow, the level and what was done with every reading
     */
    public FlowRecord flow(Series depth, Series velocity) {
        Objects.requireNonNull(velocity, "velocity");
        return FlowRecord.of(this, ReadingPairs.atSameInstants(depth, velocity));
    }

    /**
     * Returns the flow of two records with unequal clocks, at the times of the depth readings.
     *
     * @param depth depth readings, m
     * @param velocity velocity readings, m/s, negative upstream
     * @param rule how a velocity at a depth reading's time is found among those at other times
     * @return the flow, the level and what was done with every depth reading; {@link FlowRecord#velocitiesAlone()} says how
     *     many velocity readings have no depth reading at their own instant
     */
    public FlowRecord flow(Series depth, Series velocity, Alignment rule) {
        Objects.requireNonNull(depth, "depth");
        Objects.requireNonNull(velocity, "velocity");
        return FlowRecord.of(this, ReadingPairs.atDepthTimes(depth, velocity, rule));
    }

    /**
     * Returns the flow of a logger of depths alone, with the velocity of uniform flow at each level. It holds only where the
     * conduit's law and gradient rule the flow: not in backwater, and not in a full pipe, where the depth says nothing of the
     * flow.
     *
     * @param depth depth readings, m
     * @return the flow and what was done with every reading; missing, and counted as surcharged without a velocity, above
     *     the soffit
     */
    public FlowRecord uniformFlow(Series depth) {
        double[] velocities = new double[depth.size()];
        byte[] qualities = new byte[depth.size()];
        for (int i = 0; i < velocities.length; i++) {
            DepthCondition condition = conversion.depthCondition(depth.value(i));
            boolean ruled = condition == DepthCondition.PART_FULL;
            velocities[i] = ruled
                    ? uniformVelocity(conversion.level(depth.value(i), condition)) / velocityFactor
                    : condition == DepthCondition.DRY ? 0 : Double.NaN;
            qualities[i] = (Double.isNaN(velocities[i]) ? Quality.MISSING : depth.quality(i)).toCode();
        }
        return flow(depth, Series.of(depth.toEpochNanos(), velocities, qualities));
    }

    /**
     * Returns the flow of two readings of the same instant. The conversion has no memory, so a stream of readings and a
     * whole record give the same flows, however the record is cut.
     *
     * @param depth depth reading, m
     * @param velocity velocity reading, m/s, negative upstream; at the same instant
     * @return flow, m³/s
     * @throws IllegalArgumentException if the instants differ
     */
    public Reading flow(Reading depth, Reading velocity) {
        if (!depth.time().equals(velocity.time())) {
            throw new IllegalArgumentException(
                    "velocity must have the time of depth " + depth.time() + ", was " + velocity.time());
        }
        DepthCondition condition = conversion.depthCondition(depth.value());
        double discharge = conversion.discharge(depth.value(), velocity.value(), condition);
        return new Reading(
                depth.time(),
                discharge,
                Quality.ofCode(PairConversion.quality(
                        discharge,
                        condition,
                        depth.quality().toCode(),
                        velocity.value(),
                        velocity.quality().toCode())));
    }

    /**
     * Returns the uncertainty of the flow of one pair of readings.
     *
     * @param depthReading what the depth sensor reads, m; NaN for none
     * @param velocityReading what the velocity sensor reads, m/s, negative upstream; NaN for none
     * @param inputs standard uncertainties of the inputs
     * @return the uncertainty; empty where the flow is missing, or 0 because there is no flow area
     * @throws IllegalArgumentException if a reading is infinite
     */
    public Optional<FlowUncertainty> uncertainty(
            double depthReading, double velocityReading, SensorUncertainty inputs) {
        Objects.requireNonNull(inputs, "inputs");
        MonitoredFlow flow = flow(depthReading, velocityReading);
        return flow.isMissing() || !flow.depthCondition().isFlowing()
                ? Optional.empty()
                : Optional.of(FlowUncertainty.of(this, flow.level(), velocityReading, inputs));
    }

    /**
     * Returns the flow area up to a level, A(min(y, H)) − A(b): without the sediment bed, and of the whole section from the
     * soffit on.
     *
     * @param levelAboveInvert level above the invert y, m; finite
     * @return area, m²; 0 at or below the bed
     * @throws IllegalArgumentException if {@code levelAboveInvert} is not finite
     */
    public double flowArea(double levelAboveInvert) {
        return conversion.area(Require.finite("levelAboveInvert", levelAboveInvert, "m"));
    }

    /**
     * Returns the hydraulic radius of the {@link #flowArea(double)}, the surface of the bed counted as wetted.
     *
     * @param levelAboveInvert level above the invert, m; finite
     * @return hydraulic radius, m; 0 at or below the bed
     * @throws IllegalArgumentException if {@code levelAboveInvert} is not finite
     */
    public double hydraulicRadius(double levelAboveInvert) {
        return section.hydraulicRadius(waterDepth(levelAboveInvert));
    }

    /**
     * Returns the velocity that the conduit's law of resistance gives in uniform flow at a level: that of the conduit at the
     * depth above its bed.
     *
     * @param levelAboveInvert level above the invert, m; finite
     * @return velocity, m/s; of the full section above the soffit, 0 at or below the bed
     * @throws IllegalArgumentException if {@code levelAboveInvert} is not finite
     */
    public double uniformVelocity(double levelAboveInvert) {
        return conduit.velocity(waterDepth(levelAboveInvert));
    }

    /** Depth above the bed, as the conduit counts it, m: 0 at or below the bed, that of the soffit from there on. */
    private double waterDepth(double levelAboveInvert) {
        return Math.max(conversion.depth(Require.finite("levelAboveInvert", levelAboveInvert, "m")), 0);
    }

    PairConversion conversion() {
        return conversion;
    }

    private double belowSoffit(String name, double value) {
        if (!(value >= 0 && value < clean.height())) {
            throw new IllegalArgumentException(
                    name + " must be in [0, " + Text.number(clean.height()) + ") m, was " + Text.number(value));
        }
        return value;
    }

    static double notInfinite(String name, double value) {
        if (Double.isInfinite(value)) {
            throw new IllegalArgumentException(name + " must be finite, or NaN for missing, was " + Text.number(value));
        }
        return value;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PipeMonitor that
                && conduit.equals(that.conduit)
                && Double.compare(sensorOffset, that.sensorOffset) == 0
                && Double.compare(velocityFactor, that.velocityFactor) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(conduit, sensorOffset, velocityFactor);
    }

    @Override
    public String toString() {
        return "PipeMonitor[" + conduit + ", sensor offset " + Text.significant(sensorOffset, 6)
                + " m, velocity factor " + Text.significant(velocityFactor, 6) + "]";
    }
}
