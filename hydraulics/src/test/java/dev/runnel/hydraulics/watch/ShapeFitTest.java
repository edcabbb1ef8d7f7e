package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

/** Step or ramp of blocks, where hardly anything is known before the change. */
class ShapeFitTest {
    /** So many blocks at 0 or unknown, then from one value to another in a straight line; small regular noise. */
    private static ShapeFit fit(int before, boolean known, double from, double to) {
        double[] values = new double[before + 120];
        Arrays.fill(values, 0, before, known ? 0 : Double.NaN);
        for (int i = 0; i < 120; i++) {
            values[before + i] = from + (to - from) * i / 120 + (i % 2 == 0 ? 0.1 : -0.1);
        }
        return ShapeFit.of(values, before + 60);
    }

    @Test
    void stepAfterKnownBlocksIsOneWhateverFollows() {
        assertThat(fit(40, true, 2, 2).shape).isEqualTo(ChangeShape.STEP);
        assertThat(fit(40, true, 2, 2).onset).isEqualTo(40);
        assertThat(fit(40, true, 2, 2.6).shape).isEqualTo(ChangeShape.STEP);
    }

    @Test
    void whatHasNothingKnownBeforeItMayHaveComeGraduallyAndEarlier() {
        for (double to : new double[] {2, 2.6}) {
            for (ShapeFit fit : new ShapeFit[] {fit(0, true, 2, to), fit(40, false, 2, to), fit(3, true, 2, to)}) {
                assertThat(fit.shape).isEqualTo(ChangeShape.UNCERTAIN);
                assertThat(fit.isOpen).isTrue();
            }
            assertThat(fit(4, true, 2, to).shape).isEqualTo(ChangeShape.STEP);
            assertThat(fit(4, true, 2, to).isOpen).isFalse();
        }
        assertThat(fit(40, true, 0, 4).isOpen).isFalse();
    }
}
