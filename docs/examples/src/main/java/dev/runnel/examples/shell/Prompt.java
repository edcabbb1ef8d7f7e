package dev.runnel.examples.shell;

import dev.runnel.examples.pages.RecordRows;
import dev.runnel.examples.review.PlainFiles;
import dev.runnel.examples.review.SurveySite;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.WaterProfile;
import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.hydraulics.rating.RatingCurve;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.structure.HeadDischarge;
import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.ddf.DepthDurationFrequency;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import dev.runnel.rainfall.design.DesignStorm;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.Statistics;
import dev.runnel.timeseries.baseline.DiurnalProfile;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/**
 * What the prompt has beyond the library: readers of the usual files in one call, pictures, and a line that shows a record
 * in the terminal. A chart is a page of its own; it opens where there is a desktop, and elsewhere its path is printed.
 */
public final class Prompt {
    private static final double MM = 1000;
    private static final double LITRES = 1000;
    private static final double STEPS_DRAWN = 5000;
    private static final int MOST_SECTIONS = 36;
    private static final double HIGHEST_HEAD = 1;

    private Prompt() {}

    /**
     * Reads a file of depths. Column, unit and separator are found as the site review finds them.
     *
     * @param file path of a CSV file; its first line names the columns, the depth with its unit as in {@code depth_mm}
     * @param settings lines as in a site file, such as {@code "time pattern = dd/MM/yyyy HH:mm"} (docs/site-review.md)
     * @return the readings, m; what was rejected is printed
     * @throws IllegalArgumentException if the file cannot be used
     */
    public static Series readDepths(String file, String... settings) {
        return PlainFiles.depths(Path.of(file), System.out::println, settings);
    }

    /**
     * Reads a file of velocities.
     *
     * @param file path of a CSV file; its first line names the columns
     * @param settings lines as in a site file
     * @return the readings, m/s; what was rejected is printed
     * @throws IllegalArgumentException if the file cannot be used
     */
    public static Series readVelocities(String file, String... settings) {
        return PlainFiles.velocities(Path.of(file), System.out::println, settings);
    }

    /**
     * Reads a file of the tips of a gauge.
     *
     * @param file path of a CSV file with the time of one tip in each line
     * @param settings lines as in a site file, such as {@code "gauge clock = Europe/London"}
     * @return the tips; what was rejected is printed
     * @throws IllegalArgumentException if the file cannot be used
     */
    public static Tips readTips(String file, String... settings) {
        return PlainFiles.tips(Path.of(file), System.out::println, settings);
    }

    /**
     * Reads a depth-duration-frequency table of annual maxima.
     *
     * @param file path of a CSV file: a row for each duration, a column for each return period in years
     * @return the table, mm
     * @throws IllegalArgumentException if the file cannot be used
     */
    public static DdfTable readDdf(String file) {
        return DdfTable.read(Path.of(file), ReturnPeriodBasis.ANNUAL_MAXIMUM);
    }

    /**
     * Reads and reviews the folder of a site.
     *
     * @param folder path of a folder with a {@code site.txt} (docs/site-review.md)
     * @return its readings and what the review found
     * @throws IllegalArgumentException if the folder cannot be used
     */
    public static SurveySite readSite(String folder) {
        return SurveySite.read(Path.of(folder));
    }

    /**
     * Shows a value as people read it: numbers of four digits, durations in words, and of a list, a map or an array one thing a
     * line.
     *
     * @param value what to show
     * @return what the prompt prints
     */
    public static Shown show(Object value) {
        return Shown.of(value);
    }

    /**
     * Shows readings in one line of the terminal.
     *
     * @param series readings; those that are not usable are left out
     * @return the line
     */
    public static Sparkline sparkline(Series series) {
        return Sparkline.of(series.toUsableValues());
    }

    /**
     * Shows values of equal steps in one line of the terminal.
     *
     * @param series values
     * @return the line
     */
    public static Sparkline sparkline(RegularSeries series) {
        return Sparkline.of(series.toValues());
    }

    /**
     * Draws readings over time, on a clock in UTC.
     *
     * @param series readings; those that are not usable are left out
     * @return the chart
     */
    public static Chart chart(Series series) {
        return chart("value", series);
    }

    /**
     * Draws readings over time, on a clock in UTC.
     *
     * @param name what they are, with their unit
     * @param series readings; those that are not usable are left out
     * @return the chart
     */
    public static Chart chart(String name, Series series) {
        return drawn(Charts.of(
                name + ", " + series.size() + " readings",
                RecordRows.in(ZoneOffset.UTC).withReadings(name, series, 1, step(series.statistics()))));
    }

    /**
     * Draws amounts of equal steps over time as bars, such as rain; {@code chart(series.toSeries())} draws a line.
     *
     * @param series amounts
     * @return the chart
     */
    public static Chart chart(RegularSeries series) {
        return drawn(Charts.of(
                series.toString(),
                RecordRows.in(ZoneOffset.UTC).withAmounts("amount in a step", series, step(series.statistics()))));
    }

    /**
     * Draws level, velocity and flow of a monitor over time, on a clock in UTC.
     *
     * @param record the record
     * @return the chart
     */
    public static Chart chart(FlowRecord record) {
        return drawn(Charts.of("level, velocity and flow", rows(RecordRows.in(ZoneOffset.UTC), record)));
    }

