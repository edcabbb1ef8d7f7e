package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.Series;
import java.util.List;
import org.apiguardian.api.API;

/**
 * What a {@link QualityCheck} found. Immutable and thread-safe.
 *
 * @param series the record, no value changed, its qualities joined with all verdicts
 * @param flags verdicts by test
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public record QualityReport(Series series, List<QualityFlags> flags) {
    /**
     * Copies the list.
     *
     * @param series the record
     * @param flags verdicts by test
     */
    public QualityReport {
        flags = List.copyOf(flags);
    }

    /**
     * Returns the verdicts of one test.
     *
     * @param test its name
     * @return the verdicts
     * @throws IllegalArgumentException if there was no such test
     */
    public QualityFlags flags(String test) {
        return flags.stream()
                .filter(each -> each.test().equals(test))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("test must be one of "
                        + flags.stream().map(QualityFlags::test).toList() + ", was " + test));
    }

    /**
     * Returns how many verdicts of a kind the tests gave, all together.
     *
     * @param verdict the verdict
     * @return count; a reading counts once for each test
     */
    public int count(Verdict verdict) {
        return flags.stream().mapToInt(each -> each.count(verdict)).sum();
    }

    @Override
    public String toString() {
        return "QualityReport[" + series + ", " + flags + "]";
    }
}
