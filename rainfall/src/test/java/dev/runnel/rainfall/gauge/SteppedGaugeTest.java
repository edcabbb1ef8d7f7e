package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class SteppedGaugeTest {
    private static final Instant NOON = Instant.parse("2026-03-01T12:00:00Z");
    private static final Duration FIVE_MINUTES = Duration.ofMinutes(5);
    private static final SteppedGauge DEPTH = SteppedGauge.ofDepth(FIVE_MINUTES);

    /** Pairs of minutes after noon and value. */
    private static Series readings(double... minutesAndValues) {
        SeriesBuilder readings = Series.builder();
        for (int i = 0; i < minutesAndValues.length; i += 2) {
            readings.add(NOON.plusSeconds(Math.round(60 * minutesAndValues[i])), minutesAndValues[i + 1]);
        }
        return readings.build();
    }

    @Test
    void leavesAStepWithoutAReadingUnknown() {
        StepRecord record = DEPTH.record(readings(0, 0.2, 5, 0.0, 20, 0.4));
        assertThat(record.depth().start()).isEqualTo(NOON);
        assertThat(record.depth().toValues()).containsExactly(0.2, 0, Double.NaN, Double.NaN, 0.4);
        assertThat(record.missing()).isEqualTo(2);
        assertThat(record.filledDry()).isZero();
    }

    @Test
    void takesItAsDryWhereTheLoggerWritesWetStepsOnly() {
        StepRecord record = DEPTH.withDryWithoutReading().record(readings(0, 0.2, 20, 0.4, 25, Double.NaN));
        assertThat(record.depth().toValues()).containsExactly(0.2, 0, 0, 0, 0.4, Double.NaN);
        assertThat(record.filledDry()).isEqualTo(3);
        assertThat(record.missing()).isEqualTo(1);
    }

    @Test
    void turnsIntensityIntoDepth() {
        assertThat(SteppedGauge.ofIntensity(FIVE_MINUTES)
                        .record(readings(0, 12, 5, 60))
                        .depth()
                        .toValues())
                .containsExactly(1, 5);
        assertThat(SteppedGauge.ofIntensity(Duration.ofHours(1)).toString()).contains("mm/h");
    }

    @Test
    void beginsStepsBeforeStampsAtTheirEnds() {
        StepRecord record = DEPTH.withStampAtEnd().record(readings(0, 0.2, 5, 0.4));
        assertThat(record.depth().start()).isEqualTo(NOON.minus(FIVE_MINUTES));
        assertThat(record.depth().toValues()).containsExactly(0.2, 0.4);
    }

    @Test
    void laysTheStepsWhereMostReadingsLie() {
        StepRecord record = DEPTH.record(readings(0, 0.6, 2, 0.2, 7, 0.4, 11.5, 0.8, 17, 1.0));
        assertThat(record.depth().start()).isEqualTo(NOON.minus(Duration.ofMinutes(3)));
        assertThat(record.depth().toValues()).containsExactly(Double.NaN, 0.2, 0.4, Double.NaN, 1.0);
        assertThat(record.aside()).isEqualTo(2);
        assertThat(record.asideMm()).isEqualTo(0.6 + 0.8);
        assertThat(record)
                .hasToString("StepRecord[5 steps of 5 min, 1.6 mm, 2 missing, 0 filled as dry, "
                        + "2 readings with 1.4 mm set aside]");
    }

    @Test
    void cutsToTheStepsWhollyWithinAnInterval() {
        Interval interval = Interval.of(NOON.plusSeconds(60), Duration.ofMinutes(21));
        StepRecord record = DEPTH.record(readings(0, 0.2, 5, 0.4, 20, 0.6, 25, 0.8), interval);
        assertThat(record.depth().interval()).isEqualTo(Interval.of(NOON.plus(FIVE_MINUTES), Duration.ofMinutes(15)));
        assertThat(record.depth().toValues()).containsExactly(0.4, Double.NaN, Double.NaN);
    }

    @Test
    void knowsNothingOfARecordWithoutReadings() {
        Interval hour = Interval.of(NOON, Duration.ofHours(1));
        assertThat(DEPTH.record(Series.empty(), hour).missing()).isEqualTo(12);
        assertThat(DEPTH.withDryWithoutReading()
                        .record(Series.empty(), hour)
                        .depth()
                        .sum())
                .isZero();
    }

    @Test
    void doesNotKnowWhatASuspectReadingMeant() {
        Series flagged = Series.builder()
                .add(new Reading(NOON, 0.2, Quality.GOOD))
                .add(new Reading(NOON.plus(FIVE_MINUTES), 99, Quality.SUSPECT))
                .build();
        assertThat(DEPTH.withDryWithoutReading().record(flagged).depth().toValues())
                .containsExactly(0.2, Double.NaN);
    }

    @Test
    void refusesWhatItCannotPlace() {
        assertThatThrownBy(() -> SteppedGauge.ofDepth(Duration.ZERO)).hasMessageContaining("step must be");
        assertThatThrownBy(() -> DEPTH.record(Series.empty()))
                .hasMessage("readings must hold at least one reading, was empty");
        assertThatThrownBy(() -> DEPTH.record(readings(0, 0.2, 5, -999)))
                .hasMessage("readings must be 0 or greater (mm), or NaN for missing, was -999 at index 1, "
                        + "2026-03-01T12:05:00Z");
        assertThatThrownBy(() -> DEPTH.record(readings(0, 0.2), Interval.of(NOON, Duration.ofMinutes(4))))
                .hasMessageStartingWith("interval must hold a step of 5 min, was ");
    }

    @Test
    void aRecordOfStepsThatCannotBeIsRefused() {
        dev.runnel.timeseries.RegularSeries depth =
                dev.runnel.timeseries.RegularSeries.of(Instant.EPOCH, Duration.ofMinutes(5), 1, Double.NaN);
        assertThatThrownBy(() -> new StepRecord(depth, 0, 0, 0, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("missing must be the steps missing in depth, 1, was 0");
        assertThatThrownBy(() -> new StepRecord(depth, 1, 0, -1, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new StepRecord(depth, 1, 0, 0, Double.NaN))
                .isInstanceOf(IllegalArgumentException.class);
    }
}
