package dev.runnel.timeseries;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.assertj.core.api.Assertions;
import org.junit.jupiter.api.Test;

class SeriesTest {
    private static final Instant T0 = Instant.parse("2026-01-01T00:00:00Z");
    private static final Series THREE = Series.builder()
            .add(T0, 1)
            .add(T0.plusSeconds(60), Double.NaN)
            .add(new Reading(T0.plusSeconds(120), 3, Quality.SUSPECT))
            .build();

    @Test
    void givesItsReadings() {
        assertThat(THREE.size()).isEqualTo(3);
        assertThat(THREE.get(2)).isEqualTo(new Reading(T0.plusSeconds(120), 3, Quality.SUSPECT));
        assertThat(THREE.get(1).isMissing()).isTrue();
        assertThat(THREE.stream().map(Reading::toString))
                .containsExactly(
                        "2026-01-01T00:00:00Z 1 unchecked",
                        "2026-01-01T00:01:00Z NaN missing",
                        "2026-01-01T00:02:00Z 3 suspect");
        assertThat(THREE.toUsableValues()).containsExactly(1, Double.NaN, Double.NaN);
        assertThat(THREE.count(Quality.SUSPECT)).isEqualTo(1);
        assertThat(THREE)
                .hasToString(
                        "Series[3 readings, 2026-01-01T00:00:00Z to 2026-01-01T00:02:00Z, 1 missing, " + "1 suspect]");
        assertThat(Series.empty()).hasToString("Series[no readings]");
        assertThatExceptionOfType(IndexOutOfBoundsException.class).isThrownBy(() -> THREE.get(3));
    }

    @Test
    void doesNotShareItsArrays() {
        long[] times = {0, 1};
        double[] values = {1, 2};
        Series series = Series.of(times, values);
        times[0] = 99;
        values[0] = 99;
        series.toValues()[1] = 99;
        series.toEpochNanos()[1] = 99;
        series.toQualityCodes()[1] = 4;
        assertThat(series).isEqualTo(Series.of(new long[] {0, 1}, new double[] {1, 2}));
    }

    @Test
    void aBuilderMayGoOnAfterBuilding() {
        SeriesBuilder builder = Series.builder().add(T0, 1);
        Series first = builder.build();
        for (int i = 1; i < 500; i++) {
            builder.add(T0.plusSeconds(i), i);
        }
        assertThat(first.size()).isEqualTo(1);
        assertThat(builder.build().size()).isEqualTo(500);
        assertThat(builder.build().value(499)).isEqualTo(499);
    }

    @Test
    void slicesAreHalfOpen() {
        Interval minute = Interval.of(T0, T0.plusSeconds(60));
        assertThat(THREE.slice(minute).size()).isEqualTo(1);
        assertThat(THREE.slice(Interval.of(T0.plusNanos(1), T0.plusSeconds(61))).size())
                .isEqualTo(1);
        assertThat(THREE.slice(Interval.of(T0, T0))).isEqualTo(Series.empty());
        assertThat(THREE.slice(Interval.of(Instant.MIN, Instant.MAX))).isEqualTo(THREE);
        assertThat(Series.empty().slice(minute).isEmpty()).isTrue();
        assertThat(THREE.firstIndexAtOrAfter(T0.plusSeconds(121))).isEqualTo(3);
        assertThat(THREE.firstIndexAtOrAfter(T0.plusSeconds(61))).isEqualTo(2);
    }

