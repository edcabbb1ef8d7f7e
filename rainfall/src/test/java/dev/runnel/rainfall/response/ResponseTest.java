package dev.runnel.rainfall.response;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Duration;
import java.time.Instant;
import org.apache.commons.math3.stat.regression.SimpleRegression;
import org.junit.jupiter.api.Test;

class ResponseTest {
    private static final Instant START = Instant.parse("2026-03-01T12:00:00Z");
    private static final double GAP = Double.NaN;

    private static RegularSeries series(double... values) {
        return RegularSeries.of(START, Duration.ofMinutes(10), values);
    }

    @Test
    void volumesBalance() {
        // 5 mm on 2 ha are 100 m3; 0.02 + 0.03 - 0.005 m3/s above dry weather for 600 s each are 27 m3.
        RunoffVolume runoff = RunoffVolume.of(
                Interval.of(START, Duration.ofMinutes(40)),
                series(5, 0, 0, 0, 9),
                20_000,
                series(0.01, 0.03, 0.04, 0.005, 9),
                series(0.01, 0.01, 0.01, 0.01, 0.01));
        assertThat(runoff.rainM3()).isCloseTo(100, within(1e-12));
        assertThat(runoff.flowM3()).isCloseTo(27, within(1e-12));
        assertThat(runoff).hasToString("RunoffVolume[rain 100 m3, flow above dry weather 27 m3, 27 %]");
    }

    /** Hourly rain of 10, 20 and 30 mm between half past and five past: 5, 20 and 2.5 mm, on 1000 m2. */
    @Test
    void ofAStepAcrossTheWindowOnlyTheShareInsideCounts() {
        Duration hour = Duration.ofHours(1);
        RegularSeries rain = RegularSeries.of(START, hour, 10, 20, 30, GAP);
        RegularSeries flow = RegularSeries.of(START, hour, 0.002, 0.002, 0.002, 0.002);
        RegularSeries dry = RegularSeries.of(START, hour, 0.001, 0.001, 0.001, 0.001);
        Interval window = Interval.of(START.plusSeconds(1800), START.plusSeconds(7500));
        RunoffVolume runoff = RunoffVolume.of(window, rain, 1000, flow, dry);
        assertThat(runoff.rainM3()).isCloseTo(27.5, within(1e-12));
        assertThat(runoff.flowM3()).isCloseTo(5.7, within(1e-12));
        assertThat(runoff.isComplete()).isTrue();
    }

    @Test
    void missingStepsAreCounted() {
        RunoffVolume runoff = RunoffVolume.of(
                series(0, 0, 0, 0).interval(), series(5, GAP, 0, 0), 1, series(1, GAP, 1, 1), series(1, 1, 1, GAP));
        assertThat(runoff.missingRain()).isEqualTo(1);
        assertThat(runoff.missingFlow()).isEqualTo(2);
        assertThat(runoff.isComplete()).isFalse();
        assertThat(runoff.percent()).hasValue(0);
        assertThat(runoff.toString()).endsWith(", 1 steps of rain and 2 of flow missing]");
    }

    @Test
    void aDryWindowHasNoPercentage() {
        RegularSeries four = series(1, 1, 1, 1);
        RunoffVolume runoff = RunoffVolume.of(four.interval(), series(0, 0, 0, 0), 1, four, series(2, 2, 2, 2));
        assertThat(runoff.percent()).isEmpty();
        assertThat(runoff.toString()).endsWith("m3, no rain]");
    }

    @Test
    void flowThatRepeatsRainLagsByItsShift() {
        double[] rain = new double[200];
        double[] flow = new double[200];
        for (int i = 0; i < rain.length; i++) {
            rain[i] = i % 37 == 0 ? 3 : i % 11 == 0 ? 1 : 0;
            if (i >= 4) {
                flow[i] = 2 + 0.5 * rain[i - 4];
            }
        }
        flow[50] = GAP;
        ResponseLag lag = ResponseLag.of(series(rain), series(flow), Duration.ofHours(2));
        assertThat(lag.lag()).isEqualTo(Duration.ofMinutes(40));
        assertThat(lag.correlation()).isCloseTo(1, within(1e-12));
        assertThat(lag.pairs()).isEqualTo(195);
        assertThat(lag.atLimit()).isFalse();
        assertThat(ResponseLag.of(series(rain), series(flow), Duration.ofMinutes(40))
                        .atLimit())
                .isTrue();
    }

