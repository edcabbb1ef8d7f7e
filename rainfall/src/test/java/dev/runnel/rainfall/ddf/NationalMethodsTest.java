package dev.runnel.rainfall.ddf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.areal.ArealReduction;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NationalMethodsTest {
    private static Duration minutes(long minutes) {
        return Duration.ofMinutes(minutes);
    }

    /** The form in inches, N = 1.25 t (r + 0.1)^-3.55, solved elsewhere; both forms from memory. */
    @ParameterizedTest
    @CsvSource({"20, 5, 3.236307063759383", "20, 10, 4.481783805482186"})
    void bilhamAgreesWithItsFormInInches(double timesInTenYears, long duration, double depth) {
        assertThat(Bilham.relation().depthMm(minutes(duration), 10 / timesInTenYears))
                .isCloseTo(depth, within(0.01));
    }

    @Test
    void bilhamIsItsOwnInverse() {
        for (double years : new double[] {0.1, 0.5, 1, 7, 100}) {
            double depth = Bilham.relation().depthMm(minutes(45), years);
            ReturnPeriod back = Bilham.relation().returnPeriod(minutes(45), depth);
            assertThat(back.isWithin()).isTrue();
            assertThat(back.years()).isCloseTo(years, within(1e-13 * years));
        }
        assertThat(Bilham.relation().returnPeriod(minutes(10), 90).isAbove()).isTrue();
        assertThat(Bilham.relation().returnPeriod(minutes(10), 0.2).isBelow()).isTrue();
        assertThatThrownBy(() -> Bilham.relation().depthMm(minutes(121), 5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must be in [5 min, 2 h], was 2 h 1 min");
    }

    /** Calculation sheets to BRE Digest 365 (2017, r 0.40; 2008, r 0.35), M5-60 = 20 mm, printed to 0.1 mm. */
    @ParameterizedTest
    @CsvSource({
        "0.40, 10, 10.4", "0.40, 15, 12.6", "0.40, 30, 16.0", "0.40, 60, 20.0", "0.40, 120, 24.2", "0.40, 240, 29.0",
        "0.40, 360, 32.0", "0.40, 600, 35.8", "0.40, 1440, 44.8", "0.35, 5, 7.1", "0.35, 15, 12.3", "0.35, 120, 24.5",
        "0.35, 360, 33.8", "0.35, 600, 38.9"
    })
    void fiveYearDepthsAgreeWithSheets(double ratio, long duration, double depth) {
        // The sheet for r 0.40 rounds Z1 to 0.01, which is 0.1 mm of depth; the other to 0.05 mm.
        assertThat(FloodStudies1975.of(20, ratio).m5Mm(minutes(duration)))
                .isCloseTo(depth, within(ratio == 0.40 ? 0.1 : 0.05));
    }

    /** The ten-year depths of the sheet for r 0.40; its factors are printed to 0.01. */
    @ParameterizedTest
    @CsvSource({"10, 12.69", "30, 19.84", "60, 24.80", "240, 35.38", "360, 38.72", "1440, 52.86"})
    void tenYearDepthsAgreeWithASheet(long duration, double depth) {
        DdfTable table = FloodStudies1975.of(20, 0.40).atPoint();
        assertThat(table.depthMm(minutes(duration), 10)).isCloseTo(depth, within(0.012 * depth));
    }

    @Test
    void theWholeMapGivesRisingDepths() {
        GrowthFactors[] all = {
            GrowthFactors.floodStudiesEnglandAndWalesShort(),
            GrowthFactors.floodStudiesEnglandAndWales(),
            GrowthFactors.floodStudiesScotlandAndNorthernIreland()
        };
        int tables = 0;
        for (GrowthFactors factors : all) {
            for (double m5 = 10; m5 <= 25; m5 += 1.5) {
                for (int r = 12; r <= 45; r += 3) {
                    // The factory refuses a table whose depths fall.
                    DdfTable table = FloodStudies1975.of(m5, r / 100.0)
                            .withGrowthFactors(factors)
                            .atPoint();
                    assertThat(table.longestDuration()).isEqualTo(Duration.ofHours(24));
                    assertThat(table.provenance()).contains(factors.provenance());
                    tables++;
                }
            }
        }
        assertThat(tables).isEqualTo(396);
    }

    @Test
    void scotlandHasFrequentDepthsOfItsOwn() {
        DdfTable table = FloodStudies1975.of(15, 0.21)
                .withGrowthFactors(GrowthFactors.floodStudiesScotlandAndNorthernIreland())
                .atPoint();
        // M5-60 15 mm; 2M 0.55 and M100 1.98 of the row 15 mm, from memory.
        assertThat(table.depthMm(minutes(60), 0.5)).isCloseTo(15 * 0.55, within(1e-12));
        assertThat(table.withBasis(ReturnPeriodBasis.ANNUAL_MAXIMUM).depthMm(minutes(60), 100))
                .isCloseTo(15 * 1.98, within(1e-12));
        assertThat(table.returnPeriod(minutes(60), 15)
                        .withBasis(ReturnPeriodBasis.ANNUAL_MAXIMUM)
                        .years())
                .isCloseTo(5, within(1e-12));
    }

    /** Encyclopaedia article on the Flood Studies Report: M5-60 20.5 mm, r 0.4, two days 51.3 mm. */
    @Test
    void twoDaysFollowFromTheRatio() {
        assertThat(FloodStudies1975.of(20.5, 0.4).m5TwoDaysMm()).isCloseTo(51.3, within(0.0501));
    }

    @Test
    void returnPeriodsThatAreBlankAtOneDurationAreLeftOut() {
        GrowthFactors blank =
                GrowthFactors.parse("m5_mm,M2,M10,M100\n1,0.7,1.2,1.8\n20,0.7,1.2,1.8\n90,0.7,1.2,\n", "x");
        DdfTable table = FloodStudies1975.of(20, 0.40).withGrowthFactors(blank).atPoint();
        assertThat(table.withBasis(ReturnPeriodBasis.ANNUAL_MAXIMUM).greatestYears())
                .isCloseTo(10, within(1e-12));
    }

    /** 1.25 in/h, from memory. */
    @Test
    void bilhamIsDoubtedAboveARate() {
        assertThat(Bilham.relation().isDoubtful(minutes(60), 31.7)).isFalse();
        assertThat(Bilham.relation().isDoubtful(minutes(60), 31.8)).isTrue();
        assertThat(Bilham.relation().isDoubtful(minutes(5), 2.7)).isTrue();
        DepthDurationFrequency raised = Bilham.relation().withUplift(ClimateUplift.ofPercent("invented", 100));
        assertThat(raised.isDoubtful(minutes(60), 31.8)).isFalse();
        assertThat(raised.withBasis(ReturnPeriodBasis.ANNUAL_MAXIMUM).isDoubtful(minutes(60), 63.6))
                .isTrue();
        assertThat(FloodStudies1975.of(20, 0.4).atPoint().isDoubtful(minutes(60), 500))
                .isFalse();
        assertThatThrownBy(() -> Bilham.relation().isDoubtful(minutes(60), -1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthMm must be 0 or greater and finite (mm), was -1");
    }

    @Test
    void anAreaTakesTheReduction() {
        FloodStudies1975 place = FloodStudies1975.of(20, 0.35);
        DdfTable area = place.overArea(ArealReduction.keersWescott(), 10);
        double factor = ArealReduction.keersWescott().factor(10, minutes(60));
        assertThat(area.depthMm(minutes(60), 10))
                .isCloseTo(factor * place.atPoint().depthMm(minutes(60), 10), within(1e-12));
    }

    /** By hand, 20000 km²: a 0.3653, b 0.6243, so 1 - b D^-a is -0.04 for a quarter of an hour and 0.20 for half of one. */
    @Test
    void durationsThatTheReductionRefusesAreLeftOutAndNamed() {
        FloodStudies1975 place = FloodStudies1975.of(20, 0.35);
        DdfTable area = place.overArea(ArealReduction.keersWescott(), 20_000);
        assertThat(area.durations()).hasSize(7).doesNotContain(minutes(5), minutes(10), minutes(15));
        assertThat(area.provenance())
                .endsWith(
                        "over 20000 km2, " + ArealReduction.keersWescott() + ", which refuses [5 min, 10 min, 15 min]");
        assertThat(place.overArea(ArealReduction.keersWescott(), 10).provenance())
                .endsWith("over 10 km2, " + ArealReduction.keersWescott());
        assertThatThrownBy(() -> place.overArea(ArealReduction.keersWescott(), 0.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("areaKm2 must be in [1, 20000] km2, was 0.5");
    }

    /** Z1 at r 0.12 gives 2.2, 3.4, 4.5 and 6.7 mm in 5, 10, 15 and 30 min; the growth factors begin at 5 mm. */
    @Test
    void durationsWithoutGrowthFactorsAreLeftOutAndNamed() {
        DdfTable table = FloodStudies1975.of(10, 0.12).atPoint();
        assertThat(table.shortestDuration()).isEqualTo(minutes(30));
        assertThat(table.provenance())
                .endsWith("at a point, without [5 min, 10 min, 15 min], whose M5 has no growth factors");
    }

    @Test
    void refusesPlacesOffTheMap() {
        assertThatThrownBy(() -> FloodStudies1975.of(30, 0.35))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("m560Mm must be in [10, 25] mm, was 30");
        assertThatThrownBy(() -> FloodStudies1975.of(20, 0.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("ratio must be in [0.12, 0.45], was 0.5");
        assertThatThrownBy(() -> FloodStudies1975.of(20, 0.4).m5Mm(minutes(7)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "duration must be one of [5 min, 10 min, 15 min, 30 min, 1 h, 2 h, 4 h, 6 h, 10 h, 1 d], was"
                                + " 7 min");
    }

    @Test
    void upliftIsNamedAndInverse() {
        ClimateUplift uplift = ClimateUplift.ofPercent("invented guidance, 2070s, central", 25);
        DepthDurationFrequency future = Bilham.relation().withUplift(uplift);
        double depth = future.depthMm(minutes(30), 10);
        assertThat(depth).isCloseTo(1.25 * Bilham.relation().depthMm(minutes(30), 10), within(1e-13));
        assertThat(future.returnPeriod(minutes(30), depth).years()).isCloseTo(10, within(1e-11));
        assertThat(future)
                .hasToString(
                        "Bilham[5 min to 2 h, 0.1 to 100 years, peaks over threshold, doubtful above 31.75 mm/h] raised by 25 %"
                                + " (invented guidance, 2070s, central)");
        assertThatThrownBy(() -> ClimateUplift.ofPercent(" ", 25))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("name must say where the uplift comes from, was blank");
        assertThatThrownBy(() -> ClimateUplift.ofPercent("a", -100))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("percent must be above -100 and finite (%), was -100");
    }
}
