package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.rainfall.gauge.TippingBucket;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Machines and rules on their limits, by hand. The record begins off the round ten minutes. */
class EventLimitsTest {
    private static final Instant START = Instant.parse("2026-03-01T12:03:00Z");
    private static final Duration STEP = Duration.ofMinutes(10);
    private static final EventSeparation HALF_HOUR = EventSeparation.of(Duration.ofMinutes(30));

    private static RegularSeries steps(double... depths) {
        return RegularSeries.of(START, STEP, depths);
    }

    @Test
    void aReadingBeforeTheNextStepIsRefused() {
        EventDetector detector = HALF_HOUR.ofSteps(STEP).startAt(START);
        assertThatThrownBy(() -> detector.next(Reading.of(START.minus(STEP), 1)))
                .hasMessage("time must be after 2026-03-01T12:02:59.999999999Z, was 2026-03-01T11:53:00Z");
        detector.next(Reading.of(START, 1));
        detector.next(Reading.of(START.plus(STEP), 1));
        assertThatThrownBy(() -> detector.next(Reading.of(START.plus(STEP), 1)))
                .hasMessage("time must be after 2026-03-01T12:13:00Z, was 2026-03-01T12:13:00Z");
        assertThat(detector.next(Reading.of(START.plus(STEP.multipliedBy(2)), 1)))
                .isEmpty();
    }

    @Test
    void aDepthMustBeFinite() {
        EventDetector detector = HALF_HOUR.ofSteps(STEP).startAt(START);
        for (double depth : new double[] {Double.POSITIVE_INFINITY, -0.1}) {
            assertThatThrownBy(() -> detector.nextStep(depth))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("depthMm must be 0 or greater (mm), or NaN for missing, was ");
        }
    }

    /** Of five steps left out one ends the event; the other four lie before the next. */
    @Test
    void missingStepsAreSharedOutAtTheEndOfAnEvent() {
        EventDetector detector = HALF_HOUR.ofSteps(STEP).startAt(START);
        detector.nextStep(2);
        detector.nextStep(0);
        detector.nextStep(0);
        RainfallEvent first =
                detector.next(Reading.of(START.plus(STEP.multipliedBy(8)), 3)).get(0);
        assertThat(first.missingStepsAfter()).isEqualTo(1);
        RainfallEvent second = detector.finish().get(0);
        assertThat(second.antecedent()).isEqualTo(new Antecedent(STEP.multipliedBy(7), false, 5));
    }

