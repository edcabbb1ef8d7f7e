package dev.runnel.verification.calculation;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class RefusalTest {
    private static double refusal(double relativeRoughness) {
        Calculation asked = Calculations.find("refusal.friction.darcy-factor").orElseThrow();
        Inputs inputs = Inputs.empty();
        inputs.put("reynolds", 20_000);
        inputs.put("relative_roughness", relativeRoughness);
        return asked.answer(inputs);
    }

    @Test
    void itAnswersWhetherTheOtherOneRefuses() {
        assertThat(refusal(0.01)).isZero();
        assertThat(refusal(1.01)).isEqualTo(1);
        assertThat(refusal(Double.NaN)).isEqualTo(1);
    }

    @Test
    void itTakesTheSameInputs() {
        Calculation asked = Calculations.find("refusal.friction.darcy-factor").orElseThrow();
        assertThat(asked.takes("reynolds")).isTrue();
        assertThat(asked.module()).isEqualTo("hydraulics");
        assertThat(asked).hasToString("refusal.friction.darcy-factor [1 if refused]");
        assertThat(Calculations.find("refusal.of.nothing")).isEmpty();
    }
}
