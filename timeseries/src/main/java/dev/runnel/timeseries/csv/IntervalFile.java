package dev.runnel.timeseries.csv;

import dev.runnel.internal.Nearest;
import dev.runnel.internal.Text;
import dev.runnel.internal.Unreadable;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.csv.CsvIssue.Kind;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.time.temporal.TemporalAccessor;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.apiguardian.api.API;

/**
 * What a file of intervals looks like, one a line, such as the discharges of overflows; and its reader. Immutable and
 * thread-safe.
 *
 * <p>Comma-separated UTF-8. A line that is not as it should be is set aside and is in the {@link CsvReport}: no time, an
 * end that does not come after its start, too many or too few cells, the same interval of the same site again. Local times
 * without an offset are those of the zone, UTC unless said; one that occurs twice at a clock change is set aside, as is one
 * that never occurred.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class IntervalFile {
    private static final int ISSUE_LIMIT = 1000;

    private final String start;
    private final String end;
    private final String site;
    private final ZoneId zone;
    private final String pattern;
    private final boolean header;

    private IntervalFile(String start, String end, String site, ZoneId zone, String pattern, boolean header) {
        this.start = start;
        this.end = end;
        this.site = site;
        this.zone = zone;
        this.pattern = pattern;
        this.header = header;
    }

    /**
     * Returns the layout of a file with a header and times in ISO 8601.
     *
     * @param start name of the column of starts
     * @param end name of the column of ends
     * @return the layout
     */
    public static IntervalFile of(String start, String end) {
        Objects.requireNonNull(start, "start");
        Objects.requireNonNull(end, "end");
        return new IntervalFile(start, end, "", ZoneOffset.UTC, "", true);
    }

    /**
     * Returns the layout with a column that tells the site.
     *
     * @param site name of the column
     * @return the new layout
     */
    public IntervalFile withSite(String site) {
        Objects.requireNonNull(site, "site");
        return new IntervalFile(start, end, site, zone, pattern, header);
    }

    /**
     * Returns the layout with the zone of local times.
     *
     * @param zone the zone
     * @return the new layout
     */
    public IntervalFile withZone(ZoneId zone) {
        Objects.requireNonNull(zone, "zone");
        return new IntervalFile(start, end, site, zone, pattern, header);
    }

    /**
     * Returns the layout with times in a form of their own.
     *
     * @param pattern pattern as in {@link DateTimeFormatter}, for example {@code uuuu-MM-dd HH:mm:ss xx}
     * @return the new layout
     * @throws IllegalArgumentException if it is none
     */
    public IntervalFile withTimePattern(String pattern) {
        Objects.requireNonNull(pattern, "pattern");
        IntervalFile made = new IntervalFile(start, end, site, zone, pattern, header);
        made.formatter();
        return made;
    }

    /**
     * Returns the layout of a file without a header, in which columns are known by their numbers, from {@code "1"}.
     *
     * @return the new layout
     * @throws IllegalArgumentException if a column is not known by a number
     */
    public IntervalFile withoutHeader() {
        for (String each : site.isEmpty() ? List.of(start, end) : List.of(start, end, site)) {
            if (!each.matches("[1-9][0-9]{0,3}")) {
                throw new IllegalArgumentException(
                        "without a header columns must be numbers from 1, was \"" + each + "\"");
            }
        }
        return new IntervalFile(start, end, site, zone, pattern, false);
    }

    private Optional<DateTimeFormatter> formatter() {
        if (pattern.isEmpty()) {
            return Optional.empty();
        }
        try {
            // The year of an era, which nobody means, would be refused without its era.
            return Optional.of(DateTimeFormatter.ofPattern(pattern.replace("yyyy", "uuuu"), Locale.ROOT)
                    .withResolverStyle(ResolverStyle.STRICT));
        } catch (IllegalArgumentException e) {
            throw new IllegalArgumentException("pattern must be one of date and time, was " + Text.quoted(pattern), e);
        }
    }

    /**
     * Reads a file.
     *
     * @param file the file
     * @return intervals by site and the account of lines
     * @throws IllegalArgumentException if the file does not exist, is empty or has no such column
     * @throws java.io.UncheckedIOException if the file cannot be read
     */
    public IntervalRecord read(Path file) {
        if (Files.isDirectory(file)) {
            throw new IllegalArgumentException("file must be a file, was the folder " + file);
        }
        try (TextBytes text = TextBytes.of(Files.newInputStream(file), StandardCharsets.UTF_8)) {
            return read(String.valueOf(file.getFileName()), text);
        } catch (NoSuchFileException e) {
            throw new IllegalArgumentException("file must exist, was " + file, e);
        } catch (IOException e) {
            throw Unreadable.file(file, e);
        }
    }

    /**
     * Reads a text.
     *
     * @param text the lines
     * @return intervals by site and the account of lines
     * @throws IllegalArgumentException if it is empty or has no such column
     */
    public IntervalRecord parse(String text) {
        Objects.requireNonNull(text, "text");
        try {
            return read("text", TextBytes.of(text));
        } catch (IOException e) {
            throw Unreadable.file("text", e);
        }
    }

    private IntervalRecord read(String name, TextBytes text) throws IOException {
        LineSource lines = new LineSource(name, text);
        FieldSplitter fields = new FieldSplitter(',');
        IssueLog log = new IssueLog(name, ISSUE_LIMIT);
        Optional<DateTimeFormatter> formatter = formatter();
        Map<String, List<Interval>> found = new LinkedHashMap<>();
        Set<String> seen = new HashSet<>();
        int[] columns = header ? new int[0] : numbers();
        int width = 0;
        while (lines.next()) {
            if (lines.isBlank() || lines.letters()[0] == '#') {
                continue;
            }
            int unreadable = fields.split(lines.letters(), 0, lines.length());
            if (columns.length == 0) {
                columns = places(name + ", line " + lines.line(), fields);
                width = fields.count();
                continue;
            }
            log.line();
            width = width == 0 ? fields.count() : width;
            long line = lines.line();
            if (unreadable > 0) {
                log.issue(line, unreadable, Kind.UNREADABLE_LINE, "a quoted cell must end on its line; set aside");
            } else if (fields.count() != width) {
                boolean more = fields.count() > width;
                log.issue(
                        line,
                        0,
                        more ? Kind.TOO_MANY_COLUMNS : Kind.TOO_FEW_COLUMNS,
                        "must have " + width + ", has " + fields.count() + "; set aside");
            } else {
                take(line, fields, columns, formatter, seen, found, log);
            }
        }
        if (columns.length == 0 || !header && log.report().lines() == 0) {
            throw new IllegalArgumentException(name + ": file must have a line, was empty");
        }
        Map<String, List<Interval>> sorted = new LinkedHashMap<>();
        found.forEach((key, list) -> sorted.put(
                key,
                list.stream()
                        .sorted(Comparator.comparing(Interval::start).thenComparing(Interval::end))
                        .toList()));
        return new IntervalRecord(sorted, log.report());
    }

    private void take(
            long line,
            FieldSplitter fields,
            int[] columns,
            Optional<DateTimeFormatter> formatter,
            Set<String> seen,
            Map<String, List<Interval>> found,
            IssueLog log) {
        Instant[] times = new Instant[2];
        for (int i = 0; i < 2; i++) {
            String text = columns[i] < fields.count() ? fields.text(columns[i]) : "";
            List<Instant> meant = times(text, formatter);
            if (meant.size() != 1) {
                Kind kind = meant.isEmpty() ? Kind.UNREADABLE_TIME : Kind.AMBIGUOUS_TIME;
                log.issue(line, columns[i] + 1, kind, Text.quoted(text) + "; set aside");
                return;
            }
            times[i] = meant.get(0);
        }
        if (!times[1].isAfter(times[0])) {
            log.issue(
                    line,
                    columns[1] + 1,
                    Kind.OUT_OF_ORDER,
                    "the end " + times[1] + " is not after the start " + times[0] + "; set aside");
            return;
        }
        String key = columns.length > 2 && columns[2] < fields.count() ? fields.text(columns[2]) : "";
        if (!seen.add(key + '\n' + times[0] + '/' + times[1])) {
            log.issue(line, 0, Kind.DUPLICATE, "site and interval of an earlier line; set aside");
            return;
        }
        found.computeIfAbsent(key, each -> new ArrayList<>()).add(Interval.of(times[0], times[1]));
        log.accepted(true);
    }

    /** The instants that a text can mean: none if it is no time or never occurred, two where clocks went back. */
    private List<Instant> times(String text, Optional<DateTimeFormatter> formatter) {
        try {
            TemporalAccessor parsed = formatter.isPresent()
                    ? formatter.get().parseBest(text, OffsetDateTime::from, LocalDateTime::from)
                    : DateTimeFormatter.ISO_DATE_TIME.parseBest(
                            text.replace(' ', 'T'), OffsetDateTime::from, LocalDateTime::from);
            List<Instant> found = new ArrayList<>();
            if (parsed instanceof OffsetDateTime exact) {
                found.add(exact.toInstant());
            } else {
                LocalDateTime local = LocalDateTime.from(parsed);
                zone.getRules().getValidOffsets(local).forEach(offset -> found.add(local.toInstant(offset)));
            }
            found.forEach(EpochNanos::of);
            return found;
        } catch (DateTimeException | IllegalArgumentException e) {
            return List.of();
        }
    }

    private int[] numbers() {
        int first = Integer.parseInt(start) - 1;
        int second = Integer.parseInt(end) - 1;
        return site.isEmpty() ? new int[] {first, second} : new int[] {first, second, Integer.parseInt(site) - 1};
    }

    private int[] places(String place, FieldSplitter fields) {
        List<String> names = new ArrayList<>();
        for (int i = 0; i < fields.count(); i++) {
            names.add(fields.text(i));
        }
        List<String> wanted = site.isEmpty() ? List.of(start, end) : List.of(start, end, site);
        int[] places = new int[wanted.size()];
        for (int i = 0; i < places.length; i++) {
            String name = wanted.get(i);
            places[i] = names.indexOf(name);
            if (places[i] < 0) {
                throw new IllegalArgumentException(
                        place + ": header must have " + name + ", was " + names + Nearest.hint(name, names));
            }
        }
        return places;
    }

    @Override
    public String toString() {
        return "IntervalFile[" + start + " to " + end + (site.isEmpty() ? "" : " of " + site) + ", " + zone + "]";
    }
}
