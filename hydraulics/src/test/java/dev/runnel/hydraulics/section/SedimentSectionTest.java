package dev.runnel.hydraulics.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class SedimentSectionTest {
    private static final CircularSection PIPE = CircularSection.ofDiameter(0.6);

    @Test
    void bedTakesAreaAndAddsPerimeter() {
        for (double bed : new double[] {0.02, 0.1, 0.3, 0.45}) {
            var section = PIPE.withSediment(bed);
            assertThat(section.height()).isCloseTo(0.6 - bed, within(1e-16));
            assertThat(section.topWidth(0)).isCloseTo(PIPE.topWidth(bed), within(1e-15));
            assertThat(section.wettedPerimeter(0)).isZero();
            for (double x : new double[] {0.01, 0.2, 0.5, 0.9, 1}) {
                double depth = x * section.height();
                double level = Math.min(bed + depth, 0.6);
                assertThat(section.area(depth)).isCloseTo(PIPE.area(level) - PIPE.area(bed), within(1e-15));
                assertThat(section.wettedPerimeter(depth))
                        .isCloseTo(
                                PIPE.wettedPerimeter(level) - PIPE.wettedPerimeter(bed) + PIPE.topWidth(bed),
                                within(3e-15));
                assertThat(section.topWidth(depth)).isCloseTo(PIPE.topWidth(level), within(2e-8));
            }
        }
    }

    /** Thin flow over the bed keeps its digits: nearly a rectangle. */
    @Test
    void filmOverTheBedIsARectangle() {
        var section = PIPE.withSediment(0.1);
        assertThat(section.area(1e-12) / (section.topWidth(0) * 1e-12)).isCloseTo(1, within(1e-11));
        assertThat(section.depthForArea(section.area(1e-9))).isCloseTo(1e-9, within(1e-23));
    }

    @Test
    void exactCutAgreesWithTheDifferenceForm() {
        var egg = Egg.normal(0.8);
        var exact = egg.withSediment(0.15);
        var difference = new Foreign(egg).withSediment(0.15);
        for (double x : new double[] {0.05, 0.3, 0.6, 0.95, 1}) {
            double depth = x * exact.height();
            assertThat(difference.area(depth)).isCloseTo(exact.area(depth), within(1e-14));
            assertThat(difference.wettedPerimeter(depth)).isCloseTo(exact.wettedPerimeter(depth), within(1e-14));
            assertThat(difference.topWidth(depth)).isCloseTo(exact.topWidth(depth), within(1e-7));
            assertThat(difference.centroidDepth(depth)).isCloseTo(exact.centroidDepth(depth), within(1e-12));
            assertThat(difference.depthForArea(exact.area(depth))).isCloseTo(depth, within(1e-9));
        }
        assertThat(difference.centroidDepth(0)).isZero();
        assertThat(difference.breakDepths()).hasSameSizeAs(exact.breakDepths());
    }

    @Test
    void openSectionsCanHaveABedToo() {
        var section = TrapezoidalSection.ofBedWidthAndSideSlope(1, 2).withSediment(0.25);
        assertThat(section.topWidth(0)).isEqualTo(2);
        assertThat(section.area(1)).isEqualTo(4);
        assertThat(section.wettedPerimeter(1)).isCloseTo(2 + 2 * Math.sqrt(5), within(1e-15));
    }

    @Test
    void foreignOpenSectionsCanHaveABedToo() {
        var channel = TrapezoidalSection.ofBedWidthAndSideSlope(1, 2);
        CrossSection exact = channel.withSediment(0.25);
        CrossSection difference = new ForeignChannel(channel).withSediment(0.25);
        assertThat(difference.height()).isInfinite();
        for (double depth : new double[] {0.01, 0.3, 2}) {
            assertThat(difference.area(depth)).isCloseTo(exact.area(depth), within(1e-14));
            assertThat(difference.wettedPerimeter(depth)).isCloseTo(exact.wettedPerimeter(depth), within(1e-14));
            assertThat(difference.depthForArea(exact.area(depth))).isCloseTo(depth, within(1e-12));
        }
        assertThat(difference.breakDepths()).containsExactly(0);
    }

    @Test
    void depthsAboveTheBedAndLevelsAboveTheInvertConvert() {
        CrossSection silted = PIPE.withSediment(0.1);
        assertThat(silted.bedAboveInvert()).isEqualTo(0.1);
        assertThat(silted.depthAboveBed(0.35)).isCloseTo(0.25, within(1e-16));
        assertThat(silted.levelAboveInvert(0.25)).isCloseTo(0.35, within(1e-16));
        assertThat(silted.levelAboveInvert(silted.height())).isCloseTo(0.6, within(1e-15));
        assertThat(silted.depthAboveBed(0.05)).isNegative();
        assertThat(PIPE.bedAboveInvert()).isZero();
        assertThat(PIPE.depthAboveBed(0.35)).isEqualTo(0.35);
        assertThat(PIPE.levelAboveInvert(0.35)).isEqualTo(0.35);
    }

    @Test
    void secondBedIsRefused() {
        String message = "the section has a bed already, 0.1 m above its invert (withoutSediment() takes it out): "
                + "CircularSection[D = 0.6 m] above 0.1 m of sediment";
        assertThatThrownBy(() -> PIPE.withSediment(0.1).withSediment(0.1))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage(message);
        assertThatThrownBy(() -> TrapezoidalSection.ofBedWidthAndSideSlope(1, 1)
                        .withSediment(0.1)
                        .withSediment(0.2))
                .isInstanceOf(IllegalStateException.class);
        assertThat(PIPE.withSediment(0.1).withoutSediment().withSediment(0.2)).isEqualTo(PIPE.withSediment(0.2));
    }

    @Test
    void bedOfNoDepthIsNone() {
        assertThat(PIPE.withSediment(0)).isSameAs(PIPE);
        assertThat(PIPE.withoutSediment()).isSameAs(PIPE);
    }

    @Test
    void refusesBedsOutsideTheSection() {
        assertThatThrownBy(() -> PIPE.withSediment(0.6))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("bedAboveInvert must be below the soffit at 0.6 m, was 0.6");
        assertThatThrownBy(() -> PIPE.withSediment(-0.01))
                .hasMessage("bedAboveInvert must be 0 or greater and finite (m), was -0.01");
        assertThatThrownBy(() -> PIPE.withSediment(Double.NaN)).hasMessageContaining("was NaN");
        assertThatThrownBy(() -> PIPE.withSediment(0.1).area(0.51)).hasMessageContaining("depth must be in [0, 0.5]");
    }

    @Test
    void readsWell() {
        var section = PIPE.withSediment(0.05);
        assertThat(section).hasToString("CircularSection[D = 0.6 m] above 0.05 m of sediment");
        assertThat(section).isEqualTo(PIPE.withSediment(0.05)).hasSameHashCodeAs(PIPE.withSediment(0.05));
        assertThat(section).isNotEqualTo(PIPE.withSediment(0.06));
        assertThat(section.withoutSediment()).isSameAs(PIPE);
        assertThat(section.bedAboveInvert()).isEqualTo(0.05);
    }

    /** A section of somebody else, of which nothing but the interface is known. */
    private record Foreign(ClosedSection inner) implements ClosedSection {
        @Override
        public double height() {
            return inner.height();
        }

        @Override
        public double area(double depth) {
            return inner.area(depth);
        }

        @Override
        public double wettedPerimeter(double depth) {
            return inner.wettedPerimeter(depth);
        }

        @Override
        public double topWidth(double depth) {
            return inner.topWidth(depth);
        }

        @Override
        public double centroidDepth(double depth) {
            return inner.centroidDepth(depth);
        }

        @Override
        public double depthForArea(double area) {
            return inner.depthForArea(area);
        }

        @Override
        public double[] breakDepths() {
            return inner.breakDepths();
        }
    }

    /** An open section of somebody else. */
    private record ForeignChannel(OpenSection inner) implements CrossSection {
        @Override
        public double height() {
            return inner.height();
        }

        @Override
        public double area(double depth) {
            return inner.area(depth);
        }

        @Override
        public double wettedPerimeter(double depth) {
            return inner.wettedPerimeter(depth);
        }

        @Override
        public double topWidth(double depth) {
            return inner.topWidth(depth);
        }

        @Override
        public double centroidDepth(double depth) {
            return inner.centroidDepth(depth);
        }

        @Override
        public double depthForArea(double area) {
            return inner.depthForArea(area);
        }
    }
}
