package dev.runnel.examples.review;

import dev.runnel.rainfall.gauge.ImpossibleRain;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.csv.CsvReport;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What the rain gauge left: its tips, or the rain of each step. */
sealed interface RainSource permits TipSource, StepSource {
    /**
     * The rain of a time.
     *
     * @param depth depth in each step, mm
     * @param silent times in which the gauge may have been dead, and the rain is not known
     * @param impossible what fell nowhere on earth and was set aside, of rain by the step
     * @param account how much it was, what it was made of and what was left out, for people
     */
    record Rain(RegularSeries depth, List<Interval> silent, Optional<ImpossibleRain> impossible, String account) {
        /** A record without a drop that is no longer may be a dry week: the least that silent ends of a record are doubted from. */
        private static final Duration DRY_WEEK = Duration.ofDays(7);

        /** Tells whether nothing in the whole record shows that the gauge was at work: a drought looks the same. */
        boolean isMute() {
            for (int i = 0; i < depth.size(); i++) {
                if (depth.value(i) > 0) {
                    return false;
                }
            }
            Duration known = depth.step().multipliedBy(depth.size() - depth.missing());
            return known.compareTo(DRY_WEEK) > 0;
        }

        /** The rain without that of some times in which the sewer says that the gauge may have been dead. */
        Rain notKnownIn(List<Interval> dead) {
            return dead.isEmpty()
                    ? this
                    : new Rain(depth.withMissing(dead.toArray(Interval[]::new)), silent, impossible, account);
        }

        /** The rain of a part of the time. */
        Rain within(Interval time) {
            RegularSeries part = depth.slice(time);
            List<Interval> dead = new ArrayList<>();
            for (Interval each : silent) {
                Instant from = each.start().isAfter(time.start()) ? each.start() : time.start();
                Instant to = each.end().isBefore(time.end()) ? each.end() : time.end();
                if (from.isBefore(to)) {
                    dead.add(Interval.of(from, to));
                }
            }
            return new Rain(
                    part,
                    List.copyOf(dead),
                    impossible.map(all -> all.within(time)),
                    Show.rain(part.sum()) + " mm in these days; of the record: " + account);
        }
    }

    /** Reads the file of the gauge that lies in the folder; none if there is no gauge. */
    static Optional<RainSource> of(Site site) {
        Site.Column tips = site.inputs().tips();
        Site.Column steps = site.inputs().rain();
        boolean hasTips = ReadingFile.exists(tips);
        boolean hasSteps = ReadingFile.exists(steps);
        if (hasTips && hasSteps && tips.isNamed() == steps.isNamed()) {
            throw new IllegalArgumentException(steps.file() + ": one gauge has tips or rain of each step, and "
                    + tips.file().getFileName() + " is there too; name the one to take in " + SiteFile.NAME);
        }
        if (hasTips && !(hasSteps && steps.isNamed())) {
            return Optional.of(TipCounts.in(tips)
                    .<RainSource>map(counts -> StepSource.counts(site, counts))
                    .orElseGet(() -> TipSource.read(tips, site.rain().bucket())));
        }
        return hasSteps ? Optional.of(StepSource.read(site)) : Optional.empty();
    }

    /** What a line of the file is: tips or rain. */
    String what();

    /** The files of the gauge. */
    List<Path> files();

    /** What is to be said of several files that were read as one; else empty. */
    String joined();

    /** The time from the first line to the last one that was read; empty if there is none. */
    Optional<Interval> signs();

    /** Stamps far from all others, whose lines are set aside. */
    List<Instant> far();

    /** What became of the lines of the file; empty if there is none below the header. */
    Optional<CsvReport> report();

    /** What is to be said if there is no line below the header. */
    String emptyText();

    /** As what the file was read. */
    String readAs();

    /** Tells whether the file shows in a dry time that the gauge was at work, as zeros by the step do. */
    boolean showsDryTimes();

    /** Returns the rain while the logger was at work. */
    Rain within(Interval record);
}
