package dev.runnel.verification.simulation;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import java.io.IOException;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * A file of readings somebody else has published: the time in one column or in five (Month, Day, Year, Hour, Minute), and
 * columns whose heading begins with depth, level or value, with velocity, or with rain. Units: in, mm or m (mm for a bare
 * value), fps or m/s, in or mm. Times without an offset are on the civil clock of a
 * zone; those in the hour that it skips count as an hour later.
 *
 * @param name of the file
 * @param stamp times, in the order of the lines
 * @param depth m, if there is such a column
 * @param velocity m/s, if there is such a column
 * @param rain mm, if there is such a column
 * @param bad lines whose time or count of fields could not be read
 */
record SurveyFile(
        String name,
        Instant[] stamp,
        Optional<double[]> depth,
        Optional<double[]> velocity,
        Optional<double[]> rain,
        int bad) {
    private static final double FOOT = 0.3048;
    private static final double INCH = 0.0254;
    private static final List<String> PARTS = List.of("year", "month", "day", "hour", "minute");

    /** Empty if the file is no record of depth or of rain. */
    static Optional<SurveyFile> read(Path path, ZoneId zone) throws IOException {
        List<CsvRecord> lines;
        try (CsvReader<CsvRecord> reader = CsvReader.builder().ofCsvRecord(path)) {
            lines = reader.stream().toList();
        }
        if (lines.size() < 2) {
            return Optional.empty();
        }
        List<String> heads = lines.get(0).getFields().stream()
                .map(head -> head.strip().toLowerCase(Locale.ROOT))
                .toList();
        int depth = column(heads, "depth", "level", "value");
        int velocity = column(heads, "velocity");
        int rain = column(heads, "rain");
        if (depth < 0 && rain < 0) {
            return Optional.empty();
        }
        int[] parts = PARTS.stream().mapToInt(heads::indexOf).toArray();
        boolean apart = Arrays.stream(parts).allMatch(part -> part >= 0);
        List<Instant> stamps = new ArrayList<>();
        List<CsvRecord> kept = new ArrayList<>();
        for (CsvRecord line : lines.subList(1, lines.size())) {
            Optional<Instant> stamp = apart ? time(line, parts, zone) : time(line.getField(0), zone);
            if (stamp.isPresent() && line.getFieldCount() >= heads.size()) {
                stamps.add(stamp.orElseThrow());
                kept.add(line);
            }
        }
        return kept.isEmpty()
                ? Optional.empty()
                : Optional.of(new SurveyFile(
                        String.valueOf(path.getFileName()),
                        stamps.toArray(Instant[]::new),
                        values(kept, heads, depth),
                        values(kept, heads, velocity),
                        values(kept, heads, rain),
                        lines.size() - 1 - kept.size()));
    }

    private static int column(List<String> heads, String... starts) {
        for (int i = 0; i < heads.size(); i++) {
            for (String start : starts) {
                if (heads.get(i).startsWith(start)) {
                    return i;
                }
            }
        }
        return -1;
    }

    private static Optional<double[]> values(List<CsvRecord> lines, List<String> heads, int column) {
        if (column < 0) {
            return Optional.empty();
        }
        double unit = unit(heads.get(column));
        return Optional.of(lines.stream()
                .mapToDouble(line -> value(line.getField(column)) * unit)
                .toArray());
    }

    /** To m and m/s; rain to mm. */
    private static double unit(String head) {
        if (head.startsWith("velocity")) {
            return head.contains("fps") ? FOOT : 1;
        }
        boolean inches = head.endsWith("in") || head.contains("inch");
        if (head.startsWith("rain")) {
            return inches ? 1000 * INCH : 1;
        }
        return inches ? INCH : head.endsWith("_m") ? 1 : 0.001;
    }

    private static double value(String text) {
        try {
            double value = Double.parseDouble(text.strip());
            return Double.isFinite(value) ? value : Double.NaN;
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }

    private static Optional<Instant> time(CsvRecord line, int[] parts, ZoneId zone) {
        try {
            int[] of = new int[parts.length];
            for (int i = 0; i < parts.length; i++) {
                of[i] = Integer.parseInt(line.getField(parts[i]).strip());
            }
            return Optional.of(LocalDateTime.of(of[0], of[1], of[2], of[3], of[4])
                    .atZone(zone)
                    .toInstant());
        } catch (DateTimeException | NumberFormatException | IndexOutOfBoundsException e) {
            return Optional.empty();
        }
    }

    static Optional<Instant> time(String text, ZoneId zone) {
        String iso = text.strip().replace(' ', 'T').replaceFirst("\\+00:00$", "Z");
        try {
            return Optional.of(
                    iso.endsWith("Z")
                            ? Instant.parse(iso)
                            : LocalDateTime.parse(iso).atZone(zone).toInstant());
        } catch (DateTimeException e) {
            return Optional.empty();
        }
    }
}
