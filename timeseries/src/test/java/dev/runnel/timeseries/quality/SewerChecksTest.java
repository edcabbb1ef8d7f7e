package dev.runnel.timeseries.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Each expectation is worked by hand from the sentence that states the check. */
class SewerChecksTest {
    private static final Instant T0 = Instant.parse("2026-01-01T00:00:00Z");
    private static final Duration STEP = Duration.ofMinutes(2);
    private static final double NONE = Double.NaN;

    @Test
    void climatologyKnowsTheTimeOfTheYear() {
        ClimatologyCheck check = ClimatologyCheck.in(ZoneId.of("Europe/London"))
                .withMonths(Month.NOVEMBER, Month.FEBRUARY, 0.1, 0.5)
                .withMonths(Month.JUNE, Month.JUNE, 0.05, 0.2);
        Series series = Series.builder()
                .add(Instant.parse("2026-01-15T00:00:00Z"), 0.5)
                .add(Instant.parse("2026-02-28T23:59:00Z"), 0.51)
                .add(Instant.parse("2026-03-01T00:00:00Z"), 9)
                // 00:30 local time on 1 June is 23:30 on 31 May in UTC.
                .add(Instant.parse("2026-05-31T23:30:00Z"), 0.04)
                .add(Instant.parse("2026-12-01T00:00:00Z"), 0.1)
                .build();
        assertThat(codes(check, series)).isEqualTo("1 3 2 3 1");
        assertThat(check.apply(series).raised().get(0).reason())
                .isEqualTo("0.51 is outside [0.1, 0.5], usual in month 2");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> check.withMonths(Month.MAY, Month.MAY, 1, 0))
                .withMessage("highest must be in [1, Infinity], was 0");
    }

    @Test
    void timingSeesAClockThatWasSetButNoGap() {
        TimingCheck check = TimingCheck.of(STEP, Duration.ofSeconds(5));
        Series series = Series.builder()
                .add(T0, 1)
                .add(T0.plusSeconds(120), 1)
                .add(T0.plusSeconds(485), 1)
                .add(T0.plusSeconds(671), 1)
                .add(T0.plusSeconds(675), 1)
                .build();
        assertThat(codes(check, series)).isEqualTo("2 1 1 3 3");
        assertThat(check.apply(series).raised().get(0).reason())
                .isEqualTo("came 3 min 6 s after the one before, not a multiple of 2 min");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> TimingCheck.of(STEP, Duration.ofMinutes(1)))
                .withMessage("tolerance must be shorter than half of the interval, 2 min, was 1 min");
    }

    @Test
    void attenuationIsARangeOverAWindow() {
        AttenuatedSignalCheck check = AttenuatedSignalCheck.of(Duration.ofMinutes(6), 0.5, 0.1);
        assertThat(codes(check, steps(0, 1, 0, 0.2, 0.3, 0.25, 0.31, 0.26, 0.9)))
                .isEqualTo("2 2 2 1 1 3 3 4 1");
        assertThat(check.apply(steps(1, 1, 1, 1)).raised().get(0).reason()).isEqualTo("moved by 0 in 6 min");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AttenuatedSignalCheck.of(Duration.ofDays(32), 1, 1))
                .withMessage("window must be at most 31 days, was 32 d");
    }

    @Test
    void aNeighbourIsComparedAtTheSameInstantOnly() {
        NeighbourCheck check = NeighbourCheck.of(0.03, 0.05);
        QualityFlags flags =
                check.apply(steps(1, 1, 1, NONE, 1), steps(1.03125 - 0.0078125, 1.0390625, 1.0625, 1, NONE));
        assertThat(codes(flags)).isEqualTo("1 3 4 9 2");
        Series elsewhere = Series.builder().add(T0.plusSeconds(1), 1).build();
        assertThat(codes(check.apply(steps(1), elsewhere))).isEqualTo("2");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ReadingPair.of(Reading.of(T0, 1), Reading.of(T0.plusSeconds(1), 1)))
                .withMessageStartingWith("companion must be of the time of the reading");
    }

    @Test
    void zerosInDeepWaterAreUnusualAndFailWhenTheyLast() {
        ZeroWithDepthCheck check = ZeroWithDepthCheck.of(0.1, Duration.ofMinutes(4));
        QualityFlags flags =
                check.apply(steps(0, 0, 0, 0.3, 0, 0, 0, -0.1), steps(0.1, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2, 0.2));
        assertThat(codes(flags)).isEqualTo("1 3 3 1 3 3 4 1");
        assertThat(flags.raised().get(4).reason()).isEqualTo("0 at a depth of 0.2 for 4 min");
    }

    @Test
    void aDeadSensorStandsWhileItsCompanionMoves() {
        DeadSensorCheck check = DeadSensorCheck.ofStandBelowAndMoveAbove(Duration.ofMinutes(4), 0.01, 0.1);
        QualityFlags flags = check.apply(steps(0.5, 0.5, 0.5, 0.5, 0.5, 0.6), steps(0.2, 0.25, 0.3, 0.35, 0.46, 0.5));
        // 0.2 to 0.3 is not more than 0.1 by rounding up; 0.3 to 0.46 is.
        assertThat(codes(flags)).startsWith("2 2").endsWith("4 1");
        assertThat(flags.raised().get(flags.raised().size() - 1).reason())
                .isEqualTo("moved by 0 in 4 min while its companion moved by 0.16");
    }

    @Test
    void aReadingThatContradictsItsCompanionIsOutsideTheBand() {
        RelationCheck check = RelationCheck.of(
                new double[] {0.1, 0.2, 0.4}, new double[] {0.2, 0.4, 0.6}, new double[] {0.6, 0.8, 1.0});
        QualityFlags flags =
                check.apply(steps(0.2, 0.19, 0.49, 0.5, 0.91, 1.1, 0.5), steps(0.1, 0.1, 0.3, 0.3, 0.3, 0.4, 0.45));
        assertThat(codes(flags)).isEqualTo("1 3 3 1 3 3 2");
        assertThat(flags.raised().get(1).reason()).isEqualTo("0.49 is outside [0.5, 0.9], usual beside 0.3");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RelationCheck.of(new double[] {1, 1}, new double[2], new double[2]))
                .withMessage("companions must rise, was 1 after 1");
    }

    @Test
    void aLostEchoComesByAJumpAndStays() {
        LostEchoCheck check = LostEchoCheck.ofValueAndJump(0, 0.1, Duration.ofMinutes(10));
        assertThat(codes(check, steps(0.3, 0, 0, 0.05, 0, 0.3, 0))).isEqualTo("1 4 4 1 1 1 4");
        assertThat(codes(check, steps(0, 0, 0.3))).as("a dry pipe").isEqualTo("1 1 1");
        Series afterAWeek =
                Series.builder().add(T0, 0.3).add(T0.plusSeconds(700_000), 0).build();
        assertThat(codes(check, afterAWeek)).isEqualTo("1 1");
    }

    @Test
    void aRepeatedDayIsFoundAndAFlatOneIsNot() {
        RepeatedDayCheck check = RepeatedDayCheck.of(Duration.ofHours(2));
        SeriesBuilder repeated = Series.builder();
        SeriesBuilder flat = Series.builder();
        for (int i = 0; i < 3 * 720; i++) {
            // Day 2 repeats day 1; day 3 is its own.
            double value = i < 1440 ? (i % 720) % 50 * 0.01 : 1 + i * 0.001;
            repeated.add(T0.plus(STEP.multipliedBy(i)), value);
            flat.add(T0.plus(STEP.multipliedBy(i)), 0.2);
        }
        QualityFlags flags = check.apply(repeated.build());
        assertThat(flags.count(Verdict.FAIL)).isEqualTo(720 - 60);
        assertThat(flags.raised().get(0)).hasToString("2026-01-02T02:00:00Z fail: the same as 1 d before, for 2 h");
        assertThat(flags.verdict(1440)).isEqualTo(Verdict.PASS);
        assertThat(check.apply(flat.build()).raised()).isEmpty();
    }

    @Test
    void aUnitIsSuspectedWhenAFactorBringsTheRecordIntoItsRange() {
        Series depthInMm = steps(110, 140, 95, 180, 120, 101, 99, 150, 130, 120);
        assertThat(UnitSuspicion.of(depthInMm, 0.02, 0.45))
                .extracting(UnitSuspicion::factor)
                // A depth is no volume per hour, but the check knows no quantity: it names all that fit.
                .containsExactly(0.001, 1.0 / 3600);
        assertThat(UnitSuspicion.of(depthInMm, 0.02, 0.45).get(0))
                .hasToString("UnitSuspicion[mm taken for m, or l/s for m3/s: times 0.001 100 % lie in the range,"
                        + " as they are 0 %]");
        assertThat(UnitSuspicion.of(depthInMm, 50, 200)).isEmpty();
        assertThat(UnitSuspicion.of(Series.empty(), 0, 1)).isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> UnitSuspicion.of(depthInMm, 1, 1))
                .withMessage("highest must be greater than lowest, 1, was 1");
    }

    @Test
    void theCalendarCountsWhatIsGoodDayByDay() {
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < 1440; i++) {
            Instant time = T0.plus(STEP.multipliedBy(i));
            if (i >= 100 && i < 172) {
                builder.add(new Reading(time, 9, Quality.SUSPECT));
            } else if (i >= 800 && i < 836) {
                builder.add(time, NONE);
            } else if (i < 1400 || i >= 1420) {
                builder.add(new Reading(time, 0.2, i == 5 ? Quality.POOR : Quality.GOOD));
            }
        }
        List<GoodDay> days = GoodDays.in(ZoneOffset.UTC).of(builder.build());
        assertThat(days).hasSize(2);
        GoodDay first = days.get(0);
        assertThat(first.date()).isEqualTo(LocalDate.of(2026, 1, 1));
        assertThat(first.expected()).isEqualTo(720);
        assertThat(first.usable()).isEqualTo(648);
        assertThat(first.poor()).isEqualTo(1);
        assertThat(first.suspect()).isEqualTo(72);
        // The reading before the hole speaks for three minutes, not for the 146 to the next.
        assertThat(first.share()).isEqualTo((1440 - 146 + 3) / 1440.0);
        assertThat(days.get(1).missing()).isEqualTo(36);
        assertThat(days.get(1).usable()).isEqualTo(720 - 36 - 20);
        // Two holes of 74 and 42 minutes from value to value, less 3 minutes that each value before them holds.
        assertThat(days.get(1).share()).isEqualTo((1440 - 71 - 39) / 1440.0);
        assertThat(days.get(1))
                .hasToString(
                        "GoodDay[2026-01-02, 92.36 % good: 664 of 720 usable, 0 of them poor, 0 suspect, 36 missing]");
        Series farOff = Series.builder()
                .add(T0, 1)
                .add(Instant.parse("2199-01-01T00:00:00Z"), 1)
                .build();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> GoodDays.in(ZoneOffset.UTC).of(farOff))
                .withMessage("series must span at most 36525 days, was 2026-01-01 to 2199-01-01");
    }

    @Test
    void checksPrintTheirLimitsAsPeopleWriteThem() {
        Duration day = Duration.ofHours(24);
        Duration gap = Duration.ofMinutes(90);
        assertThat(new DeadSensorCheck(day, 0.01, 0.05))
                .hasToString("DeadSensorCheck[stands within 0.01 while the companion moves more than 0.05, over 1 d]");
        assertThat(new RateOfChangeCheck(0.002, gap))
                .hasToString("RateOfChangeCheck[faster than 0.002 a second, over at most 1 h 30 min]");
        assertThat(new LostEchoCheck(0, 0.3, gap))
                .hasToString("LostEchoCheck[jump of 0.3 or more to 0, within 1 h 30 min]");
        assertThat(new SpikeCheck(0.1, 0.2, gap, true))
                .hasToString("SpikeCheck[unusual above 0.1, fails above 0.2, neighbours within 1 h 30 min, sparing]");
        assertThat(new AttenuatedSignalCheck(day, 0.02, 0.01))
                .hasToString("AttenuatedSignalCheck[range unusual below 0.02, fails below 0.01, over 1 d]");
        assertThat(new RepeatedDayCheck(day, gap))
                .hasToString("RepeatedDayCheck[as 1 d before, for at least 1 h 30 min]");
        assertThat(new ZeroWithDepthCheck(0, 0.1, gap))
                .hasToString("ZeroWithDepthCheck[up to 0 with a depth above 0.1, fails after 1 h 30 min]");
        assertThat(new MultivariateCheck(3, 1, day))
                .hasToString("MultivariateCheck[3 deviations, companion 1, over 1 d]");
        assertThat(new TimingCheck(Duration.ofMinutes(2), Duration.ofSeconds(5)))
                .hasToString("TimingCheck[every 2 min, to within 5 s]");
        assertThat(new DeviationRateCheck(3, day)).hasToString("DeviationRateCheck[3 deviations, over 1 d]");
    }

    private static String codes(QualityCheck check, Series series) {
        return codes(check.apply(series));
    }

    private static String codes(QualityFlags flags) {
        StringBuilder codes = new StringBuilder();
        for (int i = 0; i < flags.size(); i++) {
            codes.append(i == 0 ? "" : " ").append(flags.verdict(i).code());
        }
        return codes.toString();
    }

    private static Series steps(double... values) {
        SeriesBuilder builder = Series.builder();
        for (int i = 0; i < values.length; i++) {
            builder.add(T0.plus(STEP.multipliedBy(i)), values[i]);
        }
        return builder.build();
    }
}
