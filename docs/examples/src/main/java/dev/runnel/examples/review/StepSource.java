package dev.runnel.examples.review;

import dev.runnel.rainfall.gauge.ImpossibleRain;
import dev.runnel.rainfall.gauge.SilentEnds;
import dev.runnel.rainfall.gauge.StepRecord;
import dev.runnel.rainfall.gauge.SteppedGauge;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.csv.CsvReport;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * Rain that the logger writes by the step.
 *
 * @param lines where the readings were read
 * @param unit what a reading is
 * @param step length of a step
 * @param isStampAtEnd true if a time is the end of its step
 * @param isDryLeftOut true if a step without a line was dry
 */
record StepSource(ReadingFile.Readings lines, RainUnit unit, Duration step, boolean isStampAtEnd, boolean isDryLeftOut)
        implements RainSource {
    private static final Duration DAY = Duration.ofDays(1);

    static StepSource read(Site site) {
        Site.Column column = site.inputs().rain();
        Site.StepRules rules = site.rain().steps();
        ReadingFile.Readings lines = ReadingFile.rain(column);
        RainUnit unit = RainUnit.of(site, lines.header());
        return of(site, lines, unit, rules.isDryLeftOut().orElse(false));
    }

    /** Counts of tips in each step. A file without any 0 leaves dry steps out. */
    static StepSource counts(Site site, ReadingFile.Readings lines) {
        double tip = site.rain().bucket().tipMm();
        RainUnit unit = new RainUnit("counts of tips of " + Show.rain(tip) + Page.BOUND + "mm", tip, false);
        boolean hasNoZero = lines.series().stream().noneMatch(each -> each.value() == 0);
        return of(site, lines, unit, site.rain().steps().isDryLeftOut().orElse(hasNoZero));
    }

    private static StepSource of(Site site, ReadingFile.Readings lines, RainUnit unit, boolean isDryLeftOut) {
        Site.StepRules rules = site.rain().steps();
        Duration step = rules.interval().orElseGet(() -> step(lines, isDryLeftOut));
        if (step.isZero() || DAY.toNanos() % step.toNanos() != 0) {
            throw new IllegalArgumentException(lines.column().file()
                    + ": the steps of the rain must divide a day, were " + step + "; \"rain interval = ...\" in "
                    + SiteFile.NAME + " says how long they are");
        }
        return new StepSource(lines, unit, step, rules.isStampAtEnd(), isDryLeftOut);
    }

    /** The usual step; a logger that leaves out dry steps must say it. */
    private static Duration step(ReadingFile.Readings lines, boolean isDryLeftOut) {
        if (lines.series().size() < 2 || isDryLeftOut) {
            throw new IllegalArgumentException(lines.column().file() + ": the length of a step is not known from "
                    + (isDryLeftOut ? "wet steps alone" : "fewer than two readings")
                    + ": add \"rain interval = ...\" to " + SiteFile.NAME);
        }
        return lines.series().usualStep();
    }

    @Override
    public Optional<Interval> signs() {
        Series series = lines.series();
        return series.isEmpty()
                ? Optional.empty()
                : Optional.of(Interval.of(series.time(0), series.time(series.size() - 1)));
    }

    @Override
    public String what() {
        return lines.column().what();
    }

    @Override
    public List<Path> files() {
        return ColumnFiles.of(lines.column());
    }

    @Override
    public String joined() {
        return lines.joined();
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
        return what() + ": a header and no reading below it";
    }

    @Override
    public boolean showsDryTimes() {
        return !isDryLeftOut;
    }

    @Override
    public String readAs() {
        return "rain from \"" + lines.header() + "\" in " + unit.text() + ", steps of "
                + Show.duration(step) + " stamped at their " + (isStampAtEnd ? "ends" : "beginnings")
                + (isDryLeftOut ? ", steps left out are dry" : "");
    }

    @Override
    public Rain within(Interval record) {
        StepRecord rain = record(record);
        ImpossibleRain impossible = ImpossibleRain.of(rain.depth());
        RegularSeries others = impossible.others();
        List<Interval> silent = SilentEnds.standard().of(others);
        return new Rain(
                others.withMissing(silent.toArray(Interval[]::new)),
                silent,
                Optional.of(impossible),
                Show.rain(others.sum()) + " mm in "
                        + Show.count(rain.depth().size(), "step") + " of " + Show.duration(step)
                        + (rain.missing() > 0 ? "; " + rain.missing() + " of them not known" : "")
                        + (rain.filledDry() > 0 ? "; " + rain.filledDry() + " without a line taken as dry" : "")
                        + (rain.aside() > 0
                                ? "; " + Show.count(rain.aside(), "line") + " with " + Show.rain(rain.asideMm())
                                        + " mm fit no step and were left out"
                                : "")
                        + account(impossible));
    }

    private static String account(ImpossibleRain impossible) {
        return impossible.steps() == 0
                ? ""
                : "; " + Show.count(impossible.steps(), "step") + " with " + Show.rain(impossible.depthMm())
                        + " mm set aside: more than fell anywhere in a step or a day";
    }

    private StepRecord record(Interval record) {
        SteppedGauge gauge = unit.isIntensity() ? SteppedGauge.ofIntensity(step) : SteppedGauge.ofDepth(step);
        gauge = isStampAtEnd ? gauge.withStampAtEnd() : gauge;
        gauge = isDryLeftOut ? gauge.withDryWithoutReading() : gauge;
        Series readings = lines.series().map(value -> value * unit.mm());
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
