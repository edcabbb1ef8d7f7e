package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** What the one finding that is open means for those that ask: hours straight into the machine, 20 quiet days and what follows. */
class ChangeWatchTest {
    private static final int QUIET_DAYS = 20;
    private static final WatchRule RULE = learn();

    private final Findings findings = new Findings();
    private final ChangeWatch watch = new ChangeWatch(RULE, findings, new TideWatch(false, findings));
    private final NoisyHours hours =
            new NoisyHours(8, Math.floorDiv(InventedSite.START.getEpochSecond(), 3600L) / 24 * 24);

    private static WatchRule learn() {
        SiteRecord record = InventedSite.of(30, 5).record(InventedSite.Fault.NONE);
        return WatchRule.of(
                BaselineRule.of(InventedSite.MONITOR).learn(record).baseline().orElseThrow());
    }

    /** Hours of which velocity at its depth, depth and velocity stand so far from usual, ln. */
    private void days(int days, double r, double d, double u) {
        hours.days(watch, days, r, d, u);
    }

    @Test
    void nothingOpenMovesNoDepth() {
        days(QUIET_DAYS, 0, 0, 0);
        assertThat(watch.isOpen()).isFalse();
        assertThat(watch.movesDepth()).isFalse();
        assertThat(watch.isWater()).isFalse();
        assertThat(watch.slows()).isFalse();
    }

    @Test
    void waterHeldUpMovesTheDepthUntilItIsOver() {
        days(QUIET_DAYS, 0, 0, 0);
        days(6, -0.75, 0.4, -0.6);
        assertThat(watch.isOpen()).isTrue();
        assertThat(watch.isWater()).isFalse();
        assertThat(watch.movesDepth()).isTrue();
        assertThat(watch.slows()).isTrue();
        days(8, 0, 0, 0);
        assertThat(watch.isOpen()).isFalse();
        assertThat(watch.movesDepth()).isFalse();
    }

    @Test
    void aVelocityThatReadsLowMovesNoDepth() {
        days(QUIET_DAYS, 0, 0, 0);
        days(6, -0.6, 0, -0.6);
        assertThat(watch.isOpen()).isTrue();
        assertThat(watch.movesDepth()).isFalse();
        assertThat(watch.slows()).isTrue();
    }

    @Test
    void aDepthThatReadsHighMovesIt() {
        days(QUIET_DAYS, 0, 0, 0);
        days(6, -0.25, 0.45, 0);
        assertThat(watch.isOpen()).isTrue();
        assertThat(watch.movesDepth()).isTrue();
        assertThat(watch.slows()).isFalse();
    }

    /** More water moves the depth truly: rain still answers as ever, so a gauge may be asked. */
    @Test
    void moreWaterIsNoDepthThatIsReadOtherwise() {
        days(QUIET_DAYS, 0, 0, 0);
        days(10, 0, 0.5, 0.28);
        assertThat(watch.isOpen()).isTrue();
        assertThat(watch.isWater()).isTrue();
        assertThat(watch.movesDepth()).isFalse();
    }
}
