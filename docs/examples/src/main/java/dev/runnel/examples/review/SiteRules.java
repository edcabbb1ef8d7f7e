package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.hydraulics.watch.BaselineRule;
import dev.runnel.hydraulics.watch.SiteBaseline;
import dev.runnel.hydraulics.watch.WatchRule;
import dev.runnel.timeseries.alarm.ThresholdAlarm;
import java.time.Duration;

/** The rules that the site file asks for: whoever reads all at once and whoever reads on and on take the same ones. */
public final class SiteRules {
    private SiteRules() {}

    /**
     * Returns the depth alarm.
     *
     * @param rule what the site file says of it
     * @param longestGap longest time between two readings that is not a gap
     * @return the alarm
     */
    public static ThresholdAlarm alarm(Site.AlarmRule rule, Duration longestGap) {
        return ThresholdAlarm.high(rule.level())
                .withDeadband(rule.deadband())
                .withOnDelay(rule.onDelay())
                .withOffDelay(rule.offDelay())
                .withMaximumGap(longestGap);
    }

    /**
     * Returns how what is usual is learned.
     *
     * @param site what the site file says
     * @param monitors the settings of the pipe by date
     * @return the rule, with the stretch that the site file chooses, if it does
     */
    public static BaselineRule baseline(Site site, MonitorHistory monitors) {
        BaselineRule rule = BaselineRule.of(site.monitor())
                .withMonitors(monitors)
                .withZone(site.zone())
                .withHolidays(site.usual().holidays());
        return site.usual().baseline().map(rule::withInterval).orElse(rule);
    }

    /**
     * Returns the watch, as yet of one setting of the pipe.
     *
     * @param site what the site file says
     * @param usual what is usual there
     * @return the rule
     */
    public static WatchRule watch(Site site, SiteBaseline usual) {
        WatchRule rule = WatchRule.of(usual).withCivilZone(site.zone());
        return site.alarm().map(alarm -> rule.withAlarmLevel(alarm.level())).orElse(rule);
    }
}