    /** Two pairs always correlate by 1 or -1; the true lag is one step. */
    @Test
    void fewPairsAreNoEvidence() {
        RegularSeries rain = series(0, 4, 1, 0, 2, 0, 0, 1, 0, 3);
        RegularSeries flow = series(1, 1, 5, 2.1, 1, 3, 1, 0.9, 2, 1);
        ResponseLag lag = ResponseLag.of(rain, flow, Duration.ofMinutes(80));
        assertThat(lag.lag()).isEqualTo(Duration.ofMinutes(10));
        assertThat(lag.pairs()).isEqualTo(9);
        assertThat(lag.correlation()).isBetween(0.98, 0.9999);
        assertThat(lag.atLimit()).isFalse();
    }

    /** Three pairs are just enough, and half of the most pairs is; one fewer is not. */
    @Test
    void leastPairs() {
        ResponseLag three = ResponseLag.of(series(0, 1, 5, 0), series(9, 0, 1, 5), Duration.ofMinutes(10));
        assertThat(three.lag()).isEqualTo(Duration.ofMinutes(10));
        assertThat(three.pairs()).isEqualTo(3);
        assertThat(three.atLimit()).isTrue();
        // The flow repeats the rain four steps later: of eight steps four are left, of seven only three.
        ResponseLag half =
                ResponseLag.of(series(0, 1, 5, 2, 3, 9, 1, 0), series(4, 2, 6, 1, 0, 1, 5, 2), Duration.ofMinutes(50));
        assertThat(half.lag()).isEqualTo(Duration.ofMinutes(40));
        assertThat(half.pairs()).isEqualTo(4);
        assertThat(half.atLimit()).isTrue();
        ResponseLag fewer =
                ResponseLag.of(series(0, 1, 5, 3, 9, 1, 0), series(4, 2, 6, 1, 0, 1, 5), Duration.ofMinutes(40));
        assertThat(fewer.lag()).isLessThan(Duration.ofMinutes(40));
        assertThat(fewer.correlation()).isLessThan(0.9);
    }

    /** Rain every other step, and flow with it: every second shift is as good as the first. */
    @Test
    void ofEqualShiftsTheShortest() {
        RegularSeries rain = series(1, 0, 1, 0, 1, 0, 1, 0);
        ResponseLag lag = ResponseLag.of(rain, rain, Duration.ofMinutes(20));
        assertThat(lag.lag()).isZero();
        assertThat(lag.correlation()).isEqualTo(1);
        assertThat(lag.atLimit()).isFalse();
        assertThat(ResponseLag.of(rain, rain, Duration.ZERO).atLimit())
                .as("a search over one shift has no limit to lie at")
                .isFalse();
    }

    /** What takes a hundred years to fall by a third does not fall. */
    @Test
    void aFallOfACenturyIsNone() {
        assertThat(Recession.in(series(1, 1 - 1e-7, 1 - 2e-7))).isEmpty();
        assertThat(Recession.in(series(1, 1 - 2e-7, 1 - 4e-7))).isPresent();
        assertThat(Recession.in(series(1, 1, 1))).isEmpty();
    }

    @Test
    void gapsLeaveARecessionItsTime() {
        // 2^(-t/20 min): the constant is 20 min over ln 2, whatever is missing.
        Recession recession = Recession.of(series(8, GAP, GAP, GAP, 2, GAP, 1, GAP, 0.5));
        assertThat(recession.constant())
                .isCloseTo(Duration.ofNanos(Math.round(1200e9 / Math.log(2))), Duration.ofNanos(10));
        assertThat(recession.steps()).isEqualTo(4);
        assertThat(recession.leftOut()).isEqualTo(5);
    }

    @Test
    void recessionOfAnExponential() {
        double[] flow = new double[30];
        for (int i = 0; i < flow.length; i++) {
            flow[i] = 0.4 * Math.exp(-i * 10 / 90.0);
        }
        flow[3] = GAP;
        flow[29] = -0.001;
        Recession recession = Recession.of(series(flow));
        assertThat(recession.constant()).isCloseTo(Duration.ofMinutes(90), Duration.ofNanos(10));
        assertThat(recession.rSquared()).isCloseTo(1, within(1e-12));
        assertThat(recession.leftOut()).isEqualTo(2);
        assertThat(recession.shareAfter(Duration.ofMinutes(90))).isCloseTo(Math.exp(-1), within(1e-10));
    }

