package dev.runnel.hydraulics.monitoring;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class LevelMemoryTest {
    /** More levels than there are places, each asked for again after all others. */
    @Test
    void givesWhatTheLawGivesAlsoWhereLevelsShareAPlace() {
        LevelMemory memory = new LevelMemory(Math::sqrt);
        for (int round = 0; round < 2; round++) {
            for (int i = 0; i < 50_000; i++) {
                double level = i * 1e-4;
                assertThat(memory.at(level)).isEqualTo(Math.sqrt(level));
            }
        }
        assertThat(memory.at(-0.0)).isEqualTo(-0.0);
    }

    @Test
    void asksOnceForALevelToTheMillimetre() {
        AtomicInteger asked = new AtomicInteger();
        LevelMemory memory = new LevelMemory(level -> {
            asked.incrementAndGet();
            return 2 * level;
        });
        for (int i = 0; i < 10_000; i++) {
            double level = (100 + i % 40) / 1000.0;
            assertThat(memory.at(level)).isEqualTo(2 * level);
        }
        assertThat(asked.get()).isBetween(40, 10_000 / 4);
    }
}
