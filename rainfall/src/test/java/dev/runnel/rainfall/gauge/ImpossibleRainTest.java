package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class ImpossibleRainTest {
    private static final Instant START = Instant.parse("2026-03-02T00:00:00Z");

    private static ImpossibleRain hours(double mm) {
        double[] rain = new double[100];
        Arrays.fill(rain, 40, 70, mm);
        return ImpossibleRain.of(RegularSeries.of(START, Duration.ofHours(1), rain));
    }

    @Test
    void aDayMayHoldTooMuchThoughNoStepDoes() {
        ImpossibleRain found = hours(90);
        assertThat(found.steps()).isEqualTo(30);
        assertThat(found.depthMm()).isEqualTo(2700);
        assertThat(found.first()).contains(START.plus(Duration.ofHours(40)));
        assertThat(found.others().sum()).isZero();
        assertThat(found.others().missing()).isEqualTo(30);
        assertThat(hours(86).steps())
                .as("24 h with 2064 mm, while 491 x 24^0.452 = 2065")
                .isZero();
        assertThat(hours(86).first()).isEmpty();
    }

    /** A cloudburst of 30 mm in a minute was read on earth; 491 x (1/60)^0.452 = 77 mm were not. */
    @Test
    void aCloudburstIsRain() {
        assertThat(ofMinute(30)).isZero();
        assertThat(ofMinute(77)).isZero();
        assertThat(ofMinute(78)).isEqualTo(1);
        assertThat(ImpossibleRain.greatestMm(Duration.ofHours(1))).isEqualTo(491);
        assertThat(ImpossibleRain.greatestMm(Duration.ofMinutes(1))).isCloseTo(77.16, within(0.01));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ImpossibleRain.greatestMm(Duration.ZERO))
                .withMessageContaining("duration");
    }

    private static int ofMinute(double mm) {
        double[] rain = new double[10];
        rain[4] = mm;
        return ImpossibleRain.of(RegularSeries.of(START, Duration.ofMinutes(1), rain))
                .steps();
    }

    /** Ten of the thirty hours alone would be possible. */
    @Test
    void aPartIsJudgedAsInTheWhole() {
        ImpossibleRain part =
                hours(90).within(Interval.of(START.plus(Duration.ofHours(60)), START.plus(Duration.ofHours(80))));
        assertThat(part.steps()).isEqualTo(10);
        assertThat(part.depthMm()).isEqualTo(900);
        assertThat(part.first()).contains(START.plus(Duration.ofHours(60)));
        assertThat(part).hasToString("ImpossibleRain[10 of 20 steps, 900.0 mm]");
        assertThat(part.others().missing()).isEqualTo(10);
    }
}
