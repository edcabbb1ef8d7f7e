package dev.runnel.verification.simulation;

import java.util.List;

/**
 * One site to be watched.
 *
 * @param cell what it counts for
 * @param number of the site in its cell, from 0
 * @param order the site
 */
record Case(Cell cell, int number, SiteOrder order) {
    /** Runs it and compares what was said with what is true. */
    CaseResult run(Watcher watcher) {
        Site site = Simulator.site(order);
        Heard heard = watcher.watch(site, cell.levelOnly());
        Fault fault = site.fault();
        List<Said> said = heard.said();
        if (fault.isNone()) {
            return CaseResult.sound(this, heard);
        }
        List<Said> after = said.stream()
                .filter(finding -> !finding.told().isBefore(site.faultBegins()))
                .toList();
        if (after.isEmpty()) {
            Truths truths = new Truths(site);
            return CaseResult.missed(this, heard, truths.alarm());
        }
        return CaseResult.found(this, heard, site, after);
    }
}
