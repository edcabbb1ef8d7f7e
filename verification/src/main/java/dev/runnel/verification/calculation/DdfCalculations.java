package dev.runnel.verification.calculation;

import dev.runnel.rainfall.ddf.Bilham;
import dev.runnel.rainfall.ddf.ClimateUplift;
import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.ddf.FormulaDdf;
import dev.runnel.rainfall.ddf.IntensityFormula;
import dev.runnel.rainfall.ddf.ReturnPeriod;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import java.time.Duration;
import java.util.List;
import java.util.Map;

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
                        "ddf.table.intensity",
                        "mm/h",
                        "table minutes years",
                        in -> table(in).intensityMmPerHour(minutes(in), in.number("years"))),
                Calculation.of(
                        "rainfall",
                        "ddf.table.raised-depth",
                        "mm",
                        "table minutes years percent",
                        in -> table(in)
                                .withUplift(ClimateUplift.ofPercent("table", in.number("percent")))
                                .depthMm(minutes(in), in.number("years"))),
                Calculation.of(
                        "rainfall",
                        "ddf.bilham.raised-return-period",
                        "years",
                        "minutes depth percent",
                        in -> Bilham.relation()
                                .withUplift(ClimateUplift.ofPercent("table", in.number("percent")))
                                .returnPeriod(minutes(in), in.number("depth"))
                                .years()),
                Calculation.of(
                        "rainfall",
                        "ddf.bilham.raised-doubtful",
                        "1 or 0",
                        "minutes depth percent",
                        in -> Bilham.relation()
                                        .withUplift(ClimateUplift.ofPercent("table", in.number("percent")))
                                        .isDoubtful(minutes(in), in.number("depth"))
                                ? 1
                                : 0),
                Calculation.of(
                        "rainfall",
                        "ddf.bilham.return-period",
                        "years",
                        "minutes depth",
                        in -> Bilham.relation()
                                .returnPeriod(minutes(in), in.number("depth"))
                                .years()),
                Calculation.of(
                        "rainfall",
                        "ddf.bilham.doubtful",
                        "1 or 0",
                        "minutes depth",
                        in -> Bilham.relation().isDoubtful(minutes(in), in.number("depth")) ? 1 : 0),
                Calculation.of(
                        "rainfall",
                        "ddf.formulae.return-period",
                        "years",
                        "minutes depth a2 a10 n",
                        in -> FormulaDdf.of(
                                        ReturnPeriodBasis.PEAKS_OVER_THRESHOLD,
                                        Map.of(2.0, bernard(in, "a2"), 10.0, bernard(in, "a10")))
                                .returnPeriod(minutes(in), in.number("depth"))
                                .years()),
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

    private static IntensityFormula bernard(Inputs in, String a) {
        return IntensityFormula.bernard(in.number(a), in.number("n"), Duration.ofMinutes(5), Duration.ofDays(1));
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
