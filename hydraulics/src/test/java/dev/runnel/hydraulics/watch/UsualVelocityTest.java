package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Relations of velocity and depth that are known. */
class UsualVelocityTest {
    /** Depths from 0.1 to 0.3 m, evenly by the logarithm, in an order that mixes them. */
    private static UsualVelocity learn(int n, IntToDoubleFunction lnVelocity) {
        double[] lnDepth = new double[n];
        double[] lnV = new double[n];
        for (int i = 0; i < n; i++) {
            int rank = (int) (i * 7L % n);
            lnDepth[i] = lnDepth(rank, n);
            lnV[i] = lnVelocity.applyAsDouble(rank);
        }
        return UsualVelocity.learn(lnDepth, lnV);
    }

    private static double lnDepth(int rank, int n) {
        return Math.log(0.1) + Math.log(3) * rank / (n - 1);
    }

    @Test
    void aPowerLaw() {
        int n = 289;
        UsualVelocity law = learn(n, rank -> Math.log(0.8) + 0.55 * (lnDepth(rank, n) - Math.log(0.2)));
        assertThat(law.exponent()).isCloseTo(0.55, within(1e-12));
        assertThat(law.velocity(0.2)).isCloseTo(0.8, within(1e-12));
        assertThat(law.velocity(0.05)).isCloseTo(0.8 * Math.pow(0.25, 0.55), within(1e-12));
        assertThat(law.velocity(0.9)).isCloseTo(0.8 * Math.pow(4.5, 0.55), within(1e-12));
        assertThat(law.scatter()).isCloseTo(0, within(1e-12));
        assertThat(law.relativeScatter(Math.log(0.2))).isGreaterThanOrEqualTo(1);
        // Quantiles of even logarithms lie where they say.
        assertThat(law.lowestLevel()).isCloseTo(0.1 * Math.pow(3, 0.005), within(1e-12));
        assertThat(law.highestLevel()).isCloseTo(0.1 * Math.pow(3, 0.99), within(1e-12));
        assertThat(law.lowest()).isCloseTo(Math.log(law.lowestLevel()), within(1e-12));
        assertThat(law.highest()).isCloseTo(Math.log(law.highestLevel()), within(1e-12));
        assertThat(law.classLevels()).hasSize(12).isSorted();
        // Twelve classes of equal count: the middle of the first is that of 24 hours.
        assertThat(law.classLevels()[0]).isCloseTo(0.1 * Math.pow(3, 11.5 / 288), within(1e-12));
        assertThat(law.classScatters()).hasSize(12);
        assertThat(law).hasToString("UsualVelocity[12 classes from 0.101 to 0.297 m, exponent 0.55, scatter 0.0 %]");
        assertThatThrownBy(() -> law.velocity(0)).hasMessageStartingWith("level must be greater than 0");
    }

    /** A class for each day's hours, three at the least and twelve at the most. */
    @Test
    void classesOfADay() {
        assertThat(UsualVelocity.leastHours()).isEqualTo(72);
        for (int[] each : new int[][] {{72, 3}, {95, 3}, {96, 4}, {287, 11}, {288, 12}, {600, 12}}) {
            assertThat(learn(each[0], rank -> 0.1 * Math.sin(rank)).classLevels())
                    .hasSize(each[1]);
        }
    }

    @Test
    void theSlopeIsKeptWithinBounds() {
        int n = 96;
        assertThat(learn(n, rank -> 2 * lnDepth(rank, n)).exponent()).isEqualTo(1.2);
        assertThat(learn(n, rank -> -lnDepth(rank, n)).exponent()).isEqualTo(-0.2);
        // One depth alone has no slope.
        double[] same = new double[96];
        assertThat(UsualVelocity.learn(same, same.clone()).exponent()).isZero();
    }

    /** A class that leaves 10 % over is believed to 8 %, in straight lines to its neighbours; classes lie 0.1 apart in ln y. */
    @Test
    void whatClassesLeaveOver() {
        double[] lnDepth = new double[120];
        double[] lnV = new double[120];
        for (int i = 0; i < 120; i++) {
            lnDepth[i] = 0.1 * Math.floorDiv(i, 24);
            lnV[i] = 0.5 * lnDepth[i] + (i / 24 == 2 ? 0.1 : 0);
        }
        UsualVelocity law = UsualVelocity.learn(lnDepth, lnV);
        assertThat(law.exponent()).isCloseTo(0.5, within(1e-12));
        assertThat(law.lnVelocity(0.1)).isCloseTo(0.05, within(1e-12));
        assertThat(law.lnVelocity(0.2)).isCloseTo(0.1 + 0.08, within(1e-12));
        assertThat(law.lnVelocity(0.125)).isCloseTo(0.0625 + 0.02, within(1e-12));
        assertThat(law.lnVelocity(0.275)).isCloseTo(0.1375 + 0.02, within(1e-12));
        assertThat(law.lnVelocity(-1)).isCloseTo(-0.5, within(1e-12));
        assertThat(law.lnVelocity(1)).isCloseTo(0.5, within(1e-12));
        assertThat(UsualVelocity.parse(law.toText()).toText()).isEqualTo(law.toText());
        for (String key : new String[] {"left", "scatters"}) {
            assertThatThrownBy(
                            () -> UsualVelocity.parse(law.toText().replaceFirst(" " + key + "=", " " + key + "=1.0,")))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage(key + " must have length 5, was 6");
        }
        assertThatThrownBy(() -> UsualVelocity.parse(law.toText().replaceFirst(" depths=\\S*", " depths=0.1,0.2,")))
                .hasMessage("number of classes must be at least 3, was 2");
        assertThat(UsualVelocity.parse(law.toText()).lnVelocity(0.125)).isEqualTo(law.lnVelocity(0.125));
    }

    /** Two hours out of three stray by the same; a class that strays four times as far is believed to three quarters of it. */
    @Test
    void scatterOfTheClasses() {
        double[] lnDepth = new double[120];
        double[] lnV = new double[120];
        for (int i = 0; i < 120; i++) {
            lnDepth[i] = 0.1 * Math.floorDiv(i, 24);
            lnV[i] = 0.5 * lnDepth[i] + (i / 24 == 2 ? 0.04 : 0.01) * (i % 3 - 1);
        }
        UsualVelocity law = UsualVelocity.learn(lnDepth, lnV);
        assertThat(law.scatter()).isCloseTo(0.01 / 0.6744897501960817, within(1e-12));
        assertThat(law.classScatters()[2]).isCloseTo(0.04 / 0.6744897501960817, within(1e-12));
        assertThat(law.relativeScatter(0.2)).isCloseTo(3, within(1e-12));
        assertThat(law.relativeScatter(0.15)).isCloseTo(0.75 * 2.5, within(1e-12));
        assertThat(law.relativeScatter(0)).isEqualTo(1);
        assertThat(law.toString()).endsWith("exponent 0.50, scatter 1.5 %]");
        // Beyond the first and the last class their own scatter holds.
        assertThat(law.relativeScatter(-3)).isEqualTo(1);
        assertThat(law.relativeScatter(3)).isEqualTo(1);
        UsualVelocity none = UsualVelocity.parse(law.toText().replaceFirst("scatters=\\S*", "scatters=0,0,0,0,0,"));
        assertThat(none.relativeScatter(0.2)).isEqualTo(1);
    }
}
