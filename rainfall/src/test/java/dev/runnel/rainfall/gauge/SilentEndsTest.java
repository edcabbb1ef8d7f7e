package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class SilentEndsTest {
    private static final Instant START = Instant.parse("2026-01-01T00:00:00Z");

    private static Instant day(double day) {
        return START.plus(Duration.ofMinutes(Math.round(day * 1440)));
    }

    private static Tips tips(double... days) {
        List<Instant> times = new ArrayList<>();
        for (double day : days) {
            times.add(day(day));
        }
        return Tips.of(times);
    }

    private static Interval record(int days) {
        return Interval.of(START, day(days));
    }

    @Test
    void aGaugeDeadFromDayFortyTellsNothingAfterIt() {
        Tips tips = tips(1, 5, 12, 20, 28, 35, 40);
        assertThat(SilentEnds.standard().of(tips, record(90))).containsExactly(Interval.of(day(40.5), day(90)));
    }

    @Test
    void aGaugeFromDayTwentyTellsNothingBeforeIt() {
        Tips tips = tips(20, 22, 25, 31, 38);
        assertThat(SilentEnds.standard().of(tips, record(45))).containsExactly(Interval.of(START, day(19.5)));
    }

    @Test
    void aDryTimeAsLongAsOneBeforeIsNotDoubted() {
        Tips tips = tips(1, 21, 30);
        assertThat(SilentEnds.standard().of(tips, record(60))).isEmpty();
        assertThat(SilentEnds.standard().of(tips(1, 2, 3), record(10))).isEmpty();
    }

    @Test
    void withoutAnyTipNothingIsKnownEitherWay() {
        assertThat(SilentEnds.standard().of(Tips.none(), record(90))).isEmpty();
        assertThat(SilentEnds.standard().of(tips(100), record(90))).isEmpty();
    }

    @Test
    void refusesLessThanADay() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SilentEnds.standard().withLeast(Duration.ofHours(23)))
                .withMessage("least must be a day or longer, was 23 h");
        assertThat(SilentEnds.standard().withLeast(Duration.ofDays(30)).of(tips(1, 2), record(20)))
                .isEmpty();
    }
}
