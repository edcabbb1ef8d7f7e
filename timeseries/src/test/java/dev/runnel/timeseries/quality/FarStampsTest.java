package dev.runnel.timeseries.quality;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Duration;
import java.time.Instant;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

class FarStampsTest {
    private static final long DAY = 86_400_000_000_000L;
    private static final FarStamps TEST = FarStamps.standard();

    /** A month of hours from a day on. */
    private static LongStream month(int day) {
        return LongStream.range(0, 720).map(hour -> day * DAY + hour * DAY / 24);
    }

    @Test
    void aStampOfAResetClockAndOneOfTheNextCenturyAreFar() {
        long[] times = LongStream.of(LongStream.of(0, 40_000 * DAY).toArray()).toArray();
        long[] record = LongStream.concat(
                        LongStream.concat(LongStream.of(times[0]), month(20_000)), LongStream.of(times[1]))
                .toArray();
        assertThat(TEST.far(record)).containsExactly(Instant.EPOCH, Instant.EPOCH.plus(Duration.ofDays(40_000)));
        assertThat(TEST.keep(record)[1]).isTrue();
    }

    @Test
    void aLoggerThatComesBackIsNoFault() {
        long[] record = LongStream.concat(month(100), month(200)).toArray();
        assertThat(TEST.far(record)).isEmpty();
        assertThat(TEST.withDistance(Duration.ofDays(100)).far(record)).isEmpty();
    }

    @Test
    void aFewReadingsAreARecordOfTheirOwn() {
        assertThat(TEST.far(new long[0])).isEmpty();
        assertThat(TEST.far(new long[] {5})).isEmpty();
        assertThat(TEST.far(new long[] {0, 100 * DAY})).isEmpty();
        assertThat(TEST.far(new long[] {0, 1, 2, 100 * DAY})).hasSize(1);
    }

    @Test
    void stampsCenturiesApartDoNotOverflow() {
        long[] record = {Long.MIN_VALUE, -1, 0, 1, Long.MAX_VALUE};
        assertThat(TEST.far(record)).hasSize(2);
    }

    @Test
    void refusesWhatFallsAndNoDistance() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> TEST.far(new long[] {2, 1}))
                .withMessageStartingWith("epochNanos must not fall, were 1970-01-01T00:00:00.000000002Z and then");
        assertThatIllegalArgumentException().isThrownBy(() -> TEST.withDistance(Duration.ZERO));
    }
}
