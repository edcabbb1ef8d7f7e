package dev.runnel.verification.calculation;

import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import dev.runnel.timeseries.quality.FlatLineCheck;
import dev.runnel.timeseries.quality.QualityCheck;
import dev.runnel.timeseries.quality.RangeCheck;
import dev.runnel.timeseries.quality.SpikeCheck;
import java.time.Instant;
import java.util.List;

/** Quality tests on readings a minute apart; the answer is the code of the verdict on one reading. */
final class QualityCalculations {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");
    private static final String READING = "values reading ";

    private QualityCalculations() {}

    static List<Calculation> all() {
        return List.of(
                Calculation.of(
                        "timeseries",
                        "quality.range",
                        "flag",
                        READING + "lowest highest",
                        in -> code(in, RangeCheck.of(in.number("lowest"), in.number("highest")))),
                Calculation.of(
                        "timeseries",
                        "quality.spike",
                        "flag",
                        READING + "suspect_above fail_above",
                        in -> code(in, SpikeCheck.of(in.number("suspect_above"), in.number("fail_above")))),
                Calculation.of(
                        "timeseries",
                        "quality.flat-line",
                        "flag",
                        READING + "suspect_count fail_count tolerance",
                        in -> code(
                                in,
                                FlatLineCheck.of(
                                        in.integer("suspect_count"),
                                        in.integer("fail_count"),
                                        in.number("tolerance")))));
    }

    private static double code(Inputs in, QualityCheck test) {
        double[] values = in.sample("values");
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < values.length; i++) {
            builder.add(START.plusSeconds(60L * i), values[i]);
        }
        return test.apply(builder.build()).verdict(in.integer("reading")).code();
    }
}
