package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

/** What every head-discharge relation must do, whatever its formula. */
final class StructureContract {
    private StructureContract() {}

    /** Holds at a head inside the limits. */
    static void holds(HeadDischarge structure, double head) {
        double discharge = structure.discharge(head);
        assertThat(discharge)
                .as("discharge of %s at %s", structure, head)
                .isPositive()
                .isFinite();
        assertThat(structure.head(discharge)).as("head of %s", structure).isCloseTo(head, within(1e-12 * head));
        RatedDischarge evaluation = structure.evaluate(head);
        assertThat(evaluation.isWithinLimits()).isTrue();
        assertThat(evaluation.discharge()).isEqualTo(discharge);
        assertThat(structure.evaluateDischarge(discharge).head()).isEqualTo(structure.head(discharge));
        increases(structure, head);
        bulkEqualsScalar(structure, head);
    }

    private static void increases(HeadDischarge structure, double head) {
        assertThat(structure.evaluate(head * 1.001).discharge()).isGreaterThan(structure.discharge(head));
    }

    private static void bulkEqualsScalar(HeadDischarge structure, double head) {
        double[] heads = {0, head, head};
        double[] discharges = new double[3];
        structure.discharge(heads, discharges);
        assertThat(discharges).containsExactly(0, structure.discharge(head), structure.discharge(head));
        double[] back = new double[3];
        structure.head(discharges, back);
        assertThat(back).containsExactly(0, structure.head(discharges[1]), structure.head(discharges[1]));
        boolean[] outside = new boolean[3];
        double[] flagged = new double[3];
        assertThat(structure.evaluate(new double[] {head, Double.NaN, -0.01}, flagged, outside))
                .isEqualTo(2);
        assertThat(flagged).containsExactly(structure.discharge(head), Double.NaN, 0);
        assertThatThrownBy(() -> structure.evaluate(-0.01)).hasMessageStartingWith("head must be ");
        assertThat(outside).containsExactly(false, true, true);
    }

    /** Holds at a head outside the limits; the message must contain the words. */
    static void refuses(HeadDischarge structure, double head, String words) {
        assertThatThrownBy(() -> structure.discharge(head))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(words);
        RatedDischarge evaluation = structure.evaluate(head);
        assertThat(evaluation.isWithinLimits()).isFalse();
        assertThat(evaluation.toString()).contains("OUTSIDE: ").contains(words);
        assertThat(evaluation.coefficientUncertainty()).isEmpty();
        assertThat(evaluation.discharge()).isPositive().isFinite();
        assertThatThrownBy(() -> structure.head(evaluation.discharge()))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining(words);
        boolean[] outside = new boolean[1];
        double[] discharge = new double[1];
        assertThat(structure.evaluate(new double[] {head}, discharge, outside)).isEqualTo(1);
        assertThat(discharge[0]).isEqualTo(evaluation.discharge());
    }
}
