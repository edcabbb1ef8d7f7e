package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.hydraulics.rating.RatingTable;
import dev.runnel.hydraulics.section.CircularSection;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class ValuesTest {
    private static List<Object> structures() {
        RectangularWeir weir = RectangularWeir.fullWidth(1, 0.5);
        BarScreen screen = BarScreen.of(BarShape.CIRCULAR, 0.01, 0.02);
        CircularSection pipe = CircularSection.ofDiameter(1);
        LongThroatedFlume flume = LongThroatedFlume.rectangular(0.3, 0.6);
        SideWeir side = SideWeir.of(pipe, 0.5, 2, 0.6);
        return List.of(
                weir,
                RectangularWeir.contracted(0.5, 1, 0.5),
                VNotchWeir.of(60, 0.5, 1),
                VNotchWeir.of(90, 0.5, 1),
                CipollettiWeir.of(0.5, 1, 0.5),
                SubmergedWeir.of(weir),
                SubmergedWeir.of(weir, 2),
                BroadCrestedWeir.squareEdged(1, 1, 1),
                BroadCrestedWeir.roundNosed(1, 1, 1),
                BroadCrestedWeir.roundNosed(1, 1, 1, 0.001),
                BroadCrestedWeir.ofCoefficient(1, 1, 1, 1),
                Orifice.circular(0.2),
                Orifice.circular(0.2).submerged(),
                LargeOrifice.circular(0.2),
                LargeOrifice.circularPenstock(0.2, 0.1),
                LargeOrifice.rectangular(0.2, 0.2),
                SluiceGate.of(1, 0.1),
                FreeOutfall.rectangular(1),
                FreeOutfall.circular(1),
                FreeOutfall.of(pipe, 0.75),
                FlapValve.ofDiameter(0.5),
                screen,
                screen.withInclination(60),
                ParshallFlume.ofThroat(0.3),
                flume,
                flume.inChannel(1, 0),
                flume.inChannel(1, 0.1),
                flume.in(pipe, 0.1),
                flume.withDisplacementRatio(0),
                LongThroatedFlume.trapezoidal(0.3, 1, 0.6),
                LongThroatedFlume.uThroated(0.3, 0.6),
                side,
                side.fromDownstream(0.7, 0.3),
                ScreenedWeir.of(weir, screen, 1, 1),
                ScreenedWeir.of(weir, screen, 1, 1).withBlindedFraction(0.5),
                CoefficientWeir.francis(1),
                CoefficientWeir.francis(1).withEndContractions(2),
                CoefficientWeir.francis(1).withApproach(2, 1),
                RehbockWeir.of(1, 0.5),
                CrumpWeir.of(1, 0.5),
                KhafagiFlume.ofThroat(0.3),
                RatingTable.of(h -> h, 0, 1, 0.1),
                screen.blinding(0.1, 1));
    }

    @Test
    void equalWhenMadeAlikeAndOnlyThen() {
        List<Object> first = structures();
        List<Object> second = structures();
        assertThat(second).isEqualTo(first);
        Set<Object> all = new HashSet<>(first);
        all.addAll(second);
        assertThat(all).hasSameSizeAs(first);
        for (Object each : first) {
            assertThat(each).isNotEqualTo("another type").isNotEqualTo(null);
        }
    }

    @Test
    void everyOneReadsWell() {
        assertThat(structures())
                .allSatisfy(each -> assertThat(each.toString())
                        .startsWith(each.getClass().getSimpleName() + "[")
                        .endsWith("]")
                        .doesNotContain("@", "NaN", "null"));
    }

    @Test
    void aRefusedCopyNamesItsParameter() {
        assertThatThrownBy(() -> SluiceGate.of(1, 0.1).withContraction(1.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("newContraction must be greater than 0 and at most 1, was 1.1");
        assertThatThrownBy(() -> LargeOrifice.circular(1).withCoefficient(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("newCoefficient must be greater than 0 and at most 1, was NaN");
    }
}
