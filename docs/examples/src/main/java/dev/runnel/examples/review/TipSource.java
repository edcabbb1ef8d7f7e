package dev.runnel.examples.review;

import dev.runnel.rainfall.gauge.SilentEnds;
import dev.runnel.rainfall.gauge.TipSpreading;
import dev.runnel.rainfall.gauge.TipSummary;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.csv.CsvReport;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Tips of a bucket.
 *
 * @param files the files
 * @param report what became of the lines; empty if there is none below the header, as in a dry week
 * @param tips the tips
 * @param far stamps far from all others, whose tips are set aside
 * @param joined what is to be said of several files that were read as one; else empty
 * @param bucket the gauge
 */
record TipSource(
        List<Path> files, Optional<CsvReport> report, Tips tips, List<Instant> far, String joined, TippingBucket bucket)
        implements RainSource {
    /** Longest time over which a tip is spread: longer would let storms begin well before their first tip. */
    static final Duration CAP = Duration.ofMinutes(15);

    private static final Duration STEP = Duration.ofMinutes(1);

    static TipSource read(Site.Column column, TippingBucket bucket) {
        ReadingFile.TipLines lines = ReadingFile.tips(column);
        return new TipSource(ColumnFiles.of(column), lines.report(), lines.tips(), lines.far(), lines.joined(), bucket);
    }

    @Override
    public Optional<Interval> signs() {
        return tips.isEmpty() ? Optional.empty() : Optional.of(Interval.of(tips.time(0), tips.time(tips.size() - 1)));
    }

    @Override
    public String what() {
        return "tips";
    }

    @Override
    public String emptyText() {
        return "tips: a header and no tip below it";
    }

    @Override
    public boolean showsDryTimes() {
        return false;
    }

    @Override
    public String readAs() {
        return "tips of " + Show.rain(bucket.tipMm()) + Page.BOUND + "mm";
    }

    @Override
    public Rain within(Interval record) {
        Tips inside = tips.slice(record);
        TipSummary summary = bucket.summary(inside);
        int outside = tips.size() - inside.size();
        List<Interval> silent = SilentEnds.standard().of(inside, record);
        return new Rain(
                bucket.depth(inside, record, STEP, TipSpreading.interval(CAP), silent),
                silent,
                Optional.empty(),
                Show.rain(summary.depthMm()) + " mm from " + Show.count(summary.tips(), "tip")
                        + (summary.addedMm() > 0
                                ? ", " + Show.rain(summary.addedMm()) + " mm of it added for hard rain"
                                : "")
                        + (outside > 0 ? "; " + outside + " tips outside the record left out" : ""));
    }
}
