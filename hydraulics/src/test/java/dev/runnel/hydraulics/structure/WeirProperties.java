package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class WeirProperties {
    @Property
    void rectangular(
            @ForAll("share") double width,
            @ForAll("share") double notch,
            @ForAll("share") double p,
            @ForAll("share") double place) {
        double channel = 0.5 + 9.5 * width;
        double crest = 0.1 + 2 * p;
        double head = 0.03 + (2.5 * crest - 0.03) * place;
        double b = 0.15 + (channel - 0.2 - 0.15) * notch;
        StructureContract.holds(
                RectangularWeir.contracted(b, ApproachChannel.ofWidth(channel).withCrestHeight(crest)), head);
        StructureContract.holds(
                RectangularWeir.fullWidth(ApproachChannel.ofWidth(channel).withCrestHeight(crest)), head);
    }

    @Property
    void vNotch(@ForAll("share") double angle, @ForAll("share") double p, @ForAll("share") double place) {
        double vertex = 0.18 + 2 * p;
        VNotchWeir weir = VNotchWeir.ofAngle(
                20 + 80 * angle, ApproachChannel.ofWidth(vertex / 0.14).withCrestHeight(vertex));
        StructureContract.holds(weir, 0.06 + (0.34 * vertex - 0.06) * place);
    }

    @Property
    void rightAngledNotch(@ForAll("share") double shape, @ForAll("share") double p, @ForAll("share") double place) {
        double vertex = 0.2 + 2 * p;
        double ratio = 0.1 + 0.9 * shape;
        double highest = Math.min(PartialContraction.highestHead(ratio), 0.5 / ratio);
        VNotchWeir weir =
                VNotchWeir.ofAngle(90, ApproachChannel.ofWidth(vertex / ratio).withCrestHeight(vertex));
        StructureContract.holds(weir, 0.06 + (highest * vertex - 0.06) * place);
    }

    @Property
    void cipolletti(@ForAll("share") double length, @ForAll("share") double place) {
        double b = 0.3 + 3 * length;
        double highest = Math.min(0.6, b / 2);
        StructureContract.holds(
                CipollettiWeir.ofCrestLength(
                        b, ApproachChannel.ofWidth(b + 4 * highest).withCrestHeight(2 * highest)),
                0.06 + (highest - 0.06) * place);
    }

    @Property
    void drownedWeirCarriesLessAndComesBack(@ForAll("share") double place, @ForAll("share") double drowned) {
        RectangularWeir free =
                RectangularWeir.fullWidth(ApproachChannel.ofWidth(1.3).withCrestHeight(0.4));
        double head = 0.03 + 0.97 * place;
        double tailwater = head * drowned;
        double q = free.discharge(head, tailwater);
        assertThat(q).isBetween(0.0, free.discharge(head));
        assertThat(free.head(q, tailwater)).isCloseTo(head, within(1e-12 * head));
        assertThat(free.discharge(head, tailwater * 0.99)).isGreaterThanOrEqualTo(q);
    }

    @Provide
    static Arbitrary<Double> share() {
        return Arbitraries.doubles().between(0, 1).ofScale(6);
    }
}
