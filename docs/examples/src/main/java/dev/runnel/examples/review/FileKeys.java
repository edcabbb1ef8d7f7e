package dev.runnel.examples.review;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.csv.CsvUnit;
import dev.runnel.timeseries.csv.RepeatedHour;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Where the readings and tables of a site stand and how they are written, as the site file tells of them. */
final class FileKeys {
    /** How a file is written: for the depths, and as a default for all. */
    private static final List<String> FORMAT = List.of(
            "time column",
            "time of day column",
            "time pattern",
            "separator",
            "decimal mark",
            "lines before header",
            "missing marks",
            "repeated hour");

    /** Files that may be written in a way of their own. */
    private static final List<String> OWN = List.of("velocity ", "tips ", "rain ");

    private final SiteValues values;
    private final Path folder;

    private FileKeys(SiteValues values, Path folder) {
        this.values = values;
        this.folder = folder;
    }

    static FileKeys of(SiteValues values, Path folder) {
        return new FileKeys(values, folder);
    }

    /** All keys that say how a file is written. */
    static Set<String> formats() {
        Set<String> keys = new HashSet<>(FORMAT);
        OWN.forEach(file -> FORMAT.forEach(key -> keys.add(file + key)));
        return keys;
    }

    Site.Inputs inputs(ZoneId zone) {
        ZoneId loggerClock = values.zone("logger clock", zone);
        ZoneId gaugeClock = values.zone("gauge clock", loggerClock);
        return new Site.Inputs(
                column("depth", "", loggerClock, Measure.LENGTH.symbols()),
                column("velocity", "velocity ", values.zone("velocity clock", loggerClock), Measure.VELOCITY.symbols()),
                column("tips", "tips ", gaugeClock, List.of()),
                column("rain", "rain ", gaugeClock, List.of()),
                new Site.DdfFiles(
                        table("ddf file", "ddf.csv"),
                        table("ddf lower file", "ddf-lower.csv"),
                        table("ddf upper file", "ddf-upper.csv"),
                        values.number("ddf confidence", 0.9)));
    }

    /** A file that the site file names, or has without naming it. */
    private Path inside(String key, String otherwise) {
        return InsideFolder.file(folder, values.text(key, otherwise))
                .orElseThrow(() -> values.refused(
                        key,
                        "must lie in the folder of the site, or be allowed by -Drunnel.files.outside=allowed, was "
                                + Text.quoted(values.text(key, otherwise))));
    }

    /** A small table; one that the site file names must be there. */
    Path table(String key, String otherwise) {
        Path file = inside(key, otherwise);
        if (values.has(key) && !Files.exists(file)) {
            throw values.refused(key, "must be a file that is there, was " + file);
        }
        return file;
    }

    private Site.Column column(String what, String prefix, ZoneId clock, List<String> units) {
        String unitKey = what + " unit";
        return new Site.Column(
                what,
                inside(what + " file", what + ".csv"),
                values.has(what + " file"),
                values.optionalText(what.equals("tips") ? "tips count column" : what + " column"),
                values.has(unitKey) && !units.isEmpty()
                        ? Optional.of(CsvUnit.parse(values.choice(unitKey, "", units)))
                        : Optional.empty(),
                format(prefix, clock));
    }

    private Site.FileFormat format(String prefix, ZoneId clock) {
        Optional<Character> separator = separator(own(prefix, "separator"));
        String markKey = own(prefix, "decimal mark");
        boolean isDecimalComma =
                values.choice(markKey, "point", List.of("point", "comma")).equals("comma");
        if (isDecimalComma && separator.equals(Optional.of(','))) {
            throw values.refused(markKey, "must not be comma where the separator is one");
        }
        return new Site.FileFormat(
                clock,
                repeatedHour(own(prefix, "repeated hour")),
                values.optionalText(own(prefix, "time column")),
                values.optionalText(own(prefix, "time of day column")).filter(name -> !name.equals("none")),
                values.timePattern(own(prefix, "time pattern")),
                separator,
                isDecimalComma,
                values.count(own(prefix, "lines before header"), 0, 1000),
                values.marks(own(prefix, "missing marks")));
    }

    private RepeatedHour repeatedHour(String key) {
        return switch (values.choice(key, "reject", List.of("reject", "by order", "earlier", "later"))) {
            case "by order" -> RepeatedHour.BY_ORDER;
            case "earlier" -> RepeatedHour.EARLIER;
            case "later" -> RepeatedHour.LATER;
            default -> RepeatedHour.REJECT;
        };
    }

    /** A file may have keys of its own; what they do not say is as for the depths. */
    private String own(String prefix, String key) {
        return values.has(prefix + key) ? prefix + key : key;
    }

    private Optional<Character> separator(String key) {
        if (!values.has(key)) {
            return Optional.empty();
        }
        return Optional.of(
                switch (values.choice(key, "", List.of("comma", "semicolon", "tab", "bar"))) {
                    case "semicolon" -> ';';
                    case "tab" -> '\t';
                    case "bar" -> '|';
                    default -> ',';
                });
    }
}
