package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What parts of a gauge are equal to, what they print, and values by hand on their limits. */
class GaugeValuesTest {
    private static final Instant START = Instant.parse("2026-03-01T00:00:00Z");

    private static void assertDiffer(Object part, Object same, Object... others) {
        assertThat(part).isEqualTo(same).hasSameHashCodeAs(same).isNotEqualTo("a text");
        for (Object other : others) {
            assertThat(part).isNotEqualTo(other);
            assertThat(part.hashCode()).isNotEqualTo(other.hashCode());
        }
    }

    @Test
    void partsAreEqualByTheirParts() {
        assertDiffer(
                TippingBucket.ofTip(0.2),
                TippingBucket.ofTip(0.2),
                TippingBucket.ofTip(0.5),
                TippingBucket.ofTip(0.2).withCalibration(LostTime.ofSeconds(0.5)));
        assertDiffer(LostTime.ofSeconds(0.5), LostTime.ofSeconds(0.5), LostTime.ofSeconds(0.6));
        assertDiffer(Tips.of(START), Tips.of(START), Tips.of(START.plusSeconds(1)), Tips.of());
        assertDiffer(
                TipSpreading.INTERVAL,
                TipSpreading.interval(Duration.ofHours(1)),
                TipSpreading.SMOOTH,
                TipSpreading.COUNT,
                TipSpreading.interval(Duration.ofHours(2)));
        assertThat(TipSpreading.INTERVAL.hashCode())
                .isEqualTo(31 * Long.hashCode(3_600_000_000_000L) + Boolean.hashCode(false));
        CalibrationCurve curve = CalibrationCurve.quadratic(0.98, 0.001, 1e-6, 5, 200);
        assertDiffer(
                curve,
                CalibrationCurve.quadratic(0.98, 0.001, 1e-6, 5, 200),
                CalibrationCurve.quadratic(0.97, 0.001, 1e-6, 5, 200),
                CalibrationCurve.quadratic(0.98, 0.002, 1e-6, 5, 200),
                CalibrationCurve.quadratic(0.98, 0.001, 2e-6, 5, 200),
                CalibrationCurve.quadratic(0.98, 0.001, 1e-6, 6, 200),
                CalibrationCurve.quadratic(0.98, 0.001, 1e-6, 5, 201),
                curve.withStaticFactor(1.1));
        assertDiffer(
                CalibrationCurve.linear(0, 1.02, 5, 200),
                CalibrationCurve.linear(0, 1.02, 5, 200),
                CalibrationCurve.linear(-0.0, 1.02, 5, 200));
    }

    @Test
    void partsSayWhatTheyAre() {
        assertThat(TippingBucket.ofTip(0.2)).hasToString("TippingBucket[0.2 mm, no calibration]");
        assertThat(TipSpreading.COUNT).hasToString("TipSpreading[counted in its step]");
        assertThat(TipSpreading.INTERVAL).hasToString("TipSpreading[over the time since the tip before, at most 1 h]");
        assertThat(TipSpreading.SMOOTH)
                .hasToString("TipSpreading[smoothly over the time since the tip before, at most 1 h]");
        assertThat(SilentEnds.standard().withLeast(Duration.ofDays(3))).hasToString("SilentEnds[longer than 3 d]");
        assertThat(VolumetricCalibration.ofFunnel(200))
                .hasToString("VolumetricCalibration[0 runs, funnel 200 cm2]")
                .satisfies(calibration -> assertThat(calibration.runs()).isEmpty());
    }

    /** The tip before if it is near enough, on the cap as well; else as long before as the next comes after, at most the cap. */
    @Test
    void aTipIsSpreadOverTheTimeBeforeIt() {
        TipSpreading spreading = TipSpreading.interval(Duration.ofNanos(100));
        assertThat(spreading.start(950, 1000, 1010)).isEqualTo(950);
        assertThat(spreading.start(900, 1000, 1010)).isEqualTo(900);
        assertThat(spreading.start(899, 1000, 1010)).isEqualTo(990);
        assertThat(spreading.start(0, 1000, 1100)).isEqualTo(900);
        assertThat(spreading.start(0, 1000, 1500)).isEqualTo(900);
        assertThat(spreading.start(Long.MIN_VALUE, 1000, Long.MAX_VALUE)).isEqualTo(900);
        assertThat(spreading.start(Long.MIN_VALUE, -1000, Long.MAX_VALUE)).isEqualTo(-1100);
    }

    /** Tips of 0.2 mm at 36, 72, 720 and 7.2 mm/h by their gaps of 20, 10, 1 and 100 s; the curve holds from 36 to 72 mm/h. */
    @Test
    void tipsOutsideTheCalibrationAreCounted() {
        TippingBucket bucket = TippingBucket.ofTip(0.2).withCalibration(CalibrationCurve.linear(1, 0.0001, 36, 72));
        Tips tips = Tips.of(
                START, START.plusSeconds(20), START.plusSeconds(30), START.plusSeconds(31), START.plusSeconds(131));
        TipSummary summary = bucket.summary(tips);
        assertThat(summary.belowCalibration()).isEqualTo(1);
        assertThat(summary.aboveCalibration()).isEqualTo(1);
        // Two tips at one instant share the gap before them, here 10 s each and so on the limit.
        TipSummary twins = bucket.summary(Tips.of(START, START.plusSeconds(20), START.plusSeconds(20)));
        assertThat(twins.belowCalibration()).isZero();
        assertThat(twins.aboveCalibration()).isZero();
        assertThat(twins.coincident()).isEqualTo(1);
        assertThat(bucket.summary(Tips.of(START, START.plusSeconds(200), START.plusSeconds(200)))
                        .belowCalibration())
                .isEqualTo(2);
    }

