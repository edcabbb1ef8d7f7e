package dev.runnel.timeseries.correction;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.csv.CsvTable;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * What was found and done at a site on one visit. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SiteVisit {
    /** Quantities read by hand, in the order of their columns. */
    private static final List<String> FIGURES =
            List.of("hand depth", "hand velocity", "gauged flow", "sediment", "sensor zero");

    private final Instant time;
    private final String author;
    private final List<OptionalDouble> figures;
    private final Optional<Duration> clock;
    private final boolean adjusted;
    private final String work;

    private SiteVisit(
            Instant time,
            String author,
            List<OptionalDouble> figures,
            Optional<Duration> clock,
            boolean adjusted,
            String work) {
        this.time = time;
        this.author = author;
        this.figures = List.copyOf(figures);
        this.clock = clock;
        this.adjusted = adjusted;
        this.work = work;
    }

    /**
     * Reads visits from a file: comma-separated, with the columns {@code time} and {@code author}, and as far as there are
     * any {@code hand depth} (m above the clean invert), {@code hand velocity} (m/s), {@code gauged flow} (m³/s),
     * {@code sediment} (level of the bed above the clean invert, m), {@code sensor zero} (what the sensor shows where it
     * should show 0, in its unit), {@code clock} (s that the monitor's clock was ahead), {@code adjusted} ({@code yes} if
     * sensor and clock were set right at the end of the visit) and {@code work} (words). Empty cells were not looked at.
     *
     * @param file the file
     * @return visits in order of time
     * @throws IllegalArgumentException if a line is not as it should be or two visits have one time; file, line and column
     *     are named
     * @throws java.io.UncheckedIOException if the file cannot be read
     */
    public static List<SiteVisit> read(Path file) {
        return from(CsvTable.read(file, columns()));
    }

    /**
     * Reads visits from a text in the form of {@link #read}.
     *
     * @param text the lines
     * @return visits in order of time
     * @throws IllegalArgumentException if a line is not as it should be or two visits have one time
     */
    public static List<SiteVisit> parse(String text) {
        return from(CsvTable.parse("visits", text, columns()));
    }

    private static String[] columns() {
        List<String> columns = new ArrayList<>(List.of("time", "author", "clock?", "adjusted?", "work?"));
        FIGURES.forEach(each -> columns.add(each + "?"));
        return columns.toArray(new String[0]);
    }

    private static List<SiteVisit> from(CsvTable table) {
        List<SiteVisit> visits = new ArrayList<>();
        for (CsvTable.Row row : table.rows()) {
            SiteVisit visit = from(row);
            if (visits.stream().anyMatch(each -> each.time.equals(visit.time))) {
                throw row.refuse("time", "must be of one visit, was of two: " + visit.time);
            }
            visits.add(visit);
        }
        visits.sort((a, b) -> a.time.compareTo(b.time));
        return List.copyOf(visits);
    }

    private static SiteVisit from(CsvTable.Row row) {
        List<OptionalDouble> figures = new ArrayList<>();
        for (String figure : FIGURES) {
            figures.add(row.has(figure) ? OptionalDouble.of(row.number(figure)) : OptionalDouble.empty());
            boolean signed =
                    figure.equals("sensor zero") || figure.equals("hand velocity") || figure.equals("gauged flow");
            if (!signed && row.has(figure) && row.number(figure) < 0) {
                throw row.refuse(figure, "must be 0 or greater (m), was " + row.text(figure));
            }
        }
        Optional<Duration> clock = Optional.empty();
        if (row.has("clock")) {
            double seconds = row.number("clock");
            if (!(Math.abs(seconds) <= 9e9)) {
                throw row.refuse("clock", "must be seconds of less than 292 years, was " + row.text("clock"));
            }
            clock = Optional.of(Duration.ofNanos(Math.round(seconds * 1e9)));
        }
        String adjusted = row.text("adjusted", "no");
        if (!adjusted.equals("yes") && !adjusted.equals("no")) {
            throw row.refuse("adjusted", "must be yes or no, was " + Text.quoted(adjusted));
        }
        return new SiteVisit(
                row.instant("time"), row.text("author"), figures, clock, adjusted.equals("yes"), row.text("work", ""));
    }

    /**
     * Returns when it was.
     *
     * @return the instant
     */
    public Instant time() {
        return time;
    }

    /**
     * Returns who was there.
     *
     * @return the author
     */
    public String author() {
        return author;
    }

    /**
     * Returns the depth read by hand.
     *
     * @return depth above the clean invert, m; empty if it was not read
     */
    public OptionalDouble handDepth() {
        return figures.get(0);
    }

    /**
     * Returns the mean velocity measured by hand.
     *
     * @return velocity, m/s; empty if it was not measured
     */
    public OptionalDouble handVelocity() {
        return figures.get(1);
    }

    /**
     * Returns the flow gauged by hand.
     *
     * @return flow, m³/s; empty if it was not gauged
     */
    public OptionalDouble gaugedFlow() {
        return figures.get(2);
    }

    /**
     * Returns the level of the sediment found.
     *
     * @return level of the bed above the clean invert, m; empty if nobody looked
     */
    public OptionalDouble sediment() {
        return figures.get(3);
    }

    /**
     * Returns what the sensor showed where it should have shown 0.
     *
     * @return reading in the unit of the sensor; empty if nobody looked
     */
    public OptionalDouble sensorZero() {
        return figures.get(4);
    }

    /**
     * Returns how far the monitor's clock was ahead.
     *
     * @return time, negative if it was behind; empty if nobody looked
     */
    public Optional<Duration> clockAhead() {
        return clock;
    }

    /**
     * Tells whether sensor and clock were set right at the end of the visit, so that what was found wrong ends there.
     *
     * @return true if they were
     */
    public boolean isAdjusted() {
        return adjusted;
    }

    /**
     * Returns what else was done.
     *
     * @return words; empty if nothing was
     */
    public String work() {
        return work;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SiteVisit that
                && time.equals(that.time)
                && author.equals(that.author)
                && figures.equals(that.figures)
                && clock.equals(that.clock)
                && adjusted == that.adjusted
                && work.equals(that.work);
    }

    @Override
    public int hashCode() {
        return Objects.hash(time, author, figures, clock, adjusted, work);
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("SiteVisit[" + time + " by " + author);
        for (int i = 0; i < FIGURES.size(); i++) {
            if (figures.get(i).isPresent()) {
                text.append(", ")
                        .append(FIGURES.get(i))
                        .append(' ')
                        .append(Text.significant(figures.get(i).getAsDouble(), 6));
            }
        }
        clock.ifPresent(ahead -> text.append(", clock ahead by ").append(Text.duration(ahead)));
        return text + (adjusted ? ", adjusted" : "") + (work.isEmpty() ? "" : ", " + work) + "]";
    }
}
