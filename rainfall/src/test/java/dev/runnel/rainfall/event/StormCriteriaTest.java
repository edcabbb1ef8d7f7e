package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class StormCriteriaTest {
    private static final Instant START = Instant.parse("2026-03-01T12:00:00Z");
    private static final Interval STORM = Interval.of(START, Duration.ofMinutes(20));

    /** Dry from the last depth to the end of the storm. */
    private static RegularSeries rain(double... depths) {
        return RegularSeries.of(START, Duration.ofMinutes(2), Arrays.copyOf(depths, 10));
    }

    private static Map<String, RegularSeries> gauges(RegularSeries... rain) {
        Map<String, RegularSeries> gauges = new LinkedHashMap<>();
        for (int i = 0; i < rain.length; i++) {
            gauges.put("G" + (i + 1), rain[i]);
        }
        return gauges;
    }

    @Test
    void aStormThatServes() {
        StormAssessment assessment = StormCriteria.shortTermSurvey()
                .assess(STORM, gauges(rain(0, 2, 1, 2, 0), rain(1, 2, 1, 1, 0), rain(1, 1, 1, 2, 1)));
        assertThat(assessment.findings()).hasSize(7);
        assertThat(assessment.isSuitable()).isTrue();
        assertThat(assessment.findings().get(6).value()).isCloseTo(0.2, within(1e-12));
    }

    @Test
    void everyCriterionIsNamedWithItsFigures() {
        StormAssessment assessment =
                StormCriteria.shortTermSurvey().assess(STORM, gauges(rain(2, 2, 2), rain(0.1, 0.1, 3.8)));
        assertThat(assessment.isSuitable()).isFalse();
        assertThat(assessment.findings().get(2)).hasToString("G2: depth, mm 4 against 5: not met");
        // 6 and 4 mm: median 5, one fifth away.
        assertThat(assessment.findings().get(4).value()).isCloseTo(0.2, within(1e-12));
    }

    @Test
    void missingStepsLeaveItOpenUnlessThereIsEnoughWithoutThem() {
        StormAssessment assessment = StormCriteria.ofDepthAndIntensity("ours", 5, 6, Duration.ofMinutes(4))
                .withMaximumSpread(0.2)
                .assess(STORM, gauges(rain(6, Double.NaN), rain(1, Double.NaN)));
        assertThat(assessment.findings())
                .extracting(StormAssessment.Finding::verdict)
                .containsExactly(
                        StormAssessment.Verdict.MET,
                        StormAssessment.Verdict.MET,
                        StormAssessment.Verdict.UNKNOWN,
                        StormAssessment.Verdict.MET,
                        StormAssessment.Verdict.UNKNOWN);
        assertThat(assessment.isSuitable()).isFalse();
    }

    @Test
    void aRecordThatEndsInTheStormIsMissingAfterwards() {
        RegularSeries half = RegularSeries.of(START, Duration.ofMinutes(2), 3, 1, 0.5, 0, 0);
        StormAssessment assessment = StormCriteria.shortTermSurvey().assess(STORM, gauges(half, rain(3, 1, 2)));
        assertThat(assessment.findings())
                .extracting(StormAssessment.Finding::toString)
                .containsExactly(
                        "G1: depth, mm 4.5 against 5: unknown",
                        "G1: intensity over 4 min, mm/h 60 against 6: met",
                        "G2: depth, mm 6 against 5: met",
                        "G2: intensity over 4 min, mm/h 60 against 6: met",
                        "spread between gauges 0.143 against 0.2: unknown");
    }

    @Test
    void aGaugeThatWasNotThereIsUnknown() {
        RegularSeries later = RegularSeries.of(STORM.end(), Duration.ofMinutes(2), 1, 1);
        StormAssessment assessment = StormCriteria.shortTermSurvey().assess(STORM, gauges(rain(3, 3), later));
        assertThat(assessment.findings().get(2)).hasToString("G2: depth, mm, not recorded NaN against 5: unknown");
        assertThat(assessment.verdict()).isEqualTo(StormAssessment.Verdict.UNKNOWN);
    }

    @Test
    void aStormBetweenStepsKeepsTheRainOfItsFirstOne() {
        Interval betweenSteps = Interval.of(START.plusSeconds(30), START.plusSeconds(250));
        StormAssessment assessment = StormCriteria.ofDepthAndIntensity("ours", 5, 6, Duration.ofMinutes(4))
                .assess(betweenSteps, gauges(rain(4, 1, 0.5, 7)));
        assertThat(assessment.findings().get(0).value()).isEqualTo(5.5);
        assertThat(assessment.isSuitable()).isTrue();
    }

    @Test
    void oneGaugeCannotTellTheSpread() {
        StormAssessment assessment = StormCriteria.shortTermSurvey().assess(STORM, gauges(rain(3, 3)));
        assertThat(assessment.findings().get(2)).hasToString("spread between gauges 0 against 0.2: unknown");
    }

    @Test
    void criteriaOfOnesOwnAreJudgedAtEveryGauge() {
        StormCriteria criteria = StormCriteria.ofDepthAndIntensity("ours", 5, 6, Duration.ofMinutes(4))
                .withLeast(
                        "wet steps",
                        3,
                        rain -> Arrays.stream(rain.toValues())
                                .filter(depth -> depth > 0)
                                .count());
        assertThat(criteria).hasToString("StormCriteria[ours: 5 mm, 6 mm/h over 4 min, 1 more]");
        StormAssessment assessment = criteria.assess(STORM, gauges(rain(3, 3, 1), rain(9, 1), rain(9, Double.NaN)));
        assertThat(assessment.findings())
                .filteredOn(finding -> finding.what().endsWith("wet steps"))
                .extracting(StormAssessment.Finding::verdict)
                .containsExactly(
                        StormAssessment.Verdict.MET, StormAssessment.Verdict.NOT_MET, StormAssessment.Verdict.UNKNOWN);
        assertThatThrownBy(() -> criteria.withLeast("x", Double.NaN, rain -> 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("least must be finite, was NaN");
    }

    @Test
    void whatIsNotKnownIsNotCalledUnsuitable() {
        StormCriteria criteria = StormCriteria.ofDepthAndIntensity("ours", 5, 6, Duration.ofMinutes(4))
                .withMaximumSpread(0.2);
        StormAssessment alone = criteria.assess(STORM, gauges(rain(2, 2, 2)));
        assertThat(alone.findings().get(2).verdict()).isEqualTo(StormAssessment.Verdict.UNKNOWN);
        assertThat(alone.verdict()).isEqualTo(StormAssessment.Verdict.UNKNOWN);
        assertThat(alone.toString()).startsWith("StormAssessment[not known whether suitable by ours: ");
        assertThat(criteria.assess(STORM, gauges(rain(2, 2), rain(2, 2))).verdict())
                .isEqualTo(StormAssessment.Verdict.NOT_MET);
        assertThat(criteria.assess(STORM, gauges(rain(2, 2, 2), rain(2, 2, 2))).verdict())
                .isEqualTo(StormAssessment.Verdict.MET);
    }

    @Test
    void longStepsHideIntensityButDoNotMakeIt() {
        RegularSeries hard = RegularSeries.of(START, Duration.ofMinutes(5), 0.5, 4.5);
        RegularSeries slow = RegularSeries.of(START, Duration.ofMinutes(10), 0.9, 4.5, 0.9);
        StormCriteria criteria = StormCriteria.ofDepthAndIntensity("ours", 5, 30, Duration.ofMinutes(4));
        assertThat(criteria.assess(STORM, gauges(hard)).findings().get(1))
                .hasToString("G1: intensity over 5 min for 4 min, mm/h 54 against 30: met");
        assertThat(criteria.assess(STORM, gauges(slow)).findings().get(1))
                .hasToString("G1: intensity over 10 min for 4 min, mm/h 27 against 30: unknown");
    }

    @Test
    void stormsOfTheNetworkLastWhileItRainsAnywhere() {
        RegularSeries west = rain(2, 3, 0, 0, 0, 0, 0, 0, 4, 4);
        RegularSeries east = rain(0, 0, 0, 6, 1, 0, 0, 0, 0, 9);
        EventSeparation rule = EventSeparation.of(Duration.ofMinutes(6));
        List<StormAssessment> storms = StormCriteria.ofDepthAndIntensity("ours", 5, 6, Duration.ofMinutes(4))
                .withMaximumSpread(0.2)
                .assess(rule, gauges(west, east));
        assertThat(storms)
                .extracting(storm -> storm.storm().toString())
                .containsExactly(
                        "2026-03-01T12:00:00Z/2026-03-01T12:10:00Z", "2026-03-01T12:16:00Z/2026-03-01T12:20:00Z");
        assertThat(storms.get(0).findings().get(0).value()).isEqualTo(5);
        assertThat(storms.get(0).findings().get(2).value()).isEqualTo(7);
        assertThat(storms).extracting(StormAssessment::isSuitable).containsExactly(true, true);
        assertThat(StormCriteria.calibration2020().assess(rule, gauges(rain()))).isEmpty();
        // A shower that one gauge has inside the other's storm does not end it early.
        EventSeparation shorter = EventSeparation.of(Duration.ofMinutes(2));
        assertThat(StormCriteria.ofDepthAndIntensity("ours", 5, 6, Duration.ofMinutes(4))
                        .assess(shorter, gauges(rain(1, 1, 1, 1, 1, 1, 1), rain(0, 2, 0, 0, 0, 0, 0))))
                .extracting(storm -> storm.storm().duration())
                .containsExactly(Duration.ofMinutes(14));
    }

    @Test
    void refusesBadInput() {
        StormCriteria criteria = StormCriteria.calibration2020();
        assertThatThrownBy(() -> criteria.assess(EventSeparation.of(Duration.ofHours(1)), Map.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("rainByGauge must hold at least one gauge, held none");
        assertThatThrownBy(() -> criteria.assess(STORM, Map.of()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("rainByGauge must hold at least one gauge, held none");
        assertThatThrownBy(() -> criteria.assess(Interval.of(Instant.EPOCH, Duration.ofDays(1)), gauges(rain(1))))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("rainByGauge must hold a gauge with steps in"
                        + " 1970-01-01T00:00:00Z/1970-01-02T00:00:00Z, held none");
        assertThatThrownBy(() -> criteria.withMaximumSpread(-0.1)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> criteria.withMaximumSpread(20))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("maximumSpread must be in [0, 1]");
        assertThat(criteria).hasToString("StormCriteria[Wellington Water (2020): 20 mm, 10 mm/h over 10 min]");
    }
}
