package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class RootsTest {
    @Test
    void findsTheZeroToTheLastBits() {
        assertThat(Roots.between(x -> x * x - 2, 0, 2)).isCloseTo(Math.sqrt(2), within(5e-16));
        assertThat(Roots.between(x -> 2 - x * x, 0, 2)).isCloseTo(Math.sqrt(2), within(5e-16));
    }

    /** 300 decades below the upper end: no exception of the solver leaves, and the zero is right. */
    @Test
    void crawlingSearchesEndByHalves() {
        double tiny = 1e-290;
        assertThat(Roots.between(x -> x < tiny ? -1 : x > tiny ? 1 : 0, 0, 1e300))
                .isCloseTo(tiny, within(1e-305));
    }

    @Test
    void endsAreReturnedWhereRoundingTookTheSignChange() {
        assertThat(Roots.between(x -> x + 1, 0, 1)).isZero();
        assertThat(Roots.between(x -> x - 1, 1, 1)).isEqualTo(1);
    }

    @Test
    void jumpIsEnclosed() {
        assertThat(Roots.between(x -> x < 0.3 ? -1 : 2, 0, 1)).isCloseTo(0.3, within(1e-15));
    }

    @Test
    void functionWithoutAValueIsNamed() {
        assertThatThrownBy(() -> Roots.between(x -> Double.NaN, 0, 1))
                .isInstanceOf(IllegalStateException.class)
                .hasMessage("no value to search by at 0.0");
    }

    @Test
    void zerosAreFoundOverDecadesWhicheverWayTheFunctionGoes() {
        for (double zero : new double[] {3, 0.3, 1e-40, 1e-290}) {
            assertThat(Roots.overDecades(x -> Math.log(x / zero), 3) / zero).isCloseTo(1, within(2e-13));
            assertThat(Roots.overDecades(x -> Math.log(zero / x), 3) / zero).isCloseTo(1, within(2e-13));
        }
    }

    @Test
    void numbersAreDoubledUntilTheFunctionIsNotBelowZero() {
        assertThat(Roots.doubled(x -> x - 40, 3)).isEqualTo(48);
        assertThat(Roots.doubled(x -> x - 48, 3)).isEqualTo(48);
        assertThat(Roots.doubled(x -> x - 3, 3)).isEqualTo(3);
        assertThat(Roots.doubled(x -> -1, 3)).isInfinite();
    }

    @Test
    void aSearchOverDecadesEndsBelowAFiniteNumber() {
        for (double top : new double[] {0, -1, Double.POSITIVE_INFINITY, Double.NaN}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> Roots.overDecades(x -> x - 1, top))
                    .withMessageContaining("top must be greater than 0");
        }
    }
}
