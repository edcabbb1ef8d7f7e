package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.watch.SiteReading;
import dev.runnel.hydraulics.watch.WatchNotice;
import dev.runnel.hydraulics.watch.WatchReport;
import dev.runnel.hydraulics.watch.WatchRule;
import dev.runnel.hydraulics.watch.WatchState;
import dev.runnel.timeseries.Machine;
import java.util.Map;

/** A watch of a constructed site from its first reading to its last, made once however many figures a table asks of it. */
final class WatchedSites {
    /** What a row may say of the watch beside what it says of the site. */
    static final String INPUTS = " alarm?";

    private static final Map<String, WatchReport> REPORTS = KeptAnswers.map();
    private static final Map<String, StateParts> STATES = KeptAnswers.map();

    private WatchedSites() {}

    static WatchReport report(Inputs in) {
        return REPORTS.computeIfAbsent(key(in), key -> rule(in).watch(SiteCalculations.record(in)));
    }

    /** What the watch knows behind the last reading, before it is told that there are no more. */
    static StateParts state(Inputs in) {
        return STATES.computeIfAbsent(key(in), key -> {
            Machine<SiteReading, WatchNotice, WatchState> machine = rule(in).start();
            for (SiteReading reading : SiteCalculations.record(in)) {
                machine.next(reading);
            }
            return StateParts.of(machine.state().toText());
        });
    }

    /** What tells one watch from another. */
    static String key(Inputs in) {
        return SiteCalculations.key(in) + "|" + (in.has("alarm") ? in.text("alarm") : "");
    }

    static WatchRule rule(Inputs in) {
        WatchRule rule = WatchRule.of(SiteCalculations.baseline(in));
        return in.has("alarm") && in.number("alarm") > 0 ? rule.withAlarmLevel(in.number("alarm")) : rule;
    }
}