    /** A parabola whose least value lies inside its range must be above 0 there, though both ends are. */
    @Test
    void aCurveMustBePositiveBetweenItsEnds() {
        assertThatThrownBy(() -> CalibrationCurve.quadratic(1, -0.022, 1e-4, 10, 200))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatCode(() -> CalibrationCurve.quadratic(1, -0.015, 1e-4, 10, 140))
                .doesNotThrowAnyException();
    }

    @Test
    void silenceIsDoubtedAboveItsLimitOnly() {
        SilentEnds rule = SilentEnds.standard().withLeast(Duration.ofDays(1));
        Tips tips = Tips.of(
                START.plus(Duration.ofDays(1)), START.plus(Duration.ofDays(1)).plusSeconds(1));
        Interval exact = Interval.of(START, Duration.ofDays(2).plusSeconds(1));
        assertThat(rule.of(tips, exact)).isEmpty();
        Interval longer = Interval.of(
                START.minusNanos(1), Duration.ofDays(2).plusSeconds(1).plusNanos(2));
        assertThat(rule.of(tips, longer)).hasSize(2);
        assertThatThrownBy(() -> rule.withLeast(Duration.ofDays(1).minusNanos(1)))
                .hasMessageStartingWith("least must be a day or longer");
    }

    /** 10 mm stored with 10 % let be: 11 and 9 mm are within, and what lies beyond by the least is not. */
    @Test
    void aStorageReadingOnItsLimitIsWithin() {
        StorageGauge gauge = StorageGauge.installed(START).withReading(START.plus(Duration.ofHours(1)), 8);
        assertThat(verdict(gauge, 10)).isEqualTo(StorageComparison.Verdict.WITHIN);
        assertThat(verdict(gauge, 6)).isEqualTo(StorageComparison.Verdict.WITHIN);
        assertThat(verdict(gauge, 10.01)).isEqualTo(StorageComparison.Verdict.HIGH);
        assertThat(verdict(gauge, 5.99)).isEqualTo(StorageComparison.Verdict.LOW);
        assertThatThrownBy(() -> gauge.withReading(START.plus(Duration.ofHours(1)), 1))
                .hasMessageStartingWith("time must be after 2026-03-01T01:00:00Z");
    }

    private static StorageComparison.Verdict verdict(StorageGauge gauge, double recorded) {
        return gauge.compareByAllowanceAndResolution(RegularSeries.of(START, Duration.ofHours(1), recorded), 0.25, 0)
                .rows()
                .get(0)
                .verdict();
    }

    @Test
    void countsAreWholeAndNotTooMany() {
        assertThat(Tips.ofCounts(Series.of(List.of(Reading.of(START, 3), Reading.of(START.plusSeconds(1), 0))))
                        .size())
                .isEqualTo(3);
        for (double wrong : new double[] {-1, 2.5, Double.NaN, 1e9}) {
            assertThatThrownBy(() -> Tips.ofCounts(Series.of(List.of(Reading.of(START, wrong)))))
                    .isInstanceOf(IllegalArgumentException.class);
        }
        Tips tips = Tips.of(START, START.plusSeconds(5), START.plusSeconds(9));
        assertThat(tips.slice(Interval.of(START, START.plusSeconds(9))).size()).isEqualTo(2);
        assertThat(tips.slice(Interval.of(START.plusNanos(1), START.plusSeconds(10)))
                        .size())
                .isEqualTo(2);
    }

    /** R2 of y = 1, 2, 4 with the model 1, 2, 3: 1 left over of (4/3)^2 + (1/3)^2 + (5/3)^2 = 42/9. */
    @Test
    void leastSquaresByHand() {
        double[] x = {1, 2, 3};
        assertThat(LeastSquares.rSquared(x, new double[] {1, 2, 4}, v -> v)).isCloseTo(1 - 9 / 42.0, within(1e-14));
        assertThat(LeastSquares.rSquared(x, new double[] {2, 2, 2}, v -> 2)).isEqualTo(1);
        assertThat(LeastSquares.rSquared(x, new double[] {2, 2, 2}, v -> v)).isZero();
        double[] line = LeastSquares.polynomial(x, new double[] {5, 7, 9}, 1);
        assertThat(line[0]).isCloseTo(3, within(1e-12));
        assertThat(line[1]).isCloseTo(2, within(1e-12));
        assertThatThrownBy(() -> LeastSquares.polynomial(new double[] {0, 0, 0}, x, 1))
                .hasMessage("runs must have at least 2 different rates, had fewer");
    }
}
