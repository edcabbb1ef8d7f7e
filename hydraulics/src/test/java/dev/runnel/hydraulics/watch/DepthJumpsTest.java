package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Optional;
import org.junit.jupiter.api.Test;

/** Hours straight into the machine of a level alone: what stood before a step, and for how long. */
class DepthJumpsTest {
    /** The level steps from 0.1 m by 35 mm: ln 1.35 = 0.3001. */
    private static final double STEP = 0.035;

    private static final double LN = 0.3001;
    private static final SiteBaseline BASELINE = learn();

    private final DepthJumps jumps = new DepthJumps(BASELINE);
    private long hour = 1000;

    private static SiteBaseline learn() {
        return BaselineRule.of(InventedSite.MONITOR)
                .learn(InventedSite.of(30, 5).record(InventedSite.Fault.NONE, false, true))
                .baseline()
                .orElseThrow();
    }

    private Optional<DepthJump> stand(int hours, double d) {
        Optional<DepthJump> told = Optional.empty();
        for (int i = 0; i < hours && told.isEmpty(); i++) {
            told = jumps.hour(new SiteHour(hour++), d, Double.NaN);
        }
        return told;
    }

    private Optional<DepthJump> step(double d) {
        SiteHour of = new SiteHour(hour);
        of.step = STEP;
        of.stepFromLevel = 0.1;
        of.stepFrom = hour * SiteHour.NANOS;
        of.stepTo = of.stepFrom + SiteHour.NANOS / 4;
        hour++;
        return jumps.hour(of, d, Double.NaN);
    }

    @Test
    void stepThatStaysForTwelveHoursIsTold() {
        assertThat(stand(72, 0)).isEmpty();
        assertThat(step(LN)).isEmpty();
        assertThat(stand(11, LN)).isEmpty();
        assertThat(stand(1, LN).orElseThrow().step()).isEqualTo(STEP);
        assertThat(stand(40, LN)).isEmpty();
    }

    @Test
    void aDayOfDryHoursMustStandBeforeIt() {
        stand(24, 0);
        step(LN);
        assertThat(stand(12, LN)).isPresent();
        DepthJumps few = new DepthJumps(BASELINE);
        for (int i = 0; i < 23; i++) {
            few.hour(new SiteHour(hour++), 0, Double.NaN);
        }
        SiteHour of = new SiteHour(hour);
        of.step = STEP;
        of.stepFromLevel = 0.1;
        of.stepTo = hour * SiteHour.NANOS;
        few.hour(of, LN, Double.NaN);
        for (int i = 0; i < 20; i++) {
            assertThat(few.hour(new SiteHour(++hour), LN, Double.NaN)).isEmpty();
        }
    }

    /** Over three days the level stood as high as after the step, over the last day it did not: it only came back. */
    @Test
    void whatComesBackToTheDaysBeforeIsNoStep() {
        stand(54, LN);
        stand(18, 0);
        step(LN);
        assertThat(stand(40, LN)).isEmpty();
    }

    @Test
    void whatStoodLowForMostOfThreeDaysSteppedUp() {
        stand(30, LN);
        stand(42, 0);
        step(LN);
        assertThat(stand(12, LN)).isPresent();
    }
}
