package dev.runnel.hydraulics.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class SectionProperties {
    @Provide
    Arbitrary<CrossSection> sections() {
        return Shapes.all();
    }

    @Provide
    Arbitrary<Double> parts() {
        return Arbitraries.oneOf(
                Arbitraries.doubles().between(0, 1).ofScale(9),
                Arbitraries.doubles().between(-9, 0).ofScale(6).map(log -> Math.pow(10, log)),
                Arbitraries.doubles().between(-9, 0).ofScale(6).map(log -> 1 - Math.pow(10, log)));
    }

    @Property(tries = 3000)
    void depthForAreaClosesTheRoundTrip(@ForAll("sections") CrossSection section, @ForAll("parts") double part) {
        double area = section.area(Shapes.depth(section, part));
        double depth = section.depthForArea(area);
        assertThat(section.area(depth)).isCloseTo(area, within(1e-13 * area));
    }

    @Property(tries = 3000)
    void topWidthIsTheDerivativeOfTheArea(@ForAll("sections") CrossSection section, @ForAll("parts") double part) {
        double depth = Shapes.depth(section, part);
        double step = 1e-6 * depth;
        if (depth == 0 || touchesABreak(section, depth, step)) {
            return;
        }
        double slope = (section.area(depth + step) - section.area(depth - step)) / (2 * step);
        double scale = Math.max(section.topWidth(depth), section.area(depth) / depth * 1e-3);
        assertThat(slope).isCloseTo(section.topWidth(depth), within(1e-5 * scale));
    }

    @Property(tries = 3000)
    void areaIsTheDerivativeOfTheFirstMoment(@ForAll("sections") CrossSection section, @ForAll("parts") double part) {
        double depth = Shapes.depth(section, part);
        double step = 1e-6 * depth;
        if (depth == 0 || touchesABreak(section, depth, step)) {
            return;
        }
        double slope = (moment(section, depth + step) - moment(section, depth - step)) / (2 * step);
        assertThat(slope).isCloseTo(section.area(depth), within(1e-6 * section.area(depth)));
    }

    private static double moment(CrossSection section, double depth) {
        return section.area(depth) * section.centroidDepth(depth);
    }

    private static boolean touchesABreak(CrossSection section, double depth, double step) {
        for (double level : section.breakDepths()) {
            if (Math.abs(depth - level) <= 400 * step) {
                return true;
            }
        }
        return false;
    }

    @Property(tries = 3000)
    void everythingRisesWithDepth(
            @ForAll("sections") CrossSection section, @ForAll("parts") double one, @ForAll("parts") double other) {
        double low = Shapes.depth(section, Math.min(one, other));
        double high = Shapes.depth(section, Math.max(one, other));
        assertThat(section.area(low)).isLessThanOrEqualTo(section.area(high) * (1 + 1e-15));
        assertThat(section.wettedPerimeter(low)).isLessThanOrEqualTo(section.wettedPerimeter(high) * (1 + 1e-15));
        assertThat(section.centroidDepth(high)).isBetween(0.0, high);
        assertThat(section.hydraulicRadius(high)).isBetween(0.0, high);
        assertThat(section.topWidth(high)).isNotNegative();
    }

    /** No wetted boundary is shorter than two straight lines from the invert to the ends of the surface would allow. */
    @Property
    void perimeterIsAtLeastTwiceTheDepth(@ForAll("sections") CrossSection section, @ForAll("parts") double part) {
        double depth = Shapes.depth(section, part);
        assertThat(section.wettedPerimeter(depth)).isGreaterThanOrEqualTo(2 * depth * (1 - 1e-14));
    }

    @Property
    void bulkFormsGiveTheSameBits(@ForAll("sections") CrossSection section, @ForAll("parts") double part) {
        double[] depth = {Shapes.depth(section, part), Double.NaN, 0};
        double[] out = new double[3];
        section.area(depth, out);
        assertThat(out).containsExactly(section.area(depth[0]), Double.NaN, 0);
        section.wettedPerimeter(depth, out);
        assertThat(out).containsExactly(section.wettedPerimeter(depth[0]), Double.NaN, 0);
        section.topWidth(depth, out);
        assertThat(out).containsExactly(section.topWidth(depth[0]), Double.NaN, section.topWidth(0));
        section.hydraulicRadius(depth, out);
        assertThat(out).containsExactly(section.hydraulicRadius(depth[0]), Double.NaN, 0);
    }
}
