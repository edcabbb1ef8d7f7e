package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Gauges, curves and comparisons on both sides of their limits, by hand. */
class GaugeLimitsTest {
    private static final Instant START = Instant.parse("2026-03-01T12:03:00Z");
    private static final Duration STEP = Duration.ofMinutes(10);
    private static final SteppedGauge GAUGE = SteppedGauge.ofDepth(STEP);

    private static Series every(int minutes, double... values) {
        List<Reading> readings = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            readings.add(Reading.of(START.plusSeconds(60L * minutes * i), values[i]));
        }
        return Series.of(readings);
    }

    @Test
    void aGaugeInStepsSaysHowItCounts() {
        assertThat(GAUGE)
                .hasToString(
                        "SteppedGauge[mm in steps of 10 min, stamped at the beginning, without a reading not known]");
        assertThat(SteppedGauge.ofIntensity(STEP).withStampAtEnd().withDryWithoutReading())
                .hasToString("SteppedGauge[mm/h in steps of 10 min, stamped at the end, without a reading dry]");
        assertThatThrownBy(() -> GAUGE.record(every(10)))
                .hasMessage("readings must hold at least one reading, was empty");
        assertThatThrownBy(() -> SteppedGauge.ofIntensity(STEP).record(every(10, 1, -2)))
                .hasMessageStartingWith("readings must be 0 or greater (mm/h), or NaN for missing, was -2 at index 1");
    }

    /** Three readings on the steps and one between them, of which nobody knows to which step it belongs. */
    @Test
    void readingsBesideTheStepsAreSetAside() {
        Series mixed = Series.of(List.of(
                Reading.of(START, 1),
                Reading.of(START.plus(STEP), 2),
                Reading.of(START.plusSeconds(900), 0.5),
                Reading.of(START.plus(STEP.multipliedBy(3)), 4)));
        StepRecord record = GAUGE.record(mixed);
        assertThat(record.depth().toValues()).containsExactly(1, 2, Double.NaN, 4);
        assertThat(record.aside()).isEqualTo(1);
        assertThat(record.asideMm()).isEqualTo(0.5);
        assertThat(GAUGE.withDryWithoutReading().record(mixed).depth().toValues())
                .containsExactly(1, 2, 0, 4);
        assertThat(GAUGE.withDryWithoutReading().record(mixed).filledDry()).isEqualTo(1);
        assertThat(GAUGE.withStampAtEnd().record(mixed).depth().start()).isEqualTo(START.minus(STEP));
        // Six millimetres an hour over ten minutes are one.
        assertThat(SteppedGauge.ofIntensity(STEP).record(every(10, 6)).depth().value(0))
                .isCloseTo(1, within(1e-15));
    }

    @Test
    void aRecordOfAnInterval() {
        Series readings = every(10, 1, 2, 4, 8);
        Interval cut = Interval.of(START.plusSeconds(60), START.plusSeconds(1800));
        StepRecord record = GAUGE.record(readings, cut);
        assertThat(record.depth().start()).isEqualTo(START.plus(STEP));
        assertThat(record.depth().toValues()).containsExactly(2, 4);
        assertThat(GAUGE.record(readings, Interval.of(START, START.plus(STEP)))
                        .depth()
                        .toValues())
                .containsExactly(1);
        Interval tooShort = Interval.of(START, START.plus(STEP).minusNanos(1));
        assertThatThrownBy(() -> GAUGE.record(readings, tooShort))
                .hasMessage("interval must hold a step of 10 min, was " + tooShort);
        assertThat(GAUGE.record(every(10), Interval.of(START, STEP)).depth().toValues())
                .containsExactly(Double.NaN);
    }

    /** (Ir - 2)² + 1 and (Ir - 2)² - 0.5: the vertex lies in the middle of the range, above 0 and below it. */
    @Test
    void curvesArePositiveOverTheirRange() {
        CalibrationCurve curve = CalibrationCurve.quadratic(5, -4, 1, 1, 3);
        assertThat(curve.factor(2, 0.2)).isEqualTo(0.5);
        assertThat(curve.factor(5, 0.2)).isEqualTo(curve.factor(3, 0.2));
        assertThatThrownBy(() -> CalibrationCurve.quadratic(3.5, -4, 1, 1, 3))
                .hasMessage(
                        "curve must be greater than 0 and finite (mm/h) over its range, was -0.5 at a recorded 2 mm/h");
        // The same curve beyond its vertex is good.
        assertThat(CalibrationCurve.quadratic(3.5, -4, 1, 3, 5).factor(4, 0.2)).isEqualTo(3.5 / 4);
        assertThatThrownBy(() -> CalibrationCurve.linear(0, 1, 0, 5))
                .hasMessageStartingWith("lowestMmPerHour must be ");
        assertThatThrownBy(() -> CalibrationCurve.linear(0, 1, 5, 4))
                .hasMessageStartingWith("highestMmPerHour must be ");
        assertThatThrownBy(() -> CalibrationCurve.linear(-1, 1, 1, 5))
                .hasMessageContaining("was 0 at a recorded 1 mm/h");
        assertThatThrownBy(() -> curve.withStaticFactor(2.1))
                .hasMessageStartingWith("staticFactor must be in [0.5, 2]");
        // Below its range the factor goes evenly to that of slow tips.
        CalibrationCurve slow = curve.withStaticFactor(1.5);
        assertThat(slow.factor(0, 0.2)).isEqualTo(1.5);
        assertThat(slow.factor(0.5, 0.2)).isCloseTo((1.5 + 2) / 2, within(1e-15));
        assertThat(slow.factor(1, 0.2)).isEqualTo(2);
        assertThat(slow.toString()).endsWith(", Ir 1 to 3 mm/h, 1.5 for slow tips]");
        assertThat(TippingBucket.ofTip(0.2).toString()).contains(NoCalibration.INSTANCE.toString());
    }

    /** Half a second lost of a tip of 0.2 mm at 144 mm/h, which lasts five: nine tenths are counted. */
    @Test
    void lostTime() {
        LostTime lost = LostTime.ofSeconds(0.5);
        assertThat(lost.factor(144, 0.2)).isCloseTo(1 / 0.9, within(1e-15));
        assertThat(lost.recordedMmPerHour(TippingBucket.ofTip(0.2), 160)).isCloseTo(144, within(1e-12));
        assertThat(lost.highestMmPerHour(0.2)).isCloseTo(720, within(1e-12));
        assertThat(lost.factor(720, 0.2)).isCloseTo(2, within(1e-15));
        assertThat(lost.factor(1e6, 0.2)).isCloseTo(2, within(1e-15));
        assertThat(LostTime.ofSeconds(0).factor(1e6, 0.2)).isEqualTo(1);
        assertThatThrownBy(() -> lost.recordedMmPerHour(TippingBucket.ofTip(0.2), -1))
                .hasMessageStartingWith("trueMmPerHour must be 0 or greater");
        assertThat(lost.hashCode()).isNotEqualTo(LostTime.ofSeconds(0.6).hashCode());
    }

    @Test
    void breaksOnTheirLimits() {
        DoubleMass mass = DoubleMass.of(new double[] {1, 1, 2, 2}, new double[] {1, 1, 1, 1});
        assertThat(mass.breakAfter(1).slopeAfter()).isCloseTo(5.0 / 3, within(1e-15));
        assertThat(mass.breakAfter(3).slopeBefore()).isCloseTo(4.0 / 3, within(1e-15));
        assertThat(mass.bestBreak(2).periodsBefore()).isEqualTo(2);
        assertThat(mass.bestBreak(2).squaresLeft()).isZero();
        assertThat(mass.cumulativeGauge()).containsExactly(1, 2, 4, 6);
        for (int wrong : new int[] {0, 4}) {
            assertThatThrownBy(() -> mass.breakAfter(wrong))
                    .hasMessageStartingWith("periodsBefore must be in [1, 3], was " + wrong);
        }
        assertThatThrownBy(() -> mass.bestBreak(3))
                .hasMessage("leastPeriods must be at most half of the 4 periods, 2, was 3");
        assertThatThrownBy(() -> mass.bestBreak(0)).hasMessage("leastPeriods must be at least 1, was 0");
        assertThatThrownBy(() -> mass.chanceOfBreak(1, 98, 1)).hasMessage("shuffles must be at least 99, was 98");
        assertThatThrownBy(() -> mass.chanceOfBreak(1, 125_000_001, 1))
                .hasMessage("shuffles must be at most 125000000 for 4 periods, was 125000001; longer periods, such as"
                        + " months, tell as much");
        DoubleMass dry = DoubleMass.of(new double[] {1, 1, 2}, new double[] {0, 1, 0});
        assertThatThrownBy(() -> dry.breakAfter(1))
                .hasMessageStartingWith("reference before the break must be greater ");
        assertThatThrownBy(() -> dry.breakAfter(2))
                .hasMessageStartingWith("reference after the break must be greater ");
        for (double wrong : new double[] {-1, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> DoubleMass.of(new double[] {1, wrong}, new double[] {1, 1}))
                    .hasMessageStartingWith("gaugeMm at index 1 must be 0 or greater");
            assertThatThrownBy(() -> DoubleMass.of(new double[] {1, 1}, new double[] {1, wrong}))
                    .hasMessageStartingWith("referenceMm at index 1 must be 0 or greater");
        }
    }

    @Test
    void recordsHaveAMostOfSteps() {
        long minute = 60_000_000_000L;
        assertThat(Apportionment.stepCount(0, 100_000_000, 1)).isEqualTo(100_000_000);
        assertThat(Apportionment.stepCount(0, 10 * minute, 3 * minute)).isEqualTo(4);
        assertThatThrownBy(() -> Apportionment.stepCount(0, 100_000_001, 1))
                .hasMessageStartingWith("step must be at least ")
                .hasMessageContaining(", at most 100000000 steps, was ");
        assertThatThrownBy(() -> Apportionment.stepCount(0, -1, minute))
                .hasMessageStartingWith("step must be at least 292 years for a record of more than 292 years");
        assertThatThrownBy(() -> Apportionment.stepCount(Long.MAX_VALUE - 3 * minute, 3 * minute, minute))
                .hasMessageContaining("must end a step before 2262-04-11, did not");
        assertThat(Apportionment.stepCount(Long.MAX_VALUE - 4 * minute, 3 * minute, minute))
                .isEqualTo(3);
    }

    /** Tips of 0.2 mm over a minute come in steps of 12 mm/h; a triangle of that half width has the uncertainty over √6. */
    @Test
    void resolution() {
        TipResolution tips = TipResolution.of(TippingBucket.ofTip(0.2));
        Duration minute = Duration.ofMinutes(1);
        assertThat(tips.stepMmPerHour(minute)).isCloseTo(12, within(1e-12));
        assertThat(tips.standardUncertaintyMmPerHour(minute)).isCloseTo(12 / Math.sqrt(6), within(1e-12));
        assertThat(tips.standardUncertaintyMmPerHour(minute, Duration.ofSeconds(6)))
                .isCloseTo(1.2 / Math.sqrt(6), within(1e-12));
        assertThat(tips.standardUncertaintyMm()).isCloseTo(0.2 / Math.sqrt(6), within(1e-15));
        assertThat(tips.leastMm(0)).isZero();
        assertThat(tips.leastMm(3)).isCloseTo(0.4, within(1e-15));
        assertThat(tips.mostMm(0)).isEqualTo(0.2);
        assertThat(tips.mostMm(3)).isCloseTo(0.8, within(1e-15));
        assertThat(tips.windowFor(12, 1)).isEqualTo(minute);
        assertThat(tips.windowFor(12, 0.1)).isEqualTo(Duration.ofMinutes(10));
        assertThat(tips).hasToString("TipResolution[0.2 mm, 12 mm/h over a minute]");
        assertThatThrownBy(() -> tips.windowFor(12, 1.01)).hasMessageStartingWith("share must be in [0, 1]");
        assertThatThrownBy(() -> tips.leastMm(-1)).hasMessage("tips must be at least 0, was -1");
    }

    private static RegularSeries daily(double... depths) {
        return RegularSeries.of(Instant.parse("2026-04-07T00:00:00Z"), Duration.ofDays(1), depths);
    }

    /** Ninety days of a rain of their own, so many times as deep. */
    private static RegularSeries rain(int seed, double factor) {
        Random random = new Random(seed);
        double[] depths = new double[90];
        Arrays.setAll(depths, i -> random.nextInt(5) < 2 ? factor * (10 + random.nextInt(150)) / 10 : 0);
        return daily(depths);
    }

    /** A gauge of which nothing is known goes with the greatest group, of equal ones the first; groups stand by their first. */
    @Test
    void anUndecidedGaugeGoesWithMost() {
        Map<String, RegularSeries> gauges = new HashMap<>(Map.of(
                "a", daily(new double[90]), "b", rain(1, 1), "c", rain(1, 1.1), "d", rain(2, 1), "e", rain(2, 2)));
        assertThat(GaugeGroups.of(gauges).groups()).containsExactly(List.of("a", "b", "c"), List.of("d", "e"));
        gauges.put("f", rain(2, 3));
        assertThat(GaugeGroups.of(gauges).groups()).containsExactly(List.of("a", "d", "e", "f"), List.of("b", "c"));
        gauges.put("g", daily(1, -1));
        assertThatThrownBy(() -> GaugeGroups.of(gauges))
                .hasMessageStartingWith("rainMm of g must be 0 or greater (mm), or NaN for missing, was -1");
    }

    @Test
    void neighboursRefuseRainBelowNothing() {
        Map<String, RegularSeries> gauges = Map.of("a", daily(1, 2), "b", daily(1, -2), "c", daily(1, 2));
        List<Interval> periods = List.of(
                Interval.of(Instant.parse("2026-04-07T00:00:00Z"), Duration.ofDays(1)),
                Interval.of(Instant.parse("2026-04-08T00:00:00Z"), Duration.ofDays(1)));
        assertThatThrownBy(() -> Neighbours.inPeriods(gauges, periods))
                .hasMessageStartingWith("rainMm of b must be 0 or greater (mm), or NaN for missing, was -2");
    }

    /** Tips at 12:03 and 12:27 fill three steps from 12:00 on, one at 12:30 is in a fourth; with a calibration as without. */
    @Test
    void stepsOfTipsBeginOnTheClock() {
        TippingBucket plain = TippingBucket.ofTip(0.2);
        for (TippingBucket bucket : List.of(plain, plain.withCalibration(LostTime.ofSeconds(0.5)))) {
            RegularSeries three = bucket.depth(Tips.of(START, START.plusSeconds(1440)), STEP, TipSpreading.COUNT);
            assertThat(three.start()).isEqualTo(START.minusSeconds(180));
            assertThat(three.size()).isEqualTo(3);
            assertThat(three.value(1)).isZero();
            RegularSeries four = bucket.depth(Tips.of(START, START.plusSeconds(1620)), STEP, TipSpreading.COUNT);
            assertThat(four.size()).isEqualTo(4);
            assertThat(four.value(3)).isCloseTo(0.2, within(0.001));
            assertThat(bucket.depth(Tips.of(), STEP, TipSpreading.COUNT).size()).isZero();
        }
    }

    @Test
    void periodsWithoutOneOfTwoAreLeftOut() {
        DoubleMass mass = DoubleMass.of(new double[] {1, Double.NaN, 3, 4}, new double[] {1, 2, Double.NaN, 4});
        assertThat(mass.leftOut()).isEqualTo(2);
        assertThat(mass.periods()).isEqualTo(2);
        assertThat(mass.ratio()).isEqualTo(1);
        assertThat(mass).hasToString("DoubleMass[2 periods, ratio 1, 2 left out]");
    }

    @Test
    void countsAreWholeTips() {
        TippingBucket bucket = TippingBucket.ofTip(1);
        assertThat(Tips.ofDepths(every(10, 0, 2.049, 0.951), bucket).size()).isEqualTo(3);
        // The limit itself, which no binary fraction meets: 1 - 0.95 is more than 0.05, and 0.19 / 0.2 is less than
        // 0.95.
        assertThat(Tips.ofDepths(every(10, 0.95, 1.05, 1.95, 7.05, 99.95), bucket)
                        .size())
                .isEqualTo(1 + 1 + 2 + 7 + 100);
        assertThat(Tips.ofDepths(every(10, 0.19, 0.21, 0.39, 19.99), TippingBucket.ofTip(0.2))
                        .size())
                .isEqualTo(1 + 1 + 2 + 100);
        assertThat(Tips.ofDepths(every(10, 1_000_000), bucket).size()).isEqualTo(1_000_000);
        for (double wrong : new double[] {2.051, 0.949, -1, 1_000_001, Double.NaN}) {
            assertThatThrownBy(() -> Tips.ofDepths(every(10, 1, wrong), bucket))
                    .hasMessageStartingWith("depthsMm must be whole numbers from 0 to 1000000 tips of 1 mm, was ")
                    .hasMessageEndingWith(" at index 1, 2026-03-01T12:13:00Z");
        }
        Tips tips = Tips.of(START, START, START.plusSeconds(60));
        assertThat(tips.followingInstant(0)).isEqualTo(tips.epochNanos(2));
        assertThat(tips.followingInstant(2)).isEqualTo(Long.MAX_VALUE);
        assertThat(TipChecks.of(bucket))
                .hasToString("TipChecks[TippingBucket[1 mm, no calibration], 0 visits, temperature not given]");
        assertThat(TipChecks.of(bucket).withTemperature(every(10, 5), 2, STEP).toString())
                .endsWith(", temperature given]");
        assertThatThrownBy(() -> bucket.depth(
                        tips, Interval.of(START.plusSeconds(1), START.plusSeconds(600)), STEP, TipSpreading.COUNT))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(
                        () -> bucket.depth(tips, Interval.of(START, START.plusSeconds(60)), STEP, TipSpreading.COUNT))
                .isInstanceOf(IllegalArgumentException.class);
    }

    private static RegularSeries hours(double first, double each) {
        double[] depths = new double[25];
        Arrays.fill(depths, each);
        depths[0] = first;
        return RegularSeries.of(START, Duration.ofHours(1), depths);
    }

    /** The greatest of a day is 2065 mm: by one step a day, and by the 24 steps of any day, not by 25 of them. */
    @Test
    void theGreatestRainIsPossible() {
        double most = ImpossibleRain.greatestMm(Duration.ofDays(1));
        assertThat(most).isBetween(2064.0, 2066.0);
        assertThat(ImpossibleRain.of(daily(most, Math.nextUp(most))).first())
                .contains(Instant.parse("2026-04-08T00:00:00Z"));
        assertThat(ImpossibleRain.of(hours(150, 80)).steps()).isZero();
        ImpossibleRain found = ImpossibleRain.of(hours(1, 87));
        assertThat(found.steps()).isEqualTo(24);
        assertThat(found.first()).contains(START.plusSeconds(3600));
        assertThat(found).hasToString("ImpossibleRain[24 of 25 steps, 2088.0 mm]");
        assertThat(found.others().value(0)).isEqualTo(1);
        assertThat(found.others().missing()).isEqualTo(24);
    }
}
