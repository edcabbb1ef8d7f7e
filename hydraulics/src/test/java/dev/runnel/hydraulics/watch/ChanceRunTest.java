package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** How long a sound velocity sensor may repeat a reading, by its steps and its scatter. */
class ChanceRunTest {
    /** 3 % of scatter at 0.6 m/s in steps of 50 mm/s: erf(0.05/(2 √2 · 0.03 · 0.6)) = 0.83509, as 1.3889 standard deviations to each side. */
    @Test
    void repeatsFollowFromStepScatterAndSpeed() {
        ChanceRun coarse = new ChanceRun(0.05, 0.03);
        assertThat(coarse.most(0.6)).isCloseTo(1 + 13.815511 / 0.180225, within(0.05));
        assertThat(coarse.most(0.3)).isGreaterThan(1000);
        assertThat(coarse.most(1.5)).isBetween(10.0, 17.0);
        assertThat(new ChanceRun(0.001, 0.03).most(0.6)).isLessThan(5);
    }

    /** At 0.1 m/s a step is 8.3 standard deviations to each side: erfc(5.893) = 7.8597e-17; at 10 mm/s nothing ever leaves it. */
    @Test
    void inSlowWaterARunHasNoEnd() {
        ChanceRun coarse = new ChanceRun(0.05, 0.03);
        assertThat(coarse.most(0.1)).isCloseTo(13.815511 / 7.859747e-17, within(1e12));
        assertThat(coarse.most(0.01)).isEqualTo(Double.POSITIVE_INFINITY);
    }

    @Test
    void ofASensorThatNeverStepsNothingIsKnown() {
        assertThat(ChanceRun.of(Double.POSITIVE_INFINITY, 0, 12)).isEqualTo(new ChanceRun(0, 0));
        assertThat(ChanceRun.of(0.01, 0, 0)).isEqualTo(new ChanceRun(0, 0));
        assertThat(new ChanceRun(0, 0).most(0.6)).isEqualTo(1);
    }

    /** Mean steps of a normal scatter, read in coarse steps, give that scatter back. */
    @Test
    void scatterIsLearnedThroughTheSteps() {
        Random random = new Random(7);
        double before = Double.NaN;
        double steps = 0;
        double sum = 0;
        for (int i = 0; i < 40_000; i++) {
            double water = 0.6 + 0.1 * Math.sin(i / 200.0);
            double read = 0.02 * Math.rint(water * (1 + 0.03 * random.nextGaussian()) / 0.02);
            if (i > 0) {
                steps += Math.abs(read - before);
                sum += before;
            }
            before = read;
        }
        assertThat(ChanceRun.of(0.02, steps, sum).scatter()).isCloseTo(0.03, within(0.001));
    }

    /** At 20 mm/s and half-hourly readings four equal hours are chance; a sensor that stands for a day is not. */
    @Test
    void coarseSlowVelocitiesAreNotCalledFrozenAndAFrozenOneIs() {
        for (boolean isFrozen : new boolean[] {false, true}) {
            List<SiteReading> readings = new ArrayList<>();
            Random random = new Random(5);
            for (int i = 0; i < 48 * 30; i++) {
                double day = i / 48.0;
                double depth = 0.12 * (1 + 0.25 * Math.sin(2 * Math.PI * day) + 0.01 * random.nextGaussian());
                double speed = 0.35 * Math.sqrt(depth / 0.12) * (1 + 0.025 * random.nextGaussian());
                boolean stands = day >= 20 && day < (isFrozen ? 21.2 : 20.2);
                double read = stands ? 0.36 : 0.02 * Math.rint(speed / 0.02);
                readings.add(new SiteReading(InventedSite.START.plusSeconds(1800L * i), depth, read, 0));
            }
            SiteRecord record = SiteRecord.ofReadings(readings);
            SiteBaseline baseline = BaselineRule.of(InventedSite.MONITOR)
                    .learn(record)
                    .baseline()
                    .orElseThrow();
            assertThat(baseline.sensor.chanceRun().step()).isCloseTo(0.02, within(1e-12));
            assertThat(baseline.sensor.chanceRun().scatter()).isBetween(0.02, 0.05);
            List<FindingName> names = WatchRule.of(baseline).watch(record).findings().stream()
                    .map(Finding::name)
                    .toList();
            if (isFrozen) {
                assertThat(names).containsExactly(FindingName.FROZEN_VELOCITY);
            } else {
                assertThat(names).isEmpty();
            }
        }
    }
}
