package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.hydraulics.section.Egg;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.SedimentSection;
import dev.runnel.hydraulics.section.TrapezoidalSection;
import java.util.List;
import org.junit.jupiter.api.Test;

class FlowAreaTest {
    @Test
    void closedSectionsAgreeWithTheSectionCutAtTheBed() {
        List<ClosedSection> sections =
                List.of(CircularSection.ofDiameter(0.9), Egg.normal(0.6), RectangularSection.box(0.8, 0.6));
        int compared = 0;
        for (ClosedSection section : sections) {
            double bed = 0.17 * section.height();
            FlowArea flowArea = new FlowArea(section, bed);
            SedimentSection cut = SedimentSection.of(section, bed);
            for (int percent = 19; percent <= 100; percent += 9) {
                double level = percent / 100.0 * section.height();
                assertThat(flowArea.area(level)).isCloseTo(cut.area(level - bed), within(1e-14));
                assertThat(flowArea.hydraulicRadius(level)).isCloseTo(cut.hydraulicRadius(level - bed), within(1e-13));
                compared++;
            }
            assertThat(flowArea.area(5)).isCloseTo(cut.fullArea(), within(1e-14));
        }
        assertThat(compared).isEqualTo(30);
    }

    @Test
    void cleanSectionIsTheSectionItselfFlatFloorsIncluded() {
        ClosedSection box = RectangularSection.box(0.8, 0.6);
        FlowArea flowArea = new FlowArea(box, 0);
        assertThat(flowArea.area(0.4)).isEqualTo(box.area(0.4));
        assertThat(flowArea.hydraulicRadius(0.4)).isEqualTo(box.hydraulicRadius(0.4));
        assertThat(flowArea.hydraulicRadius(0)).isZero();
    }

    @Test
    void openSectionHasNoSoffit() {
        // Bottom 1 m, sides 1 in 1, bed 0.2 m: width 1.4 m at the bed and 2.0 m at 0.5 m.
        FlowArea flowArea = new FlowArea(TrapezoidalSection.of(1, 1), 0.2);
        assertThat(flowArea.area(0.5)).isCloseTo((1.4 + 2.0) / 2 * 0.3, within(1e-14));
        assertThat(flowArea.topWidth(0.5)).isCloseTo(2, within(1e-14));
        assertThat(flowArea.hydraulicRadius(0.5)).isCloseTo(0.51 / (1.4 + 2 * 0.3 * Math.sqrt(2)), within(1e-14));
        assertThat(flowArea.area(50)).isCloseTo((1.4 + 101) / 2 * 49.8, within(1e-10));
    }
}
