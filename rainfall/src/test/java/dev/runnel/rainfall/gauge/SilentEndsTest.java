package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
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

    /** Six-hourly steps, wet on the days given. */
    private static RegularSeries steps(int days, double missingFrom, double missingTo, double... wet) {
        double[] depths = new double[days * 4];
        for (double each : wet) {
            depths[(int) (each * 4)] = 0.4;
        }
        for (int i = (int) (missingFrom * 4); i < (int) (missingTo * 4); i++) {
            depths[i] = Double.NaN;
        }
        return RegularSeries.of(START, Duration.ofHours(6), depths);
    }

    @Test
    void wetStepsCountAsTipsDo() {
        assertThat(SilentEnds.standard().of(steps(30, 0, 0, 1, 3, 8, 12)))
                .containsExactly(Interval.of(day(12.75), day(30)));
        assertThat(SilentEnds.standard().of(steps(30, 0, 0, 12, 15, 19, 24)))
                .containsExactly(Interval.of(START, day(11.5)));
        // Twice 4.75 d without rain: 9.5 d at the end are as many, half a day more is longer.
        assertThat(SilentEnds.standard().of(steps(22, 0, 0, 3, 7.25, 12.25))).isEmpty();
        assertThat(SilentEnds.standard().of(steps(23, 0, 0, 3, 7.25, 12.25)))
                .containsExactly(Interval.of(day(13), day(23)));
    }

    @Test
    void missingStepsAreNoDrySpell() {
        // Twelve days of which ten are missing make no gauge that may be dry for long, nor a long silence.
        assertThat(SilentEnds.standard().of(steps(40, 5, 15, 1, 4, 16, 19)))
                .containsExactly(Interval.of(day(19.75), day(40)));
        assertThat(SilentEnds.standard().of(steps(30, 20, 30, 1, 4, 9, 13))).isEmpty();
    }

    @Test
    void withoutAnyWetStepNothingIsKnownEitherWay() {
        assertThat(SilentEnds.standard().of(steps(30, 0, 0))).isEmpty();
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
