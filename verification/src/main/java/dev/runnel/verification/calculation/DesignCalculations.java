package dev.runnel.verification.calculation;

import dev.runnel.rainfall.areal.ArealReduction;
import dev.runnel.rainfall.ddf.Bilham;
import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.ddf.FloodStudies1975;
import dev.runnel.rainfall.ddf.FormulaDdf;
import dev.runnel.rainfall.ddf.IntensityFit;
import dev.runnel.rainfall.ddf.IntensityFormula;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import dev.runnel.rainfall.design.DesignStorm;
import dev.runnel.rainfall.design.DoubleTriangle;
import dev.runnel.rainfall.design.SymmetricProfile;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/** Intensity formulae, published depth-duration-frequency methods and design storms. */
final class DesignCalculations {
    private static final String FORMULA = "form a b? n? shortest? longest?";
    private static final String TRIANGLE = "depth minutes intense_depth intense_minutes";

    private DesignCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "intensity-formula.intensity",
                        "mm/h",
                        "minutes " + FORMULA,
                        in -> formula(in).intensityMmPerHour(minutes(in, "minutes"))),
                of(
                        "intensity-formula.depth",
                        "mm",
                        "minutes " + FORMULA,
                        in -> formula(in).depthMm(minutes(in, "minutes"))),
                of(
                        "intensity-fit.coefficient",
                        "of the formula",
                        "form minutes depths coefficient",
                        in -> coefficient(in)),
                of(
                        "intensity-fit.scatter",
                        "%",
                        "form minutes depths",
                        in -> fitted(in).rmsPercent()),
                of(
                        "ddf.bilham.depth",
                        "mm",
                        "minutes years",
                        in -> Bilham.relation().depthMm(minutes(in, "minutes"), in.number("years"))),
                of(
                        "ddf.flood-studies.five-year-depth",
                        "mm",
                        "m5_60 ratio minutes",
                        in -> FloodStudies1975.of(in.number("m5_60"), in.number("ratio"))
                                .m5Mm(minutes(in, "minutes"))),
                of(
                        "ddf.flood-studies.growth-factor",
                        "1",
                        "years m5",
                        in -> FloodStudies1975.of(20, 0.4)
                                .growthFromM5(in.number("m5"))
                                .factor(in.number("years"))),
                of(
                        "ddf.flood-studies.depth",
                        "mm",
                        "m5_60 ratio minutes years",
                        in -> FloodStudies1975.of(in.number("m5_60"), in.number("ratio"))
                                .atPoint()
                                .depthMm(minutes(in, "minutes"), in.number("years"))),
                of(
                        "ddf.flood-studies.areal-depth",
                        "mm",
                        "m5_60 ratio minutes years area_km2",
                        in -> FloodStudies1975.of(in.number("m5_60"), in.number("ratio"))
                                .overArea(ArealReduction.keersWescott(), in.number("area_km2"))
                                .depthMm(minutes(in, "minutes"), in.number("years"))),
                of(
                        "ddf.flood-studies.two-day-depth",
                        "mm",
                        "m5_60 ratio",
                        in -> FloodStudies1975.of(in.number("m5_60"), in.number("ratio"))
                                .m5TwoDaysMm()),
                of(
                        "design.alternating-block.depth",
                        "mm",
                        "minutes step block " + FORMULA,
                        in -> block(
                                in,
                                DesignStorm.alternatingBlock(
                                        FormulaDdf.of(ReturnPeriodBasis.ANNUAL_MAXIMUM, Map.of(10.0, formula(in))),
                                        10,
                                        minutes(in, "minutes"),
                                        minutes(in, "step")))),
                of(
                        "design.euler-two.depth",
                        "mm",
                        "table minutes step years block",
                        in -> block(
                                in,
                                DesignStorm.eulerTypeTwo(
                                        DdfTable.parse(in.text("table"), ReturnPeriodBasis.PEAKS_OVER_THRESHOLD),
                                        in.number("years"),
                                        minutes(in, "minutes"),
                                        minutes(in, "step")))),
                of(
                        "design.chicago.depth",
                        "mm",
                        "minutes step block peak_at " + FORMULA,
                        in -> block(
                                in,
                                DesignStorm.chicago(
                                        formula(in),
                                        minutes(in, "minutes"),
                                        in.number("peak_at"),
                                        minutes(in, "step")))),
                of(
                        "design.symmetric-profile",
                        "1",
                        "profile_a profile_b fraction",
                        in -> SymmetricProfile.of(in.number("profile_a"), in.number("profile_b"))
                                .aroundPeak(in.number("fraction"))),
                of(
                        "design.named-profile",
                        "1",
                        "season fraction",
                        in -> (in.text("season").equals("summer")
                                        ? SymmetricProfile.summer50()
                                        : SymmetricProfile.winter75())
                                .depthShare(in.number("fraction"))),
                of(
                        "design.double-triangle.shoulder",
                        "mm/h",
                        TRIANGLE,
                        in -> triangle(in).shoulderMmPerHour()),
                of(
                        "design.double-triangle.peak",
                        "mm/h",
                        TRIANGLE,
                        in -> triangle(in).peakMmPerHour()));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("rainfall", name, unit, inputs, body);
    }

    private static IntensityFormula formula(Inputs in) {
        Duration shortest = in.has("shortest") ? minutes(in, "shortest") : Duration.ofMinutes(1);
        Duration longest = in.has("longest") ? minutes(in, "longest") : Duration.ofDays(1);
        double a = in.number("a");
        return switch (in.text("form")) {
            case "bernard" -> IntensityFormula.bernard(a, in.number("n"), shortest, longest);
            case "montana" -> IntensityFormula.montana(a, in.number("b"), shortest, longest);
            case "talbot" -> IntensityFormula.talbot(a, in.number("b"), shortest, longest);
            case "sherman" -> IntensityFormula.sherman(a, in.number("b"), in.number("n"), shortest, longest);
            case "kimijima" -> IntensityFormula.kimijima(a, in.number("b"), in.number("n"), shortest, longest);
            default -> throw new IllegalArgumentException("form must be bernard, montana, talbot, sherman or kimijima");
        };
    }

    private static IntensityFit fitted(Inputs in) {
        List<Duration> durations = Arrays.stream(in.sample("minutes"))
                .mapToObj(DesignCalculations::minutes)
                .toList();
        return IntensityFit.of(
                IntensityFormula.Form.valueOf(in.text("form").toUpperCase(Locale.ROOT)),
                durations,
                in.sample("depths"));
    }

    private static double coefficient(Inputs in) {
        IntensityFormula fitted = fitted(in).formula();
        return switch (in.text("coefficient")) {
            case "a" -> fitted.a();
            case "b" -> fitted.b();
            case "n" -> fitted.n();
            default -> throw new IllegalArgumentException("coefficient must be a, b or n");
        };
    }

    private static DoubleTriangle triangle(Inputs in) {
        return DoubleTriangle.of(
                in.number("depth"),
                minutes(in, "minutes"),
                in.number("intense_depth"),
                minutes(in, "intense_minutes"),
                0.5);
    }

    private static double block(Inputs in, DesignStorm storm) {
        return storm.depths()[in.integer("block") - 1];
    }

    private static Duration minutes(Inputs in, String name) {
        return minutes(in.number(name));
    }

    private static Duration minutes(double minutes) {
        return Duration.ofNanos(Math.round(minutes * 60e9));
    }
}
