package dev.runnel.timeseries.quality;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Series;
import java.time.Duration;
import java.time.Instant;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Each expectation is worked by hand from the sentences that state the check. */
class SharedSpikeCheckTest {
    private static final double NONE = Double.NaN;
    private static final SharedSpikeCheck CHECK = SharedSpikeCheck.of(
            SpikeCheck.of(0.1, 0.2).withMaximumGap(Duration.ofMinutes(5)).withNeighboursSpared());

    private static Series every(int minutes, double... values) {
        long[] times = new long[values.length];
        for (int i = 0; i < times.length; i++) {
            times[i] = Instant.parse("2026-01-01T00:00:00Z").getEpochSecond() * 1_000_000_000L
                    + 60_000_000_000L * minutes * i;
        }
        return Series.of(times, values);
    }

    private static String codes(QualityFlags flags) {
        return IntStream.range(0, flags.size())
                .mapToObj(i -> Integer.toString(flags.verdict(i).code()))
                .collect(Collectors.joining(" "));
    }

    @Test
    void aFalseEchoFailsAndAStrokeOfAPumpDoesNot() {
        Series depth = every(2, 0.06, 0.06, 0.40, 0.06, 0.06, 0.40, 0.06, 0.06);
        Series velocity = every(2, 0.50, 0.52, 0.51, 0.50, 0.52, 1.20, 0.50, 0.51);
        QualityFlags flags = CHECK.apply(depth, velocity);
        // Beside each spike the good readings are spared.
        assertThat(codes(flags)).isEqualTo("2 2 4 2 2 3 2 2");
        assertThat(flags.raised().get(0).reason()).isEqualTo("0.4 is 0.34 off its neighbours 0.06 and 0.06");
        assertThat(flags.raised().get(1).reason())
                .isEqualTo("0.4 is 0.34 off its neighbours 0.06 and 0.06, and the companion moved as well");
    }

    @Test
    void aPauseBetweenTwoStrokesIsNoSpikeEither() {
        Series depth = every(5, 0.40, 0.40, 0.06, 0.40, 0.40);
        assertThat(codes(CHECK.apply(depth, every(5, 1.2, 1.2, 0.5, 1.2, 1.2)))).isEqualTo("2 2 3 2 2");
        // A logger that lost both writes zeros: that is no witness.
        assertThat(codes(CHECK.apply(every(5, 0.40, 0.40, 0, 0.40, 0.40), every(5, 1.2, 1.2, 0, 1.2, 1.2))))
                .isEqualTo("2 2 4 2 2");
    }

    @Test
    void aNeighbourThatDroppedOutMakesNoWitness() {
        Series depth = every(5, 0.08, 0.08, 0.50, 0.08, 0.08);
        assertThat(codes(CHECK.apply(depth, every(5, 0.87, 0.87, 0.80, 0, 0.87))))
                .isEqualTo("2 2 4 2 2");
        assertThat(codes(CHECK.apply(depth, every(5, 0.87, 0, 0.80, 0, 0.87)))).isEqualTo("2 2 3 2 2");
    }

    @Test
    void theCompanionMustMoveByItsShare() {
        Series depth = every(2, 0.2, 0.2, 0.5, 0.2, 0.2);
        // The depth moved by 0.3 of 0.5: 0.6, of which 0.4 is 0.24; 1 to 1.3 is 0.231, 1 to 1.35 is 0.259.
        assertThat(codes(CHECK.apply(depth, every(2, 1, 1, 1.30, 1, 1)))).isEqualTo("2 2 4 2 2");
        assertThat(codes(CHECK.apply(depth, every(2, 1, 1, 1.35, 1, 1)))).isEqualTo("2 2 3 2 2");
        // 0.22 of 0.82 is 0.27, of which 0.4 is 0.107: then the least, 0.15, decides; 1 to 1.17 is 0.145, to 1.19 is
        // 0.160.
        Series deep = every(2, 0.6, 0.6, 0.82, 0.6, 0.6);
        assertThat(codes(CHECK.apply(deep, every(2, 1, 1, 1.17, 1, 1)))).isEqualTo("2 2 4 2 2");
        assertThat(codes(CHECK.apply(deep, every(2, 1, 1, 1.19, 1, 1)))).isEqualTo("2 2 3 2 2");
    }

    @Test
    void withoutACompanionTheCheckOfTheReadingsAloneDecides() {
        Series near = every(5, 0.06, 0.06, 0.40, 0.06, 0.06);
        assertThat(codes(CHECK.apply(near, every(5, 0.5, NONE, 1.2, 0.5, 0.5)))).isEqualTo("2 2 4 2 2");
        assertThat(codes(CHECK.apply(near, Series.empty()))).isEqualTo("2 2 4 2 2");
        assertThat(codes(CHECK.apply(every(15, 0.06, 0.06, 0.40, 0.06, 0.06), Series.empty())))
                .isEqualTo("2 2 2 2 2");
    }

    @Test
    void neighboursAreAsNearAsTheCheckOfTheReadingsAloneAsks() {
        Series echo = every(15, 0.09, 0.09, 0.65, 0.10, 0.10);
        assertThat(codes(CHECK.apply(echo, every(15, 0.7, 0.72, 0.71, 0.7, 0.7))))
                .isEqualTo("2 2 2 2 2");
        assertThat(CHECK.name()).isEqualTo("spike");
        assertThat(CHECK).hasToString("SharedSpikeCheck[" + CHECK.spike() + "]");
    }
}
