package dev.runnel.examples.review;

import dev.runnel.internal.Settings;
import dev.runnel.timeseries.csv.CsvLayout;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.DoubleFunction;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The values of a site file, each checked for its kind; every complaint names file, line, column and what is allowed. */
final class SiteValues {
    private static final int LONGEST_DAYS = 366;

    private final Settings settings;

    SiteValues(Settings settings) {
        this.settings = settings;
    }

    boolean has(String key) {
        return settings.keys().contains(key);
    }

    Optional<String> optionalText(String key) {
        return settings.optionalText(key);
    }

    String text(String key, String otherwise) {
        return settings.optionalText(key).orElse(otherwise);
    }

    String choice(String key, String otherwise, List<String> allowed) {
        String text = text(key, otherwise);
        if (!allowed.contains(text)) {
            throw refused(key, "must be one of " + String.join(", ", allowed) + ", was \"" + text + "\"");
        }
        return text;
    }

    /** Texts with blanks between, each once: a mark that stands there twice may be one that was meant to be another. */
    List<String> marks(String key) {
        List<String> marks = new ArrayList<>();
        for (String mark : optionalText(key).stream()
                .flatMap(text -> Stream.of(text.split("\\s+")))
                .toList()) {
            if (marks.contains(mark)) {
                throw refused(key, "must name each mark once, was \"" + text(key, "") + "\"");
            }
            marks.add(mark);
        }
        return marks;
    }

    /** Texts with blanks between; none if the key is missing. */
    List<String> words(String key) {
        return optionalText(key)
                .map(text -> Stream.of(text.split("\\s+")).distinct().toList())
                .orElse(List.of());
    }

    /** A date such as 2026-10-05; none if the key is missing. */
    Optional<LocalDate> date(String key) {
        return optionalText(key).map(text -> date(key, text));
    }

    /** Dates with blanks between; none if the key is missing. */
    Set<LocalDate> dates(String key) {
        return words(key).stream().map(text -> date(key, text)).collect(Collectors.toCollection(TreeSet::new));
    }

    private LocalDate date(String key, String text) {
        try {
            return LocalDate.parse(text);
        } catch (DateTimeParseException e) {
            throw refused(key, "must be a date such as 2026-10-05, was \"" + text + "\"");
        }
    }

    int count(String key, int otherwise, int most) {
        double number = settings.optionalNumber(key).orElse(otherwise);
        if (!(number >= 0 && number <= most && number == Math.rint(number))) {
            throw refused(key, "must be a whole number from 0 to " + most + ", was \"" + text(key, "") + "\"");
        }
        return (int) number;
    }

    double number(String key, double otherwise) {
        return settings.optionalNumber(key).orElse(otherwise);
    }

    /** A value with a unit that must be there and be greater than 0. */
    double positive(String key, Measure.Units units) {
        double value = measure(key, settings.text(key), units);
        if (!(value > 0)) {
            throw refused(key, "must be greater than 0, was \"" + settings.text(key) + "\"");
        }
        return value;
    }

    /** A value with a unit, 0 or greater. */
    double measure(String key, String otherwise, Measure.Units units) {
        double value = Measure.of(settings, key, text(key, otherwise), units);
        if (!(value >= 0)) {
            throw refused(key, "must be 0 or greater, was \"" + text(key, otherwise) + "\"");
        }
        return value;
    }

    OptionalDouble optionalMeasure(String key, Measure.Units units) {
        return optionalText(key).isPresent() ? OptionalDouble.of(measure(key, "", units)) : OptionalDouble.empty();
    }

    /** A value with a unit that is part of a longer text. */
    double measureIn(String key, String text, Measure.Units units) {
        return Measure.of(settings, key, text, units);
    }

    double gradient(String key) {
        return Measure.gradient(settings, key, settings.text(key));
    }

    Duration duration(String key, String otherwise) {
        double seconds = measure(key, otherwise, Measure.TIME);
        if (seconds > LONGEST_DAYS * 86_400.0) {
            throw refused(key, "must be at most " + LONGEST_DAYS + " d, was \"" + text(key, otherwise) + "\"");
        }
        return Duration.ofMillis(Math.round(seconds * 1000));
    }

    Duration positiveDuration(String key, String otherwise) {
        Duration duration = duration(key, otherwise);
        if (duration.isZero()) {
            throw refused(key, "must be longer than 0, was \"" + text(key, otherwise) + "\"");
        }
        return duration;
    }

    Optional<Duration> optionalDuration(String key) {
        return optionalText(key).isPresent() ? Optional.of(positiveDuration(key, "")) : Optional.empty();
    }

    ZoneId zone(String key, ZoneId otherwise) {
        Optional<String> text = optionalText(key);
        try {
            return text.isPresent() ? ZoneId.of(text.get()) : otherwise;
        } catch (DateTimeException e) {
            throw refused(
                    key,
                    "must be UTC, an offset such as +01:00 or a zone such as Europe/London, was \"" + text.get()
                            + "\"");
        }
    }

    Optional<String> timePattern(String key) {
        Optional<String> pattern = optionalText(key).filter(text -> !text.equals("ISO 8601"));
        pattern.filter(text -> !ReadingFile.TIME_NUMBERS.containsKey(text)).ifPresent(text -> {
            try {
                CsvLayout.of("time").withTimePattern(text);
            } catch (IllegalArgumentException e) {
                throw refused(
                        key,
                        "must be a pattern such as dd/MM/yyyy HH:mm:ss, or one of \"ISO 8601\", "
                                + "\"seconds since 1970\", \"milliseconds since 1970\", \"spreadsheet days\", was \""
                                + text + "\"");
            }
        });
        return pattern;
    }

    /** Lets the library decide whether it accepts a value, and adds the place in the file to its complaint. */
    <T> T accepted(String key, double value, DoubleFunction<T> library) {
        try {
            return library.apply(value);
        } catch (IllegalArgumentException e) {
            throw refused(key, "is not possible: " + e.getMessage());
        }
    }

    IllegalArgumentException refused(String key, String problem) {
        return settings.refused(key, problem);
    }
}
