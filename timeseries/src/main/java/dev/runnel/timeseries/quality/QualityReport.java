package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What a {@link QualityChecks} found. Immutable and thread-safe.
 *
 * @param series the record, no value changed, its qualities joined with all verdicts
 * @param flags verdicts by check, in their order
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record QualityReport(Series series, List<QualityFlags> flags) {
    /**
     * Copies the list.
     *
     * @param series the record
     * @param flags verdicts by check, in their order
     */
    public QualityReport {
        Objects.requireNonNull(series, "series");
        Objects.requireNonNull(flags, "flags");
        flags = List.copyOf(flags);
    }

    /**
     * Returns the verdicts of one check.
     *
     * @param check its name
     * @return the verdicts
     * @throws IllegalArgumentException if there was no such check
     */
    public QualityFlags flags(String check) {
        return flags.stream()
                .filter(each -> each.check().equals(check))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("check must be one of "
                        + flags.stream().map(QualityFlags::check).toList() + ", was " + check));
    }

    /**
     * Returns the part of the report that lies in an interval: the verdicts are those given with all readings before them.
     *
     * @param interval the interval
     * @return readings from its start on and before its end, with their verdicts
     */
    public QualityReport slice(Interval interval) {
        int from = series.firstIndexAtOrAfter(interval.start());
        int to = Math.max(from, series.firstIndexAtOrAfter(interval.end()));
        return new QualityReport(
                series.slice(interval),
                flags.stream().map(each -> each.slice(interval, from, to)).toList());
    }

    /**
     * Returns how many verdicts of a kind the checks gave, all together.
     *
     * @param verdict the verdict
     * @return count; a reading counts once for each check
     */
    public int count(Verdict verdict) {
        Objects.requireNonNull(verdict, "verdict");
        return flags.stream().mapToInt(each -> each.count(verdict)).sum();
    }

    @Override
    public String toString() {
        return "QualityReport[" + series + ", " + flags + "]";
    }
}