    /** Rain and flow that go together loosely, far from zero mean, with gaps: the coefficient of a library at each shift. */
    @Test
    void correlationIsThatOfALibrary() {
        double[] rain = new double[40];
        double[] flow = new double[40];
        for (int i = 0; i < rain.length; i++) {
            rain[i] = 3 + (i * i * 7) % 11;
            flow[i] = 20 + (i * 13) % 17 + (i >= 2 ? 2 * rain[i - 2] : 0);
        }
        rain[7] = GAP;
        flow[20] = GAP;
        ResponseLag lag = ResponseLag.of(series(rain), series(flow), Duration.ofMinutes(60));
        double best = -1;
        int at = -1;
        for (int shift = 0; shift <= 6; shift++) {
            SimpleRegression line = new SimpleRegression();
            for (int i = 0; i + shift < 40; i++) {
                if (i != 7 && i + shift != 20) {
                    line.addData(rain[i], flow[i + shift]);
                }
            }
            at = line.getR() > best ? shift : at;
            best = Math.max(best, line.getR());
        }
        assertThat(at).isEqualTo(2);
        assertThat(lag.lag()).isEqualTo(Duration.ofMinutes(20));
        assertThat(lag.correlation()).isCloseTo(best, within(1e-12));
        assertThat(lag.pairs()).isEqualTo(36);
        assertThat(lag).hasToString("ResponseLag[20 min, correlation " + text(best) + " over 36 steps]");
    }

    private static String text(double value) {
        return BigDecimal.valueOf(value).round(new MathContext(3)).toString();
    }

    /** A fall with scatter: slope and coefficient of determination of ln Q are a library's. */
    @Test
    void recessionIsALineThroughLogarithms() {
        double[] flow = {0.9, 0.5, 0.42, 0.2, 0.21, 0.1, 0, 0.08, 0.03};
        SimpleRegression line = new SimpleRegression();
        for (int i = 0; i < flow.length; i++) {
            if (flow[i] > 0) {
                line.addData(i, Math.log(flow[i]));
            }
        }
        Recession recession = Recession.of(series(flow));
        assertThat(recession.rSquared()).isCloseTo(line.getRSquare(), within(1e-12));
        assertThat(recession.constant().toNanos() / 600e9).isCloseTo(-1 / line.getSlope(), within(1e-9));
        assertThat(recession.steps()).isEqualTo(8);
        assertThat(recession.leftOut()).isEqualTo(1);
        assertThat(recession.toString()).startsWith("Recession[K ").endsWith(" 8 steps, 1 left out]");
        assertThat(Recession.of(series(4, 2, 1)).steps()).isEqualTo(3);
    }

    @Test
    void whatDoesNotFallHasNoRecession() {
        assertThat(Recession.in(series(4, 2))).isEmpty();
        assertThat(Recession.in(series(1, 2, 4))).isEmpty();
        assertThat(Recession.in(series(GAP, -1, 0, GAP))).isEmpty();
        assertThat(Recession.in(series(4, 2, 1))).contains(Recession.of(series(4, 2, 1)));
    }

    @Test
    void refusesBadInput() {
        RegularSeries four = series(1, 0, 0, 0);
        assertThatThrownBy(() -> RunoffVolume.of(
                        Interval.of(START.minusSeconds(1), Duration.ofMinutes(20)), four, 1, four, four))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("rain must hold the window 2026-03-01T11:59:59Z/");
        assertThatThrownBy(() -> RunoffVolume.of(four.interval(), four, 1, four, series(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("dryWeatherFlow must have the steps");
        assertThatThrownBy(() -> ResponseLag.of(four, series(2, 2, 2, 2), Duration.ofMinutes(10)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("rain and flow must both vary over at least 3 common steps at some shift, do not");
        assertThatThrownBy(() -> ResponseLag.of(four, four, Duration.ofHours(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("steps in longest must be in [0, 2], was 6");
        assertThatThrownBy(() -> RunoffVolume.of(four.interval(), four, 0, four, four))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("areaM2 must be greater than 0");
        assertThatThrownBy(() -> RunoffVolume.of(four.interval(), series(1, -1, 0, 0), 1, four, four))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("rain");
        assertThatThrownBy(() -> ResponseLag.of(series(1, -1, 0, 0), four, Duration.ofMinutes(10)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("rain");
        assertThatThrownBy(() -> ResponseLag.of(four, series(1, 2, 3), Duration.ofMinutes(10)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("flow must have the steps");
        assertThatThrownBy(() -> Recession.of(series(1, 2, 3, 4)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("flowAboveBase must fall, had a slope of ln Q of 0.45");
        assertThatThrownBy(() -> Recession.of(series(1, GAP, 0.5)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("flowAboveBase must have at least 3 steps above 0, had 2");
    }
}
