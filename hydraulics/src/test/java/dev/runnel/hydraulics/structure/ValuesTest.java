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
        RectangularWeir weir =
                RectangularWeir.fullWidth(ApproachChannel.ofWidth(1).withCrestHeight(0.5));
        BarScreen screen = BarScreen.ofBarsAndGaps(BarShape.CIRCULAR, 0.01, 0.02);
        CircularSection pipe = CircularSection.ofDiameter(1);
        LongThroatedFlume flume = LongThroatedFlume.of(Throat.rectangular(0.3), 0.6);
        SideWeir side = SideWeir.ofSillAndLength(pipe, 0.5, 2).withCoefficient(0.6);
        return List.of(
                weir,
                RectangularWeir.contracted(0.5, ApproachChannel.ofWidth(1).withCrestHeight(0.5)),
                VNotchWeir.ofAngle(60, ApproachChannel.ofWidth(1).withCrestHeight(0.5)),
                VNotchWeir.ofAngle(90, ApproachChannel.ofWidth(1).withCrestHeight(0.5)),
                CipollettiWeir.ofCrestLength(0.5, ApproachChannel.ofWidth(1).withCrestHeight(0.5)),
                weir.under(0.1),
                weir.atGravity(9.81),
                weir.under(0.1).atGravity(9.81),
                BroadCrestedWeir.squareEdged(1, ApproachChannel.ofWidth(1).withCrestHeight(1)),
                BroadCrestedWeir.roundNosed(1, ApproachChannel.ofWidth(1).withCrestHeight(1)),
                BroadCrestedWeir.roundNosed(1, 0.001, ApproachChannel.ofWidth(1).withCrestHeight(1)),
                BroadCrestedWeir.ofCoefficient(1, ApproachChannel.ofWidth(1).withCrestHeight(1)),
                Orifice.circular(0.2),
                Orifice.circular(0.2).withCoefficient(0.8),
                LargeOrifice.circular(0.2),
                LargeOrifice.circular(0.2).closedTo(0.1),
                LargeOrifice.ofWidthAndOpening(0.2, 0.2),
                SluiceGate.ofWidthAndOpening(1, 0.1),
                FreeOutfall.rectangular(1),
                FreeOutfall.circular(1),
                FreeOutfall.of(pipe, 0.75),
                FlapValve.ofDiameter(0.5),
                screen,
                screen.withInclination(60),
                ParshallFlume.ofThroat(0.3),
                flume,
                flume.inChannel(ApproachChannel.ofWidth(1)),
                flume.inChannel(ApproachChannel.ofWidth(1).withCrestHeight(0.1)),
                flume.in(pipe, 0.1),
                flume.withDisplacementRatio(0),
                LongThroatedFlume.of(Throat.rectangular(0.3).withSideSlope(1), 0.6),
                LongThroatedFlume.of(Throat.uShaped(0.3), 0.6),
                side,
                side.fromDownstreamDepthAndDischarge(0.7, 0.3),
                ScreenedWeir.of(weir, screen, ApproachChannel.ofWidth(1).withCrestHeight(1)),
                ScreenedWeir.of(weir, screen, ApproachChannel.ofWidth(1).withCrestHeight(1))
                        .withBlindedFraction(0.5),
                CoefficientWeir.rectangular(1),
                CoefficientWeir.rectangular(1).withEndContractions(2),
                CoefficientWeir.rectangular(1)
                        .withApproach(ApproachChannel.ofWidth(2).withCrestHeight(1)),
                RehbockWeir.of(ApproachChannel.ofWidth(1).withCrestHeight(0.5)),
                CrumpWeir.of(ApproachChannel.ofWidth(1).withCrestHeight(0.5)),
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
        assertThatThrownBy(() -> SluiceGate.ofWidthAndOpening(1, 0.1).withContraction(1.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("newContraction must be greater than 0 and at most 1, was 1.1");
        assertThatThrownBy(() -> LargeOrifice.circular(1).withCoefficient(Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("newCoefficient must be greater than 0 and at most 1, was NaN");
    }
}
