package dev.runnel.verification.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class TruthsTest {
    private static Truths truths(FaultKind kind, double severity, double ramp) {
        return new Truths(Simulator.site(Orders.with(31, Make.FIRST, kind, severity, ramp)));
    }

    @Test
    void largeRiseReachesTheAlarmOnItsWay() {
        double slow = truths(FaultKind.BLOCKAGE, 2, 10).alarm().orElseThrow();
        double quick = truths(FaultKind.BLOCKAGE, 2, 2).alarm().orElseThrow();

        assertThat(slow).isBetween(20.3, 31.4);
        assertThat(quick).isBetween(20.3, slow);
    }

    @Test
    void smallRiseAndFaultsOfSensorsReachNone() {
        assertThat(truths(FaultKind.BLOCKAGE, 0.2, 4).alarm()).isEmpty();
        assertThat(truths(FaultKind.DEPTH_OFFSET, 3, 0).alarm()).isEmpty();
        assertThat(new Truths(Simulator.site(Orders.sound(31, Make.FIRST))).alarm())
                .isEmpty();
    }

    @Test
    void shiftGrowsWithTheRamp() {
        Truths truths = truths(FaultKind.BLOCKAGE, 1, 10);

        assertThat(truths.shift(20)).isCloseTo(0, within(0.02));
        assertThat(truths.shift(24)).isBetween(0.2, 1.2);
        assertThat(truths.shift(32)).isBetween(truths.shift(24), 2.5);
    }

    /** One shower of 5 mm: wet for its hours and 18 + 2 × 5 h after the last. */
    @Test
    void rainMakesWetHours() {
        Site site = Simulator.site(Orders.sound(31, Make.FIRST));
        Water dry = site.water();
        double[] rain = new double[dry.rain().length];
        rain[site.grid().at(10.5)] = 5;
        Water showered = new Water(
                dry.flow(), dry.depth(), dry.velocity(), dry.shift(), dry.bed(), rain, dry.dry(), dry.usualDepth());
        Truths truths = new Truths(new Site(
                site.order(),
                site.grid(),
                site.pipe(),
                site.gradient(),
                site.holidays(),
                site.stamp(),
                site.depth(),
                site.velocity(),
                site.gaugeMinutes(),
                site.gauge(),
                showered));

        // Day 10 has 12 dry hours and day 11 has 7; from half past ten in the evening on, one whole day has 21 of 24.
        assertThat(truths.dryDays(0, 10)).isEqualTo(10);
        assertThat(truths.dryDays(10, 12)).isZero();
        assertThat(truths.dryDays(12, 14)).isEqualTo(2);
    }
}
