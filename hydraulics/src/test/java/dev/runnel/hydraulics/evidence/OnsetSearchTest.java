package dev.runnel.hydraulics.evidence;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.LocalDate;
import org.junit.jupiter.api.Test;

class OnsetSearchTest {
    /** The fits were repeated with a general least-squares solver and an F table of another library. */
    @Test
    void bendAndItsRangeAreThoseOfAGeneralLeastSquaresSolver() {
        double[] days = {0, 1, 2, 3, 5, 6, 7, 8, 9, 11, 12, 13};
        double[] levels = {0.211, 0.193, 0.208, 0.190, 0.207, 0.196, 0.214, 0.212, 0.226, 0.240, 0.231, 0.252};
        OnsetSearch search = new OnsetSearch(days, levels);
        assertThat(days[search.best]).isEqualTo(6);
        assertThat(days[search.earliest]).isEqualTo(3);
        assertThat(days[search.latest]).isEqualTo(8);
    }

    @Test
    void exactBendIsFoundExactly() {
        double[] days = {0, 1, 2, 3, 4, 5, 6, 7};
        OnsetSearch search = new OnsetSearch(days, new double[] {1, 1, 1, 1, 3, 5, 7, 9});
        assertThat(search.best).isEqualTo(3);
        assertThat(search.earliest).isEqualTo(3);
        assertThat(search.latest).isEqualTo(3);
    }

    @Test
    void straightLineBeginsWithTheWindow() {
        double[] days = {0, 1, 2, 3, 4};
        assertThat(new OnsetSearch(days, new double[] {5, 4, 3, 2, 1}).best).isZero();
    }

    @Test
    void onsetMustLieInItsRange() {
        LocalDate day = LocalDate.of(2026, 5, 4);
        assertThatThrownBy(() -> new Onset(day, day.plusDays(1), day.plusDays(2)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("date must be from 2026-05-05 to 2026-05-06, was 2026-05-04");
        assertThat(new Onset(day, day, day)).hasToString("Onset[2026-05-04, from 2026-05-04 to 2026-05-04]");
    }
}
