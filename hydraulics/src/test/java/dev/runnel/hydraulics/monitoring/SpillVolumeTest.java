package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.structure.CoefficientWeir;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class SpillVolumeTest {
    private static final Instant START = Instant.parse("2026-03-02T00:00:00Z");
    private static final CoefficientWeir WEIR = CoefficientWeir.rectangular(1.2);
    private static final Duration GAP = Duration.ofMinutes(10);

    private static Series levels(double... values) {
        return RegularSeries.of(START, Duration.ofMinutes(2), values).toSeries();
    }

    private static Interval minutes(int from, int to) {
        return Interval.of(START.plus(Duration.ofMinutes(from)), START.plus(Duration.ofMinutes(to)));
    }

    /** Q = 1.8385 b h^1.5 at h = 0.1 m over ten minutes: 1.8385 x 1.2 x 0.0316228 x 600 = 41.86 m3. */
    @Test
    void aConstantHeadGivesTheLawTimesTheTime() {
        Series level = levels(0.4, 0.4, 0.4, 0.4, 0.4, 0.4, 0.4);

        SpillVolume spill = SpillVolume.of(WEIR, 0.3, 0.03, level, minutes(0, 10), GAP);

        assertThat(spill.volume()).isCloseTo(41.86, within(0.01));
        assertThat(spill.below()).isZero();
        assertThat(spill.coverage()).isEqualTo(1);
    }

    /** Levels 0.28, 0.31, 0.35, 0.31, 0.28: by hand, 2 min steps, Q at 0.01 m 0.0022062, at 0.05 m 0.0246661 m3/s. */
    @Test
    void whatGoesOverAtLowHeadsIsGivenBeside() {
        Series level = levels(0.28, 0.31, 0.35, 0.31, 0.28);

        SpillVolume spill = SpillVolume.of(WEIR, 0.3, 0.03, level, minutes(2, 8), GAP);

        double low = 0.0022062;
        double high = 0.0246661;
        assertThat(spill.volume()).isCloseTo(120 * ((low + high) / 2 * 2 + low / 2), within(1e-3));
        assertThat(spill.below()).isCloseTo(120 * (low / 2 * 2 + low / 2), within(1e-3));
    }

    @Test
    void aVolumeThatWasNotSeenIsNotTold() {
        Series level = Series.builder()
                .add(START, 0.4)
                .add(START.plus(Duration.ofHours(2)), 0.4)
                .build();

        SpillVolume spill = SpillVolume.of(WEIR, 0.3, 0.03, level, minutes(0, 120), GAP);

        assertThat(spill.volume()).isNaN();
        assertThat(spill).hasToString("SpillVolume[2026-03-02T00:00:00Z/2026-03-02T02:00:00Z: not known, 0 % covered]");
    }

    @Test
    void aLittleLevelIsMuchSpillNearTheCrest() {
        Series level = levels(0.32, 0.32, 0.32, 0.32);
        SpillVolume spill = SpillVolume.of(WEIR, 0.3, 0.03, level, minutes(0, 6), GAP);
        SpillVolume raised = SpillVolume.of(WEIR, 0.29, 0.03, level, minutes(0, 6), GAP);

        // (0.03/0.02)^1.5 - 1
        assertThat(spill.relativeChange(raised)).isCloseTo(0.83712, within(1e-5));
        assertThat(spill.below()).isEqualTo(spill.volume());
    }

    @Test
    void refusesWhatIsNotPossible() {
        Series level = levels(0.4, 0.4);
        assertThatThrownBy(() -> SpillVolume.of(WEIR, 0.3, -1, level, minutes(0, 2), GAP))
                .hasMessage("lowestHead must be 0 or greater and finite (m), was -1");
        assertThatThrownBy(() -> SpillVolume.of(WEIR, 0.3, 0, level, minutes(2, 2), GAP))
                .hasMessageStartingWith("discharge must not be empty, was ");
    }

    /** A level at the lowest head is none below it; of nothing there is no share. */
    @Test
    void levelsOnTheirLimits() {
        SpillVolume atLimit = SpillVolume.of(WEIR, 0.25, 0.125, levels(0.375, 0.375, 0.375, 0.375), minutes(0, 6), GAP);
        assertThat(atLimit.volume()).isPositive();
        assertThat(atLimit.below()).isZero();
        SpillVolume dry = SpillVolume.of(WEIR, 0.3, 0.03, levels(0.25, 0.25, 0.25, 0.25), minutes(0, 6), GAP);
        assertThat(dry.volume()).isZero();
        assertThat(dry.relativeChange(atLimit)).isNaN();
    }
}
