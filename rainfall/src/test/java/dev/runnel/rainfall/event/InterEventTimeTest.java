package dev.runnel.rainfall.event;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The choice of a minimum inter-event time from the record. */
class InterEventTimeTest {
    private static final DryGaps TWENTY =
            DryGaps.ofHours(1, 1, 2, 2, 3, 4, 5, 7, 9, 12, 15, 20, 26, 33, 41, 50, 62, 77, 95, 120);

    private static double coefficient(int hours, DryGaps.Convention convention) {
        return TWENTY.candidates(convention).stream()
                .filter(candidate -> candidate.minimum().equals(Duration.ofHours(hours)))
                .findFirst()
                .orElseThrow()
                .coefficientOfVariation();
    }

    /** Twenty gaps, recomputed elsewhere to five decimals. */
    @Test
    void coefficientsOfVariationOfBothConventions() {
        assertThat(coefficient(1, DryGaps.Convention.GAPS)).isCloseTo(1.15916, within(5e-6));
        assertThat(coefficient(3, DryGaps.Convention.GAPS)).isCloseTo(0.95578, within(5e-6));
        assertThat(coefficient(15, DryGaps.Convention.GAPS)).isCloseTo(0.60736, within(5e-6));
        assertThat(coefficient(1, DryGaps.Convention.EXCESSES)).isCloseTo(1.23138, within(5e-6));
        assertThat(coefficient(4, DryGaps.Convention.EXCESSES)).isCloseTo(1.04135, within(5e-6));
        assertThat(coefficient(20, DryGaps.Convention.EXCESSES)).isCloseTo(0.87926, within(5e-6));
    }

    @Test
    void theTimeIsTheFirstAtWhichTheCoefficientIsOne() {
        assertThat(TWENTY.exponential(DryGaps.Convention.GAPS).orElseThrow().minimum())
                .isEqualTo(Duration.ofHours(3));
        assertThat(TWENTY.exponential(DryGaps.Convention.EXCESSES).orElseThrow().minimum())
                .isEqualTo(Duration.ofHours(5));
        assertThat(TWENTY.exponential(DryGaps.Convention.GAPS).orElseThrow().gaps())
                .isEqualTo(16);
        assertThat(DryGaps.ofHours(1, 1).exponential(DryGaps.Convention.GAPS)).isEmpty();
        // More even than those of independent storms from the first: nothing falls to 1.
        assertThat(DryGaps.ofHours(4, 5, 6, 7, 8).exponential(DryGaps.Convention.GAPS))
                .isEmpty();
        assertThat(DryGaps.ofHours(4, 4, 4).candidates(DryGaps.Convention.EXCESSES))
                .isEqualTo(List.of(new DryGaps.Candidate(Duration.ofHours(4), 3, 0)));
    }

    @Test
    void findsGapsBetweenWetStepsAndLeavesOutUnknownOnes() {
        double gap = Double.NaN;
        RegularSeries rain = RegularSeries.of(
                Instant.EPOCH, Duration.ofHours(2), 0, gap, 0, 1, 1, 0, 1, 0, gap, 0, 1, 0, 0, 0, 1, 0, 0, 0, 0);
        DryGaps gaps = DryGaps.of(rain);
        assertThat(gaps.unknown()).isEqualTo(1);
        assertThat(gaps).hasToString("DryGaps[2 gaps of 2 to 6 h, 1 of unknown length]");
        assertThat(DryGaps.of(Tips.ofEpochNanos(0, 0, 3_600_000_000_000L)).size())
                .isEqualTo(1);
        assertThat(DryGaps.of(Tips.none()).size()).isZero();
    }

    /** The formula summed by hand for 1, 0, 0, 1, 0, 0: mean 1/3, variance 2/9. */
    @Test
    void autocorrelationFollowsItsFormula() {
        RegularSeries rain = RegularSeries.of(Instant.EPOCH, Duration.ofHours(1), 1, 0, 0, 1, 0, 0);
        RainAutocorrelation correlation = RainAutocorrelation.of(rain, 4);
        assertThat(correlation.coefficient(0)).isCloseTo(1, within(1e-15));
        assertThat(correlation.coefficient(1)).isCloseTo((-2 + 1 - 2 - 2 + 1) / 9.0 / 5 / (2 / 9.0), within(1e-15));
        assertThat(correlation.coefficient(3)).isCloseTo((4 + 1 + 1) / 9.0 / 3 / (2 / 9.0), within(1e-15));
        assertThat(correlation.limit(1)).isCloseTo(1.96 / Math.sqrt(5), within(1e-4));
        assertThat(correlation.independentAfter()).contains(Duration.ofHours(1));
    }

    @Test
    void autocorrelationOfLongStormsIsLong() {
        double[] hours = new double[4000];
        for (int i = 0; i < hours.length; i++) {
            hours[i] = i % 200 < 8 ? 1 : 0;
        }
        RainAutocorrelation correlation =
                RainAutocorrelation.of(RegularSeries.of(Instant.EPOCH, Duration.ofHours(1), hours), 30);
        assertThat(correlation.independentAfter()).contains(Duration.ofHours(8));
        assertThat(correlation).hasToString("RainAutocorrelation[30 lags of 1 h, independent after 8 h]");
    }

    @Test
    void refusesBadInput() {
        assertThatThrownBy(() -> DryGaps.ofHours(1, 0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("hours must be greater than 0 and finite (h), was 0");
        RegularSeries steady = RegularSeries.of(Instant.EPOCH, Duration.ofHours(1), 1, 1, 1);
        assertThatThrownBy(() -> RainAutocorrelation.of(steady, 2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("rain must vary, was the same in all steps or missing");
        assertThatThrownBy(() -> RainAutocorrelation.of(steady, 3))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("lags must be less than the steps of rain, 3, was 3");
    }
}
