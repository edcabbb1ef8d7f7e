package dev.runnel.rainfall.response;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.event.EventSeparation;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class ResponseRuleTest {
    private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");
    private static final Duration STEP = Duration.ofMinutes(10);
    private static final double DRY = 0.010;
    private static final ResponseRule RULE = ResponseRule.ofArea(200_000);

    /** Ten days of dry weather flow. */
    private final double[] rain = new double[1440];

    private final double[] flow = new double[1440];
    private final double[] dry = new double[1440];

    ResponseRuleTest() {
        Arrays.fill(flow, DRY);
        Arrays.fill(dry, DRY);
    }

    /** 6 mm in three steps, and from the fourth step on 0.1 m3/s that falls to 37 % in an hour. */
    private void storm(int at, double share) {
        Arrays.fill(rain, at, at + 3, 2);
        for (int i = 0; i < 60; i++) {
            flow[at + 4 + i] += 0.1 * share * Math.exp(-i / 6.0);
        }
    }

    private static RegularSeries series(double... values) {
        return RegularSeries.of(START, STEP, values);
    }

    private List<RainfallEvent> storms() {
        return EventSeparation.of(Duration.ofHours(3)).events(series(rain));
    }

    private StormResponses responses() {
        return RULE.responses(storms(), series(rain), series(flow), series(dry));
    }

    @Test
    void aStormThatIsWhole() {
        storm(100, 1);
        StormResponses responses = responses();
        assertThat(responses).hasToString("StormResponses[1 storms, 1 without doubt, 0 outside the records]");
        StormResponse only = responses.all().get(0);
        assertThat(only.doubts()).isEmpty();
        assertThat(only.depthMm()).isEqualTo(6);
        assertThat(only.rainCentre()).hasValue(START.plusSeconds(600 * 101 + 300));
        assertThat(only.peakM3PerS().orElseThrow()).isCloseTo(0.1, within(1e-15));
        assertThat(only.lagToPeak()).hasValue(Duration.ofMinutes(30));
        assertThat(only.recession().orElseThrow().constant().toNanos() / 3.6e12).isCloseTo(1, within(1e-9));
        // 0.1 exp(-i/6) falls below 0.001, a tenth of dry weather flow, at i = 28.
        assertThat(only.back().time()).hasValue(STEP.multipliedBy(104 + 28 - 103));
        assertThat(ResponseMeasure.TIME_TO_DRY.of(only).orElseThrow()).isCloseTo(29 / 6.0, within(1e-12));
        assertThat(only.isSound()).isTrue();
        double sum = 0;
        double moment = 0;
        for (int i = 0; i < 28; i++) {
            sum += Math.exp(-i / 6.0);
            moment += i * Math.exp(-i / 6.0);
        }
        assertThat(only.runoff().flowM3()).isCloseTo(60 * sum, within(1e-9));
        assertThat(only.runoff().rainM3()).isCloseTo(1200, within(1e-9));
        assertThat(only.lagToCentre().orElseThrow().toNanos() / 600e9).isCloseTo(3 + moment / sum, within(1e-9));
        assertThat(only)
                .hasToString("StormResponse[2026-03-01T16:40:00Z, 6 mm, volume 387.2 m3, 32.3 % of the rain, "
                        + "peak 100 l/s above dry weather, lag 30 min, K 1 h, back after 4 h 50 min]");
    }

    /** Two bursts 100 minutes apart, the first the harder: its peak comes before the centre of the whole storm. */
    @Test
    void theLagToTheCentreDoesNotHangOnTheShapeOfTheStorm() {
        storm(100, 1);
        double ofOneBurst = centres(responses().all().get(0));
        storm(113, 0.85);
        Arrays.fill(rain, 113, 116, 1.7);
        StormResponse both = responses().all().get(0);
        assertThat(both.lagToPeak().orElseThrow()).isNegative();
        assertThat(centres(both)).as("but for what stays below the allowance").isCloseTo(ofOneBurst, within(0.05));
    }

    private static double centres(StormResponse response) {
        assertThat(ResponseMeasure.LAG_TO_CENTRE.isSound(response)).isTrue();
        return ResponseMeasure.LAG_TO_CENTRE.of(response).orElseThrow();
    }

    @Test
    void theNextStormCutsAResponse() {
        storm(100, 1);
        // 3 h 20 min after the end of the first, when 0.006 m3/s are left.
        storm(123, 1);
        StormResponses responses = responses();
        StormResponse first = responses.all().get(0);
        assertThat(first.doubts()).containsExactly(ResponseDoubt.NEXT_STORM);
        assertThat(first.doubts()).hasToString("[next storm before the flow was back]");
        assertThat(first.runoff().window().end()).isEqualTo(START.plusSeconds(600 * 123));
        assertThat(ResponseMeasure.RUNOFF_PERCENT.isSound(first)).isFalse();
        assertThat(ResponseMeasure.PEAK.isSound(first)).isTrue();
        assertThat(ResponseMeasure.LAG_TO_PEAK.isSound(first)).isTrue();
        assertThat(responses.all().get(1).doubts()).containsExactly(ResponseDoubt.WET_BEFORE);
        assertThat(first.isSound()).isFalse();
        assertThat(responses.series(ResponseMeasure.RUNOFF_PERCENT).size()).isZero();
    }

    @Test
    void missingFlowAndRainAreMarked() {
        storm(100, 1);
        flow[110] = Double.NaN;
        storm(400, 1);
        rain[401] = Double.NaN;
        StormResponses responses = responses();
        assertThat(responses.all().get(0).doubts()).containsExactly(ResponseDoubt.FLOW_MISSING);
        assertThat(responses.all().get(1).doubts()).containsExactly(ResponseDoubt.RAIN_MISSING);
        assertThat(ResponseMeasure.RECESSION.isSound(responses.all().get(1))).isTrue();
    }

    @Test
    void moreFlowThanRainAndLessThanDry() {
        storm(100, 4);
        storm(400, 0);
        Arrays.fill(flow, 400, 420, 0.008);
        StormResponses responses = responses();
        assertThat(responses.all().get(0).doubts()).containsExactly(ResponseDoubt.MORE_THAN_RAIN);
        assertThat(responses.all().get(1).doubts())
                .containsExactly(ResponseDoubt.BELOW_DRY, ResponseDoubt.NO_RESPONSE, ResponseDoubt.NO_RECESSION);
        assertThat(responses.all().get(1).flowCentre()).isEmpty();
        assertThat(ResponseMeasure.LAG_TO_CENTRE.of(responses.all().get(1))).isEmpty();
    }

    @Test
    void aFlowThatNeverFallsBackIsMarked() {
        storm(100, 1);
        for (int i = 104; i < flow.length; i++) {
            flow[i] = Math.max(flow[i], 0.03);
        }
        StormResponse only = responses().all().get(0);
        assertThat(only.doubts()).contains(ResponseDoubt.NOT_BACK);
        assertThat(only.runoff().window().end()).isEqualTo(only.storm().end().plus(Duration.ofDays(3)));
        assertThat(only.toString()).contains("not seen back");
    }

    /** The flow comes two hours after the rain: an hour at dry weather before it is not the return. */
    @Test
    void aLateResponseIsWaitedFor() {
        Arrays.fill(rain, 100, 103, 2);
        for (int i = 0; i < 60; i++) {
            flow[115 + i] += 0.1 * Math.exp(-i / 6.0);
        }
        StormResponse only = responses().all().get(0);
        assertThat(only.doubts()).isEmpty();
        assertThat(only.lagToPeak()).hasValue(STEP.multipliedBy(14));
        assertThat(only.back().time()).hasValue(STEP.multipliedBy(115 + 28 - 103));
    }

    @Test
    void aPeakAtTheLimitIsMarked() {
        Arrays.fill(rain, 100, 103, 2);
        for (int i = 100; i < 300; i++) {
            flow[i] = DRY + 1e-4 * (i - 99);
        }
        StormResponse only = responses().all().get(0);
        assertThat(only.doubts()).contains(ResponseDoubt.PEAK_AT_LIMIT);
        assertThat(ResponseMeasure.PEAK.isSound(only)).isFalse();
    }

    @Test
    void stormsOutsideTheRecordsAreCounted() {
        storm(0, 1);
        storm(700, 1);
        RegularSeries cut = series(flow).slice(Interval.of(START.plusSeconds(6000), START.plus(Duration.ofDays(9))));
        RegularSeries usual = series(dry).slice(cut.interval());
        StormResponses responses = RULE.responses(storms(), series(rain), cut, usual);
        assertThat(responses.outside()).isEqualTo(1);
        assertThat(responses.all()).hasSize(1);
    }

    /** A storm on the first step of the records, answered at once: nothing lies before it, and the peak is the first place. */
    @Test
    void aPeakInTheVeryFirstStep() {
        rain[0] = 2;
        for (int i = 0; i < 60; i++) {
            flow[i] += 0.1 * Math.exp(-i / 6.0);
        }
        StormResponse only = responses().all().get(0);
        // Whether it rained before the record began nobody knows.
        assertThat(only.doubts()).containsExactly(ResponseDoubt.RAIN_MISSING, ResponseDoubt.WET_BEFORE);
        assertThat(only.peakM3PerS().orElseThrow()).isCloseTo(0.1, within(1e-15));
        assertThat(only.peakTime()).hasValue(START.plusSeconds(300));
        assertThat(only.recession().orElseThrow().constant().toNanos() / 3.6e12).isCloseTo(1, within(1e-9));
        assertThat(only.back().time()).hasValue(STEP.multipliedBy(28 - 1));
    }

    /** Before a storm of the second step lies one step, and it decides; what comes after does not. */
    @Test
    void theOneStepBeforeDecides() {
        storm(1, 1);
        assertThat(responses().all().get(0).doubts()).containsExactly(ResponseDoubt.RAIN_MISSING);
        flow[0] = 2 * DRY;
        assertThat(responses().all().get(0).doubts())
                .containsExactly(ResponseDoubt.RAIN_MISSING, ResponseDoubt.WET_BEFORE);
    }

    /** What is above dry weather by just the allowance is let be: before the storm, and as its peak. */
    @Test
    void justTheAllowanceIsLetBe() {
        Arrays.fill(dry, 0.5);
        Arrays.fill(flow, 0.75);
        Arrays.fill(rain, 100, 103, 2);
        ResponseRule half = RULE.withAllowance(0.5, Duration.ofHours(1));
        StormResponse only = half.responses(storms(), series(rain), series(flow), series(dry))
                .all()
                .get(0);
        assertThat(only.doubts())
                .contains(ResponseDoubt.NO_RESPONSE)
                .doesNotContain(ResponseDoubt.WET_BEFORE, ResponseDoubt.PEAK_AT_LIMIT);
        assertThat(only.back().time()).hasValue(Duration.ZERO);
    }

    /** Dry weather flow throughout is neither below dry weather nor an answer; as much flow as rain is not more. */
    @Test
    void noAnswerAndAllOfTheRain() {
        Arrays.fill(rain, 100, 103, 2);
        assertThat(responses().all().get(0).doubts())
                .containsExactly(ResponseDoubt.NO_RESPONSE, ResponseDoubt.NO_RECESSION);
        Arrays.fill(dry, 0);
        Arrays.fill(flow, 0);
        // 1200 m3 in three steps of 600 s.
        flow[104] = 1;
        flow[105] = 0.75;
        flow[106] = 0.25;
        assertThat(responses().all().get(0).runoff().flowM3()).isEqualTo(1200);
        assertThat(responses().all().get(0).doubts()).doesNotContain(ResponseDoubt.MORE_THAN_RAIN);
    }

    @Test
    void ofEqualPeaksTheFirst() {
        storm(100, 1);
        flow[106] = flow[104];
        assertThat(responses().all().get(0).lagToPeak()).hasValue(Duration.ofMinutes(30));
    }

    /** A gauge of one tip: the storm has no duration, its step has a centre. */
    @Test
    void aStormOfOneTip() {
        rain[100] = 0.2;
        flow[103] += 0.02;
        flow[104] += 0.01;
        flow[105] += 0.005;
        flow[106] += 0.0025;
        Instant tip = START.plusSeconds(600 * 100);
        RainfallEvent storm = RainfallEvent.of(Interval.of(tip, tip), 0.2, List.of());
        StormResponse only = RULE.responses(List.of(storm), series(rain), series(flow), series(dry))
                .all()
                .get(0);
        assertThat(only.doubts()).isEmpty();
        assertThat(only.lagToPeak()).hasValue(STEP.multipliedBy(3));
        assertThat(only.runoff().rainM3()).isCloseTo(40, within(1e-9));
    }

    /** Six storms a fortnight apart that answer by 10, 11, ... %: 1 % in 14 days, exactly; and 3 % more from the fourth on. */
    @Test
    void trendAndChange() {
        int count = 6;
        double[] wet = new double[count * 2016];
        double[] sewer = new double[count * 2016];
        double[] usual = new double[count * 2016];
        Arrays.fill(usual, DRY);
        Arrays.fill(sewer, DRY);
        for (int k = 0; k < count; k++) {
            int at = 2016 * k + 500;
            wet[at] = 5;
            // 1000 m3 of rain: 10 + k percent in one step and a fall.
            double volume = 10 * (10 + k + (k >= 3 ? 3 : 0));
            for (int i = 0; i < 4; i++) {
                sewer[at + 2 + i] += volume / 600 * new double[] {0.4, 0.3, 0.2, 0.1}[i];
            }
        }
        List<RainfallEvent> storms = EventSeparation.of(Duration.ofHours(3)).events(series(wet));
        StormResponses responses = RULE.responses(storms, series(wet), series(sewer), series(usual));
        assertThat(responses.series(ResponseMeasure.RUNOFF_PERCENT).toUsableValues())
                .usingComparatorWithPrecision(1e-9)
                .containsExactly(10, 11, 12, 16, 17, 18);
        Instant works = START.plus(Duration.ofDays(40));
        ResponseChange change = responses.change(ResponseMeasure.RUNOFF_PERCENT, works);
        assertThat(change.comparison().shift()).isCloseTo(6, within(1e-9));
        assertThat(change.toString())
                .isEqualTo("ResponseChange[runoff in %, from 11 (3 storms) to 17 (3), shift 6, "
                        + "95 % limits 4 to 8, p 0.1, 0 left out]");
        ResponseTrend trend = responses.trend(ResponseMeasure.RUNOFF_PERCENT);
        assertThat(trend.test().s()).isEqualTo(15);
        // The 15 slopes in % a fortnight: 1 (4 of them, the smallest), 2 (5), ...; the eighth is 5/3.
        assertThat(trend.perYear()).isCloseTo(2 * 365.25 / 14, within(0.35 * 365.25 / 14));
        assertThat(responses.trend(ResponseMeasure.DEPTH).perYear()).isZero();
        assertThat(trend.toString())
                .startsWith("ResponseTrend[runoff ")
                .contains(", 95 % limits ")
                .endsWith(" 6 storms, 0 left out]");
    }

    /** Scatter about a fall: R2 below 0.8 is no clear recession, above it is, and the fit is shown either way. */
    @Test
    void aRecessionThatExplainsTooLittleIsDoubted() {
        storm(100, 1);
        double[] rough = {0.1, 0.012, 0.06, 0.004, 0.04, 0.003, 0.02, 0.006, 0.01, 0.002};
        for (int i = 0; i < 28; i++) {
            flow[104 + i] = DRY + (i < rough.length ? rough[i] : 0);
        }
        StormResponse poor = responses().all().get(0);
        assertThat(poor.recession().orElseThrow().rSquared()).isBetween(0.0, 0.8);
        assertThat(poor.doubts()).containsExactly(ResponseDoubt.NO_RECESSION);

        double[] fair = {0.1, 0.05, 0.06, 0.02, 0.025, 0.008, 0.012, 0.005, 0.004, 0.002};
        for (int i = 0; i < fair.length; i++) {
            flow[104 + i] = DRY + fair[i];
        }
        StormResponse clear = responses().all().get(0);
        assertThat(clear.recession().orElseThrow().rSquared()).isBetween(0.8, 0.99);
        assertThat(clear.doubts()).isEmpty();
    }

    /** The only step in which a peak may lie is the first: it is the greatest, and the last that was looked at. */
    @Test
    void theFirstStepMayBeTheLastOfThePeak() {
        rain[0] = 2;
        flow[0] += 0.1;
        StormResponse only = RULE.withLongestLag(Duration.ZERO)
                .responses(storms(), series(rain), series(flow), series(dry))
                .all()
                .get(0);
        assertThat(only.peakTime()).hasValue(START.plusSeconds(300));
        assertThat(only.doubts()).contains(ResponseDoubt.PEAK_AT_LIMIT);
    }

    /** The steps are compared before the first storm is looked at, so that a quiet month tells of a wrong record, too. */
    @Test
    void withoutStormsTheStepsAreStillCompared() {
        assertThatThrownBy(() -> RULE.responses(List.of(), series(rain), series(flow), series(DRY)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("dryWeatherFlow must have the steps");
        assertThat(RULE.responses(List.of(), series(rain), series(flow), series(dry)))
                .hasToString("StormResponses[0 storms, 0 without doubt, 0 outside the records]");
    }

    @Test
    void badInputIsNamed() {
        assertThatThrownBy(() -> ResponseRule.ofArea(0))
                .hasMessage("areaM2 must be greater than 0 and finite (m2), was 0");
        assertThatThrownBy(() -> RULE.withAllowance(2, STEP)).hasMessage("allowance must be in [0, 1], was 2");
        assertThatThrownBy(() -> RULE.withLongest(Duration.ZERO)).hasMessageStartingWith("longest must be");
        assertThatThrownBy(() -> RULE.withLongestLag(Duration.ofHours(-1)))
                .hasMessageStartingWith("longestLag must not be negative");
        storm(100, 1);
        assertThatThrownBy(() -> responses().trend(ResponseMeasure.PEAK))
                .hasMessage("storms with a sound peak above dry weather must be at least 3, was 1");
        RainfallEvent one = storms().get(0);
        assertThatThrownBy(() -> RULE.responses(List.of(one), series(rain), series(flow), series(DRY)))
                .hasMessageStartingWith("dryWeatherFlow must have the steps");
        assertThatThrownBy(() -> RULE.responses(List.of(one, one), series(rain), series(flow), series(dry)))
                .hasMessageStartingWith("storms must not overlap");
        assertThat(RULE)
                .hasToString("ResponseRule[20 ha, back within 10 % for 1 h, lag up to 6 h, up to 3 d after the rain]");
    }
}
