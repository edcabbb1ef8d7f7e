package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.monitoring.SensorUncertainty;
import dev.runnel.hydraulics.structure.CoefficientWeir;
import dev.runnel.internal.Settings;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import dev.runnel.rainfall.gauge.Calibration;
import dev.runnel.rainfall.gauge.LostTime;
import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.correction.VisitComparison;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.MonthDay;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads {@code site.txt}. Every key stands in docs/site-review.md, with its default. */
public final class SiteFile {
    /** Name of the file that makes a folder a site. */
    public static final String NAME = "site.txt";

    private static final Pattern ALLOWANCE = Pattern.compile("(.+?)(?:\\s+or\\s+([0-9]{0,9}\\.?[0-9]{1,9})\\s*%)?");

    /** All keys that may stand in the file. */
    static final Set<String> KEYS = keys();

    private static Set<String> keys() {
        Set<String> keys =
                new HashSet<>(List.of(("site;note;upstream;time zone;shape;diameter;width;height;gradient;roughness;"
                                + "water temperature;sensor offset;sediment depth;velocity factor;overflow crest level;overflow crest length;overflow coefficient;overflow lowest head;bathing season;contributing area;"
                                + "alarm level;alarm deadband;alarm on-delay;alarm off-delay;logging interval;longest gap;"
                                + "highest depth;fastest velocity;depth spike;flat line;depth uncertainty;"
                                + "velocity uncertainty;tip size;lost time;minimum inter-event time;minimum event depth;"
                                + "dry day limit;days after rain;depth file;velocity file;tips file;rain file;ddf file;"
                                + "ddf lower file;ddf upper file;ddf confidence;ddf basis;logger clock;velocity clock;gauge clock;depth column;depth unit;velocity column;"
                                + "velocity unit;tips count column;rain column;rain unit;rain interval;rain time;dry steps;"
                                + "visits file;corrections file;visit depth tolerance;visit velocity tolerance;visit flow tolerance;visit clock tolerance;"
                                + "baseline from;baseline to;holidays")
                        .split(";")));
        keys.addAll(FileKeys.formats());
        return Set.copyOf(keys);
    }

    private final SiteValues values;
    private final Path folder;

    private SiteFile(SiteValues values, Path folder) {
        this.values = values;
        this.folder = folder;
    }

    /**
     * Reads the site file of a folder.
     *
     * @param folder the folder of the site
     * @return what it says
     * @throws IllegalArgumentException if the file says what is not possible, naming line and column
     */
    public static Site read(Path folder) {
        return parse(folder, Settings.read(ColumnFiles.small(folder.resolve(NAME))));
    }

