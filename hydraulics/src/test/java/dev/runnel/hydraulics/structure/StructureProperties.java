package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class StructureProperties {
    @Property(tries = 500)
    void broadCrests(@ForAll("share") double p, @ForAll("share") double length, @ForAll("share") double place) {
        double crest = 0.15 + 2 * p;
        double l = 0.75 + 4 * length;
        double square = Math.min(0.33 * l, 0.35 / 0.65 * crest);
        double round = Math.min(0.57 * l, 1.5 * crest);
        double least = Math.max(0.06, 0.08 * l);
        if (square > least) {
            StructureContract.holds(
                    BroadCrestedWeir.squareEdged(l, ApproachChannel.ofWidth(0.8).withCrestHeight(crest)),
                    least + (square - least) * place);
        }
        if (round > least) {
            StructureContract.holds(
                    BroadCrestedWeir.roundNosed(l, ApproachChannel.ofWidth(0.8).withCrestHeight(crest)),
                    least + (round - least) * place);
        }
        StructureContract.holds(BroadCrestedWeir.ofCoefficient(1, ApproachChannel.ofWidth(0.8)), 0.01 + 3 * place);
    }

    @Property(tries = 500)
    void openings(@ForAll("share") double size, @ForAll("share") double opening, @ForAll("share") double place) {
        double diameter = 0.05 + 2 * size;
        double head = 1e-3 + 20 * place;
        StructureContract.holds(LargeOrifice.circular(diameter), head);
        StructureContract.holds(LargeOrifice.circular(diameter).closedTo(diameter * (0.01 + 0.99 * opening)), head);
        StructureContract.holds(LargeOrifice.ofWidthAndOpening(diameter, 0.01 + opening), head);
        StructureContract.holds(Orifice.circular(diameter), diameter * (1.5 + 50 * place));
        StructureContract.holds(SluiceGate.ofWidthAndOpening(1, diameter), diameter * (2 + 50 * place));
    }

    @Property(tries = 500)
    void flumes(@ForAll("share") double size, @ForAll("share") double slope, @ForAll("share") double place) {
        double width = 0.1 + size;
        double length = 2 * width;
        double head = Math.max(0.05, 0.05 * length) + (0.5 * length - Math.max(0.05, 0.05 * length)) * place;
        StructureContract.holds(
                LongThroatedFlume.of(Throat.rectangular(width), length)
                        .inChannel(ApproachChannel.ofWidth(2.5 * width).withCrestHeight(0.1)),
                head);
        StructureContract.holds(
                LongThroatedFlume.of(Throat.rectangular(width).withSideSlope(2 * slope), length)
                        .inChannel(ApproachChannel.ofWidth(12 * width).withCrestHeight(0.1)),
                head);
        StructureContract.holds(
                LongThroatedFlume.of(Throat.uShaped(width), length)
                        .inChannel(ApproachChannel.ofWidth(2.5 * width).withCrestHeight(0.1)),
                head);
        ParshallFlume parshall = ParshallFlume.ofThroat(0.3 + 2 * slope);
        ApplicationLimit limit = parshall.limits().get(0);
        StructureContract.holds(parshall, limit.from() + (limit.to() - limit.from()) * place);
    }

    @Property(tries = 500)
    void outfalls(@ForAll("share") double size, @ForAll("share") double place) {
        double diameter = 0.1 + 2 * size;
        StructureContract.holds(FreeOutfall.circular(diameter), diameter * (0.01 + 0.49 * place));
        StructureContract.holds(
                FreeOutfall.of(CircularSection.ofDiameter(diameter), 0.75), 0.75 * diameter * (0.01 + 0.8 * place));
        StructureContract.holds(FreeOutfall.rectangular(diameter), 0.01 + place);
    }

    @Property(tries = 300)
    void classicWeirs(@ForAll("share") double size, @ForAll("share") double p, @ForAll("share") double place) {
        double width = 0.3 + 3 * size;
        double crest = 0.1 + p;
        CoefficientWeir weir = CoefficientWeir.rectangular(width)
                .withSideSlope(p)
                .withCoefficient(0.6)
                .withEndContractions(2);
        StructureContract.holds(weir, 0.9 * weir.highestHead() * (0.001 + 0.999 * place));
        CoefficientWeir approached = CoefficientWeir.rectangular(width)
                .withCoefficient(0.62)
                .withApproach(ApproachChannel.ofWidth(1.1 * width).withCrestHeight(crest));
        StructureContract.holds(approached, 0.001 + 5 * place);
        double rehbock = Math.min(0.75, crest);
        StructureContract.holds(
                RehbockWeir.of(ApproachChannel.ofWidth(width).withCrestHeight(crest)), 0.03 + (rehbock - 0.03) * place);
        double crump = Math.min(3 * crest, width / 2);
        StructureContract.holds(
                CrumpWeir.of(ApproachChannel.ofWidth(width).withCrestHeight(crest)), 0.03 + (crump - 0.03) * place);
    }

    @Property(tries = 500)
    void drownedOpeningsCarryLess(@ForAll("share") double level, @ForAll("share") double tail) {
        LargeOrifice orifice = LargeOrifice.circular(0.5);
        double head = 0.01 + 3 * level;
        double free = orifice.discharge(head);
        double drowned = orifice.discharge(head, head * tail);
        assertThat(drowned).isBetween(0.0, free * (1 + 1e-12));
        SluiceGate gate = SluiceGate.ofWidthAndOpening(1.5, 0.2);
        double depth = 0.4 + 5 * level;
        assertThat(gate.discharge(depth, depth * tail)).isBetween(0.0, gate.discharge(depth));
    }

    @Property(tries = 500)
    void screensComeBack(@ForAll("share") double bar, @ForAll("share") double gap, @ForAll("share") double blinded) {
        BarScreen screen = BarScreen.ofBarsAndGaps(BarShape.CIRCULAR, 0.002 + 0.03 * bar, 0.003 + 0.1 * gap)
                .withInclination(60);
        double loss = screen.withBlindedFraction(0.99 * blinded).headLoss(0.8);
        assertThat(screen.blinding(loss, 0.8).fraction()).isCloseTo(0.99 * blinded, within(1e-12));
        assertThat(loss).isGreaterThanOrEqualTo(screen.headLoss(0.8));
    }

    @Provide
    static Arbitrary<Double> share() {
        return Arbitraries.doubles().between(0, 1).ofScale(6);
    }
}
