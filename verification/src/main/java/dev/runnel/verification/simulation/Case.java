package dev.runnel.verification.simulation;

import java.time.Duration;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;

/**
 * One site to be watched.
 *
 * @param cell what it counts for
 * @param number of the site in its cell, from 0
 * @param order the site
 */
record Case(Cell cell, int number, SiteOrder order) {
    /** A true change of the week's flow that a person would call more or less water. */
    private static final double SEASON = 0.12;

    /** Runs it and compares what was said with what is true. */
    CaseResult run(Watcher watcher) {
        Site site = Simulator.site(order);
        Heard heard = heard(watcher, site);
        Fault fault = site.fault();
        List<Said> said = heard.said();
        if (fault.isNone()) {
            return CaseResult.sound(this, heard, seasons(site, said));
        }
        // An early finding that has closed and comes back with the fault tells of it, too.
        List<Said> after = said.stream()
                .flatMap(finding -> finding.from(site.faultBegins()).stream())
                .filter(finding -> !cell.isInSeason() || !finding.isOfWater())
                .sorted(Comparator.comparing(Said::told))
                .toList();
        int before = (int) said.stream()
                .filter(finding -> finding.told().isBefore(site.faultBegins()))
                .filter(finding -> !cell.isInSeason() || !finding.isOfWater())
                .count();
        if (after.isEmpty()) {
            Truths truths = new Truths(site);
            return CaseResult.missed(this, heard, truths.alarm());
        }
        return CaseResult.found(this, heard, site, after, before);
    }

    private Heard heard(Watcher watcher, Site site) {
        try {
            return watcher.watch(site, cell.levelOnly());
        } catch (RuntimeException e) {
            // One site must not end the score; it is counted, and printed first.
            return Heard.broken(e);
        }
    }

    /** How many of the findings say more or less water, or without velocity level up or down, and the dry weather flow of the season had moved that way. */
    private int seasons(Site site, List<Said> said) {
        int seasons = 0;
        double[] dry = site.water().dry();
        double usual = mean(dry, 0, site.grid().at(14));
        for (Said finding : said) {
            double day = Duration.between(site.grid().start(), finding.told()).toMinutes() / 1440.0;
            double moved =
                    mean(dry, site.grid().at(Math.max(0, day - 7)), site.grid().at(day)) / usual - 1;
            boolean more =
                    finding.atEnd().contains(cell.levelOnly() ? Called.LEVEL_UP : Called.MORE_WATER) && moved > SEASON;
            boolean less = finding.atEnd().contains(cell.levelOnly() ? Called.LEVEL_DOWN : Called.LESS_WATER)
                    && moved < -SEASON;
            seasons += more || less ? 1 : 0;
        }
        return seasons;
    }

    private static double mean(double[] values, int from, int to) {
        return Arrays.stream(values, from, to).average().orElse(Double.NaN);
    }
}