    /** Reads the site file of a folder without depths: a gauge has no pipe, so that of the file, or any, plays no part. */
    static Site readGauge(Path folder) {
        Path file = ColumnFiles.small(folder.resolve(NAME));
        Settings given = Settings.read(file);
        StringBuilder more = new StringBuilder();
        // A folder that tells of a shape tells of its size too.
        List.of("diameter = 1 m", "gradient = 1:100", "roughness = manning 0.013").stream()
                .filter(line -> !given.keys().contains(line.substring(0, line.indexOf(' '))))
                .filter(line -> !line.startsWith("diameter") || !given.keys().contains("shape"))
                .forEach(line -> more.append(line).append('\n'));
        try {
            return parse(folder, Settings.parse(file.toString(), Files.readString(file) + "\n" + more));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static Site parse(Path folder, Settings settings) {
        return new SiteFile(new SiteValues(settings.allowOnly(KEYS)), folder).site();
    }

    private Site site() {
        String id = folder.toAbsolutePath().normalize().getFileName().toString();
        ZoneId zone = values.zone("time zone", ZoneId.of("UTC"));
        PipeMonitor monitor = PipeKeys.monitor(values);
        return new Site(
                id,
                folder,
                values.text("site", id),
                values.text("note", ""),
                zone,
                values.text("shape", "circular") + " " + size(monitor),
                monitor,
                values.optionalMeasure("overflow crest level", Measure.LENGTH),
                weir(),
                season(),
                area(),
                values.optionalText("upstream"),
                alarm(),
                checks(monitor),
                usual(zone),
                rain(),
                FileKeys.of(values, folder).inputs(zone),
                books());
    }

    private String size(PipeMonitor monitor) {
        String height = Show.mm(monitor.soffit());
        return values.has("width")
                ? Show.mm(values.positive("width", Measure.LENGTH)) + " wide and " + height + " high"
                : height;
    }

    /** The law is that of a thin plate; its coefficient may come from a model or a gauging. */
    private Optional<Site.OverflowWeir> weir() {
        if (!values.has("overflow crest length")) {
            for (String key : List.of("overflow coefficient", "overflow lowest head")) {
                if (values.has(key)) {
                    throw values.refused(key, "needs an overflow crest length beside it");
                }
            }
            return Optional.empty();
        }
        if (!values.has("overflow crest level")) {
            throw values.refused("overflow crest length", "needs an overflow crest level beside it");
        }
        double length = values.positive("overflow crest length", Measure.LENGTH);
        CoefficientWeir plain = values.accepted("overflow crest length", length, CoefficientWeir::rectangular);
        CoefficientWeir weir = values.has("overflow coefficient")
                ? values.accepted(
                        "overflow coefficient", values.number("overflow coefficient", 1), plain::withCoefficient)
                : plain;
        return Optional.of(new Site.OverflowWeir(
                weir,
                "a weir of " + Show.mm(length) + ", Cd "
                        + (values.has("overflow coefficient")
                                ? values.text("overflow coefficient", "")
                                : "0.623 by Francis"),
                values.measure("overflow lowest head", "30 mm", Measure.LENGTH)));
    }

    private Optional<Site.Season> season() {
        return values.optionalText("bathing season").map(text -> {
            String[] ends = text.split(" to ");
            try {
                Site.Season season =
                        new Site.Season(MonthDay.parse("--" + ends[0].strip()), MonthDay.parse("--" + ends[1].strip()));
                if (season.last().isAfter(season.first())) {
                    return season;
                }
            } catch (DateTimeParseException | ArrayIndexOutOfBoundsException e) {
                // Refused below, with the place in the file.
            }
            throw values.refused(
                    "bathing season", "must be two days of a year such as 05-15 to 09-30, was \"" + text + "\"");
        });
    }

    private OptionalDouble area() {
        return values.has("contributing area")
                ? OptionalDouble.of(values.positive("contributing area", Measure.AREA))
                : OptionalDouble.empty();
    }

    private Optional<Site.AlarmRule> alarm() {
        OptionalDouble level = values.optionalMeasure("alarm level", Measure.LENGTH);
        if (level.isEmpty()) {
            for (String key : List.of("alarm deadband", "alarm on-delay", "alarm off-delay")) {
                if (values.has(key)) {
                    throw values.refused(key, "needs an alarm level beside it");
                }
            }
            return Optional.empty();
        }
        return Optional.of(new Site.AlarmRule(
                level.getAsDouble(),
                values.measure("alarm deadband", "0", Measure.LENGTH),
                values.duration("alarm on-delay", "0"),
                values.duration("alarm off-delay", "0")));
    }

    private Site.Checks checks(PipeMonitor monitor) {
        return new Site.Checks(
                values.optionalDuration("logging interval"),
                values.optionalDuration("longest gap"),
                values.optionalMeasure("highest depth", Measure.LENGTH).orElse(Math.max(10, 3 * monitor.soffit())),
                values.measure("fastest velocity", "6 m/s", Measure.VELOCITY),
                values.measure("depth spike", "100 mm", Measure.LENGTH),
                values.positiveDuration("flat line", "2 h"),
                uncertainty());
    }

    /** Days count by the clock of the site; the last one is part of the baseline. */
    private Site.Usual usual(ZoneId zone) {
        Optional<LocalDate> from = values.date("baseline from");
        Optional<LocalDate> to = values.date("baseline to");
        if (from.isPresent() != to.isPresent()) {
            String key = from.isPresent() ? "baseline from" : "baseline to";
            throw values.refused(key, "needs baseline from and baseline to together");
        }
        if (from.isPresent() && to.orElseThrow().isBefore(from.get())) {
            throw values.refused("baseline to", "must not be before baseline from");
        }
        Optional<Interval> interval = from.map(first -> Interval.of(
                first.atStartOfDay(zone).toInstant(),
                to.orElseThrow().plusDays(1).atStartOfDay(zone).toInstant()));
        return new Site.Usual(interval, values.dates("holidays"));
    }

    private Optional<SensorUncertainty> uncertainty() {
        OptionalDouble depth = values.optionalMeasure("depth uncertainty", Measure.LENGTH);
        OptionalDouble velocity = values.optionalMeasure("velocity uncertainty", Measure.VELOCITY);
        if (depth.isPresent() != velocity.isPresent()) {
            String key = depth.isPresent() ? "depth uncertainty" : "velocity uncertainty";
            throw values.refused(key, "needs depth uncertainty and velocity uncertainty together");
        }
        return depth.isEmpty()
                ? Optional.empty()
                : Optional.of(SensorUncertainty.of(depth.getAsDouble(), velocity.getAsDouble()));
    }

    private Site.RainRules rain() {
        double tip = values.measure("tip size", "0.2 mm", Measure.RAIN);
        double lost = values.measure("lost time", "0", Measure.TIME);
        TippingBucket plain = values.accepted("tip size", tip, TippingBucket::ofTip);
        TippingBucket bucket = values.accepted(
                "lost time",
                lost,
                seconds -> plain.withCalibration(seconds == 0 ? Calibration.none() : LostTime.ofSeconds(seconds)));
        return new Site.RainRules(
                bucket,
                steps(),
                values.positiveDuration("minimum inter-event time", "6 h"),
                values.measure("minimum event depth", "1 mm", Measure.RAIN),
                values.measure("dry day limit", "0.3 mm", Measure.RAIN),
                values.count("days after rain", 1, 30),
                basis());
    }

    private Site.StepRules steps() {
        Optional<String> unit = values.has("rain unit")
                ? Optional.of(values.choice("rain unit", "", List.of("mm", "mm/h", "in", "in/h")))
                : Optional.empty();
        return new Site.StepRules(
                unit,
                values.optionalDuration("rain interval"),
                values.choice("rain time", "beginning", List.of("beginning", "end"))
                        .equals("end"),
                values.has("dry steps")
                        ? Optional.of(values.choice("dry steps", "", List.of("in the file", "left out"))
                                .equals("left out"))
                        : Optional.empty());
    }

    private ReturnPeriodBasis basis() {
        String text = values.choice("ddf basis", "annual maximum", List.of("annual maximum", "peaks over threshold"));
        return text.equals("annual maximum")
                ? ReturnPeriodBasis.ANNUAL_MAXIMUM
                : ReturnPeriodBasis.PEAKS_OVER_THRESHOLD;
    }

    private Site.Books books() {
        Allowance depth = allowance("visit depth tolerance", "6 mm or 2 %", Measure.LENGTH);
        Allowance velocity = allowance("visit velocity tolerance", "0.05 m/s or 10 %", Measure.VELOCITY);
        Allowance flow = allowance("visit flow tolerance", "0 or 10 %", Measure.FLOW);
        FileKeys files = FileKeys.of(values, folder);
        return new Site.Books(
                files.table("visits file", "visits.csv"),
                files.table("corrections file", "corrections.csv"),
                VisitComparison.standard()
                        .withDepthToleranceAndShare(depth.least(), depth.share())
                        .withVelocityToleranceAndShare(velocity.least(), velocity.share())
                        .withFlowToleranceAndShare(flow.least(), flow.share())
                        .withClockTolerance(values.duration("visit clock tolerance", "60 s")),
                "depth " + depth.text() + ", velocity " + velocity.text() + ", flow " + flow.text() + ", clock "
                        + values.text("visit clock tolerance", "60 s"));
    }

    private record Allowance(double least, double share, String text) {}

    /** A value, or the share of what was read by hand where that is more. */
    private Allowance allowance(String key, String otherwise, Measure.Units units) {
        String text = values.text(key, otherwise);
        Matcher parts = ALLOWANCE.matcher(text);
        if (!parts.matches()) {
            throw values.refused(key, "must be such as \"" + otherwise + "\", was \"" + text + "\"");
        }
        double least = values.measureIn(key, parts.group(1), units);
        double share = parts.group(2) == null ? 0 : Double.parseDouble(parts.group(2)) / 100;
        if (!(least >= 0 && share <= 1)) {
            throw values.refused(key, "must be 0 or greater, its share at most 100 %, was \"" + text + "\"");
        }
        return new Allowance(least, share, text);
    }
}