    @Test
    void stepsLeftOutHaveALimit() {
        Duration second = Duration.ofSeconds(1);
        int most = Integer.MAX_VALUE - 8;
        EventDetector detector = EventSeparation.of(second).ofSteps(second).startAt(START);
        Instant last = START.plusSeconds(most);
        assertThatThrownBy(() -> detector.next(Reading.of(last.plusSeconds(1), 0)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("missing steps must be at most 2147483639, were 2147483640 up to " + last.plusSeconds(1));
        assertThat(detector.next(Reading.of(last, 0))).isEmpty();
        assertThat(detector.missingSteps()).isEqualTo(most);
        assertThatThrownBy(() -> detector.nextStep(Double.NaN))
                .hasMessage("missing steps must be at most 2147483639, were 2147483640 up to " + last.plusSeconds(2));
    }

    /** Two centuries before and after 1970: the time between does not fit into a long. */
    @Test
    void aGapOfCenturiesEndsAnEvent() {
        TipEventDetector detector = HALF_HOUR.ofTips(TippingBucket.ofTip(0.2)).start();
        detector.nextTip(Instant.parse("1770-01-01T00:00:00Z"));
        assertThat(detector.held()).isZero();
        assertThat(detector.advanceTo(Instant.parse("2200-01-01T00:00:00Z"))).isPresent();
    }

    @Test
    void whatIsHeld() {
        EventDetector steps = HALF_HOUR.withWetAbove(0.1).ofSteps(STEP).startAt(START);
        for (double depth : new double[] {2, 1, 0.05}) {
            steps.nextStep(depth);
        }
        assertThat(steps.held()).isEqualTo(3);
        TipEventDetector tips = HALF_HOUR.ofTips(TippingBucket.ofTip(0.2)).start();
        for (int i = 0; i < 3; i++) {
            tips.nextTip(START.plusSeconds(60L * i));
        }
        assertThat(tips.held()).isEqualTo(2);
    }

    @Test
    void aStateOfOtherStepsSaysSo() {
        String state = HALF_HOUR.ofSteps(STEP).start().state().toText();
        StepSeparation other = EventSeparation.of(Duration.ofMinutes(30)).ofSteps(Duration.ofMinutes(15));
        assertThatThrownBy(() -> other.parseState(state))
                .hasMessage("state must be that of a machine of the same rule, with step = 900000000000,"
                        + " was 600000000000");
    }

    /** Four gaps of 1 h and one of 6 h: mean 2 h, deviation of all 2 h, so the variation is 1 to the last bit. */
    @Test
    void gapsAsIrregularAsChance() {
        DryGaps irregular = DryGaps.ofHours(6, 1, 1, 1, 1);
        assertThat(irregular.candidates(DryGaps.Convention.GAPS)).hasSize(1);
        assertThat(irregular.candidates(DryGaps.Convention.GAPS).get(0).coefficientOfVariation())
                .isEqualTo(1);
        assertThat(irregular.exponential(DryGaps.Convention.GAPS)).isEmpty();
        DryGaps.Candidate found = DryGaps.ofHours(6, 1, 0.1, 1, 1, 1)
                .exponential(DryGaps.Convention.GAPS)
                .orElseThrow();
        assertThat(found.minimum()).isEqualTo(Duration.ofHours(1));
        assertThat(found.gaps()).isEqualTo(5);
    }

    @Test
    void gapsFromTheFirstStepOn() {
        assertThat(DryGaps.of(steps(1, 0, 0, 0, 1)).size()).isEqualTo(1);
        assertThat(DryGaps.of(steps(1, Double.NaN, 1)).unknown()).isEqualTo(1);
        assertThat(DryGaps.of(steps(0, Double.NaN, 1, 1)).unknown()).isZero();
        assertThat(DryGaps.of(steps(0, 0, 1, 1)).size()).isZero();
    }

    /** Deviations 1, 1, -1, -1 from their mean: two steps apart all pairs are opposite; the first half is like itself. */
    @Test
    void autocorrelationUpToTheLastLag() {
        RainAutocorrelation found = RainAutocorrelation.of(steps(2, 2, 0, 0), 2);
        assertThat(found.coefficient(2)).isEqualTo(-1);
        double[] halves = new double[100];
        Arrays.fill(halves, 0, 50, 2);
        assertThat(RainAutocorrelation.of(steps(halves), 3).independentAfter()).isEmpty();
        assertThatThrownBy(() -> RainAutocorrelation.of(steps(new double[150_000]), 100_000))
                .hasMessage("lags times steps of rain must be at most 10000000000, was 100000 times 150000");
    }

    @Test
    void criteriaOnTheirLimits() {
        Interval storm = Interval.of(START, Duration.ofMinutes(40));
        StormCriteria criteria = StormCriteria.ofDepthAndIntensity("ours", 5, 12, STEP);
        List<StormAssessment.Finding> findings =
                criteria.assess(storm, Map.of("A", steps(5 - 1e-9, 0, 0, 0))).findings();
        assertThat(findings.get(0).verdict()).isEqualTo(StormAssessment.Verdict.MET);
        assertThat(findings.get(1).what()).isEqualTo("A: intensity over 10 min, mm/h");
        assertThat(criteria.assess(storm, Map.of("A", steps(5 - 2e-9, 0, 0, 0)))
                        .findings()
                        .get(0)
                        .verdict())
                .isEqualTo(StormAssessment.Verdict.NOT_MET);
        // Rain from the first step to the third lasts half an hour.
        StormAssessment.Finding lasting = criteria.withConcentrationTime(Duration.ofMinutes(30))
                .assess(storm, Map.of("A", steps(1, 0, 1, 0)))
                .findings()
                .get(2);
        assertThat(lasting.value()).isEqualTo(0.5);
        assertThatThrownBy(() -> criteria.assess(storm, Map.of("A", steps(-1, 0))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("rain of A must be 0 or greater (mm), or NaN for missing, was -1");
    }
}
