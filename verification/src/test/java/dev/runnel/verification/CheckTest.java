package dev.runnel.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class CheckTest {
    @Test
    void theToleranceItselfPasses() {
        assertThat(Check.judge(2.0, 2.25, 0.25)).isEqualTo(Status.PASS);
        assertThat(Check.judge(2.0, 2.2500001, 0.25)).isEqualTo(Status.FAIL);
        assertThat(Check.judge(2.0, 1.7499999, 0.25)).isEqualTo(Status.FAIL);
        assertThat(Check.judge(2.0, 2.0, 0)).isEqualTo(Status.PASS);
    }

    @Test
    void whatIsNotANumberFails() {
        assertThat(Check.judge(2.0, Double.NaN, Double.MAX_VALUE)).isEqualTo(Status.FAIL);
    }

    @Test
    void provenanceIsReadInAnyCase() {
        assertThat(Provenance.parse("From Memory")).isEqualTo(Provenance.FROM_MEMORY);
        assertThatThrownBy(() -> Provenance.parse("guess"))
                .hasMessage(
                        "must be one of published, second-hand, fitted, from memory, derived oracle, common practice, was \"guess\"");
    }
}
