package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Quality;
import org.junit.jupiter.api.Test;

class QualityCodesTest {
    private static final byte GOOD = Quality.GOOD.toCode();
    private static final byte POOR = Quality.POOR.toCode();
    private static final byte SUSPECT = Quality.SUSPECT.toCode();
    private static final byte MISSING = Quality.MISSING.toCode();
    private static final double[] VALUES = {Double.NaN, 1, Double.NaN, 2, 3};

    @Test
    void missingIsTheCodeOfThatQuality() {
        assertThat(QualityCodes.MISSING).isEqualTo(MISSING);
    }

    @Test
    void oneCodeStandsForAllReadingsWithAValue() {
        QualityCodes codes = QualityCodes.same(POOR, VALUES);
        byte[] expected = {MISSING, POOR, MISSING, POOR, POOR};
        for (int i = 0; i < expected.length; i++) {
            assertThat(codes.at(i)).isEqualTo(expected[i]);
        }
        assertThat(codes.all()).containsExactly(expected).isSameAs(codes.all());
        assertThat(codes.count(POOR)).isEqualTo(3);
        assertThat(codes.count(MISSING)).isEqualTo(2);
        assertThat(codes.count(GOOD)).isZero();
        assertThat(codes.mayHold(GOOD)).isFalse();
        assertThat(codes.mayHold(MISSING)).isTrue();
    }

    @Test
    void codesOfOneKindAreFoundToBe() {
        assertThat(QualityCodes.of(new byte[] {MISSING, POOR, MISSING, POOR, POOR}, VALUES)
                        .isSame())
                .isTrue();
        assertThat(QualityCodes.of(new byte[] {MISSING, MISSING}, new double[] {Double.NaN, Double.NaN})
                        .isSame())
                .isTrue();
        assertThat(QualityCodes.of(new byte[0], new double[0]).isSame()).isTrue();
        QualityCodes different = QualityCodes.of(new byte[] {MISSING, POOR, MISSING, POOR, GOOD}, VALUES);
        assertThat(different.isSame()).isFalse();
        assertThat(different.at(4)).isEqualTo(GOOD);
        assertThat(different.at(3)).isEqualTo(POOR);
        assertThat(different.count(POOR)).isEqualTo(2);
        assertThat(different.mayHold(SUSPECT)).isTrue();
    }

    /** Whether one code is kept or all, the answers are those of all. */
    @Test
    void theWorseAndThePartsAreThoseOfEachReading() {
        byte[] mixed = {MISSING, GOOD, MISSING, POOR, SUSPECT};
        double[] less = {Double.NaN, 1, Double.NaN, Double.NaN, 3};
        QualityCodes same = QualityCodes.same(POOR, VALUES);
        QualityCodes others = QualityCodes.of(mixed, VALUES);
        assertThat(same.worse(QualityCodes.same(GOOD, less), less).all())
                .containsExactly(MISSING, POOR, MISSING, MISSING, POOR);
        assertThat(QualityCodes.same(GOOD, less).worse(same, less).all())
                .containsExactly(MISSING, POOR, MISSING, MISSING, POOR);
        assertThat(same.worse(others, VALUES).all()).containsExactly(MISSING, POOR, MISSING, POOR, SUSPECT);
        assertThat(same.withValues(less).all()).containsExactly(MISSING, POOR, MISSING, MISSING, POOR);
        assertThat(others.withValues(less).all()).containsExactly(MISSING, GOOD, MISSING, MISSING, SUSPECT);
        assertThat(same.between(2, 4, new double[] {Double.NaN, 2}).all()).containsExactly(MISSING, POOR);
        assertThat(others.between(2, 5, new double[] {Double.NaN, 2, 3}).all()).containsExactly(MISSING, POOR, SUSPECT);
    }

    @Test
    void agreementIsThatOfEachReading() {
        double[] none = {Double.NaN, Double.NaN};
        assertThat(QualityCodes.same(POOR, VALUES).agreesWith(QualityCodes.same(POOR, VALUES.clone())))
                .isTrue();
        assertThat(QualityCodes.same(POOR, VALUES).agreesWith(QualityCodes.same(GOOD, VALUES)))
                .isFalse();
        assertThat(QualityCodes.same(POOR, none).agreesWith(QualityCodes.same(GOOD, none)))
                .isTrue();
        QualityCodes mixed = QualityCodes.of(new byte[] {MISSING, POOR, MISSING, POOR, GOOD}, VALUES);
        assertThat(mixed.agreesWith(QualityCodes.same(POOR, VALUES))).isFalse();
        assertThat(mixed.agreesWith(QualityCodes.of(mixed.all().clone(), VALUES)))
                .isTrue();
    }
}
