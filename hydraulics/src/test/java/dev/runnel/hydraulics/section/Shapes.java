package dev.runnel.hydraulics.section;

import java.util.List;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;

/** One of every shape, in any size: what holds for sections must hold for all of these. */
public final class Shapes {
    private Shapes() {}

    public static Arbitrary<Double> sizes() {
        return Arbitraries.doubles()
                .between(-2, 1.3)
                .ofScale(9)
                .edgeCases(config -> config.includeOnly(0.0))
                .map(log -> Math.pow(10, log));
    }

    public static Arbitrary<ClosedSection> closed() {
        return Combinators.combine(sizes(), Arbitraries.integers().between(0, 14))
                .as((size, kind) -> closed(size).get(kind));
    }

    public static Arbitrary<CrossSection> open() {
        return Combinators.combine(sizes(), Arbitraries.integers().between(0, 6))
                .as((size, kind) -> open(size).get(kind));
    }

    public static Arbitrary<CrossSection> all() {
        return Arbitraries.oneOf(closed().map(section -> (CrossSection) section), open());
    }

    static List<ClosedSection> closed(double size) {
        return List.of(
                CircularSection.ofDiameter(size),
                Egg.normal(size),
                Egg.widened(size),
                Egg.depressed(size),
                Egg.sharp(size),
                Egg.inverted(size),
                MouthSection.ofWidth(size),
                Horseshoe.ofDiameter(size),
                ArchSection.of(size, 0.4 * size),
                USection.covered(size, 1.3 * size),
                RectangularSection.box(size, 0.7 * size),
                VInvertSection.ofWidthAndFall(size, 0.2 * size).coveredAt(size),
                CircularSection.ofDiameter(size).withSediment(0.07 * size),
                Egg.normal(size).withSediment(0.2 * size),
                TabulatedSection.closed(
                        new double[] {0, 0.1 * size, 0.5 * size, 0.5 * size, size},
                        new double[] {0, 0.4 * size, 0.6 * size, size, 0.2 * size}));
    }

    static List<CrossSection> open(double size) {
        return List.of(
                USection.open(size),
                RectangularSection.open(size),
                TrapezoidalSection.ofBedWidthAndSideSlope(size, 1.5),
                TrapezoidalSection.ofBedWidthAndSideSlope(0, 1),
                VInvertSection.ofWidthAndFall(size, 0.1 * size).open(),
                BenchedChannel.ofWidthAndDepth(size, size).withBenchSlope(0.1).inChamberOfWidth(3 * size),
                BenchedChannel.ofWidthAndDepth(size, 0.5 * size).inChamberOfWidth(3 * size));
    }

    /** A depth that is a part of the height, or of a measure of the section where it has no soffit. */
    public static double depth(CrossSection section, double part) {
        return Double.isInfinite(section.height())
                ? 4 * part * Math.max(section.breakDepths()[section.breakDepths().length - 1], 1)
                : part * section.height();
    }
}
