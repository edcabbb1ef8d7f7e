package dev.runnel.rainfall.design;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.ddf.FormulaDdf;
import dev.runnel.rainfall.ddf.IntensityFormula;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DesignStormTest {
    private static Duration minutes(long minutes) {
        return Duration.ofMinutes(minutes);
    }

    /** Chow, Maidment and Mays (1988), example 14.4.1: Denver, ten years, two hours by 10 min, inches (from memory). */
    @Test
    void alternatingBlocksAgreeWithChow() {
        IntensityFormula denver = IntensityFormula.kimijima(96.6 * 25.4, 13.90, 0.97, minutes(5), minutes(120));
        FormulaDdf relation = FormulaDdf.of(ReturnPeriodBasis.ANNUAL_MAXIMUM, Map.of(10.0, denver));
        DesignStorm storm = DesignStorm.alternatingBlock(relation, 10, minutes(120), minutes(10));
        double[] inches = {0.024, 0.033, 0.050, 0.084, 0.178, 0.693, 0.308, 0.117, 0.063, 0.040, 0.028, 0.021};
        double[] depths = storm.depths();
        assertThat(depths).hasSize(12);
        for (int i = 0; i < inches.length; i++) {
            assertThat(depths[i] / 25.4).as("block %d", i).isCloseTo(inches[i], within(0.0006));
        }
        assertThat(storm.depthMm()).isEqualTo(relation.depthMm(minutes(120), 10));
    }

    /** Deutscher Wetterdienst, KOSTRA-DWD-2010R, cell 42016, one year; 25 min by linear interpolation. */
    @Test
    void eulerTurnsTheFirstThreeTenths() {
        DdfTable kostra = DdfTable.parse(
                "duration_min,1\n5,4.9\n10,7.9\n15,9.8\n20,11.2\n25,12.1\n30,13.0\n35,13.5\n40,14.1\n45,14.6\n50,14.9\n",
                ReturnPeriodBasis.PEAKS_OVER_THRESHOLD);
        assertThat(DesignStorm.eulerTypeTwo(kostra, 1, minutes(30), minutes(5)).depths())
                .containsExactly(new double[] {4.9, 3.0, 1.9, 1.4, 0.9, 0.9}, within(1e-12));
        assertThat(DesignStorm.eulerTypeTwo(kostra, 1, minutes(50), minutes(5)).depths())
                .containsExactly(new double[] {1.9, 3.0, 4.9, 1.4, 0.9, 0.9, 0.5, 0.6, 0.5, 0.3}, within(1e-12));
    }

    /** Cumulative depths of 1500/(t + 10)^0.8 mm/h, two hours, r = 0.4, recomputed elsewhere and by integration. */
    @ParameterizedTest
    @CsvSource({
        "0, 0.7014048495458773",
        "1, 1.4863562481218615",
        "4, 4.655866663462202",
        "8, 16.838997829279855",
        "9, 30.731137585728447",
        "10, 39.37764995409646",
        "23, 61.0895003239701"
    })
    void chicagoAgreesWithIntegration(int step, double cumulative) {
        IntensityFormula formula = IntensityFormula.sherman(1500, 10, 0.8, minutes(1), minutes(120));
        DesignStorm storm = DesignStorm.chicago(formula, minutes(120), 0.4, minutes(5));
        double sum = 0;
        for (int i = 0; i <= step; i++) {
            sum += storm.depths()[i];
        }
        assertThat(sum).isCloseTo(cumulative, within(1e-9));
    }

    /** The peak is at 24 min: the edge 4 min before it asks for 10 min, that 1 min after it for 1 min 40 s, which the formula lacks. */
    @Test
    void chicagoIsSteadyWhereTheFormulaDoesNotReach() {
        IntensityFormula formula = IntensityFormula.sherman(1500, 10, 0.8, minutes(5), Duration.ofHours(6));
        DesignStorm storm = DesignStorm.chicago(formula, minutes(60), 0.4, minutes(5));
        double fiveMinutes = 1500 / Math.pow(15, 0.8) * 5 / 60;
        assertThat(storm.depths()).hasSize(12);
        assertThat(storm.depthMm()).isCloseTo(1500 / Math.pow(70, 0.8), within(1e-12));
        double upTo20 = 0.4 * 1500 / Math.pow(70, 0.8) - 0.4 * 1500 / Math.pow(10 + 4 / 0.4, 0.8) * (4 / 0.4) / 60;
        double sum = 0;
        for (int i = 0; i < 4; i++) {
            sum += storm.depths()[i];
        }
        assertThat(sum).isCloseTo(upTo20, within(1e-12));
        double after = 0.6 * fiveMinutes * (1 / 0.6) / 5;
        double beforePeak = 0.4 * 1500 / Math.pow(70, 0.8) - sum;
        assertThat(storm.depths()[4]).isCloseTo(beforePeak + after, within(1e-12));
    }

    /** Montana's coefficients of ASTEE (2017) for five years; volumes conserved, worked out elsewhere. */
    @ParameterizedTest
    @CsvSource({"240, 30, 7.6867093193918254, 84.54773110339023", "240, 60, 6.42306090981413, 47.328459190005894"})
    void doubleTriangleHasItsVolumes(long whole, long intense, double shoulder, double peak) {
        IntensityFormula montana = IntensityFormula.montana(10.874, 0.779, minutes(30), Duration.ofHours(6));
        double depth = montana.depthMm(minutes(whole));
        DoubleTriangle shape =
                DoubleTriangle.of(depth, minutes(whole), montana.depthMm(minutes(intense)), minutes(intense), 0.5);
        assertThat(shape.shoulderMmPerHour()).isCloseTo(shoulder, within(1e-9));
        assertThat(shape.peakMmPerHour()).isCloseTo(peak, within(1e-9));
        DesignStorm storm = shape.storm(minutes(1));
        double inside = 0;
        for (int i = (int) (whole - intense) / 2; i < (whole + intense) / 2; i++) {
            inside += storm.depths()[i];
        }
        assertThat(inside).isCloseTo(montana.depthMm(minutes(intense)), within(1e-9));
        assertThat(storm.peakMmPerHour()).isCloseTo(peak, within(0.05 * peak)).isLessThan(peak);
    }

    @Test
    void doubleTriangleMayStartOrEndWithItsPeak() {
        for (double position : new double[] {0, 0.3, 1}) {
            DesignStorm storm = DoubleTriangle.of(40, minutes(240), 25, minutes(30), position)
                    .storm(minutes(2));
            assertThat(storm.depthMm()).isCloseTo(40, within(1e-14));
            assertThat(Arrays.stream(storm.depths()).min().orElseThrow()).isGreaterThanOrEqualTo(0);
        }
    }

    /** A published unit profile of 13 steps; it is read off the table behind the formula, within 0.012. */
    @Test
    void winterProfileAgreesWithAPublishedOne() {
        double[] centred = {0.206457580, 0.497422648, 0.697677758, 0.826679088, 0.909175924, 0.964744014};
        for (int i = 0; i < centred.length; i++) {
            assertThat(SymmetricProfile.winter75().aroundPeak((2 * i + 1) / 13.0))
                    .isCloseTo(centred[i], within(0.012));
        }
    }

    /** y = (1 - a^z)/(1 - a) recomputed elsewhere. */
    @Test
    void summerProfileFollowsItsFormula() {
        assertThat(SymmetricProfile.summer50().aroundPeak(0.02)).isCloseTo(0.10065951012828514, within(1e-12));
        assertThat(SymmetricProfile.summer50().aroundPeak(0.06)).isCloseTo(0.23049367873510726, within(1e-12));
        assertThat(SymmetricProfile.summer50().depthShare(0.51))
                .isCloseTo(0.5 + 0.10065951012828514 / 2, within(1e-12));
        assertThat(SymmetricProfile.summer50().depthShare(0.25)
                        + SymmetricProfile.summer50().depthShare(0.75))
                .isCloseTo(1, within(1e-15));
    }

    @Test
    void aShapeThroughPointsTakesAnyUnit() {
        StormShape hours = StormShape.through(new double[] {0, 6, 12, 24}, new double[] {0, 10, 70, 100});
        assertThat(hours.depthShare(0.25)).isEqualTo(0.1);
        assertThat(hours.depthShare(0.375)).isCloseTo(0.4, within(1e-15));
        assertThat(hours.depthShare(1)).isEqualTo(1);
        assertThat(hours).hasToString("StormShape[4 points]");
        DesignStorm storm = DesignStorm.of("mine", hours, Duration.ofHours(4), 50, Duration.ofHours(1));
        assertThat(storm.depths()).containsExactly(new double[] {5, 30, 7.5, 7.5}, within(1e-13));
        assertThat(storm.depthMm()).isEqualTo(50);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0 | 0 | times must be at least 2, was 1",
                "0 1 | 0 1 2 | 'depths must have length 2, was 3'",
                "1 2 | 0 1 | times at index 0 must be 0, was 1",
                "0 2 2 | 0 1 1 | times at index 2 must be above 2, was 2",
                "0 NaN | 0 1 | times at index 1 must be finite, was NaN",
                "0 1 | 0.1 1 | depths at index 0 must be 0, was 0.1",
                "0 1 2 | 0 1 0.5 | depths at index 2 must be no less than 1, was 0.5",
                "0 1 | 0 0 | 'last of depths must be greater than 0 and finite, was 0'"
            })
    void refusesPointsThatAreNoShape(String times, String depths, String message) {
        assertThatThrownBy(() -> StormShape.through(numbers(times), numbers(depths)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(message);
    }

    private static double[] numbers(String text) {
        return Arrays.stream(text.split(" ")).mapToDouble(Double::parseDouble).toArray();
    }

    @Test
    void aStormBecomesARecord() {
        DesignStorm storm = DesignStorm.of("summer", SymmetricProfile.summer50(), minutes(60), 20, minutes(5));
        Instant start = Instant.parse("2026-03-01T12:00:00Z");
        assertThat(storm.at(start).sum()).isEqualTo(20);
        assertThat(storm.at(start).end()).isEqualTo(start.plusSeconds(3600));
        assertThat(storm.multipliedBy(0.95).depthMm()).isCloseTo(19, within(1e-13));
        assertThat(DesignStorm.ofDepths("mine", minutes(5), 1, 2, 0))
                .hasToString("DesignStorm[mine, 3 mm in 15 min by 5 min, peak 24 mm/h]");
    }

    @Test
    void refusesBadInput() {
        assertThatThrownBy(() -> DesignStorm.of("a", fraction -> fraction, minutes(60), 20, minutes(7)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must be a whole number of steps of 7 min, was 1 h");
        assertThatThrownBy(() -> DesignStorm.of("a", fraction -> 0.9 * fraction, minutes(60), 20, minutes(5)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("shape at 1 must be in [0.999999999999");
        assertThatThrownBy(() -> DesignStorm.of("a", fraction -> 1 - fraction, minutes(60), 20, minutes(5)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("shape at 0 must be in");
        assertThatThrownBy(
                        () -> DesignStorm.of("a", f -> f < 0.4 ? 2 * f : Math.max(0.5, f), minutes(60), 20, minutes(5)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("shape at step 5 must be in");
        assertThatThrownBy(() -> SymmetricProfile.of(1, 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("a must be above 0 and below 1, was 1");
        assertThatThrownBy(() -> DoubleTriangle.of(40, minutes(60), 10, minutes(30), 0.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("intenseDepthMm must be great enough for a peak above the shoulder of 120");
        IntensityFormula formula = IntensityFormula.sherman(1500, 10, 0.8, minutes(20), minutes(120));
        assertThatThrownBy(() -> DesignStorm.chicago(formula, minutes(120), 0.4, minutes(5)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("step must not be shorter than 20 min, the shortest duration of the formula, was 5 min");
        assertThatThrownBy(() -> DesignStorm.chicago(formula, minutes(120), 1, minutes(5)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("peakAt must be above 0 and below 1, was 1");
        assertThatThrownBy(() -> DesignStorm.ofDepths("a", minutes(5), 0, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("sum of depthsMm must be greater than 0 and finite (mm), was 0");
    }
}
