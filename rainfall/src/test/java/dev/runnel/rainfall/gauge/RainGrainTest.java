package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

class RainGrainTest {
    private static final Instant START = Instant.parse("2026-03-02T00:00:00Z");

    /** Every second step is wet. */
    private static Optional<RainGrain> grain(int wet, IntToDoubleFunction mm) {
        double[] rain = new double[2 * wet];
        for (int i = 0; i < wet; i++) {
            rain[2 * i] = mm.applyAsDouble(i);
        }
        return RainGrain.of(RegularSeries.of(START, Duration.ofMinutes(5), rain));
    }

    private static double tips(int i) {
        return 0.2 * (1 + i % 3);
    }

    @Test
    void tipsHaveAGrainFromFortyWetStepsOn() {
        RainGrain found = grain(40, RainGrainTest::tips).orElseThrow();
        assertThat(found.depthMm()).isEqualTo(0.2);
        assertThat(found.change()).isEmpty();
        assertThat(found.isTipInInches(0.2)).isFalse();
        assertThat(found.isCountOf(0.2)).isFalse();
        assertThat(found).hasToString("RainGrain[0.2 mm]");
        assertThat(grain(39, RainGrainTest::tips)).isEmpty();
        assertThat(grain(200, i -> tips(i) * (0.3 + 0.7 * Math.abs(Math.sin(i)))))
                .isEmpty();
    }

    @Test
    void anotherGrainBeginsWithTheFirstStepOfIt() {
        RainGrain smaller = grain(120, i -> i < 53 ? tips(i) : tips(i) / 25.4).orElseThrow();
        assertThat(smaller.depthMm()).isEqualTo(0.2);
        RainGrain.Change change = smaller.change().orElseThrow();
        assertThat(change.depthMm()).isEqualTo(0.2 / 25.4);
        assertThat(change.time()).isEqualTo(START.plus(Duration.ofMinutes(10 * 53)));
        RainGrain larger = grain(120, i -> i < 53 ? tips(i) : 5 * tips(i)).orElseThrow();
        assertThat(larger.change().orElseThrow().depthMm()).isEqualTo(1);
        assertThat(larger.change().orElseThrow().time()).isEqualTo(START.plus(Duration.ofMinutes(10 * 53)));
        assertThat(larger)
                .hasToString("RainGrain[0.2 mm, 1 mm from " + START.plus(Duration.ofMinutes(10 * 53)) + " on]");
        assertThat(grain(120, i -> i < 53 ? tips(i) : 1.4 * tips(i)))
                .as("1.4 times is none, and no grain fits both")
                .isEmpty();
    }

    @Test
    void wholeRecordsInInchesOrCounts() {
        assertThat(grain(60, i -> tips(i) / 25.4).orElseThrow().isTipInInches(0.2))
                .isTrue();
        assertThat(grain(60, i -> 0.01 * (1 + i % 3)).orElseThrow().isTipInInches(0.254))
                .as("a gauge that weighs")
                .isFalse();
        RainGrain counts = grain(60, i -> 1 + i % 3).orElseThrow();
        assertThat(counts.isCountOf(0.2)).isTrue();
        assertThat(counts.isCountOf(0.7)).isFalse();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> counts.isCountOf(0))
                .withMessageContaining("tipMm");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> counts.isTipInInches(-1))
                .withMessageContaining("tipMm");
    }
}
