package dev.runnel.timeseries.correction;

import dev.runnel.internal.Nearest;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.correction.Correction.Kind;
import dev.runnel.timeseries.csv.CsvTable;
import dev.runnel.timeseries.csv.CsvWriter;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A list of corrections, applied in its order: each works on what the ones before it made, and its interval is meant by the
 * stamps that they left. Immutable and thread-safe.
 *
 * <p>As a file it is comma-separated with the columns {@code series, from, to, kind, value, value at end, source, reason,
 * evidence, author}; the same list is the same bytes.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Corrections {
    private static final List<String> COLUMNS =
            List.of("series", "from", "to", "kind", "value", "value at end", "source", "reason", "evidence", "author");
    private static final List<String> KINDS =
            Arrays.stream(Kind.values()).map(Kind::toText).toList();

    private final List<Correction> list;

    private Corrections(List<Correction> list) {
        this.list = List.copyOf(list);
    }

    /**
     * Returns a list.
     *
     * @param corrections the corrections in their order
     * @return the list
     */
    public static Corrections of(List<Correction> corrections) {
        Objects.requireNonNull(corrections, "corrections");
        return new Corrections(corrections);
    }

    /**
     * Returns a list.
     *
     * @param corrections the corrections in their order
     * @return the list
     */
    public static Corrections of(Correction... corrections) {
        Objects.requireNonNull(corrections, "corrections");
        return new Corrections(List.of(corrections));
    }

    /**
     * Reads a list from a file.
     *
     * @param file the file
     * @return the list
     * @throws IllegalArgumentException if a line is not as it should be; file, line and column are named
     * @throws java.io.UncheckedIOException if the file cannot be read
     */
    public static Corrections read(Path file) {
        return from(CsvTable.read(file, columns()));
    }

    /**
     * Reads a list from a text.
     *
     * @param text the lines
     * @return the list
     * @throws IllegalArgumentException if a line is not as it should be; line and column are named
     */
    public static Corrections parse(String text) {
        return from(CsvTable.parse("corrections", text, columns()));
    }

    private static String[] columns() {
        return new String[] {
            "series", "from", "to", "kind", "value?", "value at end?", "source?", "reason", "evidence", "author"
        };
    }

    private static Corrections from(CsvTable table) {
        List<Correction> list = new ArrayList<>();
        for (CsvTable.Row row : table.rows()) {
            list.add(correction(row));
        }
        return new Corrections(list);
    }

    private static Correction correction(CsvTable.Row row) {
        Instant from = row.instant("from");
        Instant to = row.instant("to");
        if (!to.isAfter(from)) {
            throw row.refuse("to", "must be after from, " + from + ", was " + to);
        }
        String series = row.text("series");
        Interval interval = Interval.of(from, to);
        String word = row.text("kind");
        int at = KINDS.indexOf(word);
        if (at < 0) {
            throw row.refuse(
                    "kind", "must be one of " + KINDS + ", was " + Text.quoted(word) + Nearest.hint(word, KINDS));
        }
        Kind kind = Kind.values()[at];
        for (String column : List.of("value", "value at end", "source")) {
            if (row.has(column) && !takes(kind, column)) {
                throw row.refuse(column, "must be empty for a " + word + ", was " + Text.quoted(row.text(column)));
            }
        }
        try {
            Correction made = switch (kind) {
                case OFFSET -> Correction.offset(series, interval, row.number("value"));
                case DRIFT -> Correction.drift(series, interval, row.number("value"), row.number("value at end"));
                case FACTOR -> Correction.factor(series, interval, row.number("value"));
                case CLOCK_SHIFT -> Correction.clockShift(series, interval, seconds(row));
                case REMOVAL -> Correction.removal(series, interval);
                case REPLACEMENT -> Correction.replacement(series, interval, row.text("source"));
                case SEDIMENT -> Correction.sediment(series, interval, row.number("value"));
                case SENSOR_OFFSET -> Correction.sensorOffset(series, interval, row.number("value"));
                case ROUGHNESS -> Correction.roughness(series, interval, row.number("value"));
            };
            return made.because(row.text("reason"), row.text("evidence"), row.text("author"));
        } catch (IllegalArgumentException e) {
            String message = String.valueOf(e.getMessage());
            throw message.contains(", line ") ? e : row.refuse("kind " + word + ":", message);
        }
    }

    private static boolean takes(Kind kind, String column) {
        return switch (column) {
            case "value" -> kind != Kind.REMOVAL && kind != Kind.REPLACEMENT;
            case "value at end" -> kind == Kind.DRIFT;
            default -> kind == Kind.REPLACEMENT;
        };
    }

    private static Duration seconds(CsvTable.Row row) {
        double seconds = row.number("value");
        if (!(Math.abs(seconds) <= 9e9)) {
            throw row.refuse("value", "must be seconds of less than 292 years, was " + Text.number(seconds));
        }
        return Duration.ofNanos(Math.round(seconds * 1e9));
    }

    /**
     * Writes the list to a file; {@link #read} reads it back equal.
     *
     * @param file the file, replaced as a whole if there is one; its folder must exist
     * @throws java.io.UncheckedIOException if the file cannot be written
     */
    public void write(Path file) {
        CsvWriter.standard().writeTable(file, COLUMNS, rows());
    }

    private List<List<Object>> rows() {
        List<List<Object>> rows = new ArrayList<>();
        for (Correction each : list) {
            rows.add(List.of(
                    each.series(),
                    each.interval().start(),
                    each.interval().end(),
                    each.kind().toText(),
                    takes(each.kind(), "value") ? Text.number(each.value()) : "",
                    takes(each.kind(), "value at end") ? Text.number(each.valueAtEnd()) : "",
                    each.source(),
                    each.reason(),
                    each.evidence(),
                    each.author()));
        }
        return rows;
    }

    /**
     * Returns the corrections.
     *
     * @return the corrections in their order
     */
    public List<Correction> list() {
        return list;
    }

    /**
     * Returns the list with one more at its end.
     *
     * @param correction the correction
     * @return the new list
     */
    public Corrections with(Correction correction) {
        Objects.requireNonNull(correction, "correction");
        List<Correction> more = new ArrayList<>(list);
        more.add(correction);
        return new Corrections(more);
    }

    /**
     * Returns the settings of the monitor that the list states for a series: where its sediment lay, its sensor stood, how
     * rough its pipe was.
     *
     * @param series name of the series
     * @return the corrections that {@linkplain Kind#isSetting() state a setting}, in their order; where two of a kind overlap
     *     the later one of the list counts
     */
    public List<Correction> settings(String series) {
        Objects.requireNonNull(series, "series");
        return list.stream()
                .filter(each -> each.kind().isSetting() && each.series().equals(series))
                .toList();
    }

    /**
     * Applies the list to a series.
     *
     * @param series name of the series
     * @param raw its readings as they came
     * @return what they become, with the trail of each
     * @throws IllegalArgumentException if a replacement names a source, or a clock shift moves a reading onto or past
     *     another one or out of 1677 to 2262, or a value becomes infinite
     */
    public CorrectedSeries apply(String series, Series raw) {
        Objects.requireNonNull(series, "series");
        return apply(series, raw, Map.of());
    }

    /**
     * Applies the list to a series.
     *
     * @param series name of the series
     * @param raw its readings as they came
     * @param sources values for replacements, by the names that corrections use; where a source has no usable value at a
     *     time, the reading becomes missing
     * @return what they become, with the trail of each
     * @throws IllegalArgumentException if a source is missing, or a clock shift moves a reading onto or past another one or
     *     out of 1677 to 2262, or a value becomes infinite
     */
    public CorrectedSeries apply(String series, Series raw, Map<String, Series> sources) {
        Objects.requireNonNull(series, "series");
        Objects.requireNonNull(sources, "sources");
        return CorrectedSeries.of(this, series, raw, sources);
    }

    /** The state of a series while corrections work on it. */
    static final class Work {
        final long[] times;
        final double[] values;
        final byte[] qualities;
        final List<List<Integer>> trail = new ArrayList<>();

        Work(Series raw) {
            times = raw.toEpochNanos();
            values = raw.toValues();
            qualities = raw.toQualityCodes();
            for (int i = 0; i < times.length; i++) {
                trail.add(List.of());
            }
        }

        void apply(int number, Correction correction, Map<String, Series> sources) {
            long from = EpochNanos.of(correction.interval().start());
            long to = EpochNanos.of(correction.interval().end());
            int first = lowerBound(from);
            int end = lowerBound(to);
            switch (correction.kind()) {
                case SEDIMENT, SENSOR_OFFSET, ROUGHNESS -> {
                    return;
                }
                case CLOCK_SHIFT -> shift(correction, first, end);
                case REPLACEMENT -> replace(correction, first, end, sources);
                case REMOVAL -> {
                    for (int i = first; i < end; i++) {
                        set(i, Double.NaN, Quality.MISSING);
                    }
                }
                case OFFSET, DRIFT, FACTOR -> {
                    for (int i = first; i < end; i++) {
                        if (!Double.isNaN(values[i])) {
                            double value = correction.applied(values[i], times[i]);
                            if (!Double.isFinite(value)) {
                                throw new IllegalArgumentException(
                                        "corrected value must be finite, was " + Text.number(value) + " at "
                                                + EpochNanos.toInstant(times[i]) + " by " + correction);
                            }
                            set(i, value, Quality.ESTIMATE.worst(Quality.ofCode(qualities[i])));
                        }
                    }
                }
            }
            for (int i = first; i < end; i++) {
                List<Integer> longer = new ArrayList<>(trail.get(i));
                longer.add(number);
                trail.set(i, List.copyOf(longer));
            }
        }

        private int lowerBound(long time) {
            int found = Arrays.binarySearch(times, time);
            return found >= 0 ? found : -found - 1;
        }

        private void set(int index, double value, Quality quality) {
            values[index] = value;
            qualities[index] = quality.toCode();
        }

        private void shift(Correction correction, int first, int end) {
            long shift = correction.shiftNanos();
            for (int i = first; i < end; i++) {
                try {
                    times[i] = Math.addExact(times[i], shift);
                } catch (ArithmeticException e) {
                    throw new IllegalArgumentException(
                            "shifted time must be from 1677-09-21 to 2262-04-11, was " + EpochNanos.toInstant(times[i])
                                    + " by " + correction,
                            e);
                }
            }
            for (int i : new int[] {first, end}) {
                if (first < end && i > 0 && i < times.length && times[i] <= times[i - 1]) {
                    throw new IllegalArgumentException(
                            "a clock shift must not move a reading onto or past another one, "
                                    + "was to put " + EpochNanos.toInstant(times[i]) + " after "
                                    + EpochNanos.toInstant(times[i - 1]) + " by " + correction
                                    + "; choose its interval so that each reading keeps its place");
                }
            }
        }

        private void replace(Correction correction, int first, int end, Map<String, Series> sources) {
            Series source = sources.get(correction.source());
            if (source == null) {
                throw new IllegalArgumentException("sources must hold " + correction.source() + ", had "
                        + sources.keySet().stream().sorted().toList() + ", asked for by " + correction);
            }
            for (int i = first; i < end; i++) {
                int at = source.firstIndexAtOrAfter(EpochNanos.toInstant(times[i]));
                boolean here = at < source.size()
                        && source.epochNanos(at) == times[i]
                        && source.quality(at).isUsable();
                set(
                        i,
                        here ? source.value(at) : Double.NaN,
                        here ? Quality.ESTIMATE.worst(source.quality(at)) : Quality.MISSING);
            }
        }
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Corrections that && list.equals(that.list);
    }

    @Override
    public int hashCode() {
        return list.hashCode();
    }

    @Override
    public String toString() {
        return "Corrections" + list;
    }
}
