package dev.runnel.rainfall.distribution;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class OutlierTest {
    /**
     * NIST/SEMATECH e-Handbook of Statistical Methods, section 1.3.5.17.1: 8 uranium measurements, G = 2.4687, critical
     * value 2.126645 two-sided at 0.05 (both from memory).
     */
    @Test
    void agreesWithTheHandbook() {
        Outlier outlier = Outlier.find(0.05, 199.31, 199.53, 200.19, 200.82, 201.92, 201.95, 202.18, 245.57)
                .orElseThrow();
        assertThat(outlier.value()).isEqualTo(245.57);
        assertThat(outlier.index()).isEqualTo(7);
        assertThat(outlier.statistic()).isCloseTo(2.4687, within(2e-4));
        assertThat(outlier.critical()).isCloseTo(2.126645, within(5e-7));
    }

    @Test
    void anOrdinarySampleHasNone() {
        assertThat(Outlier.find(0.05, 1, 2, 3, 4, 5, 6, 7, 8)).isEmpty();
    }

    @Test
    void refusesBadInput() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Outlier.find(0, 1, 2, 3))
                .withMessage("significance must be inside (0, 1), was 0");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Outlier.find(0.05, 2, 2, 2))
                .withMessage("sample must not be all equal, was 3 times 2");
    }
}
