package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** Random conduits far beyond what is built, so that what is built is well inside. */
public final class Pipes {
    private Pipes() {}

    public static Arbitrary<Double> logUniform(double least, double most) {
        return Arbitraries.doubles()
                .between(0, 1)
                .ofScale(12)
                .edgeCases(config -> config.includeOnly(0.0, 1.0))
                .map(x -> Math.min(most, Math.max(least, least * Math.pow(most / least, x))));
    }

    public static Arbitrary<LawByRadius> laws() {
        return Arbitraries.oneOf(
                logUniform(0.005, 0.2).map(Manning::of),
                logUniform(1e-7, 0.1)
                        .flatMap(ks -> Arbitraries.doubles()
                                .between(-5, 40)
                                .ofScale(3)
                                .edgeCases(config -> config.includeOnly(0.0))
                                .map(celsius -> ColebrookWhite.ofRoughness(ks).atTemperature(celsius))),
                Arbitraries.just(ColebrookWhite.ofRoughness(0)));
    }

    /** Laws whose roughness depends on the depth, for closed sections. */
    public static Arbitrary<Resistance> depthLaws() {
        return Arbitraries.of(
                VariableManning.of(0.013, RoughnessByDepth.asce1970()),
                CompositeManning.ofBedAndWalls(Compounding.HORTON_EINSTEIN, 0.025, 0.012),
                CompositeManning.ofBedAndWalls(Compounding.PAVLOVSKIJ, 0.02, 0.012)
                        .above(0.2, 0.015),
                CompositeManning.ofBedAndWalls(Compounding.LOTTER, 0.012, 0.02));
    }

    public static Arbitrary<Conduit> circular() {
        return of(logUniform(0.01, 20).map(CircularSection::ofDiameter));
    }

    public static Arbitrary<Conduit> of(Arbitrary<? extends CrossSection> sections) {
        return Combinators.combine(sections, logUniform(1e-6, 1), laws())
                .as((section, gradient, law) -> Conduit.of(section, Gradient.of(gradient), law));
    }
}
