package dev.runnel.hydraulics.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.Test;

/** Sizes in another unit, and sizes that no double can be computed with, are refused with what is meant. */
class SizesTest {
    @Test
    void boreInMillimetresIsRefusedWithTheFactoryForIt() {
        assertThatThrownBy(() -> CircularSection.ofDiameter(450))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "diameter must be in [1.0E-6, 50] m, was 450: for millimetres use CircularSection.ofDiameterMm");
        assertThat(CircularSection.ofDiameterMm(450)).isEqualTo(CircularSection.ofDiameter(0.45));
        assertThatThrownBy(() -> CircularSection.ofDiameterMm(-1)).hasMessageContaining("diameterMm must be greater");
    }

    @Test
    void eggInMillimetresIsRefused() {
        assertThatThrownBy(() -> Egg.normal(600))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "width must be in [1.0E-6, 50] m, was 600: sizes are in metres, divide millimetres by 1000");
    }

    @Test
    void absurdSizesAreRefused() {
        ThrowingCallable[] calls = {
            () -> USection.open(1.7e308),
            () -> USection.open(1e160),
            () -> USection.open(1e-160),
            () -> USection.covered(1e160, 1e160),
            () -> Horseshoe.ofDiameter(1e160),
            () -> Horseshoe.ofDiameter(1e-160),
            () -> Egg.sharp(1e-7),
            () -> MouthSection.ofWidth(1e9),
            () -> ArchSection.of(1, 1e9),
            () -> Ovoid.ofWidthAndHeight(1, 1e9).withInvertRadius(0.1),
            () -> RectangularSection.open(1e7),
            () -> RectangularSection.box(1, 600),
            () -> TrapezoidalSection.ofBedWidthAndSideSlope(1e7, 1),
            () -> TrapezoidalSection.ofBedWidthAndSideSlope(1, 1e5),
            () -> VInvertSection.ofWidthAndFall(1e7, 1).open(),
            () -> VInvertSection.ofWidthAndFall(600, 50).coveredAt(600),
            () -> BenchedChannel.ofWidthAndDepth(1e7, 1e7).inChamberOfWidth(2e7),
            () -> Wall.from(1e7, 0),
            () -> Wall.from(1, 0).lineTo(1, 1e7),
            () -> Wall.from(1, 0).lineTo(1e7, 1),
            () -> Wall.from(0, 0).arcTo(1e7, 1e7, 0, 1e7),
            () -> TabulatedSection.open(new double[] {0, 1e300}, new double[] {1, 1}),
        };
        for (ThrowingCallable call : calls) {
            assertThatThrownBy(call)
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("must be in [");
        }
    }

    @Test
    void largeAndSmallSizesWork() {
        for (double size : new double[] {5e-5, 33}) {
            for (ClosedSection section : Shapes.closed(size)) {
                double half = section.height() / 2;
                assertThat(section.depthForArea(section.area(half)) / half).isBetween(1 - 1e-9, 1 + 1e-9);
            }
        }
    }
}
