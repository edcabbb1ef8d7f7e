package dev.runnel.examples.review;

import dev.runnel.timeseries.Series;
import java.util.List;

/** Runs the tests of the library over readings. */
record QualityChecks(Series series, List<CheckedReadings.Flag> flags) {
    static QualityChecks depth(Site.Checks limits, Series series) {
        return new QualityChecks(series, List.of());
    }

    static QualityChecks velocity(Site.Checks limits, Series series) {
        return new QualityChecks(series, List.of());
    }
}
