package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class AntecedentIndexTest {
    private static RegularSeries daily(double... depths) {
        return RegularSeries.of(Instant.parse("2026-03-01T00:00:00Z"), Duration.ofDays(1), depths);
    }

    /** Recomputed elsewhere from the formula: 3.2, 0, 12.4, 0 and 1.8 mm on the five days before. */
    @Test
    void fiveDayIndexAndWetness() {
        double index = AntecedentIndex.fiveDays().indexMm(3.2, 0, 12.4, 0, 1.8);
        assertThat(index).isCloseTo(4.534322234358736, within(1e-13));
        assertThat(AntecedentIndex.urbanCatchmentWetnessOfIndexAndDeficit(index, 6.5))
                .isCloseTo(154.7745778748699, within(1e-12));
        assertThat(AntecedentIndex.catchmentWetnessOfIndexAndDeficit(index, 120))
                .isCloseTo(9.53432223435874, within(1e-12));
    }

    @Test
    void aRecordGivesWhatItsDaysGive() {
        AntecedentIndex index = AntecedentIndex.of(0.9, 3);
        RegularSeries before = index.before(daily(4, 0, 2, 10, Double.NaN, 0, 0, 0, 0));
        assertThat(before.missing()).isEqualTo(6);
        assertThat(before.value(3)).isCloseTo(0.9 * 2 + 0.729 * 4, within(1e-14));
        assertThat(before.value(4)).isCloseTo(index.indexMm(10, 2, 0), within(1e-14));
        assertThat(before.value(8)).isZero();
    }

    @Test
    void refusesBadInput() {
        assertThatThrownBy(() -> AntecedentIndex.of(1, 5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("recession must be above 0 and below 1, was 1");
        assertThatThrownBy(() -> AntecedentIndex.fiveDays().indexMm(1, 2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthsMm must have length 5, was 2");
        assertThatThrownBy(() -> AntecedentIndex.fiveDays().indexMm(1, 2, 3, -1, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthsMm of day -4 must be 0 or greater and finite (mm), was -1");
        assertThatThrownBy(() ->
                        AntecedentIndex.fiveDays().before(RegularSeries.of(Instant.EPOCH, Duration.ofHours(1), 1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("daily must have a step of 1 d, had 1 h");
    }

    @Test
    void refusesADeficitThatLeavesNoWetness() {
        assertThat(AntecedentIndex.urbanCatchmentWetnessOfIndexAndDeficit(4.5, 161))
                .isZero();
        assertThatThrownBy(() -> AntecedentIndex.urbanCatchmentWetnessOfIndexAndDeficit(4.5, 200))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("soilMoistureDeficitMm must be in [0, 161] mm, was 200");
        assertThatThrownBy(() -> AntecedentIndex.catchmentWetnessOfIndexAndDeficit(4.5, -1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("soilMoistureDeficitMm must be in [0, 129.5] mm, was -1");
    }
}
