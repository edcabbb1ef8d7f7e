package dev.runnel.rainfall.frequency;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.Month;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class SeasonTest {
    private static final Instant START = Instant.parse("2001-01-01T00:00:00Z");
    private static final Duration DAY = Duration.ofDays(1);

    /** Three years of days: 1 mm each, 50 mm on 15 January, 30 mm on 15 July, and in 2002 no reading from October on. */
    private static RegularSeries rain() {
        double[] depth = new double[3 * 365];
        for (int i = 0; i < depth.length; i++) {
            LocalDate day = START.atZone(ZoneOffset.UTC).toLocalDate().plusDays(i);
            boolean isFifteenth = day.getDayOfMonth() == 15;
            depth[i] = isFifteenth && day.getMonth() == Month.JANUARY
                    ? 50
                    : isFifteenth && day.getMonth() == Month.JULY ? 30 + day.getYear() - 2001 : 1;
            if (day.getYear() == 2002 && day.getMonthValue() >= 10) {
                depth[i] = Double.NaN;
            }
        }
        return RegularSeries.of(START, DAY, depth);
    }

    /** The year 2002 has lost a quarter, its summer nothing. */
    @Test
    void onlyTheSeasonCounts() {
        AnnualMaxima whole = AnnualMaxima.from(rain(), List.of(DAY), YearRule.calendar());
        assertThat(whole.years()).containsExactly(2001, 2003);
        assertThat(whole.depthsMm(DAY)).containsExactly(50, 50);
        AnnualMaxima summer = AnnualMaxima.from(rain(), List.of(DAY), YearRule.season(Month.MAY, Month.SEPTEMBER));
        assertThat(summer.years()).containsExactly(2001, 2002, 2003);
        assertThat(summer.depthsMm(DAY)).containsExactly(30, 31, 32);
        assertThat(summer.excludedYears()).isEmpty();
    }

    /** November to February: named by its start, and the first and the last are not whole. */
    @Test
    void aSeasonMayRunOverTheTurnOfTheYear() {
        YearRule winter = YearRule.season(Month.NOVEMBER, Month.FEBRUARY);
        assertThat(winter.interval(2001).start()).isEqualTo("2001-11-01T00:00:00Z");
        assertThat(winter.interval(2001).end()).isEqualTo("2002-03-01T00:00:00Z");
        AnnualMaxima maxima = AnnualMaxima.from(rain(), List.of(DAY), winter);
        assertThat(maxima.years()).containsExactly(2001);
        assertThat(maxima.depthsMm(DAY)).containsExactly(50);
        assertThat(winter.withNamesByEnd().interval(2002)).isEqualTo(winter.interval(2001));
        assertThat(YearRule.season(Month.MAY, Month.SEPTEMBER).withNamesByEnd().interval(2002))
                .isEqualTo(YearRule.season(Month.MAY, Month.SEPTEMBER).interval(2002));
        assertThat(YearRule.season(Month.OCTOBER, Month.SEPTEMBER).interval(2001))
                .isEqualTo(YearRule.startingIn(Month.OCTOBER).interval(2001));
        assertThat(winter).asString().startsWith("YearRule[from --11-01 in Z, 4 months, ");
    }

    @Test
    void aDurationMustFitIntoTheSeason() {
        double[] dry = new double[400];
        Arrays.fill(dry, 0);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> AnnualMaxima.from(
                        RegularSeries.of(START, DAY, dry),
                        List.of(Duration.ofDays(40)),
                        YearRule.season(Month.JUNE, Month.JUNE)))
                .withMessageStartingWith("duration must be no longer than the season ");
    }
}
