package dev.runnel.verification.sweep;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.verification.sweep.Question.Answer;
import dev.runnel.verification.sweep.Question.Refused;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The sweep on a small scale, and a look at whether it would notice. */
class SweepTest {
    @ParameterizedTest
    @MethodSource("dev.runnel.verification.sweep.Sweep#questions")
    void nothingBreaksItsPromise(Question question) {
        Line line = question.sweep(4000, 20261128);
        assertThat(line.failed()).as(line.toText()).isFalse();
        assertThat(line.cases()).isGreaterThanOrEqualTo(80);
    }

    @Test
    void noticesAnErrorBeyondTheBound() {
        Line line = new Question("x", 1e-3, 1, draw -> Answer.of(draw.below(100) == 0 ? 2e-3 : 0)).sweep(2000, 1);
        assertThat(line.failed()).isTrue();
        assertThat(line.errors()).isBetween(5L, 50L);
        assertThat(line.worst()).isEqualTo(2e-3);
    }

    @Test
    void noticesNaN() {
        assertThat(new Question("x", 1, 1, draw -> Answer.of(Double.NaN))
                        .sweep(10, 1)
                        .errors())
                .isEqualTo(10);
    }

    @Test
    void noticesAForeignException() {
        Line line = new Question("x", 1, 1, draw -> {
                    throw new ArithmeticException("foreign");
                })
                .sweep(10, 1);
        assertThat(line.errors()).isEqualTo(10);
        assertThat(line.worstCase()).contains("ArithmeticException: foreign");
    }

    @Test
    void isNoSuccessIfAllIsRefused() {
        Line line = new Question("x", 1, 1, draw -> {
                    throw new Refused(new IllegalArgumentException("no"));
                })
                .sweep(10, 1);
        assertThat(line.refused()).isEqualTo(10);
        assertThat(line.failed()).isTrue();
    }

    @Test
    void theSameSeedGivesTheSame() {
        Question question = Inverses.all().get(0);
        assertThat(question.sweep(2000, 5)).isEqualTo(question.sweep(2000, 5)).isNotEqualTo(question.sweep(2000, 6));
    }
}
