package dev.runnel.timeseries.csv;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import java.io.Reader;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import org.apiguardian.api.API;

/**
 * Lines of a file whose stamps are those of another time, as a clock that was set wrong for some hours or days leaves them.
 * Immutable and thread-safe.
 *
 * <p>Told by the order of the lines, which a logger writes as it reads: the stamps leap away at one line and back at a later
 * one, and leave a hole where they belong, as long as the run of lines at the step of the file. A block that was delivered late, or
 * twice, leaves none. Runs less than an hour out of place, and files without a common step, are left as they are; so is a clock
 * that is off by less than the run lasts, which the order of lines cannot tell from lines that were doubled.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DisplacedStamps {
    /** Chosen here: loggers mend their clocks by minutes. */
    private static final long LEAST_APART = Duration.ofHours(1).toNanos();

    /** Of a step: two stamps may be so far from where the common step puts them; chosen here. */
    private static final double JITTER = 0.5;

    private static final DisplacedStamps NONE = new DisplacedStamps(List.of());

    private final List<Run> runs;

    /** The runs by their first lines. */
    private final NavigableMap<Long, Run> byLine = new TreeMap<>();

    /**
     * Lines of one wrong clock.
     *
     * @param firstLine line in the file, the first is 1
     * @param lastLine last of them
     * @param ahead how far the stamps lie after those that belong there; negative if before
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Run(long firstLine, long lastLine, Duration ahead) {
        /**
         * Checks that nothing is missing.
         *
         * @param firstLine line in the file, the first is 1
         * @param lastLine last of them
         * @param ahead how far the stamps lie after those that belong there; negative if before
         */
        public Run {
            Objects.requireNonNull(ahead, "ahead");
        }

        @Override
        public String toString() {
            return "stamped " + Text.duration(ahead.abs()) + (ahead.isNegative() ? " before" : " after")
                    + " their place among the lines";
        }
    }

    private DisplacedStamps(List<Run> runs) {
        this.runs = List.copyOf(runs);
        runs.forEach(run -> byLine.put(run.firstLine(), run));
    }

    /**
     * Returns no lines.
     *
     * @return none
     */
    public static DisplacedStamps none() {
        return NONE;
    }

    /**
     * Looks for such lines in a file.
     *
     * @param file the file
     * @param layout what it looks like
     * @return the lines
     * @throws IllegalArgumentException if the file does not exist, is not text, is empty or has no such column
     * @throws java.io.UncheckedIOException if the file cannot be read
     */
    public static DisplacedStamps in(Path file, CsvLayout layout) {
        Stamps stamps = new Stamps();
        CsvRecords.forEach(file, layout.ofStampsAlone(), stamps);
        return stamps.displaced();
    }

    /**
     * Looks for such lines in a text.
     *
     * @param name what messages call it
     * @param reader the text; not closed
     * @param layout what it looks like
     * @return the lines
     * @throws IllegalArgumentException if the text is empty or has no such column
     * @throws java.io.UncheckedIOException if the reader fails
     */
    public static DisplacedStamps in(String name, Reader reader, CsvLayout layout) {
        Stamps stamps = new Stamps();
        CsvRecords.forEach(name, reader, layout.ofStampsAlone(), stamps);
        return stamps.displaced();
    }

    /**
     * Returns the runs of lines.
     *
     * @return in the order of the file
     */
    public List<Run> runs() {
        return runs;
    }

    /** Returns the run that a line belongs to. */
    Optional<Run> runOf(long line) {
        return Optional.ofNullable(byLine.floorEntry(line))
                .map(Map.Entry::getValue)
                .filter(run -> line <= run.lastLine);
    }

    @Override
    public String toString() {
        return "DisplacedStamps" + runs;
    }

    /** The stamps of all lines, in the order of the file. */
    private static final class Stamps implements CsvRowConsumer {
        private long[] lines = new long[1024];
        private long[] times = new long[1024];
        private int size;

        @Override
        public void accept(long time, double[] values, byte[] qualities) {
            throw new IllegalStateException("rows come with their lines");
        }

        @Override
        public void accept(long line, long time, double[] values, byte[] qualities) {
            if (size == times.length) {
                lines = Arrays.copyOf(lines, size + (size >> 1));
                times = Arrays.copyOf(times, size + (size >> 1));
            }
            lines[size] = line;
            times[size++] = time;
        }

        DisplacedStamps displaced() {
            long step = commonStep();
            List<Run> runs = new ArrayList<>();
            int from = -1;
            for (int i = 1; step > 0 && i < size; i++) {
                long apart = times[i] - times[i - 1];
                if (apart > 0 && apart <= (1 + JITTER) * step) {
                    continue;
                }
                if (from >= 0 && isDisplaced(from, i, step)) {
                    runs.add(new Run(lines[from], lines[i - 1], ahead(from, step)));
                    from = -1;
                } else {
                    from = i;
                }
            }
            return runs.isEmpty() ? NONE : new DisplacedStamps(runs);
        }

        /** By instants: centuries are more nanoseconds than a long holds. */
        private Duration ahead(int from, long step) {
            return Duration.between(EpochNanos.toInstant(times[from - 1]), EpochNanos.toInstant(times[from]))
                    .minusNanos(step);
        }

        /** Whether the lines from one on to before another lie outside of the hole that they leave, and would fill it. */
        private boolean isDisplaced(int from, int to, long step) {
            long before = times[from - 1];
            long after = times[to];
            long first = times[from];
            long last = times[to - 1];
            boolean isOutside = last < before || first > after;
            boolean isFar = Math.abs(first - before - step) >= LEAST_APART;
            return isOutside
                    && isFar
                    && Math.abs(after - before - (to - from + 1) * step) <= JITTER * step
                    && Math.abs(last - first - (to - from - 1) * step) <= JITTER * step;
        }

        /** The median of the steps forward; 0 if there is none. */
        private long commonStep() {
            long[] steps = new long[size];
            int count = 0;
            for (int i = 1; i < size; i++) {
                long apart = times[i] - times[i - 1];
                if (apart > 0) {
                    steps[count++] = apart;
                }
            }
            Arrays.sort(steps, 0, count);
            return count == 0 ? 0 : steps[count / 2];
        }
    }
}