    /**
     * Draws a site: its rain, level, velocity and flow over time, on its own clock.
     *
     * @param site the site
     * @return the chart
     */
    public static Chart chart(SurveySite site) {
        RecordRows rows = RecordRows.in(site.zone());
        if (site.rain().isPresent()) {
            rows = rows.withAmounts("Rain, mm", site.rain().get(), 0.01);
        }
        return drawn(Charts.of(site.name(), rows(rows, site.flow())));
    }

    private static RecordRows rows(RecordRows before, FlowRecord record) {
        RecordRows rows = before.withReadings("Level, mm", record.level(), MM, 1);
        return record.velocity().statistics().count() == 0
                ? rows
                : rows.withReadings("Velocity, m/s", record.velocity(), 1, 0.001)
                        .withReadings("Flow, l/s", record.flow(), LITRES, 0.1);
    }

    /** The power of ten that cuts the span of the values into some thousand steps. */
    private static double step(Statistics statistics) {
        if (statistics.count() == 0) {
            return 1;
        }
        double span = Math.max(Math.abs(statistics.maximum()), Math.abs(statistics.minimum()));
        return span > 0 ? Math.pow(10, Math.floor(Math.log10(span / STEPS_DRAWN))) : 1;
    }

    /**
     * Draws the outline of a section.
     *
     * @param section the section
     * @return the chart
     */
    public static Chart chart(CrossSection section) {
        return drawn(Charts.of(section, OptionalDouble.empty()));
    }

    /**
     * Draws the outline of a section with water in it.
     *
     * @param section the section
     * @param depth depth of the water above the bed, m
     * @return the chart
     */
    public static Chart chart(CrossSection section, double depth) {
        section.area(depth);
        return drawn(Charts.of(section, OptionalDouble.of(depth)));
    }

    /**
     * Draws the outlines of sections beside each other.
     *
     * @param first the first of them
     * @param more the others, 35 at most
     * @return the chart
     * @throws IllegalArgumentException if there are more
     */
    public static Chart chart(CrossSection first, CrossSection... more) {
        if (more.length >= MOST_SECTIONS) {
            throw new IllegalArgumentException(
                    "more must hold fewer than " + MOST_SECTIONS + " sections, was " + more.length);
        }
        List<CrossSection> sections = new ArrayList<>(List.of(first));
        sections.addAll(List.of(more));
        return drawn(Charts.plate(sections));
    }

    /**
     * Draws discharge and velocity over the depth: of a closed pipe in shares of the full bore, of an open channel as they
     * are, up to one and a half times its highest corner.
     *
     * @param conduit the pipe or channel
     * @return the chart
     */
    public static Chart chart(Conduit conduit) {
        return drawn(Charts.of(conduit));
    }

    /**
     * Draws depths over durations for some return periods.
     *
     * @param relation the relation
     * @return the chart
     */
    public static Chart chart(DepthDurationFrequency relation) {
        return drawn(Charts.of(relation, List.of()));
    }

    /**
     * Draws the peaks of a storm on a depth-duration-frequency chart.
     *
     * @param storm the storm
     * @param relation the relation
     * @return the chart
     */
    public static Chart chart(RainfallEvent storm, DepthDurationFrequency relation) {
        return drawn(Charts.of(relation, List.of(storm)));
    }

    /**
     * Draws the peaks of a storm over durations.
     *
     * @param storm the storm
     * @return the chart
     */
    public static Chart chart(RainfallEvent storm) {
        return drawn(Charts.of(List.of(storm)));
    }

    /**
     * Draws the intensity of a design storm over its time.
     *
     * @param storm the storm
     * @return the chart
     */
    public static Chart chart(DesignStorm storm) {
        return drawn(Charts.of(storm));
    }

    /**
     * Draws a profile of flows over the day in l/s, with the band of 80 of 100 days.
     *
     * @param profile the profile, of flows in m3/s
     * @return the chart
     */
    public static Chart chart(DiurnalProfile profile) {
        return drawn(Charts.of(profile, "l/s", LITRES));
    }

    /**
     * Draws a rating over its gauged stages, with the band of one more gauging.
     *
     * @param rating the rating
     * @return the chart
     */
    public static Chart chart(RatingCurve rating) {
        return drawn(Charts.of(rating));
    }

    /**
     * Draws the flow over a weir, a flume or through an opening, for heads up to 1 m or as far as its formula goes.
     *
     * @param structure the structure
     * @return the chart
     */
    public static Chart chart(HeadDischarge structure) {
        return chart(structure, HIGHEST_HEAD);
    }

    /**
     * Draws the flow over a weir, a flume or through an opening.
     *
     * @param structure the structure
     * @param highestHead highest head that is drawn, m, greater than 0
     * @return the chart
     */
    public static Chart chart(HeadDischarge structure, double highestHead) {
        if (!(highestHead > 0 && highestHead <= 1000)) {
            throw new IllegalArgumentException("highestHead must be in (0, 1000] m, was " + highestHead);
        }
        return drawn(Charts.of(structure, highestHead));
    }

    /**
     * Draws the levels of steady flow along a sewer.
     *
     * @param profile the profile
     * @return the chart
     */
    public static Chart chart(WaterProfile profile) {
        return drawn(Charts.of(profile));
    }

    /**
     * Returns the charts of this session, the last hundred at most.
     *
     * @return the charts, oldest first
     */
    public static List<Chart> charts() {
        return ChartDesk.drawn();
    }

    private static Chart drawn(Chart chart) {
        return ChartDesk.show(chart);
    }
}
