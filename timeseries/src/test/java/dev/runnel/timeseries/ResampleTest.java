package dev.runnel.timeseries;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class ResampleTest {
    private static final Instant T0 = Instant.parse("2026-01-01T00:00:00Z");
    private static final Duration TEN = Duration.ofMinutes(10);

    @Test
    void holdsEachReadingUntilTheNext() {
        // 1 for 2 min, 4 for 3 min, 2 for 5 min: (2 + 12 + 10) / 10.
        Series series = minutes(0, 1, 2, 4, 5, 2, 10, 9);
        Resampled result = Resample.mean(TEN).withMaximumGap(TEN).applyWithCoverage(series);
        assertThat(result.values().value(0)).isCloseTo(2.4, within(1e-15));
        assertThat(result.coverage().value(0)).isEqualTo(1);
        assertThat(result.values().size()).isEqualTo(2);
        assertThat(result.values().value(1)).isEqualTo(9);
    }

    @Test
    void joinsReadingsByALine() {
        // 0 at 0 min, 10 at 10 min, 0 at 15 min: mean 5 over the first step, and 5 over the half known of the second.
        Resampled result = Resample.mean(TEN)
                .withBetweenReadings(BetweenReadings.LINEAR)
                .withMaximumGap(TEN)
                .withMinimumCoverage(0.5)
                .applyWithCoverage(minutes(0, 0, 10, 10, 15, 0));
        assertThat(result.values().toValues()).containsExactly(5, 5);
        assertThat(result.coverage().toValues()).containsExactly(1, 0.5);
    }

    @Test
    void aLineIsWeighedInEveryStepItCrosses() {
        Series series = minutes(5, 0, 25, 20);
        RegularSeries mean = Resample.mean(TEN)
                .withBetweenReadings(BetweenReadings.LINEAR)
                .withMaximumGap(Duration.ofMinutes(20))
                .withMinimumCoverage(0)
                .apply(series);
        assertThat(mean.toValues()).containsExactly(2.5, 10, 17.5);
    }

    @Test
    void doesNotJoinAcrossMoreThanTheMaximumGap() {
        Series series = minutes(0, 1, 10, 1);
        Resample mean = Resample.mean(TEN).withBetweenReadings(BetweenReadings.LINEAR);
        assertThat(mean.withMaximumGap(TEN).apply(series).value(0)).isEqualTo(1);
        assertThat(mean.withMaximumGap(TEN.minusNanos(1)).apply(series).value(0))
                .isNaN();
    }

    @Test
    void aReadingHoldsForTheMaximumGapAndNoLonger() {
        Resampled result = Resample.mean(TEN)
                .withMaximumGap(Duration.ofMinutes(4))
                .withMinimumCoverage(0.4)
                .applyWithCoverage(minutes(0, 3, 30, 5));
        assertThat(result.coverage().toValues()).containsExactly(0.4, 0, 0, 0.4);
        assertThat(result.values().toValues()).containsExactly(3, Double.NaN, Double.NaN, 5);
        assertThat(result.lost()).isEqualTo(2);
    }

    @Test
    void byDefaultOneLostReadingShows() {
        // Two-minute readings, the one at 4 min lost: 2 min holds until 5 min, so a minute is unknown.
        Series series = minutes(0, 1, 2, 1, 6, 1, 8, 1, 10, 1);
        assertThat(Resample.mean(TEN).applyWithCoverage(series).coverage().value(0))
                .isCloseTo(0.9, within(1e-15));
        assertThat(Resample.sum(TEN).apply(series).value(0)).isNaN();
        assertThat(Resample.mean(TEN).apply(series).value(0)).isEqualTo(1);
    }

    @Test
    void leavesSuspectAndMissingReadingsOut() {
        Series series = Series.builder()
                .add(T0, 1)
                .add(new Reading(T0.plusSeconds(120), 99, Quality.SUSPECT))
                .add(T0.plusSeconds(240), Double.NaN)
                .add(T0.plusSeconds(360), 3)
                .build();
        Resample rule = Resample.mean(TEN).withMaximumGap(TEN).withMinimumCoverage(0);
        // 1 holds over both for 6 min, 3 for the 4 min left.
        assertThat(rule.apply(series).value(0)).isCloseTo(1.8, within(1e-15));
        assertThat(Resample.maximum(TEN).withMinimumCoverage(0).apply(series).value(0))
                .isEqualTo(3);
    }

    @Test
    void givesSumMaxMinAndLastOfTheReadingsInEachStep() {
        Series series = minutes(0, 1, 2, 5, 4, -3, 6, 4, 8, 2, 10, 7, 12, 8, 14, 9, 16, 1, 18, 0);
        assertThat(Resample.sum(TEN).apply(series).toValues()).containsExactly(9, 25);
        assertThat(Resample.maximum(TEN).apply(series).toValues()).containsExactly(5, 9);
        assertThat(Resample.minimum(TEN).apply(series).toValues()).containsExactly(-3, 0);
        assertThat(Resample.last(TEN).apply(series).toValues()).containsExactly(2, 0);
    }

    @Test
    void aStepWithoutAReadingHasNoMaximumEvenWhereOneHolds() {
        Series hourly = minutes(0, 5, 60, 6);
        Duration quarter = Duration.ofMinutes(15);
        Resample max = Resample.maximum(quarter).withMaximumGap(Duration.ofHours(1));
        assertThat(max.apply(hourly).toValues()).containsExactly(5, Double.NaN, Double.NaN, Double.NaN, 6);
        assertThat(Resample.mean(quarter)
                        .withMaximumGap(Duration.ofHours(1))
                        .apply(hourly)
                        .toValues())
                .containsExactly(5, 5, 5, 5, 6);
    }

    @Test
    void countsStepsFromTheOrigin() {
        Series series = minutes(7, 1, 8, 1);
        assertThat(Resample.last(TEN).withMinimumCoverage(0).apply(series).start())
                .isEqualTo(T0);
        assertThat(Resample.last(TEN)
                        .withMinimumCoverage(0)
                        .withOrigin(T0.plusSeconds(300))
                        .apply(series)
                        .start())
                .isEqualTo(T0.plusSeconds(300));
    }

    @Test
    void cutsStepsAlsoBefore1970() {
        Instant old = Instant.parse("1969-12-31T23:57:00Z");
        Series series =
                Series.builder().add(old, 1).add(old.plusSeconds(240), 2).build();
        RegularSeries last = Resample.last(TEN).withMinimumCoverage(0).apply(series);
        assertThat(last.start()).isEqualTo(Instant.parse("1969-12-31T23:50:00Z"));
        assertThat(last.toValues()).containsExactly(1, 2);
    }

    @Test
    void coversAGivenIntervalWhereTheRecordHasNothingToo() {
        Series series = minutes(10, 1, 15, 2, 20, 3);
        Interval hour = Interval.of(T0, Duration.ofMinutes(35));
        RegularSeries mean = Resample.mean(TEN).apply(series, hour);
        assertThat(mean.toValues()).containsExactly(Double.NaN, 1.5, 3);
        assertThat(mean.start()).isEqualTo(T0);
        assertThat(Resample.mean(TEN)
                        .apply(series, Interval.of(T0, Duration.ofMinutes(9)))
                        .isEmpty())
                .isTrue();
    }

    @Test
    void anEmptySeriesGivesNoSteps() {
        assertThat(Resample.mean(TEN).apply(Series.empty()).isEmpty()).isTrue();
        assertThat(Resample.mean(TEN).apply(RegularSeries.of(T0, TEN)).isEmpty())
                .isTrue();
    }

    @Test
    void aSingleReadingSpeaksForNothingUnlessToldSo() {
        Series one = minutes(0, 4);
        assertThat(Resample.mean(TEN).apply(one).value(0)).isNaN();
        assertThat(Resample.mean(TEN).withMaximumGap(TEN).apply(one).value(0)).isEqualTo(4);
    }

    @Test
    void makesARegularSeriesCoarser() {
        RegularSeries fine = RegularSeries.of(T0, Duration.ofMinutes(5), 1, 2, 3, Double.NaN, Double.NaN, Double.NaN);
        assertThat(Resample.sum(TEN).apply(fine).toValues()).containsExactly(3, Double.NaN, Double.NaN);
        assertThat(Resample.mean(TEN).withMinimumCoverage(0.5).apply(fine).toValues())
                .containsExactly(1.5, 3, Double.NaN);
        assertThat(Resample.maximum(TEN).apply(fine).toValues()).containsExactly(2, Double.NaN, Double.NaN);
        assertThat(Resample.sum(TEN)
                        .withMinimumCoverage(0)
                        .applyWithCoverage(fine)
                        .coverage()
                        .toValues())
                .containsExactly(1, 0.5, 0);
    }

    @Test
    void aCoarserStepThatBeginsBeforeTheRecordIsNotWhole() {
        RegularSeries fine = RegularSeries.of(T0.plusSeconds(300), Duration.ofMinutes(5), 1, 2, 3);
        RegularSeries sum = Resample.sum(TEN).apply(fine);
        assertThat(sum.start()).isEqualTo(T0);
        assertThat(sum.toValues()).containsExactly(Double.NaN, 5);
    }

    @Test
    void refusesStepsThatDoNotFit() {
        RegularSeries fine = RegularSeries.of(T0.plusSeconds(60), Duration.ofMinutes(4), 1);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Resample.sum(TEN).apply(fine))
                .withMessage("step must be a whole multiple of the series' step 4 min, was 10 min");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Resample.sum(Duration.ofMinutes(8)).apply(fine))
                .withMessage("origin must be a whole number of steps of 4 min from the series' start "
                        + "2026-01-01T00:01:00Z, was 1970-01-01T00:00:00Z");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Resample.mean(Duration.ZERO))
                .withMessage("step must be longer than 0, was 0 s");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Resample.mean(TEN).withMaximumGap(Duration.ofSeconds(-1)))
                .withMessage("maximumGap must not be negative, was -1 s");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Resample.mean(TEN).withMinimumCoverage(1.5))
                .withMessage("minimumCoverage must be in [0, 1], was 1.5");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Resample.mean(TEN).withMinimumCoverage(Double.NaN))
                .withMessage("minimumCoverage must be in [0, 1], was NaN");
    }

    @Test
    void refusesMoreStepsThanAnArrayHolds() {
        Series century = Series.builder()
                .add(Instant.parse("1800-01-01T00:00:00Z"), 1)
                .add(Instant.parse("2200-01-01T00:00:00Z"), 1)
                .build();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Resample.mean(Duration.ofNanos(1)).apply(century))
                .withMessage("step must be long enough for fewer than 2^31 steps from 1800-01-01T00:00:00Z "
                        + "to 2200-01-01T00:00:00Z, was PT0.000000001S");
    }

    @Test
    void refusesAStepThatEndsAfterTimeDoes() {
        Series last =
                Series.builder().add(Instant.parse("2262-04-10T00:00:00Z"), 1).build();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Resample.mean(Duration.ofDays(100)).apply(last))
                .withMessage(
                        "series must span less than 292 years and end a step before 2262-04-11, was 1 steps of 100 d "
                                + "from 2262-02-19T00:00:00Z");
    }

    @Test
    void saysWhatItDoes() {
        assertThat(Resample.mean(TEN))
                .hasToString("Resample[mean over 10 min, hold up to 1.5 usual spacings, " + "coverage at least 0.75]");
        assertThat(Resample.sum(TEN).withMaximumGap(TEN).withBetweenReadings(BetweenReadings.LINEAR))
                .hasToString("Resample[sum over 10 min, linear up to 10 min, coverage at least 1]");
        assertThat(Resample.mean(TEN).withMaximumGap(TEN).applyWithCoverage(minutes(0, 3)))
                .hasToString("Resampled[1 steps of 10 min, 0 lost, mean coverage 1]");
    }

    private static Series minutes(double... minuteAndValue) {
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < minuteAndValue.length; i += 2) {
            builder.add(T0.plusSeconds((long) (60 * minuteAndValue[i])), minuteAndValue[i + 1]);
        }
        return builder.build();
    }
}