    @Test
    void mappingKeepsWhatIsMissing() {
        Series mapped = THREE.map(value -> value > 2 ? Double.NaN : 2 * value);
        assertThat(mapped.toValues()).containsExactly(2, Double.NaN, Double.NaN);
        assertThat(mapped.quality(2)).isEqualTo(Quality.MISSING);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> THREE.map(value -> value / 0))
                .withMessage("function must return finite values or NaN, was Infinity at 2026-01-01T00:00:00Z");
    }

    @Test
    void flagsOnlyWorsen() {
        byte poor = Quality.POOR.toCode();
        Series flagged = THREE.withFlags(new byte[] {poor, Quality.GOOD.toCode(), poor});
        assertThat(flagged.quality(0)).isEqualTo(Quality.POOR);
        assertThat(flagged.quality(1)).isEqualTo(Quality.MISSING);
        assertThat(flagged.quality(2)).isEqualTo(Quality.SUSPECT);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> THREE.withFlags(new byte[2]))
                .withMessage("flags must have length 3, was 2");
        byte missing = Quality.MISSING.toCode();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> THREE.withFlags(new byte[] {missing, missing, missing}))
                .withMessage("quality must be MISSING if and only if value is NaN, was MISSING with value 1");
    }

    @Test
    void refusesWhatIsNotASeries() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Series.of(new long[] {0, 0}, new double[2]))
                .withMessage("epochNanos must increase strictly, was 1970-01-01T00:00:00Z at index 1 after "
                        + "1970-01-01T00:00:00Z");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Series.of(new long[2], new double[1]))
                .withMessage("values must have length 2, was 1");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Series.of(new long[1], new double[] {Double.NEGATIVE_INFINITY}))
                .withMessage("value must be finite, or NaN for missing, was -Infinity");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Series.of(new long[1], new double[1], new byte[] {6}))
                .withMessage("code must be in [0, 5], was 6");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Series.of(new long[1], new double[] {Double.NaN}, new byte[1]))
                .withMessage("quality must be MISSING if and only if value is NaN, was GOOD with value NaN");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Series.builder().add(T0, 1).add(T0, 2))
                .withMessage("time must be after 2026-01-01T00:00:00Z, was 2026-01-01T00:00:00Z");
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        Series.builder().add(T0, 1).add(T0.plusSeconds(60), 2).add(T0.plusSeconds(30), 3))
                .withMessage("time must be after 2026-01-01T00:01:00Z, was 2026-01-01T00:00:30Z");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Reading.of(T0, Double.POSITIVE_INFINITY))
                .withMessage("value must be finite, or NaN for missing, was Infinity");
    }

    @Test
    void equalSeriesAreEqual() {
        Series same = Series.of(THREE.stream().toList());
        assertThat(same).isEqualTo(THREE).hasSameHashCodeAs(THREE);
        assertThat(same).isNotEqualTo(THREE.map(value -> value + 1));
        assertThat(Series.of(List.of())).isEqualTo(Series.empty());
    }

    @Test
    void qualityKnowsTheWorseAndTheUsable() {
        assertThat(Quality.GOOD.worst(Quality.ESTIMATE)).isEqualTo(Quality.ESTIMATE);
        assertThat(Quality.SUSPECT.worst(Quality.ESTIMATE)).isEqualTo(Quality.SUSPECT);
        assertThat(Quality.POOR.isUsable()).isTrue();
        assertThat(Quality.SUSPECT.isUsable()).isFalse();
        for (Quality each : Quality.values()) {
            assertThat(Quality.ofCode(each.toCode())).isEqualTo(each);
        }
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Quality.ofCode((byte) -1))
                .withMessage("code must be in [0, 5], was -1");
    }

    /** Each pair of clocks by all its instants: with even steps, with none, and with steps too large for a number. */
    @Test
    void sameInstantsAreThoseThatAreAllTheSame() {
        long[][] clocks = {
            {},
            {3},
            {4},
            {3, 5},
            {3, 6},
            {4, 6},
            {3, 5, 7},
            {3, 5, 8},
            {3, 6, 9},
            {4, 6, 8},
            {3, 5, 7, 9},
            {3, 5, 7, 10},
            {Long.MIN_VALUE, Long.MAX_VALUE},
            {Long.MIN_VALUE, 0, Long.MAX_VALUE},
            {Long.MIN_VALUE, -1, Long.MAX_VALUE - 1},
            {Long.MIN_VALUE + 1, Long.MAX_VALUE},
        };
        for (long[] one : clocks) {
            for (long[] other : clocks) {
                Series first = Series.of(one, new double[one.length]);
                Series second = Series.of(other, new double[other.length]);
                assertThat(first.hasTimesOf(second)).isEqualTo(Arrays.equals(one, other));
                assertThat(first.equals(second)).isEqualTo(Arrays.equals(one, other));
            }
        }
    }

    @Test
    void otherReadingsAtTheSameInstants() {
        Series first = Series.of(new long[] {1, 5}, new double[] {2, 3});
        Series other = first.withReadings(new double[] {7, Double.NaN}, new byte[] {0, 5});
        assertThat(other.toEpochNanos()).containsExactly(1, 5);
        assertThat(other.toValues()).containsExactly(7, Double.NaN);
        assertThat(other.quality(0)).isEqualTo(Quality.GOOD);
        assertThat(other.hasTimesOf(first)).isTrue();
        assertThat(Series.of(new long[] {1, 5}, new double[] {0, 0}).hasTimesOf(first))
                .isTrue();
        assertThat(Series.of(new long[] {1, 6}, new double[] {0, 0}).hasTimesOf(first))
                .isFalse();
        assertThat(Series.of(new long[] {1}, new double[] {0}).hasTimesOf(first))
                .isFalse();
        Assertions.assertThatThrownBy(() -> first.withReadings(new double[1], new byte[2]))
                .hasMessage("newValues must have length 2, was 1");
        Assertions.assertThatThrownBy(() -> first.withReadings(new double[] {1, Double.NaN}, new byte[2]))
                .hasMessageStartingWith("quality must be MISSING if and only if value is NaN");
    }

    @Test
    void theUsualStepIsNotMovedByAGap() {
        SeriesBuilder builder = Series.builder();
        for (int second : new int[] {0, 60, 120, 180, 9000, 9060}) {
            builder.add(T0.plusSeconds(second), 1);
        }
        assertThat(builder.build().usualStep()).isEqualTo(java.time.Duration.ofSeconds(60));
        assertThat(Series.of(new long[] {0, 7_000_000_000L}, new double[] {1, 2})
                        .usualStep())
                .isEqualTo(java.time.Duration.ofSeconds(7));
        assertThatExceptionOfType(IllegalStateException.class)
                .isThrownBy(() -> Series.empty().usualStep())
                .withMessage("series must have at least two readings for a step, had 0");
    }

    @Test
    void statisticsLeaveOutWhatIsSuspect() {
        Series series = Series.builder()
                .add(T0, 1)
                .add(new Reading(T0.plusSeconds(60), 631, Quality.SUSPECT))
                .add(T0.plusSeconds(120), 3)
                .build();
        assertThat(series.statistics().maximum()).isEqualTo(3);
        assertThat(series.statistics().count()).isEqualTo(2);
        assertThat(series.statistics().missing()).isEqualTo(1);
        assertThat(Statistics.of(series.toValues()).maximum()).isEqualTo(631);
    }
}
