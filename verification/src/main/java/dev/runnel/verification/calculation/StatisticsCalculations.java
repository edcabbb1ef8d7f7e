package dev.runnel.verification.calculation;

import dev.runnel.timeseries.Statistics;
import java.util.List;

/** Summary statistics of a sample. */
final class StatisticsCalculations {
    private StatisticsCalculations() {}

    static List<Calculation> all() {
        return List.of(
                Calculation.of(
                        "timeseries",
                        "statistics.quantile",
                        "of the sample",
                        "sample probability",
                        in -> Statistics.of(in.sample("sample")).quantile(in.number("probability"))),
                Calculation.of(
                        "timeseries",
                        "statistics.mean",
                        "of the sample",
                        "sample",
                        in -> Statistics.of(in.sample("sample")).mean()));
    }
}
