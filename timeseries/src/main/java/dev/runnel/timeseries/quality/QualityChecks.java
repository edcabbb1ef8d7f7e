package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Rule;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.TextState;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.apiguardian.api.API;

/**
 * Several checks one behind the other: each sees the readings with the quality that the ones before it gave them, so
 * that what has failed serves no later check as a neighbour. Put the range first. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class QualityChecks implements Rule<Reading, CheckedReading, TextState> {
    private final List<QualityCheck> checks;

    private QualityChecks(List<QualityCheck> checks) {
        this.checks = checks;
    }

    /**
     * Returns some checks as one.
     *
     * @param checks the checks in their order, of different names
     * @return the checks
     * @throws IllegalArgumentException if two have the same name
     */
    public static QualityChecks of(QualityCheck... checks) {
        Objects.requireNonNull(checks, "checks");
        return of(List.of(checks));
    }

    /**
     * Returns some checks as one.
     *
     * @param checks the checks in their order, of different names
     * @return the checks
     * @throws IllegalArgumentException if two have the same name
     */
    public static QualityChecks of(List<QualityCheck> checks) {
        Set<String> names = new HashSet<>();
        for (QualityCheck check : checks) {
            if (!names.add(check.name())) {
                throw new IllegalArgumentException("checks must have different names, was " + check.name() + " twice");
            }
        }
        return new QualityChecks(List.copyOf(checks));
    }

    /**
     * Returns the checks.
     *
     * @return the checks in their order
     */
    public List<QualityCheck> checks() {
        return checks;
    }

    /**
     * Checks a record.
     *
     * @param series the readings
     * @return verdicts by check, and the record with its qualities joined with them
     */
    public QualityReport apply(Series series) {
        Objects.requireNonNull(series, "series");
        Series flagged = series;
        List<QualityFlags> flags = new ArrayList<>();
        for (QualityCheck check : checks) {
            QualityFlags verdicts = check.apply(flagged);
            flags.add(verdicts);
            flagged = flagged.withFlags(verdicts.toQualityCodes());
        }
        return new QualityReport(flagged, flags);
    }

    @Override
    public Machine<Reading, CheckedReading, TextState> start() {
        return new ChecksMachine(checks);
    }

    @Override
    public Machine<Reading, CheckedReading, TextState> start(TextState state) {
        return new ChecksMachine(checks, state);
    }

    @Override
    public TextState parseState(String text) {
        return TextState.readBy(text, this::start);
    }

    @Override
    public String toString() {
        return "QualityChecks" + checks;
    }
}
