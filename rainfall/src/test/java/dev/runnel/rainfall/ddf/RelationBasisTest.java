package dev.runnel.rainfall.ddf;

import static dev.runnel.rainfall.ddf.ReturnPeriodBasis.ANNUAL_MAXIMUM;
import static dev.runnel.rainfall.ddf.ReturnPeriodBasis.PEAKS_OVER_THRESHOLD;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class RelationBasisTest {
    private static final Duration HOUR = Duration.ofHours(1);

    @Test
    void convertsDepthAndReturnPeriod() {
        DepthDurationFrequency annual = Bilham.relation().withBasis(ANNUAL_MAXIMUM);
        // Langbein: two years of annual maxima are 1/ln 2 years of peaks over threshold.
        assertThat(annual.depthMm(HOUR, 2)).isCloseTo(Bilham.relation().depthMm(HOUR, 1 / Math.log(2)), within(1e-12));
        ReturnPeriod back = annual.returnPeriod(HOUR, annual.depthMm(HOUR, 2));
        assertThat(back.basis()).isEqualTo(ANNUAL_MAXIMUM);
        assertThat(back.years()).isCloseTo(2, within(1e-12));
        assertThat(annual.basis()).isEqualTo(ANNUAL_MAXIMUM);
        assertThat(annual.smallestYears()).isCloseTo(1 / (1 - Math.exp(-10)), within(1e-12));
        assertThat(annual).hasToString(Bilham.relation() + " as annual maximum");
        assertThat(annual.withBasis(ANNUAL_MAXIMUM)).isSameAs(annual);
    }

    @Test
    void itsLimitsAreThoseOfTheGivenRelation() {
        DdfTable table = DdfTable.of(
                PEAKS_OVER_THRESHOLD, java.util.List.of(HOUR), new double[] {0.5, 3, 70}, new double[][] {{10, 20, 40}
                });
        DepthDurationFrequency annual = table.withBasis(ANNUAL_MAXIMUM);
        assertThat(annual.depthMm(HOUR, annual.smallestYears())).isCloseTo(10, within(1e-12));
        assertThat(annual.depthMm(HOUR, annual.greatestYears())).isCloseTo(40, within(1e-12));
        assertThat(annual.returnPeriod(HOUR, 41).isAbove()).isTrue();
        assertThat(annual.returnPeriod(HOUR, 41).years()).isEqualTo(annual.greatestYears());
        assertThatThrownBy(() -> annual.depthMm(HOUR, 1.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("returnPeriodYears must be in [1.156");
    }

    @Test
    void manyTimesAYearCannotBeAnnualMaxima() {
        DdfTable table = DdfTable.of(
                PEAKS_OVER_THRESHOLD, java.util.List.of(HOUR), new double[] {0.02, 3}, new double[][] {{1, 20}});
        assertThatThrownBy(() -> table.withBasis(ANNUAL_MAXIMUM))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "smallest return period must be so long that as annual maximum it can be told from one year,"
                                + " about 0.03 years, was 0.02 (years, peaks over threshold)");
    }
}
