package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Quality;
import org.junit.jupiter.api.Test;

class WorseCodesTest {
    @Test
    void everyPairGivesTheWorseAtEveryPlace() {
        Quality[] all = Quality.values();
        int pairs = all.length * all.length;
        for (int shift = 0; shift < 8; shift++) {
            byte[] one = new byte[shift + pairs];
            byte[] other = new byte[shift + pairs];
            byte[] expected = new byte[shift + pairs];
            for (int i = 0; i < one.length; i++) {
                Quality a = all[i % all.length];
                Quality b = all[i / all.length % all.length];
                one[i] = a.toCode();
                other[i] = b.toCode();
                expected[i] = a.worst(b).toCode();
            }
            assertThat(WorseCodes.of(one, other)).containsExactly(expected);
        }
        assertThat(WorseCodes.of(new byte[0], new byte[0])).isEmpty();
    }
}
