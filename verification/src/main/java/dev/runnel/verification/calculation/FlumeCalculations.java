package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.structure.ApproachChannel;
import dev.runnel.hydraulics.structure.KhafagiFlume;
import dev.runnel.hydraulics.structure.LongThroatedFlume;
import dev.runnel.hydraulics.structure.ParshallFlume;
import dev.runnel.hydraulics.structure.Throat;
import java.util.List;
import java.util.function.ToDoubleFunction;

/** Flumes, free and drowned. Bare formulas, as printed examples go beyond the limits. */
final class FlumeCalculations {
    private static final String LONG = "shape width side_slope? length approach_width hump modular_limit?";

    private FlumeCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "flume.parshall.constant",
                        "m3/s at 1 m",
                        "throat",
                        in -> ParshallFlume.ofThroat(in.number("throat")).constant()),
                of(
                        "flume.parshall.exponent",
                        "1",
                        "throat",
                        in -> ParshallFlume.ofThroat(in.number("throat")).exponent()),
                of(
                        "flume.parshall.discharge",
                        "m3/s",
                        "throat head",
                        in -> ParshallFlume.ofThroat(in.number("throat")).formula(in.number("head"))),
                of(
                        "flume.parshall.head",
                        "m",
                        "throat discharge",
                        in -> ParshallFlume.ofThroat(in.number("throat")).head(in.number("discharge"))),
                of(
                        "flume.parshall.drowned-discharge",
                        "m3/s",
                        "throat head tailwater",
                        in -> ParshallFlume.ofThroat(in.number("throat"))
                                .formula(in.number("head"), in.number("tailwater"))),
                of(
                        "flume.khafagi.discharge",
                        "m3/s",
                        "throat head",
                        in -> KhafagiFlume.ofThroat(in.number("throat")).formula(in.number("head"))),
                of(
                        "flume.long-throated.discharge",
                        "m3/s",
                        "head tailwater? " + LONG,
                        in -> in.number("tailwater", 0) > 0
                                ? flume(in).formula(in.number("head"), in.number("tailwater"))
                                : flume(in).formula(in.number("head"))),
                of(
                        "flume.long-throated.uncertainty",
                        "1",
                        "head " + LONG,
                        in -> flume(in)
                                .coefficientUncertainty(in.number("head"))
                                .orElseThrow()));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static LongThroatedFlume flume(Inputs in) {
        Throat throat = switch (in.text("shape")) {
            case "rectangular" -> Throat.rectangular(in.number("width"));
            case "trapezoidal" -> Throat.rectangular(in.number("width")).withSideSlope(in.number("side_slope"));
            case "u" -> Throat.uShaped(in.number("width"));
            default ->
                throw new IllegalArgumentException(
                        "shape must be rectangular, trapezoidal or u, was " + in.text("shape"));
        };
        LongThroatedFlume flume = LongThroatedFlume.of(throat, in.number("length"))
                .inChannel(ApproachChannel.ofWidth(in.number("approach_width")).withCrestHeight(in.number("hump")));
        return in.number("modular_limit", 0) > 0 ? flume.withModularLimit(in.number("modular_limit")) : flume;
    }
}
