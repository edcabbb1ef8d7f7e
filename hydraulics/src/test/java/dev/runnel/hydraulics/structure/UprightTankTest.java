package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class UprightTankTest {
    /** g = 8: √(2g) = 4; 2 · 6 (3 − 1)/(0.5 · 0.06 · 4) = 200 s. */
    @Test
    void orificeByHand() {
        var opening = Orifice.ofWidthAndHeight(0.3, 0.2).withCoefficient(0.5);
        var tank = UprightTank.ofPlanArea(6).withGravity(8);
        assertThat(tank.emptyingTimeOnCentre(opening, 9, 1)).isCloseTo(200, within(1e-11));
        assertThat(tank.emptyingTimeOnCentre(opening, 9, 0)).isCloseTo(300, within(1e-11));
        assertThat(tank.emptyingTimeOnCentre(opening, 9, 9)).isZero();
        assertThat(tank.emptyingTimeOnCentre(opening, 0, 0)).isZero();
    }

    /** The quadrature through the same opening, whose datum is its lowest point. */
    @Test
    void quadratureAgreesWithTheClosedIntegral() {
        var opening = Orifice.circular(0.1);
        var tank = UprightTank.ofDiameter(1.2);
        assertThat(tank.emptyingTime(opening, opening.aboveLowestPoint(3), opening.aboveLowestPoint(0.2)))
                .isCloseTo(tank.emptyingTimeOnCentre(opening, 3, 0.2), within(1e-8));
        assertThat(tank.emptyingTime(opening, 1, 1)).isZero();
    }

    @Test
    void badInput() {
        var opening = Orifice.circular(0.1);
        var tank = UprightTank.ofDiameter(1.2);
        assertThatThrownBy(() -> tank.emptyingTime(opening, 1, 0)).hasMessageContaining("to must be");
        assertThatThrownBy(() -> tank.emptyingTime(opening, 1, 2)).hasMessageContaining("to must be in [0, 1] m");
        assertThatThrownBy(() -> tank.emptyingTimeOnCentre(opening, Double.NaN, 0))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> UprightTank.ofPlanArea(0)).hasMessageContaining("planArea must be");
        assertThatThrownBy(() -> UprightTank.ofDiameter(1e300)).hasMessageContaining("diameter must be");
    }
}
