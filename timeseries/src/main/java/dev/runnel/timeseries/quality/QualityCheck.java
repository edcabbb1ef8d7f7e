package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.Series;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.apiguardian.api.API;

/**
 * Several tests run over one record. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class QualityCheck {
    private final List<QualityTest> tests;

    private QualityCheck(List<QualityTest> tests) {
        this.tests = tests;
    }

    /**
     * Returns the check by some tests.
     *
     * @param tests the tests, of different names
     * @return the check
     * @throws IllegalArgumentException if two have the same name
     */
    public static QualityCheck of(QualityTest... tests) {
        Set<String> names = new HashSet<>();
        for (QualityTest test : tests) {
            if (!names.add(test.name())) {
                throw new IllegalArgumentException("tests must have different names, was " + test.name() + " twice");
            }
        }
        return new QualityCheck(List.of(tests));
    }

    /**
     * Runs the tests, each on the record as it is given.
     *
     * @param series the readings
     * @return verdicts by test, and the record with its qualities joined with them
     */
    public QualityReport apply(Series series) {
        Series flagged = series;
        List<QualityFlags> flags =
                tests.stream().map(test -> test.apply(series)).toList();
        for (QualityFlags each : flags) {
            flagged = flagged.withFlags(each.toQualityCodes());
        }
        return new QualityReport(flagged, flags);
    }

    @Override
    public String toString() {
        return "QualityCheck" + tests;
    }
}
