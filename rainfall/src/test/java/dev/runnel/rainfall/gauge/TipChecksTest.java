package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

class TipChecksTest {
    private static final Instant START = Instant.parse("2026-03-01T12:00:00Z");
    private static final TipChecks CHECKS = TipChecks.of(TippingBucket.ofTip(0.2));

    private static Tips atSeconds(double... seconds) {
        return Tips.of(Arrays.stream(seconds)
                .mapToObj(second -> START.plusMillis(Math.round(1000 * second)))
                .toList());
    }

    /** 0.2 mm at 500 mm/h is 1.44 s. */
    @Test
    void flagsTipsFasterThanTheCeiling() {
        TipReview review = CHECKS.review(atSeconds(0, 1.43, 2.87, 2.87));
        assertThat(review.flags(0)).containsExactly(TipFlag.FIRST);
        assertThat(review.flags(1)).containsExactly(TipFlag.DOUBLE);
        assertThat(review.flags(2)).isEmpty();
        assertThat(review.flags(3)).containsExactly(TipFlag.DOUBLE);
        assertThat(CHECKS.withCeiling(1000).review(atSeconds(0, 1.43)).count(TipFlag.DOUBLE))
                .isZero();
        assertThat(review).hasToString("TipReview[4 tips, {DOUBLE=2, FIRST=1}]");
    }

    /** A record written twice, 7 s apart; the steady tips of hard rain are none, nor is what a coarse clock may have made. */
    @Test
    void tipsThatComeTwiceWithinSecondsArePairs() {
        TipReview review = CHECKS.review(atSeconds(0, 7, 60, 67, 95, 102, 200, 207));
        assertThat(review.flags(1)).containsExactly(TipFlag.PAIRED);
        assertThat(review.flags(3)).as("28 s to the next, four times 7").containsExactly(TipFlag.PAIRED);
        assertThat(review.count(TipFlag.PAIRED)).isEqualTo(4);
        assertThat(CHECKS.review(atSeconds(0, 7, 60, 67, 94.9, 102)).flags(3)).isEmpty();
        assertThat(CHECKS.review(atSeconds(0, 7, 14, 21, 28)).count(TipFlag.PAIRED))
                .isZero();
        assertThat(CHECKS.review(atSeconds(0, 100, 120, 300)).count(TipFlag.PAIRED))
                .isEqualTo(1);
        assertThat(CHECKS.review(atSeconds(0, 100, 120.1, 300)).count(TipFlag.PAIRED))
                .isZero();
        assertThat(CHECKS.withClock(Duration.ofSeconds(1))
                        .review(atSeconds(0, 7, 39))
                        .count(TipFlag.PAIRED))
                .isZero();
        assertThat(CHECKS.withClock(Duration.ofSeconds(1))
                        .review(atSeconds(0, 7, 40))
                        .count(TipFlag.PAIRED))
                .isEqualTo(1);
    }

