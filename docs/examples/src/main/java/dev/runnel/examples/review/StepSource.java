package dev.runnel.examples.review;

import dev.runnel.rainfall.gauge.StepRecord;
import dev.runnel.rainfall.gauge.SteppedGauge;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.csv.CsvReport;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Rain that the logger writes by the step.
 *
 * @param lines where the readings were read
 * @param isIntensity true if they are mean intensities, mm/h, and not depths, mm
 * @param step length of a step
 * @param rules what a time and a step without a line mean
 */
record StepSource(ReadingFile.Readings lines, boolean isIntensity, Duration step, Site.StepRules rules)
        implements RainSource {
    private static final Duration DAY = Duration.ofDays(1);

    static StepSource read(Site site) {
        Site.Column column = site.inputs().rain();
        Site.StepRules rules = site.rain().steps();
        ReadingFile.Readings lines = ReadingFile.rain(column);
        boolean isIntensity = rules.isIntensity().orElseGet(() -> isIntensity(column, lines.header()));
        Duration step = rules.interval().orElseGet(() -> step(lines, rules));
        if (step.isZero() || DAY.toNanos() % step.toNanos() != 0) {
            throw new IllegalArgumentException(column.file() + ": the steps of the rain must divide a day, were " + step
                    + "; \"rain interval = ...\" in " + SiteFile.NAME + " says how long they are");
        }
        return new StepSource(lines, isIntensity, step, rules);
    }

    private static boolean isIntensity(Site.Column column, String header) {
        String name = header.toLowerCase(Locale.ROOT).replaceAll("[\\s\\])]+$", "");
        if (name.endsWith("mm/h") || name.endsWith("mm_per_h") || name.endsWith("mm_h") || name.endsWith("mm/hr")) {
            return true;
        }
        if (name.endsWith("mm")) {
            return false;
        }
        throw new IllegalArgumentException(column.file() + ": the unit of column \"" + header
                + "\" is not known: add \"rain unit = ...\" to " + SiteFile.NAME);
    }

    /** The usual step; a logger that leaves out dry steps must say it. */
    private static Duration step(ReadingFile.Readings lines, Site.StepRules rules) {
        if (lines.series().size() < 2 || rules.isDryLeftOut()) {
            throw new IllegalArgumentException(lines.column().file() + ": the length of a step is not known from "
                    + (rules.isDryLeftOut() ? "wet steps alone" : "fewer than two readings")
                    + ": add \"rain interval = ...\" to " + SiteFile.NAME);
        }
        return lines.series().usualStep();
    }

    @Override
    public String what() {
        return "rain";
    }

    @Override
    public Path file() {
        return lines.column().file();
    }

    @Override
    public List<Instant> far() {
        return lines.far();
    }

    @Override
    public Optional<CsvReport> report() {
        return lines.hasLines() ? Optional.of(lines.report()) : Optional.empty();
    }

    @Override
    public String emptyText() {
        return "rain: a header and no reading below it";
    }

    @Override
    public String readAs() {
        return "rain from \"" + lines.header() + "\" in " + (isIntensity ? "mm/h" : "mm") + ", steps of "
                + Show.duration(step) + " stamped at their " + (rules.isStampAtEnd() ? "ends" : "beginnings")
                + (rules.isDryLeftOut() ? ", steps left out are dry" : "");
    }

    @Override
    public Rain within(Interval record) {
        SteppedGauge gauge = isIntensity ? SteppedGauge.ofIntensity(step) : SteppedGauge.ofDepth(step);
        gauge = rules.isStampAtEnd() ? gauge.withStampAtEnd() : gauge;
        gauge = rules.isDryLeftOut() ? gauge.withDryWithoutReading() : gauge;
        StepRecord rain = record(gauge, lines.series(), record);
        return new Rain(
                rain.depth(),
                List.of(),
                Show.rain(rain.depth().sum()) + " mm in "
                        + Show.count(rain.depth().size(), "step") + " of " + Show.duration(step)
                        + (rain.missing() > 0 ? "; " + rain.missing() + " of them not known" : "")
                        + (rain.filledDry() > 0 ? "; " + rain.filledDry() + " without a line taken as dry" : "")
                        + (rain.aside() > 0
                                ? "; " + Show.count(rain.aside(), "line") + " with " + Show.rain(rain.asideMm())
                                        + " mm fit no step and were left out"
                                : ""));
    }

    private StepRecord record(SteppedGauge gauge, Series readings, Interval record) {
        try {
            return gauge.record(readings, record);
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException(
                    lines.column().file() + ": " + e.getMessage() + "; \"missing marks = ...\" in " + SiteFile.NAME
                            + " names texts that stand for no value",
                    e);
        }
    }
}
