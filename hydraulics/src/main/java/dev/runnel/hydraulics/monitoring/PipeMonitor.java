package dev.runnel.hydraulics.monitoring;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Combine;
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
@API(status = API.Status.STABLE, since = "0.1")
public final class PipeMonitor {
    private static final double SMALLEST_VELOCITY_FACTOR = 0.1;
    private static final double LARGEST_VELOCITY_FACTOR = 2;

    private final Conduit conduit;
    private final CrossSection section;
    private final double sensorOffset;
    private final double sedimentDepth;
    private final double velocityFactor;
    private final FlowArea flowArea;
    private final Treatment treatment;

    private PipeMonitor(Conduit conduit, double sensorOffset, double sedimentDepth, double velocityFactor) {
        this.conduit = conduit;
        this.section = conduit.section();
        this.sensorOffset = sensorOffset;
        this.sedimentDepth = sedimentDepth;
        this.velocityFactor = velocityFactor;
        this.flowArea = new FlowArea(section, sedimentDepth);
        this.treatment = new Treatment(flowArea, section.height(), sensorOffset, sedimentDepth, velocityFactor);
    }

    /**
     * Returns a monitor whose depth sensor sits at the invert of a clean pipe and whose velocity is the mean over the
     * section.
     *
     * @param conduit the pipe at the monitor
     * @return the monitor
     */
    public static PipeMonitor of(Conduit conduit) {
        return new PipeMonitor(conduit, 0, 0, 1);
    }

    /**
     * Returns this monitor with the depth sensor at another height.
     *
     * @param sensorOffset height of the sensor's zero above the invert, m; in [0, height of the section)
     * @return the monitor
     * @throws IllegalArgumentException if {@code sensorOffset} is outside that range or NaN
     */
    public PipeMonitor withSensorOffset(double sensorOffset) {
        return new PipeMonitor(conduit, belowSoffit("sensorOffset", sensorOffset), sedimentDepth, velocityFactor);
    }

    /**
     * Returns this monitor over a flat bed of sediment. The depth sensor may lie above or under its surface.
     *
     * @param sedimentDepth top of the sediment above the invert, m; in [0, height of the section)
     * @return the monitor
     * @throws IllegalArgumentException if {@code sedimentDepth} is outside that range or NaN
     */
    public PipeMonitor withSedimentDepth(double sedimentDepth) {
        return new PipeMonitor(conduit, sensorOffset, belowSoffit("sedimentDepth", sedimentDepth), velocityFactor);
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
        return new PipeMonitor(conduit, sensorOffset, sedimentDepth, velocityFactor);
    }

    /**
     * Returns the pipe.
     *
     * @return the conduit
     */
    public Conduit conduit() {
        return conduit;
    }

    /**
     * Returns the height of the sensor's zero above the invert.
     *
     * @return offset, m
     */
    public double sensorOffset() {
        return sensorOffset;
    }

    /**
     * Returns the top of the sediment above the invert.
     *
     * @return depth of the bed, m
     */
    public double sedimentDepth() {
        return sedimentDepth;
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
     * @return height of the section, m; infinite for an open one
     */
    public double soffit() {
        return section.height();
    }

    /**
     * Returns the flow of one pair of readings.
     *
     * @param depthReading what the depth sensor reads, m; NaN for none
     * @param velocityReading what the velocity sensor reads, m/s, negative upstream; NaN for none
     * @return the flow and how it was found
     * @throws IllegalArgumentException if a reading is infinite
     */
    public MonitoredFlow flow(double depthReading, double velocityReading) {
        notInfinite("depthReading", depthReading);
        notInfinite("velocityReading", velocityReading);
        DepthCondition condition = treatment.depthCondition(depthReading);
        double level = treatment.level(depthReading, condition);
        double area = Double.isNaN(level) ? Double.NaN : flowArea.area(level);
        double discharge = treatment.discharge(depthReading, velocityReading, condition);
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
        for (int i = 0; i < depthReadings.length; i++) {
            double depth = notInfinite("depthReadings", depthReadings[i]);
            double velocity = notInfinite("velocityReadings", velocityReadings[i]);
            discharges[i] = treatment.discharge(depth, velocity, treatment.depthCondition(depth));
        }
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
    public FlowRecord flow(Series depth, Series velocity, Combine rule) {
        return FlowRecord.of(this, ReadingPairs.atDepthTimes(depth, velocity, rule));
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
        DepthCondition condition = treatment.depthCondition(depth.value());
        double discharge = treatment.discharge(depth.value(), velocity.value(), condition);
        return new Reading(
                depth.time(),
                discharge,
                Treatment.quality(discharge, condition, depth.quality(), velocity.value(), velocity.quality()));
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
        MonitoredFlow flow = flow(depthReading, velocityReading);
        return flow.isMissing() || !flow.depthCondition().isFlowing()
                ? Optional.empty()
                : Optional.of(FlowUncertainty.of(this, flow.level(), velocityReading, inputs));
    }

    /**
     * Returns the flow area up to a level, A(min(y, H)) − A(b): without the sediment bed, and of the whole section from the
     * soffit on.
     *
     * @param level level above the invert y, m; finite
     * @return area, m²; 0 at or below the bed
     * @throws IllegalArgumentException if {@code level} is not finite
     */
    public double flowArea(double level) {
        return flowArea.area(Require.finite("level", level, "m"));
    }

    /**
     * Returns the hydraulic radius of the {@link #flowArea(double)}, the surface of the bed counted as wetted.
     *
     * @param level level above the invert, m; finite
     * @return hydraulic radius, m; 0 at or below the bed
     * @throws IllegalArgumentException if {@code level} is not finite
     */
    public double hydraulicRadius(double level) {
        return flowArea.hydraulicRadius(Require.finite("level", level, "m"));
    }

    /**
     * Returns the velocity that the conduit's law of resistance gives in uniform flow at a level, with the bed as rough as
     * the wall.
     *
     * @param level level above the invert, m; finite
     * @return velocity, m/s; of the full section above the soffit, 0 at or below the bed
     * @throws IllegalArgumentException if {@code level} is not finite
     */
    public double uniformVelocity(double level) {
        Require.finite("level", level, "m");
        return level <= sedimentDepth ? 0 : new UniformFlow(this).velocity(level);
    }

    Treatment treatment() {
        return treatment;
    }

    FlowArea flowArea() {
        return flowArea;
    }

    private double belowSoffit(String name, double value) {
        if (!(value >= 0 && value < section.height())) {
            throw new IllegalArgumentException(
                    name + " must be in [0, " + Text.number(section.height()) + ") m, was " + Text.number(value));
        }
        return value;
    }

    private static double notInfinite(String name, double value) {
        if (Double.isInfinite(value)) {
            throw new IllegalArgumentException(name + " must be finite, or NaN for missing, was " + Text.number(value));
        }
        return value;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof PipeMonitor that
                && conduit.equals(that.conduit)
                && sensorOffset == that.sensorOffset
                && sedimentDepth == that.sedimentDepth
                && velocityFactor == that.velocityFactor;
    }

    @Override
    public int hashCode() {
        return Objects.hash(conduit, sensorOffset, sedimentDepth, velocityFactor);
    }

    @Override
    public String toString() {
        return "PipeMonitor[" + conduit + ", sensor offset " + Text.number(sensorOffset) + " m, sediment "
                + Text.number(sedimentDepth) + " m, velocity factor " + Text.number(velocityFactor) + "]";
    }
}
