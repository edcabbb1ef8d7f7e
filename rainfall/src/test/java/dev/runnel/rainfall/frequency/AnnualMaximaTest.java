package dev.runnel.rainfall.frequency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.Fit;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.time.Month;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class AnnualMaximaTest {
    private static final Duration HOUR = Duration.ofHours(1);
    private static final Duration DAY = Duration.ofDays(1);

    @Test
    void findsThePlantedMaximumOfEachYear() {
        double[] values = new double[(365 + 366) * 24];
        values[1000] = 5;
        values[1001] = 3;
        values[365 * 24 - 1] = 4;
        values[365 * 24] = 4;
        values[365 * 24 + 500] = 6;
        AnnualMaxima maxima = AnnualMaxima.from(
                RegularSeries.of(Instant.parse("2023-01-01T00:00:00Z"), HOUR, values),
                List.of(HOUR, Duration.ofHours(2)),
                YearRule.calendar());
        assertThat(maxima.years()).containsExactly(2023, 2024);
        assertThat(maxima.depthsMm(HOUR)).containsExactly(5, 6);
        // The window over New Year (4 + 4) belongs to neither year.
        assertThat(maxima.depthsMm(Duration.ofHours(2))).containsExactly(8, 6);
        assertThat(maxima.withClockCorrection().depthsMm(HOUR)[0]).isCloseTo(5 * 8.0 / 7, within(1e-15));
    }

    @Test
    void namesTheYearsThatDoNotCount() {
        double[] values = new double[3 * 365];
        values[10] = 2;
        for (int i = 365; i < 365 + 100; i++) {
            values[i] = Double.NaN;
        }
        AnnualMaxima maxima = AnnualMaxima.from(
                RegularSeries.of(Instant.parse("2021-01-01T00:00:00Z"), DAY, values),
                List.of(DAY),
                YearRule.calendar().withMinimumCoverage(0.9));
        assertThat(maxima.years()).containsExactly(2021, 2023);
        assertThat(maxima.excludedYears()).hasSize(1);
        assertThat(maxima.excludedYears().get(0).year()).isEqualTo(2022);
        assertThat(maxima.excludedYears().get(0).coverage()).isCloseTo(265.0 / 365, within(1e-12));
    }

    @Test
    void aLongGapSpoilsAYearThatScatteredOnesDoNot() {
        double[] values = new double[2 * 365];
        for (int i = 0; i < 60; i++) {
            values[100 + i] = Double.NaN;
            values[365 + 6 * i] = Double.NaN;
        }
        RegularSeries rain = RegularSeries.of(Instant.parse("2021-01-01T00:00:00Z"), DAY, values);
        YearRule rule = YearRule.calendar().withLongestGap(Duration.ofDays(30));
        AnnualMaxima maxima = AnnualMaxima.from(rain, List.of(DAY), rule);
        assertThat(maxima.years()).containsExactly(2022);
        assertThat(maxima.excludedYears().get(0).longestGap()).isEqualTo(Duration.ofDays(60));
        assertThat(AnnualMaxima.from(rain, List.of(DAY), rule.withLongestGap(Duration.ofDays(60)))
                        .years())
                .containsExactly(2021, 2022);
        assertThat(rule).hasToString("YearRule[from --01-01 in Z, coverage at least 0.8, no gap longer than 30 d]");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> rule.withLongestGap(Duration.ofDays(-1)))
                .withMessage("longestGap must not be negative, was -1 d");
    }

    @Test
    void theClockIsCorrectedOnce() {
        SortedMap<Duration, double[]> depths = new TreeMap<>();
        depths.put(HOUR, new double[] {70, 35});
        AnnualMaxima once = AnnualMaxima.of(List.of(2001, 2002), depths, HOUR).withClockCorrection();
        assertThat(once.depthsMm(HOUR)).containsExactly(80, 40);
        assertThat(once.withClockCorrection().depthsMm(HOUR)).containsExactly(80, 40);
        assertThat(once.toString()).endsWith(", corrected for the clock]");
    }

    @Test
    void aYearWithoutAnyReadingNeverCounts() {
        double[] values = new double[2 * 365];
        Arrays.fill(values, 365, 730, Double.NaN);
        values[5] = 12;
        AnnualMaxima maxima = AnnualMaxima.from(
                RegularSeries.of(Instant.parse("2021-01-01T00:00:00Z"), DAY, values),
                List.of(DAY),
                YearRule.calendar().withMinimumCoverage(0));
        assertThat(maxima.years()).containsExactly(2021);
        assertThat(maxima.excludedYears()).hasSize(1);
    }

    @Test
    void timeOutsideTheRecordIsAGapOfItsYear() {
        double[] values = new double[300];
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AnnualMaxima.from(
                        RegularSeries.of(Instant.parse("2021-02-10T00:00:00Z"), DAY, values),
                        List.of(DAY),
                        YearRule.calendar().withLongestGap(Duration.ofDays(39))))
                .withMessageEndingWith("had [ExcludedYear[2021, coverage 0.822, longest gap 40 d]]");
    }

    @Test
    void theStormsOfTheMaximaAreNamed() {
        double[] values = new double[365];
        values[40] = 9;
        AnnualMaxima maxima = AnnualMaxima.from(
                RegularSeries.of(Instant.parse("2021-01-01T00:00:00Z"), DAY, values),
                List.of(DAY),
                YearRule.calendar());
        assertThat(maxima.withClockCorrection().peaks(DAY))
                .containsExactly(new PeakDepth(DAY, 9, Instant.parse("2021-02-10T00:00:00Z")));
    }

    @Test
    void knownMaximaAreTakenAsTheyStand() {
        SortedMap<Duration, double[]> depths = new TreeMap<>();
        depths.put(DAY, new double[] {50, 60});
        depths.put(HOUR, new double[] {20, 30});
        AnnualMaxima maxima = AnnualMaxima.of(List.of(2001, 2003), depths, HOUR);
        assertThat(maxima.durations()).containsExactly(HOUR, DAY);
        assertThat(maxima.depthsMm(HOUR)).containsExactly(20, 30);
        assertThat(maxima.peaks(HOUR)).isEmpty();
        assertThat(maxima.withClockCorrection().depthsMm(HOUR)[0]).isCloseTo(20 * 8.0 / 7, within(1e-14));
        AnnualMaxima sliding = AnnualMaxima.of(List.of(2001, 2003), depths, Duration.ZERO);
        assertThat(sliding.withClockCorrection().depthsMm(DAY)).containsExactly(50, 60);

        assertThatIllegalArgumentException()
                .isThrownBy(() -> AnnualMaxima.of(List.of(2001, 2001), depths, HOUR))
                .withMessage("years must rise, had 2001 after 2001");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AnnualMaxima.of(List.of(2001), depths, HOUR))
                .withMessage("depths of 1 h must be as many as the years, 1, were 2");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AnnualMaxima.of(List.of(2001, 2002), depths, Duration.ofHours(2)))
                .withMessage("duration must be at least the step 2 h, was 1 h");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AnnualMaxima.of(List.of(), depths, HOUR))
                .withMessage("number of years must be at least 1, was 0");
        depths.put(DAY, new double[] {50, -1});
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AnnualMaxima.of(List.of(2001, 2003), depths, HOUR))
                .withMessageStartingWith("depth of 1 d in 2003 must be 0 or greater");
    }

    @Test
    void separateFitsMakeATableUnlessTheyCross() {
        SortedMap<Duration, double[]> depths = new TreeMap<>();
        depths.put(HOUR, new double[] {20, 22, 25, 31, 28, 24, 40});
        depths.put(DAY, new double[] {50, 60, 55, 71, 66, 52, 90});
        List<Integer> years = List.of(1, 2, 3, 4, 5, 6, 7);
        var table = AnnualMaxima.of(years, depths, HOUR).table(DistributionFamily.GUMBEL, FitMethod.MOMENTS, 2, 10);
        assertThat(table.depthMm(DAY, 10))
                .isEqualTo(Fit.of(DistributionFamily.GUMBEL, FitMethod.MOMENTS, depths.get(DAY))
                        .returnLevel(10));
        depths.put(HOUR, new double[] {20, 22, 25, 31, 28, 24, 80});
        depths.put(Duration.ofHours(2), new double[] {33, 34, 35, 34, 36, 33, 80});
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AnnualMaxima.of(years, depths, HOUR)
                        .table(DistributionFamily.GUMBEL, FitMethod.MOMENTS, 2, 100))
                .withMessageContaining("2 h");
    }

    @Test
    void whatSpeaksAgainstAFitIsSaid() {
        SortedMap<Duration, double[]> depths = new TreeMap<>();
        double[] rising = new double[20];
        double[] steady = new double[20];
        List<Integer> years = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            years.add(2001 + i);
            rising[i] = 20 + i;
            steady[i] = 40 + 7 * i % 10;
        }
        depths.put(HOUR, rising);
        depths.put(DAY, steady);
        AnnualMaxima maxima = AnnualMaxima.of(years, depths, HOUR);
        assertThat(maxima.warnings(DAY)).isEmpty();
        assertThat(maxima.warnings(HOUR)).hasSize(1);
        assertThat(maxima.warnings(HOUR).get(0)).startsWith("Trend over the years: tau 1, p ");
        steady[8] = 400;
        assertThat(AnnualMaxima.of(years, depths, HOUR).warnings(DAY))
                .singleElement()
                .asString()
                .startsWith("Outlier in 2009: 400 mm, G 4.");
        depths.remove(HOUR);
        depths.put(DAY, new double[] {0, 0, 0});
        assertThat(AnnualMaxima.of(List.of(1, 2, 3), depths, HOUR).warnings(DAY))
                .containsExactly(
                        "Only 3 years: a fit of so few is rough, look at its limits.",
                        "3 years have no rain at all.",
                        "All maxima are equal: there is nothing to fit.");
    }

    /** Days read at 9 h: the one from 31 December holds nine hours of the new year and counts for the old. */
    @Test
    void aStepOverTheTurnOfTheYearBelongsToTheOldOne() {
        double[] values = new double[2 * 365];
        values[364] = 30;
        values[20] = 10;
        values[400] = 12;
        AnnualMaxima maxima = AnnualMaxima.from(
                RegularSeries.of(Instant.parse("2021-01-01T09:00:00Z"), DAY, values),
                List.of(DAY),
                YearRule.calendar());
        assertThat(maxima.years()).containsExactly(2021, 2022);
        assertThat(maxima.depthsMm(DAY)).containsExactly(30, 12);
    }

    @Test
    void aWindowLongerThanAYearIsRefused() {
        RegularSeries rain = RegularSeries.of(Instant.parse("2021-01-01T00:00:00Z"), DAY, new double[3 * 365]);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AnnualMaxima.from(rain, List.of(DAY, Duration.ofDays(800)), YearRule.calendar()))
                .withMessage("duration must be no longer than a year of 365 days, was 800 d");
        assertThat(AnnualMaxima.from(rain, List.of(Duration.ofDays(365)), YearRule.calendar())
                        .years())
                .hasSize(3);
        SortedMap<Duration, double[]> depths = new TreeMap<>();
        depths.put(Duration.ofDays(366), new double[] {50});
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AnnualMaxima.of(List.of(2001), depths, DAY))
                .withMessage("duration must be no longer than a year of 365 days, was 366 d");
    }

    @Test
    void yearsThatLackStepsAreSaidToBeAtLeast() {
        double[] values = new double[2 * 365];
        for (int i = 0; i < values.length; i++) {
            values[i] = i % 11;
        }
        values[3] = Double.NaN;
        AnnualMaxima maxima = AnnualMaxima.from(
                RegularSeries.of(Instant.parse("2021-01-01T00:00:00Z"), DAY, values),
                List.of(DAY),
                YearRule.calendar());
        assertThat(maxima.warnings(DAY)).contains("1 of 2 years lack steps: their maxima may be too low.");
    }

    @Test
    void aTrendInTheYearsIsSeen() {
        double[] rising = new double[20 * 365];
        for (int year = 0; year < 20; year++) {
            rising[year * 365 + 100] = 10 + year;
        }
        AnnualMaxima maxima = AnnualMaxima.from(
                RegularSeries.of(Instant.parse("2001-01-01T00:00:00Z"), DAY, rising),
                List.of(DAY),
                YearRule.calendar());
        assertThat(maxima.trend(DAY).tau()).isEqualTo(1);
        assertThat(maxima.trend(DAY).pValue()).isLessThan(0.001);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> maxima.trend(HOUR))
                .withMessage("duration must be one of [1 d], was 1 h");
    }

    @Test
    void aWaterYearStartsInItsMonth() {
        double[] values = new double[365];
        values[0] = 7;
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AnnualMaxima.from(
                        RegularSeries.of(Instant.parse("2021-01-01T00:00:00Z"), DAY, values),
                        List.of(DAY),
                        YearRule.startingIn(Month.OCTOBER)))
                .withMessageStartingWith(
                        "rain must have a year that YearRule[from --10-01 in Z, years named by their start, coverage at least"
                                + " 0.8] accepts, had [ExcludedYear[2020");
    }

    @Test
    void waterYearsAreNamedByTheirStartOrTheirEnd() {
        YearRule byStart = YearRule.startingIn(java.time.Month.OCTOBER);
        YearRule byEnd = byStart.withNamesByEnd();
        assertThat(byEnd.interval(2021)).isEqualTo(byStart.interval(2020));
        assertThat(byEnd.toString()).contains("years named by their end");
        assertThat(byStart.toString()).contains("years named by their start");
        assertThat(YearRule.calendar().withNamesByEnd().interval(2021))
                .isEqualTo(YearRule.calendar().interval(2021));
        double[] days = new double[366 + 365];
        days[100] = 9;
        days[500] = 7;
        RegularSeries rain = RegularSeries.of(Instant.parse("2019-10-01T00:00:00Z"), Duration.ofDays(1), days);
        AnnualMaxima named = AnnualMaxima.from(rain, java.util.List.of(Duration.ofDays(1)), byEnd);
        assertThat(named.years()).containsExactly(2020, 2021);
        assertThat(named.toString()).contains("2 years 2020 to 2021, years named by their end, ");
        assertThat(AnnualMaxima.from(rain, java.util.List.of(Duration.ofDays(1)), byStart)
                        .years())
                .containsExactly(2019, 2020);
    }
}
