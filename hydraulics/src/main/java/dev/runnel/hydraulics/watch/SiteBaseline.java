package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.baseline.DayCurve;
import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import org.apiguardian.api.API;

/**
 * What is normal at a site, learned from one stated interval by a {@link BaselineRule}. Immutable and thread-safe.
 *
 * <p>It holds the {@linkplain UsualVelocity velocity usual at a depth}, the usual course of depth, velocity and flow over a
 * dry day ({@link DayCurve} of their natural logarithms), how far each scatters from block to block of 6 h when nothing is
 * wrong, and how good all that is. The scatter is the long-run standard deviation: blocks follow each other, so that a month
 * tells less than its number of readings promises, and two weeks are pulled towards what sites usually show.
 *
 * <p>What this is not: a proof that the site was sound in that interval. A fault that was there from the first day is normal
 * here.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SiteBaseline {
    static final String NAME = "site-baseline";
    static final int VERSION = 2;
    static final String CLOCK_DEPTH = "clockDepth";
    static final String CLOCK_FLOW = "clockFlow";

    private final PipeMonitor monitor;
    private final String text;
    final ZoneId zone;
    final Set<DayOfWeek> restDays;
    final Set<LocalDate> holidays;
    final Interval interval;
    private final int hours;
    private final int dryHours;
    private final boolean rain;
    private final Optional<UsualVelocity> usualVelocity;
    private final Optional<DayCurve> depth;
    private final Optional<DayCurve> velocity;
    private final Optional<DayCurve> flow;
    final double kappa;
    final double[] centre;
    final double[] scale;
    final double[] covariance;

    /** How far days of the velocity at its depth stray, in ln; 0 if it is not watched. */
    final double dayScatter;

    final SensorLimits sensor;

    /** Whether pumps beat strongly. */
    final boolean strokes;

    /** Whether the level swings so far within many hours that it may well be gone for some. */
    final boolean swings;

    /** What says that the columns it was learned from are exchanged. */
    final Optional<ExchangedFit> exchanged;

    private final ClockUsual clockUsual;
    private final Optional<ClockDay> clockDepth;
    private final Optional<ClockDay> clockFlow;
    final Optional<LevelChannels.Usual> levelUsual;
    private final boolean tidal;

    /** Usual ln level and ln velocity at the lowest water of two tides, by which a tidal site is watched. */
    final Optional<double[]> lowWater;

    private final boolean pumped;
    final boolean clock;
    private final double peak;
    final double[] stormLags;
    private final List<String> notes;

    private SiteBaseline(PipeMonitor monitor, String text) {
        StateText values = StateText.parse(NAME, VERSION, text);
        if (!values.text("monitor").equals(monitor.toString())) {
            throw new IllegalArgumentException(
                    "monitor must be the one of the baseline, " + values.text("monitor") + ", was " + monitor);
        }
        this.monitor = monitor;
        this.text = values.toString();
        this.zone = ZoneId.of(values.text("zone"));
        this.restDays = Set.copyOf(values.list("restDays", DayOfWeek::valueOf));
        this.holidays = Set.copyOf(values.list("holidays", LocalDate::parse));
        this.interval = Interval.of(Instant.parse(values.text("from")), Instant.parse(values.text("to")));
        this.hours = values.index("hours");
        this.dryHours = values.index("dryHours");
        this.rain = values.flag("rain");
        this.usualVelocity =
                values.has("law") ? Optional.of(UsualVelocity.parse(values.text("law"))) : Optional.empty();
        this.depth = curve(values, "depth");
        this.velocity = curve(values, "velocity");
        this.flow = curve(values, "flow");
        this.kappa = values.number("kappa");
        this.centre = values.numbers("centre");
        this.scale = values.numbers("scale");
        Require.sameLength("centre", Quantity.COUNT, centre.length);
        Require.sameLength("scale", Quantity.COUNT, scale.length);
        this.covariance = values.numbers("covariance");
        Require.sameLength("covariance", 3, covariance.length);
        this.dayScatter = values.number("dayScatter");
        this.sensor = SensorLimits.read(values);
        this.clockUsual = ClockUsual.read(values, "clock");
        this.clockDepth = clockDay(values, CLOCK_DEPTH);
        this.clockFlow = clockDay(values, CLOCK_FLOW);
        this.levelUsual = values.has("levelNights") ? Optional.of(LevelChannels.Usual.read(values)) : Optional.empty();
        this.tidal = values.flag("tidal");
        this.lowWater = values.has("lowWater") ? Optional.of(values.numbers("lowWater", 2)) : Optional.empty();
        this.pumped = values.flag("pumped");
        this.exchanged = ExchangedFit.read(values);
        this.strokes = values.flag("strokes");
        this.swings = values.flag("swings");
        this.clock = values.flag("clock");
        this.peak = values.number("peak");
        this.stormLags = values.numbers("stormLags");
        this.notes = values.list("notes");
    }

    private static Optional<DayCurve> curve(StateText values, String key) {
        return values.has(key) ? Optional.of(DayCurve.parse(values.text(key))) : Optional.empty();
    }

    private static Optional<ClockDay> clockDay(StateText values, String key) {
        return curve(values, key).map(day -> new ClockDay(day, true, ClockUsual.read(values, key)));
    }

    /** What places the days of this site; the usual day of its depth where nothing finer was learned. */
    Optional<ClockWatch> clockWatch() {
        return clockDepth
                .or(() -> depth.map(day -> new ClockDay(day, false, clockUsual)))
                .map(day -> new ClockWatch(day, clockFlow));
    }

    static SiteBaseline of(PipeMonitor monitor, StateText values) {
        return new SiteBaseline(monitor, values.toString());
    }

    /**
     * Reads a baseline from its text.
     *
     * @param monitor the monitor it was learned for
     * @param text a text made by {@link #toText}
     * @return the baseline
     * @throws IllegalArgumentException if the text is not one of a baseline of that monitor
     */
    public static SiteBaseline parse(PipeMonitor monitor, String text) {
        return new SiteBaseline(monitor, text);
    }

    /**
     * Returns the baseline as one line of text, which {@link #parse} reads back to an equal baseline.
     *
     * @return the text
     */
    public String toText() {
        return text;
    }

    /**
     * Returns the monitor.
     *
     * @return the monitor it was learned for
     */
    public PipeMonitor monitor() {
        return monitor;
    }

    /**
     * Returns the stated interval.
     *
     * @return the interval whose readings are normal by definition
     */
    public Interval interval() {
        return interval;
    }

    /**
     * Returns the number of hours with a depth.
     *
     * @return count
     */
    public int hours() {
        return hours;
    }

    /**
     * Returns the number of dry hours with a depth.
     *
     * @return count
     */
    public int dryHours() {
        return dryHours;
    }

    /**
     * Returns whether dry hours were told from rain.
     *
     * @return false if they were told from the level alone
     */
    public boolean hasRain() {
        return rain;
    }

    /**
     * Returns the velocity usual at a depth.
     *
     * @return the relation; empty if velocity was not measured or is no function of depth here
     */
    public Optional<UsualVelocity> usualVelocity() {
        return usualVelocity;
    }

    /**
     * Returns the usual course of a quantity over a dry day.
     *
     * @param quantity depth, velocity or flow
     * @return the curve of its natural logarithm (m, m/s, m³/s); empty if it was not to be had, and for
     *     {@link Quantity#VELOCITY_AT_DEPTH}, which has no course of the day
     */
    public Optional<DayCurve> day(Quantity quantity) {
        return switch (quantity) {
            case DEPTH -> depth;
            case VELOCITY -> velocity;
            case FLOW -> flow;
            case VELOCITY_AT_DEPTH -> Optional.empty();
        };
    }

    /** Highest value of a quantity in the course of a usual dry day, working days and days of rest; infinite without one. */
    double highestUsual(Quantity quantity) {
        return day(quantity).map(curve -> extreme(curve, 1)).orElse(Double.POSITIVE_INFINITY);
    }

    /** The lowest; 0 without one. */
    double lowestUsual(Quantity quantity) {
        return day(quantity).map(curve -> extreme(curve, -1)).orElse(0.0);
    }

    private static double extreme(DayCurve curve, int sign) {
        double most = Double.NEGATIVE_INFINITY;
        for (int quarter = 0; quarter < 96; quarter++) {
            double time = quarter / 4.0;
            most = Math.max(most, Math.max(sign * curve.value(time, false), sign * curve.value(time, true)));
        }
        return Math.exp(sign * most);
    }

    /**
     * Returns whether a quantity is watched.
     *
     * @param quantity the quantity
     * @return whether the baseline can judge it
     */
    public boolean watches(Quantity quantity) {
        return scale[quantity.ordinal()] > 0;
    }

    /**
     * Returns by how much a block of 6 h of a quantity may differ from usual without a word: the long-run standard deviation of
     * its natural logarithm as far as the baseline and what sites usually show tell it, and never below a floor (see the method
     * note). Quiet sites scatter by less.
     *
     * @param quantity the quantity
     * @return scatter, as a share; NaN if it is not watched
     */
    public double scatter(Quantity quantity) {
        double s = scale[quantity.ordinal()];
        return s > 0 ? s / BlockScale.allowance(quantity) : Double.NaN;
    }

    /**
     * Returns the usual highest level of a dry day.
     *
     * @return median over the dry days of the highest hourly median, m above the invert
     */
    public double usualPeak() {
        return peak;
    }

    /**
     * Returns whether the dry depth follows the moon (a constituent of 12.42 h).
     *
     * @return whether the site is tidal; of a tidal site the hours of the day say nothing
     */
    public boolean isTidal() {
        return tidal;
    }

    /**
     * Returns whether the depth swings within the hours, as below a pumping station.
     *
     * @return whether the site looks pumped
     */
    public boolean isPumped() {
        return pumped;
    }

    /**
     * Returns the usual lag of depth behind rain that is held back for some hours, as this site does: what the clock of the
     * gauge is judged by. It lies near 0, on either side.
     *
     * @return median over the storms of the baseline of the lag of the best correlation, hours; empty without a storm that
     *     tells it
     */
    public OptionalDouble rainLagHours() {
        return stormLags.length == 0 ? OptionalDouble.empty() : OptionalDouble.of(Medians.of(stormLags));
    }

    /**
     * Returns what the reader should know about the quality of the baseline.
     *
     * @return sentences; possibly none
     */
    public List<String> notes() {
        return notes;
    }

    /**
     * Returns what the watch cannot test with this baseline.
     *
     * @return sentences; empty if it tests all it has
     */
    public List<String> notTested() {
        return BaselineDescription.notTested(this);
    }

    boolean testsGaugeClock() {
        return rain && !tidal && !pumped;
    }

    /**
     * Returns the baseline in words, a statement a line.
     *
     * @return the text
     */
    public String describe() {
        return BaselineDescription.of(this);
    }

    LocalHours localHours() {
        return new LocalHours(zone, restDays, new TreeSet<>(holidays));
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SiteBaseline that && text.equals(that.text) && monitor.equals(that.monitor);
    }

    @Override
    public int hashCode() {
        return text.hashCode();
    }

    @Override
    public String toString() {
        return "SiteBaseline[" + interval + ", " + hours + " hours, " + dryHours + " dry"
                + (usualVelocity.isPresent() ? "" : ", level only") + (tidal ? ", tidal" : "")
                + (pumped ? ", pumped" : "") + "]";
    }
}
