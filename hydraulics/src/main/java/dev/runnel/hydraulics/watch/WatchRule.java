package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Require;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Rule;
import java.time.ZoneId;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * Watches a site against its {@link SiteBaseline} and tells what has changed since when. Immutable and thread-safe.
 *
 * <p>Readings become hourly medians, after the tests of single readings. Up to four quantities are watched, each as a
 * natural logarithm less what is usual: the velocity at the same depth in any weather; depth, velocity and flow at the same
 * hour of the day in dry hours. With z the value of an hour over its scale S, which stands for 6 h,
 *
 * <pre>
 * C⁺ = max(0, C⁺ + (z − k)/6),   C⁻ = max(0, C⁻ + (−z − k)/6),   k = 0.75,  a finding when C &gt; h = 7
 * </pre>
 *
 * <p>z is kept within ±6. This is the one-sided cumulative sum of Page (1954). The last day must stand away as well, and what
 * fills a sum of depth, velocity or flow for more than 14 days is a season. A change of the velocity at the same depth that is
 * large, or grows and goes on growing, is told from C &gt; 3 on; a moderate one must stand for days. A finding stays open until
 * the quantities are as usual again in dry hours, and comes back as the same finding if it returns soon.
 *
 * <p>What this is not: an alarm on a level, a diagnosis, or a substitute for a visit. It judges nothing that its baseline
 * has not seen, and says what it could not test ({@link SiteBaseline#notTested()}).
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class WatchRule implements Rule<SiteReading, WatchNotice, WatchState> {
    private static final double LARGEST_LEVEL = 100;

    private final SiteBaseline baseline;
    private final MonitorHistory monitors;
    private final OptionalDouble alarmLevel;
    private final Optional<ZoneId> civilZone;

    private WatchRule(
            SiteBaseline baseline, MonitorHistory monitors, OptionalDouble alarmLevel, Optional<ZoneId> civilZone) {
        this.baseline = baseline;
        this.monitors = monitors;
        this.alarmLevel = alarmLevel;
        this.civilZone = civilZone;
    }

    /**
     * Returns the rule for a baseline, without an alarm level.
     *
     * @param baseline what is normal at the site
     * @return the rule
     */
    public static WatchRule of(SiteBaseline baseline) {
        Objects.requireNonNull(baseline, "baseline");
        return new WatchRule(baseline, MonitorHistory.of(baseline.monitor()), OptionalDouble.empty(), Optional.empty());
    }

    /**
     * Returns this rule with settings of the monitor that change with time: each level and each flow is that of the sensor
     * and the bed of its date, not of those of the baseline. A bed that the settings tell of is still found as what it is, by
     * the depth and the velocity; it is no longer taken for another flow.
     *
     * @param monitors the settings by date, in the clean section of the baseline's monitor
     * @return the rule
     * @throws IllegalArgumentException if they are of another clean section
     */
    public WatchRule withMonitors(MonitorHistory monitors) {
        return new WatchRule(baseline, sameSection(baseline.monitor(), monitors), alarmLevel, civilZone);
    }

    static MonitorHistory sameSection(PipeMonitor monitor, MonitorHistory monitors) {
        CrossSection clean = monitor.conduit().section().withoutSediment();
        if (!monitors.first().conduit().section().withoutSediment().equals(clean)) {
            throw new IllegalArgumentException(
                    "monitors must be of the clean section " + clean + ", were " + monitors.first());
        }
        return monitors;
    }

    /**
     * Returns this rule with an alarm level, to which findings of rising water are projected.
     *
     * @param level level above the invert, m; greater than 0, at most 100
     * @return the rule
     * @throws IllegalArgumentException if the level is out of range
     */
    public WatchRule withAlarmLevel(double level) {
        Require.positive("level", level, "m");
        Require.inRange("level", level, 0, LARGEST_LEVEL, "m");
        return new WatchRule(baseline, monitors, OptionalDouble.of(level), civilZone);
    }

    /**
     * Returns this rule with the zone whose clock changes may reach the clocks of the loggers, where it is not the zone of
     * the baseline: around the dates on which they change, two days suffice to name a clock.
     *
     * @param zone the zone
     * @return the rule
     */
    public WatchRule withCivilZone(ZoneId zone) {
        return new WatchRule(baseline, monitors, alarmLevel, Optional.of(zone));
    }

    /**
     * Returns the baseline.
     *
     * @return what is normal at the site
     */
    public SiteBaseline baseline() {
        return baseline;
    }

    MonitorHistory monitors() {
        return monitors;
    }

    OptionalDouble alarmLevel() {
        return alarmLevel;
    }

    ZoneId civilZone() {
        return civilZone.orElse(baseline.zone);
    }

    @Override
    public Machine<SiteReading, WatchNotice, WatchState> start() {
        return new WatchMachine(this);
    }

    @Override
    public Machine<SiteReading, WatchNotice, WatchState> start(WatchState state) {
        return new WatchMachine(this, state);
    }

    @Override
    public WatchState parseState(String text) {
        return WatchState.readBy(text, this::start);
    }

    @Override
    public Machine<SiteReading, WatchNotice, WatchState> startFromText(String text) {
        return start(WatchState.of(text));
    }

    /**
     * Watches a whole record.
     *
     * @param record the readings of the site
     * @return what was found
     */
    public WatchReport watch(SiteRecord record) {
        WatchMachine machine = new WatchMachine(this);
        WatchReport.Collector report = new WatchReport.Collector();
        for (int i = 0; i < record.size(); i++) {
            report.add(machine.next(record.time(i), record.depth(i), record.velocity(i), record.rain(i)));
        }
        report.add(machine.finish());
        return report.report(baseline);
    }

    @Override
    public String toString() {
        return "WatchRule[" + baseline + (alarmLevel.isPresent() ? ", alarm at " + alarmLevel.orElseThrow() + " m" : "")
                + (monitors.isConstant() ? "" : ", settings by date") + "]";
    }
}
