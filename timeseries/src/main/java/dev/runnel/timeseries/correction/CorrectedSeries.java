package dev.runnel.timeseries.correction;

import dev.runnel.timeseries.Series;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What corrections made of a series, with the trail back. Immutable and thread-safe.
 *
 * <p>Reading number i of the corrected series is reading number i of the raw one: none is added, none is dropped, their
 * order stays.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CorrectedSeries {
    private final Corrections corrections;
    private final String name;
    private final Series raw;
    private final Map<String, Series> sources;
    private final Series series;
    private final List<List<Integer>> trail;

    private CorrectedSeries(
            Corrections corrections,
            String name,
            Series raw,
            Map<String, Series> sources,
            Series series,
            List<List<Integer>> trail) {
        this.corrections = corrections;
        this.name = name;
        this.raw = raw;
        this.sources = sources;
        this.series = series;
        this.trail = trail;
    }

    static CorrectedSeries of(Corrections corrections, String name, Series raw, Map<String, Series> sources) {
        Corrections.Work work = new Corrections.Work(raw);
        List<Correction> list = corrections.list();
        for (int number = 1; number <= list.size(); number++) {
            Correction each = list.get(number - 1);
            if (each.series().equals(name)) {
                work.apply(number, each, sources);
            }
        }
        Series series = Series.of(work.times, work.values, work.qualities);
        return new CorrectedSeries(corrections, name, raw, Map.copyOf(sources), series, List.copyOf(work.trail));
    }

    /**
     * Returns the corrected readings.
     *
     * @return the series; altered values are estimates at best
     */
    public Series series() {
        return series;
    }

    /**
     * Returns the readings as they came: all corrections undone.
     *
     * @return the very series that was given
     */
    public Series raw() {
        return raw;
    }

    /**
     * Returns how many readings have another value, quality or time than they came with.
     *
     * @return count
     */
    public int altered() {
        int count = 0;
        for (int i = 0; i < raw.size(); i++) {
            count += isAltered(i) ? 1 : 0;
        }
        return count;
    }

    private boolean isAltered(int index) {
        return !raw.get(index).equals(series.get(index));
    }

    /**
     * Explains each reading that some correction reached.
     *
     * @return one line for each, in order of time
     */
    public List<AlteredReading> trail() {
        List<AlteredReading> lines = new ArrayList<>();
        for (int i = 0; i < raw.size(); i++) {
            if (!trail.get(i).isEmpty()) {
                lines.add(new AlteredReading(raw.get(i), series.get(i), trail.get(i), reasons(i)));
            }
        }
        return List.copyOf(lines);
    }

    private List<String> reasons(int index) {
        return trail.get(index).stream()
                .map(number -> corrections.list().get(number - 1).reason())
                .toList();
    }

    /**
     * Returns the series with some corrections undone and all others applied anew.
     *
     * @param numbers numbers of the corrections to leave out, as the trail gives them: from 1 in the order of the list
     * @return the series as if they had never been made
     * @throws IllegalArgumentException if there is no correction with such a number, or the others cannot be applied
     *     without them
     */
    public CorrectedSeries without(int... numbers) {
        Objects.requireNonNull(numbers, "numbers");
        List<Correction> left = new ArrayList<>(corrections.list());
        int[] sorted = Arrays.stream(numbers).sorted().distinct().toArray();
        for (int i = sorted.length - 1; i >= 0; i--) {
            if (sorted[i] < 1 || sorted[i] > corrections.list().size()) {
                throw new IllegalArgumentException(
                        "numbers must be in [1, " + corrections.list().size() + "], was " + sorted[i]);
            }
            left.remove(sorted[i] - 1);
        }
        return of(Corrections.of(left), name, raw, sources);
    }

    @Override
    public String toString() {
        return "CorrectedSeries[" + name + ", " + altered() + " of " + raw.size() + " readings altered]";
    }
}