    /** 0.2 mm: four tips in a minute are 48 mm/h, 42 would be 504 mm/h. */
    @Test
    void aCoarseClockMakesNoDoubles() {
        TipChecks coarse = CHECKS.withClock(Duration.ofMinutes(1));
        Tips downpour = atSeconds(0, 60, 60, 60, 60, 120, 120);
        assertThat(CHECKS.review(downpour).count(TipFlag.DOUBLE)).isEqualTo(4);
        assertThat(coarse.review(downpour).count(TipFlag.DOUBLE)).isZero();
        double[] bounces = new double[45];
        Arrays.fill(bounces, 1, 45, 60);
        TipReview review = coarse.review(atSeconds(bounces));
        assertThat(review.count(TipFlag.DOUBLE)).isEqualTo(2);
        assertThat(review.flags(42)).isEmpty();
        assertThat(review.flags(43)).containsExactly(TipFlag.DOUBLE);
        assertThatThrownBy(() -> CHECKS.withClock(Duration.ofSeconds(-1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("resolution must not be negative, was -1 s");
    }

    @Test
    void flagsTheFirstTipAfterADrySpell() {
        TipReview review = CHECKS.withDrySpell(Duration.ofHours(1)).review(atSeconds(0, 3600, 7201));
        assertThat(review.flags(1)).isEmpty();
        assertThat(review.flags(2)).containsExactly(TipFlag.FIRST);
    }

    @Test
    void flagsADripOnceItIsLongEnough() {
        double[] drip = new double[15];
        for (int i = 0; i < drip.length; i++) {
            drip[i] = 600 * i + (i % 2);
        }
        // A gap that differs, then 15 tips and 14 gaps of about 600 s.
        double[] seconds = new double[17];
        System.arraycopy(drip, 0, seconds, 1, 15);
        seconds[0] = -100;
        seconds[16] = 20_000;
        TipReview review = CHECKS.review(atSeconds(seconds));
        assertThat(review.count(TipFlag.EVENLY_SPACED)).isEqualTo(14);
        assertThat(review.flags(1)).isEmpty();
        assertThat(review.flags(16)).isEmpty();
        assertThat(CHECKS.withRow(15, 0.05).review(atSeconds(seconds)).count(TipFlag.EVENLY_SPACED))
                .isZero();
    }

    @Test
    void flagsAFunnelThatDrains() {
        double[] seconds = new double[14];
        for (int i = 1; i < seconds.length; i++) {
            seconds[i] = seconds[i - 1] + 60 * Math.pow(1.2, i);
        }
        TipReview review = CHECKS.review(atSeconds(seconds));
        assertThat(review.count(TipFlag.LENGTHENING)).isEqualTo(13);
        assertThat(review.count(TipFlag.EVENLY_SPACED)).isZero();
    }

    /** Gaps from 60 s to 190 s, each 3 % longer, as clocks write them: 15 s shows fewer than 11 of them longer than all before. */
    @Test
    void seesADrainingFunnelThroughACoarseClock() {
        double[] exact = new double[41];
        for (int i = 1; i < exact.length; i++) {
            exact[i] = exact[i - 1] + 60 * Math.pow(1.03, i - 1);
        }
        for (int clock : new int[] {1, 5, 10}) {
            double[] written = Arrays.stream(exact)
                    .map(second -> clock * Math.floor(second / clock))
                    .toArray();
            TipReview review = CHECKS.withClock(Duration.ofSeconds(clock)).review(atSeconds(written));
            assertThat(review.count(TipFlag.LENGTHENING))
                    .as("clock of %d s", clock)
                    .isEqualTo(40);
        }
        double[] quarters =
                Arrays.stream(exact).map(second -> 15 * Math.floor(second / 15)).toArray();
        assertThat(CHECKS.withClock(Duration.ofSeconds(15))
                        .review(atSeconds(quarters))
                        .count(TipFlag.LENGTHENING))
                .isZero();
        double[] minutes =
                Arrays.stream(exact).map(second -> 60 * Math.floor(second / 60)).toArray();
        TipReview coarse = CHECKS.withClock(Duration.ofMinutes(1)).review(atSeconds(minutes));
        assertThat(coarse.count(TipFlag.LENGTHENING)).isZero();
    }

    @Test
    void seesADripThroughACoarseClockButNoLengthening() {
        double[] written = new double[30];
        for (int i = 0; i < written.length; i++) {
            written[i] = 10 * Math.floor(67.3 * i / 10);
        }
        TipReview review = CHECKS.withClock(Duration.ofSeconds(10)).review(atSeconds(written));
        assertThat(review.count(TipFlag.EVENLY_SPACED)).isEqualTo(29);
        assertThat(review.count(TipFlag.LENGTHENING)).isZero();
        assertThat(CHECKS.review(atSeconds(written)).count(TipFlag.EVENLY_SPACED))
                .isZero();
    }

    @Test
    void gapsThatShortenAreNoLengtheningHoweverCoarseTheClock() {
        GapRow row = GapRow.lengthening(3, 10);
        assertThat(row.next(80)).isZero();
        assertThat(row.next(70)).isZero();
        assertThat(row.next(100)).isZero();
        assertThat(row.next(90)).isZero();
        assertThat(row.next(100)).isZero();
        assertThat(row.next(110)).isEqualTo(6);
        assertThat(row.next(90)).isZero();
        assertThat(row.next(90)).isZero();
        assertThat(row.interrupt()).isZero();
        assertThat(row.next(120)).isZero();
    }

    /** The end of a real shower (invented figures of the same kind) on a clock of 10 s: longer and longer, but no funnel. */
    @Test
    void theEndOfAShowerIsNoDrainingFunnel() {
        double[] gaps = {40, 40, 50, 40, 50, 50, 60, 50, 60, 60, 50, 60, 70, 70, 60, 70, 80, 80, 90, 120, 210};
        double[] seconds = new double[gaps.length + 1];
        for (int i = 0; i < gaps.length; i++) {
            seconds[i + 1] = seconds[i] + gaps[i];
        }
        TipReview review = CHECKS.withClock(Duration.ofSeconds(10)).review(atSeconds(seconds));
        assertThat(review.count(TipFlag.LENGTHENING)).isZero();
    }

    @Test
    void listsFlaggedTipsWithTheirTimes() {
        TipReview review = CHECKS.review(atSeconds(0, 90, 91, 4000));
        assertThat(review.flagged(TipFlag.DOUBLE).toInstants()).containsExactly(START.plusSeconds(91));
        assertThat(review.flagged(TipFlag.SNOW)).isEqualTo(Tips.none());
        assertThat(review.flagged(TipFlag.FIRST).toInstants()).containsExactly(START);
    }

    @Test
    void flagsVisitsAndTakesThemAway() {
        Interval visit = Interval.of(START.plusSeconds(60), START.plusSeconds(120));
        TipReview review = CHECKS.withVisits(List.of(visit)).review(atSeconds(59, 60, 90, 120));
        assertThat(review.count(TipFlag.SERVICE)).isEqualTo(2);
        assertThat(review.without(TipFlag.SERVICE)).isEqualTo(atSeconds(59, 120));
        assertThat(review.without()).isEqualTo(review.tips());
    }

    @Test
    void suspectsSnowAfterFrost() {
        Series air = Series.builder()
                .add(START, 0.5)
                .add(START.plusSeconds(3600), 4)
                .add(START.plusSeconds(40 * 3600), 9)
                .build();
        TipChecks checks = CHECKS.withTemperature(air, 1.0, Duration.ofHours(24));
        TipReview review = checks.review(atSeconds(10 * 3600, 24 * 3600, 25 * 3600, 41 * 3600, 90 * 3600));
        assertThat(review.flags(0)).contains(TipFlag.SNOW);
        assertThat(review.flags(1)).contains(TipFlag.SNOW);
        assertThat(review.flags(2)).doesNotContain(TipFlag.SNOW, TipFlag.TEMPERATURE_UNKNOWN);
        assertThat(review.flags(3)).doesNotContain(TipFlag.SNOW);
        assertThat(review.flags(4)).contains(TipFlag.TEMPERATURE_UNKNOWN);
    }

    @Test
    void noTipsNoFlags() {
        assertThat(CHECKS.review(Tips.none())).hasToString("TipReview[0 tips, no flags]");
    }

    @Test
    void refusesBadLimits() {
        assertThatThrownBy(() -> CHECKS.withCeiling(0))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("ceilingMmPerHour must be greater than 0 and finite (mm/h), was 0");
        assertThatThrownBy(() -> CHECKS.withRow(1, 0.1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("gaps must be at least 2, was 1");
        assertThatThrownBy(() -> CHECKS.withRow(12, 5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("evenness must be in [0, 1], was 5");
        assertThatThrownBy(() -> CHECKS.withDrySpell(Duration.ZERO)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> CHECKS.withTemperature(Series.builder().build(), Double.NaN, Duration.ofHours(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("limitCelsius must be finite (degC), was NaN");
    }
}
