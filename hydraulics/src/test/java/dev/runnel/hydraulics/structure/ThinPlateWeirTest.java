package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.assertj.core.data.Percentage.withPercentage;

import dev.runnel.internal.Text;
import org.junit.jupiter.api.Test;

class ThinPlateWeirTest {
    private static final double FOOT = 0.3048;
    private static final double CUBIC_FOOT = FOOT * FOOT * FOOT;

    /**
     * US Bureau of Reclamation, Water Measurement Manual, 3rd ed. (2001), ch. 7: Ce in feet as C1 h/p + C2, by b/B. The
     * two tables round the same experiments; to h/p = 1 they differ by up to 0.3 %.
     */
    @Test
    void coefficientOfARectangularNotchMatchesTheUsBureau() {
        double[][] rows = {
            {0.9, 0.3447, 3.205},
            {0.8, 0.2376, 3.189},
            {0.6, 0.0995, 3.178},
            {0.4, 0.0317, 3.164},
            {0.2, -0.0087, 3.152}
        };
        double feet = 2.0 / 3 * Math.sqrt(2 * 32.2); // the Bureau takes g = 32.2 ft/s2
        for (double[] row : rows) {
            RectangularWeir weir = RectangularWeir.contracted(
                    row[0] * 2.3, ApproachChannel.ofWidth(2.3).withCrestHeight(0.37));
            for (double ratio : new double[] {0.15, 0.7, 1.0}) {
                assertThat(weir.coefficient(ratio * 0.37) * feet)
                        .isCloseTo(row[1] * ratio + row[2], withPercentage(0.3));
            }
        }
    }

    /** The formula written out by hand, off the table rows: b/B = 0.5, alpha 0.592, beta 0.011, kb (2.7 + 3.6)/2 mm. */
    @Test
    void rectangularFormulaByHand() {
        double byHand = (0.592 + 0.011 * 0.14 / 0.3)
                * (2.0 / 3)
                * Math.sqrt(2 * 9.80665)
                * (0.6 + 0.00315)
                * Math.pow(0.141, 1.5);
        assertThat(RectangularWeir.contracted(0.6, ApproachChannel.ofWidth(1.2).withCrestHeight(0.3))
                        .discharge(0.14))
                .isCloseTo(byHand, within(1e-15));
    }

    @Test
    void fullWidthWeirLosesWidthToTheWalls() {
        assertThat(RectangularWeir.fullWidth(ApproachChannel.ofWidth(1).withCrestHeight(0.5))
                        .discharge(0.2))
                .isCloseTo(0.632 * 2.0 / 3 * Math.sqrt(2 * 9.80665) * 0.9991 * Math.pow(0.201, 1.5), within(1e-14));
    }

    @Test
    void rectangularLimits() {
        StructureContract.refuses(
                RectangularWeir.fullWidth(ApproachChannel.ofWidth(1).withCrestHeight(0.2)),
                0.51,
                "h/p must be at most 2.5");
        StructureContract.refuses(
                RectangularWeir.fullWidth(ApproachChannel.ofWidth(1).withCrestHeight(0.2)),
                0.029,
                "head h must be at least 0.03 m");
        StructureContract.refuses(
                RectangularWeir.fullWidth(ApproachChannel.ofWidth(0.1).withCrestHeight(0.2)),
                0.1,
                "crest length b must be at least 0.15 m");
        StructureContract.refuses(
                RectangularWeir.fullWidth(ApproachChannel.ofWidth(1).withCrestHeight(0.09)),
                0.1,
                "crest height p must be at least 0.1 m");
        StructureContract.refuses(
                RectangularWeir.contracted(0.9, ApproachChannel.ofWidth(1).withCrestHeight(0.2)),
                0.1,
                "side contraction (B - b)/2, if not 0, must be at least");
        assertThat(RectangularWeir.fullWidth(ApproachChannel.ofWidth(1).withCrestHeight(0.2))
                        .coefficientUncertainty(0.1))
                .hasValue(0.015);
        assertThat(RectangularWeir.fullWidth(ApproachChannel.ofWidth(1).withCrestHeight(0.2))
                        .coefficientUncertainty(0.25))
                .hasValue(0.02);
        assertThat(RectangularWeir.fullWidth(ApproachChannel.ofWidth(1).withCrestHeight(0.2))
                        .coefficientUncertainty(0.4))
                .hasValue(0.03);
    }

