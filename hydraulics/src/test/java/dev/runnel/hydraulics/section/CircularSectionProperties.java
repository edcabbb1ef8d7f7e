package dev.runnel.hydraulics.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class CircularSectionProperties {
    @Provide
    Arbitrary<CircularSection> sections() {
        return Arbitraries.doubles()
                .between(-2, 1.3)
                .ofScale(9)
                .map(log -> CircularSection.ofDiameter(Math.pow(10, log)));
    }

    /** A part of the height: thin films, thin air and everything between. */
    @Provide
    Arbitrary<Double> fullness() {
        Arbitrary<Double> log = Arbitraries.doubles().between(-12, 0).ofScale(9).map(x -> Math.pow(10, x));
        return Arbitraries.oneOf(
                log, log.map(x -> 1 - x), Arbitraries.doubles().between(0, 1).ofScale(9));
    }

    @Property(tries = 2000)
    void depthForAreaClosesTheRoundTrip(@ForAll("sections") CircularSection section, @ForAll("fullness") double part) {
        double area = part * section.fullArea();
        double depth = section.depthForArea(area);
        assertThat(depth).isBetween(0.0, section.height());
        assertThat(section.area(depth)).isCloseTo(area, within(1e-14 * area));
    }

    @Property(tries = 2000)
    void topWidthIsTheDerivativeOfTheArea(@ForAll("sections") CircularSection section) {
        for (double x = 0.05; x < 0.96; x += 0.05) {
            double depth = x * section.height();
            double step = 1e-4 * section.height();
            double slope = (section.area(depth + step) - section.area(depth - step)) / (2 * step);
            assertThat(slope / section.topWidth(depth)).isCloseTo(1, within(1e-6));
        }
    }

    @Property(tries = 2000)
    void centroidMomentIsTheIntegralOfTheArea(@ForAll("sections") CircularSection section) {
        for (double x = 0.05; x < 0.96; x += 0.05) {
            double depth = x * section.height();
            double step = 1e-4 * section.height();
            double slope = (moment(section, depth + step) - moment(section, depth - step)) / (2 * step);
            assertThat(slope / section.area(depth)).isCloseTo(1, within(1e-6));
        }
    }

    private static double moment(CircularSection section, double depth) {
        return section.area(depth) * section.centroidDepth(depth);
    }

    @Property
    void waterAndAirAddUp(@ForAll("sections") CircularSection section, @ForAll("fullness") double part) {
        double depth = part * section.height();
        double air = section.height() - depth;
        assertThat(section.area(depth) + section.area(air))
                .isCloseTo(section.fullArea(), within(1e-14 * section.fullArea()));
        assertThat(section.wettedPerimeter(depth) + section.wettedPerimeter(air))
                .isCloseTo(section.fullPerimeter(), within(1e-7 * section.fullPerimeter()));
    }

    @Property
    void bulkFormsGiveTheSameBits(@ForAll("sections") CircularSection section, @ForAll("fullness") double part) {
        double[] depth = {part * section.height(), Double.NaN, section.height(), 0};
        double[] out = new double[4];
        section.area(depth, out);
        assertThat(out).containsExactly(section.area(depth[0]), Double.NaN, section.area(depth[2]), 0);
        section.wettedPerimeter(depth, out);
        assertThat(out)
                .containsExactly(section.wettedPerimeter(depth[0]), Double.NaN, section.wettedPerimeter(depth[2]), 0);
        section.topWidth(depth, out);
        assertThat(out).containsExactly(section.topWidth(depth[0]), Double.NaN, 0, 0);
        section.hydraulicRadius(depth, out);
        assertThat(out)
                .containsExactly(section.hydraulicRadius(depth[0]), Double.NaN, section.hydraulicRadius(depth[2]), 0);
        double[] area = {part * section.fullArea(), Double.NaN};
        double[] back = new double[2];
        section.depthForArea(area, back);
        assertThat(back).containsExactly(section.depthForArea(area[0]), Double.NaN);
    }

    /** Doubling the bore doubles lengths and quadruples areas to the last bit: only exponents change. */
    @Property
    void scalesWithTheBore(@ForAll("sections") CircularSection section, @ForAll("fullness") double part) {
        var twice = CircularSection.ofDiameter(2 * section.diameter());
        double depth = part * section.height();
        assertThat(twice.area(2 * depth)).isEqualTo(4 * section.area(depth));
        assertThat(twice.wettedPerimeter(2 * depth)).isEqualTo(2 * section.wettedPerimeter(depth));
        assertThat(twice.centroidDepth(2 * depth)).isCloseTo(2 * section.centroidDepth(depth), within(1e-14 * depth));
    }
}
