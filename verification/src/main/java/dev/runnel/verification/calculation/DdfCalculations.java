package dev.runnel.verification.calculation;

import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.ddf.ReturnPeriod;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import java.time.Duration;
import java.util.List;

/** Depth, duration and frequency. A table is given as text in the form DdfTable reads; its unit of depth does not matter. */
final class DdfCalculations {
    private DdfCalculations() {}

    static List<Calculation> all() {
        return List.of(
                Calculation.of(
                        "rainfall",
                        "ddf.table.depth",
                        "mm",
                        "table minutes years",
                        in -> table(in).depthMm(minutes(in), in.number("years"))),
                Calculation.of(
                        "rainfall",
                        "ddf.table.return-period",
                        "years",
                        "table minutes depth",
                        in -> years(table(in), in)),
                Calculation.of(
                        "rainfall",
                        "ddf.annual-table.depth",
                        "mm",
                        "table minutes years",
                        in -> annual(in).depthMm(minutes(in), in.number("years"))),
                Calculation.of(
                        "rainfall",
                        "ddf.annual-table.return-period",
                        "years",
                        "table minutes depth",
                        in -> years(annual(in), in)),
                Calculation.of(
                        "rainfall",
                        "return-period.annual-maximum",
                        "years",
                        "years",
                        in -> ReturnPeriodBasis.PEAKS_OVER_THRESHOLD.convert(
                                in.number("years"), ReturnPeriodBasis.ANNUAL_MAXIMUM)),
                Calculation.of(
                        "rainfall",
                        "return-period.peaks-over-threshold",
                        "years",
                        "years",
                        in -> ReturnPeriodBasis.ANNUAL_MAXIMUM.convert(
                                in.number("years"), ReturnPeriodBasis.PEAKS_OVER_THRESHOLD)),
                Calculation.of(
                        "rainfall",
                        "ddf.table.depth-of-annual-maximum",
                        "mm",
                        "table minutes years",
                        in -> table(in)
                                .withBasis(ReturnPeriodBasis.ANNUAL_MAXIMUM)
                                .depthMm(minutes(in), in.number("years"))));
    }

    private static double years(DdfTable table, Inputs in) {
        ReturnPeriod period = table.returnPeriod(minutes(in), in.number("depth"));
        if (!period.isWithin()) {
            throw new IllegalArgumentException("the depth lies outside the table: " + period);
        }
        return period.years();
    }

    private static DdfTable table(Inputs in) {
        return DdfTable.parse(in.text("table"), ReturnPeriodBasis.PEAKS_OVER_THRESHOLD);
    }

    private static DdfTable annual(Inputs in) {
        return DdfTable.parse(in.text("table"), ReturnPeriodBasis.ANNUAL_MAXIMUM);
    }

    private static Duration minutes(Inputs in) {
        return Duration.ofNanos(Math.round(in.number("minutes") * 60e9));
    }
}