    @Test
    void rectangularRefusesBadGeometry() {
        assertThatThrownBy(() ->
                        RectangularWeir.contracted(1, ApproachChannel.ofWidth(1).withCrestHeight(0.3)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("width of the channel must be greater than the crest length 1 m, was 1");
        assertThatThrownBy(() -> RectangularWeir.fullWidth(
                        ApproachChannel.ofWidth(Double.NaN).withCrestHeight(0.3)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("width must be in [1.0E-6, 1000000] m, was NaN");
        assertThatThrownBy(() -> RectangularWeir.fullWidth(ApproachChannel.ofWidth(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("crest height of the channel must be in [1.0E-6, 1000000] m, was 0");
    }

    /**
     * Texas Tech University CE 4353 homework 2 (after T. W. Sturm, 2001, problem 2.19) and CE 3105 laboratory 9, sample
     * calculation (2024): 90 degree notch, Ce 0.578, kh 0.0026 and 0.00283 ft, heads and discharges in feet. Their kh and
     * ours differ by up to 0.06 mm; the printed digits allow 0.1 %.
     */
    @Test
    void rightAngledNotchMatchesWorkedExamples() {
        VNotchWeir notch = VNotchWeir.ofAngle(90, ApproachChannel.ofWidth(1.5).withCrestHeight(0.5));
        double[][] rows = {{0.5 * FOOT, 0.443}, {0.06432, 0.0523}, {0.08138, 0.0936}, {0.08528, 0.105}};
        for (double[] row : rows) {
            assertThat(notch.discharge(row[0]) / CUBIC_FOOT).isCloseTo(row[1], withPercentage(0.2));
        }
    }

    /** J. Shen (1981), legends of Fig. 6 to 11: average Ce of the experiments by angle, 1 % band; Fig. 12 is the curve. */
    @Test
    void coefficientMatchesTheExperimentsByAngle() {
        double[][] rows = {{60, 0.577}, {45.38, 0.580}, {28.07, 0.588}, {27, 0.588}};
        for (double[] row : rows) {
            assertThat(VNotchWeir.ofAngle(row[0], ApproachChannel.ofWidth(3).withCrestHeight(0.8))
                            .coefficient(0.2))
                    .isCloseTo(row[1], within(0.0015));
        }
    }

    /** J. Shen (1981), Table 3: Lenz, C = 0.560 + N/h^a in feet without kh; the two agree to 1.3 % in the paper. */
    @Test
    void dischargeMatchesLenz() {
        double[][] rows = {{90, 0.0159, 0.588}, {60, 0.0203, 0.582}, {45, 0.0238, 0.579}, {28.07, 0.0315, 0.575}};
        for (double[] row : rows) {
            for (double feet : new double[] {0.31, 0.5, 0.92}) {
                double c = 0.560 + row[1] / Math.pow(feet, row[2]);
                double q = c
                        * 8.0
                        / 15
                        * Math.sqrt(2 * 9.80665)
                        * Math.tan(Math.toRadians(row[0]) / 2)
                        * Math.pow(feet * FOOT, 2.5);
                assertThat(VNotchWeir.ofAngle(
                                        row[0], ApproachChannel.ofWidth(3.2).withCrestHeight(0.85))
                                .discharge(feet * FOOT))
                        .isCloseTo(q, withPercentage(1.3));
            }
        }
    }

    /** J. Shen (1981): kh = 0.002 ft / sin(θ/2) between 40 and 90 degrees; the curve is read to 0.0001 ft. */
    @Test
    void headCorrectionFollowsTheSineLaw() {
        for (double angle : new double[] {43, 53, 60, 71, 84}) {
            assertThat(VNotchWeir.ofAngle(angle, ApproachChannel.ofWidth(2).withCrestHeight(0.5))
                                    .headCorrection()
                            / FOOT)
                    .isCloseTo(0.002 / Math.sin(Math.toRadians(angle) / 2), within(1.1e-4));
        }
    }

    /** J. Shen (1981), Fig. 13, points on the curves and one between two of them. */
    @Test
    void partialContractionOfTheRightAngle() {
        assertThat(VNotchWeir.ofAngle(90, ApproachChannel.ofWidth(1.0).withCrestHeight(0.3))
                        .coefficient(0.3 * 0.83))
                .isCloseTo(0.5824, within(1e-12));
        assertThat(VNotchWeir.ofAngle(90, ApproachChannel.ofWidth(0.5).withCrestHeight(0.35))
                        .coefficient(0.35 * 0.55))
                .isCloseTo(0.5911, within(1e-12));
        assertThat(VNotchWeir.ofAngle(90, ApproachChannel.ofWidth(1.0).withCrestHeight(0.35))
                        .coefficient(0.35 * 0.93))
                .isCloseTo((0.5848 + 0.5942) / 2, within(1e-12));
        assertThat(VNotchWeir.ofAngle(90, ApproachChannel.ofWidth(1.0).withCrestHeight(0.35))
                        .coefficient(0.35 * 0.2))
                .isEqualTo(0.578);
    }

    @Test
    void notchLimits() {
        StructureContract.refuses(
                VNotchWeir.ofAngle(19, ApproachChannel.ofWidth(2).withCrestHeight(0.5)),
                0.1,
                "notch angle must be in [20, 100] degrees");
        StructureContract.refuses(
                VNotchWeir.ofAngle(60, ApproachChannel.ofWidth(2).withCrestHeight(0.5)),
                0.05,
                "head h must be at least 0.06 m");
        StructureContract.refuses(
                VNotchWeir.ofAngle(60, ApproachChannel.ofWidth(2).withCrestHeight(0.5)),
                0.18,
                "h/p must be at most 0.35");
        StructureContract.refuses(
                VNotchWeir.ofAngle(60, ApproachChannel.ofWidth(2).withCrestHeight(0.08)),
                0.1,
                "vertex height p must be at least 0.09 m");
        StructureContract.refuses(
                VNotchWeir.ofAngle(90, ApproachChannel.ofWidth(0.4).withCrestHeight(0.5)),
                0.1,
                "p/B must be in [0.1, 1]");
        StructureContract.refuses(
                VNotchWeir.ofAngle(90, ApproachChannel.ofWidth(1).withCrestHeight(0.3)),
                0.44,
                "h/p must be at most 1.45");
        StructureContract.refuses(
                VNotchWeir.ofAngle(100, ApproachChannel.ofWidth(0.5).withCrestHeight(0.75)),
                0.25,
                "width of the notch at the head over B");
        StructureContract.holds(
                VNotchWeir.ofAngle(100, ApproachChannel.ofWidth(1).withCrestHeight(0.5)), 0.1);
        StructureContract.holds(
                VNotchWeir.ofAngle(20, ApproachChannel.ofWidth(1).withCrestHeight(0.5)), 0.1);
        assertThatThrownBy(
                        () -> VNotchWeir.ofAngle(180, ApproachChannel.ofWidth(1).withCrestHeight(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("angleDegrees must be greater than 0 and less than 180, was 180");
    }

    /** US Bureau of Reclamation: Q = 3.367 L h^1.5 in feet. */
    @Test
    void cipollettiInFeet() {
        CipollettiWeir weir = CipollettiWeir.ofCrestLength(
                3 * FOOT, ApproachChannel.ofWidth(12 * FOOT).withCrestHeight(3 * FOOT));
        assertThat(weir.discharge(0.7 * FOOT) / CUBIC_FOOT).isCloseTo(3.367 * 3 * Math.pow(0.7, 1.5), within(1e-12));
        StructureContract.refuses(weir, 0.5, "h/b must be at most 0.5");
        StructureContract.refuses(
                CipollettiWeir.ofCrestLength(1, ApproachChannel.ofWidth(1.2).withCrestHeight(1)),
                0.2,
                "side distance (B - b)/2 over h must be at least 2");
        StructureContract.refuses(
                CipollettiWeir.ofCrestLength(1, ApproachChannel.ofWidth(3).withCrestHeight(0.3)),
                0.2,
                "p/h must be at least 2");
        assertThatThrownBy(() -> CipollettiWeir.ofCrestLength(
                        1, ApproachChannel.ofWidth(0.5).withCrestHeight(1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("width of the channel must be greater than the crest length 1 m");
    }

    /** J. R. Villemonte (1947), the law itself at h2/h1 = 0.6 and 0.37 worked by hand. */
    @Test
    void villemonteReduction() {
        assertThat(Villemonte.reduction(0.6, 1.5)).isCloseTo(Math.pow(1 - Math.pow(0.6, 1.5), 0.385), within(1e-15));
        assertThat(Villemonte.reduction(0.37, 2.5)).isCloseTo(0.967080, within(5e-7));
        assertThat(Villemonte.reduction(0, 1.5)).isEqualTo(1);
        assertThat(Villemonte.reduction(1, 1.5)).isZero();
        assertThatThrownBy(() -> Villemonte.reduction(1.01, 1.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("submergence must be in [0, 1], was 1.01");
    }

    @Test
    void drownedWeir() {
        RectangularWeir free =
                RectangularWeir.fullWidth(ApproachChannel.ofWidth(1).withCrestHeight(0.5));
        assertThat(free.discharge(0.3, 0.12)).isEqualTo(free.discharge(0.3) * Villemonte.reduction(0.12 / 0.3, 1.5));
        assertThat(free.discharge(0.3, -0.2)).isEqualTo(free.discharge(0.3));
        assertThat(free.head(free.discharge(0.3, 0.299999), 0.299999)).isCloseTo(0.3, within(1e-13));
        assertThat(free.head(0, 0.2)).isEqualTo(0.2);
        assertThatThrownBy(() -> free.discharge(0.2, 0.3))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("tailwater must be at most the head 0.2 m");
        HeadDischarge under = free.under(0.2);
        assertThat(under.evaluate(0).isWithinLimits()).isFalse();
        boolean[] outside = new boolean[4];
        double[] discharge = new double[4];
        assertThat(under.evaluate(new double[] {-1, 0, 0.1, 0.3}, discharge, outside))
                .isEqualTo(3);
        assertThat(discharge).containsExactly(0, 0, 0, free.discharge(0.3, 0.2));
        assertThat(under.evaluate(0.3))
                .hasToString("RatedDischarge[head 0.3 m, discharge " + Text.significant(free.discharge(0.3, 0.2), 6)
                        + " m3/s, drowned]");
        assertThat(free.modularLimit(0.3)).hasValue(0);
        assertThat(under.evaluateDischarge(0.1).head()).isEqualTo(under.head(0.1));
    }

    @Test
    void aCrestNarrowerThanItsCorrectionStillCarriesWater() {
        RectangularWeir weir = RectangularWeir.contracted(
                7.442e-6, ApproachChannel.ofWidth(7.511e-6).withCrestHeight(3.5e-4));
        assertThat(weir.formula(4.5e-5)).isPositive();
    }
}
