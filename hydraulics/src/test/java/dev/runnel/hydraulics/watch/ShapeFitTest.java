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

    /** So many blocks at 0, a straight rise to 2 over some blocks (none for a step), then 2; 160 blocks, no noise at all. */
    private static double[] exact(int before, int rise) {
        double[] values = new double[160];
        for (int i = before; i < values.length; i++) {
            values[i] = i - before < rise ? 2 * (i - before + 0.5) / rise : 2;
        }
        return values;
    }

    @Test
    void withoutNoiseTheOnsetIsSure() {
        for (int rise : new int[] {0, 12, 48, 120}) {
            double[] values = exact(40, rise);
            // Missing blocks on both sides of it change nothing.
            values[20] = Double.NaN;
            values[41] = Double.NaN;
            values[100] = Double.NaN;
            ShapeFit fit = ShapeFit.of(values, 110);
            assertThat(fit.shape).as("rise %s", rise).isEqualTo(rise == 0 ? ChangeShape.STEP : ChangeShape.RAMP);
            assertThat(fit.onset).isEqualTo(40);
            assertThat(fit.earliest).isEqualTo(40);
            assertThat(fit.latest).isEqualTo(40);
            assertThat(fit.isOpen).isFalse();
        }
        // A rise that goes on to the end is fitted, too, whatever its length.
        assertThat(ShapeFit.of(exact(59, 101), 110).onset).isEqualTo(59);
    }

    @Test
    void noLaterThanItWasToldAndNoEarlierThanTheRecord() {
        // Told ten blocks too early, a rise from 28 on meets the step better than a step at 30 does.
        ShapeFit told = ShapeFit.of(exact(40, 0), 30);
        assertThat(told.onset).isBetween(26, 30);
        assertThat(told.latest).isLessThanOrEqualTo(30);
        assertThat(ShapeFit.of(exact(40, 0), 40).onset).isEqualTo(40);
        assertThat(ShapeFit.of(exact(0, 0), -5).onset).isZero();
        assertThat(ShapeFit.of(exact(159, 0), 500).onset).isEqualTo(159);
    }

    /**
     * Noise of 0.1 about a step of 0.15: 1.6 of squares, of which the bounds allow 3.84/16 more. Each block beside the onset costs
     * about 0.15², so that the bounds lie some 17 blocks to either side.
     */
    @Test
    void noiseWidensTheBounds() {
        double[] values = new double[160];
        for (int i = 0; i < values.length; i++) {
            values[i] = (i < 40 ? 0 : 0.15) + (i % 2 == 0 ? 0.1 : -0.1);
        }
        ShapeFit fit = ShapeFit.of(values, 110);
        assertThat(fit.onset).isEqualTo(40);
        assertThat(fit.earliest).isBetween(20, 35);
        assertThat(fit.latest).isBetween(45, 60);
    }
}
