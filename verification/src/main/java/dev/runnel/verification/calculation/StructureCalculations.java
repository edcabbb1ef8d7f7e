package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.structure.ApproachChannel;
import dev.runnel.hydraulics.structure.BarScreen;
import dev.runnel.hydraulics.structure.BarShape;
import dev.runnel.hydraulics.structure.BroadCrestedWeir;
import dev.runnel.hydraulics.structure.LargeOrifice;
import dev.runnel.hydraulics.structure.Orifice;
import dev.runnel.hydraulics.structure.ParshallFlume;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** Orifices, broad crests, Parshall flumes and screens. Bare formulas, as printed examples go beyond the limits. */
final class StructureCalculations {
    private static final String LARGE = "head width opening coefficient";

    private StructureCalculations() {}

    static List<Calculation> all() {
        return List.of(
                of(
                        "orifice.discharge",
                        "m3/s",
                        "head diameter? width? height? coefficient",
                        in -> orifice(in).formula(orifice(in).aboveLowestPoint(in.number("head")))),
                of("orifice.large.discharge", "m3/s", LARGE, in -> large(in).formula(in.number("head"))),
                of(
                        "orifice.large.drowned-discharge",
                        "m3/s",
                        LARGE + " tailwater",
                        in -> large(in).discharge(in.number("head"), in.number("tailwater"))),
                of(
                        "weir.broad-crested.discharge",
                        "m3/s",
                        "head width approach_width crest_height coefficient",
                        in -> BroadCrestedWeir.ofCoefficient(
                                        in.number("coefficient"),
                                        ApproachChannel.ofWidth(in.number("approach_width"))
                                                .withCrestHeight(in.number("crest_height")))
                                .withCrestWidth(in.number("width"))
                                .formula(in.number("head"))),
                of(
                        "weir.round-nosed.coefficient",
                        "1",
                        "head width crest_length crest_height roughness",
                        in -> BroadCrestedWeir.roundNosed(
                                        in.number("crest_length"),
                                        in.number("roughness"),
                                        ApproachChannel.ofWidth(in.number("width"))
                                                .withCrestHeight(in.number("crest_height")))
                                .coefficient(in.number("head"))),
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
                        "screen.head-loss",
                        "m",
                        "bars thickness gap angle velocity",
                        in -> BarScreen.ofBarsAndGaps(
                                        BarShape.valueOf(in.text("bars")
                                                .toUpperCase(Locale.ROOT)
                                                .replace('-', '_')),
                                        in.number("thickness"),
                                        in.number("gap"))
                                .withInclination(in.number("angle"))
                                .headLoss(in.number("velocity"))));
    }

    private static Calculation of(String name, String unit, String inputs, ToDoubleFunction<Inputs> body) {
        return Calculation.of("hydraulics", name, unit, inputs, body);
    }

    private static Orifice orifice(Inputs in) {
        Orifice orifice = in.has("diameter")
                ? Orifice.circular(in.number("diameter"))
                : Orifice.ofWidthAndHeight(in.number("width"), in.number("height"));
        return orifice.withCoefficient(in.number("coefficient"));
    }

    private static LargeOrifice large(Inputs in) {
        return LargeOrifice.ofWidthAndOpening(in.number("width"), in.number("opening"))
                .withCoefficient(in.number("coefficient"));
    }
}
