package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.Reference;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.Egg;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What a circle's curves are made of, read anew, and what conduits do where there is no such curve. */
class CircleEdgesTest {
    private static final Gradient GRADIENT = Gradient.of(0.004);

    /** The pieces of the discharge against values from the defining formula at 100 digits, over all octaves. */
    @Test
    void piecesReadAnew() {
        CrestPieces pieces = CrestPieces.read("circle-manning.doubles", -22);
        int inside = 0;
        for (Map<String, String> row : Reference.rows(CircleCurvesTest.class, "circle-curves.csv")) {
            double part = Double.parseDouble(row.get("part"));
            double v = CrestPieces.variable(part, Math.sqrt(1 - part));
            int piece = pieces.piece(v);
            if (part > 1e-6 && part < 1) {
                double value = piece < 22 * 64 - 1 ? pieces.value(piece, v) : pieces.valueUpTo(piece, v);
                assertThat(Reference.deviation(value, row.get("manning")))
                        .as("%s", row)
                        .isLessThan(4e-15);
                inside += pieces.isInside(piece) ? 1 : 0;
            }
        }
        assertThat(inside).isGreaterThan(100);
        double first = 0x1p-22;
        assertThat(pieces.piece(first)).isZero();
        assertThat(pieces.isInside(pieces.piece(first))).isTrue();
        assertThat(pieces.isInside(pieces.piece(Math.nextDown(first)))).isFalse();
        assertThat(pieces.piece(Math.nextDown(1.0))).isEqualTo(22 * 64 - 1);
        // The last piece ends at the full bore, where there are choices to be made.
        assertThat(pieces.isInside(22 * 64 - 2)).isTrue();
        assertThat(pieces.isInside(22 * 64 - 1)).isFalse();
        for (double none : new double[] {1, -0.5, Double.NaN}) {
            assertThat(pieces.isInside(pieces.piece(none))).isFalse();
        }
    }

    /** √(g D⁵) by hand, and many depths with what is none. */
    @Test
    void criticalDepthsOfManyDischarges() {
        assertThat(CircleCritical.unit(0.6, 9.81)).isCloseTo(Math.sqrt(9.81 * 0.07776), within(1e-15));
        CriticalFlow flow = CriticalFlow.of(CircularSection.ofDiameter(0.6));
        double[] depths = new double[4];
        flow.depth(new double[] {0, Double.NaN, 0.1, 5}, depths);
        assertThat(depths[0]).isZero();
        assertThat(depths[1]).isNaN();
        assertThat(flow.discharge(depths[2])).isCloseTo(0.1, within(1e-14));
        assertThat(flow.discharge(depths[3])).isCloseTo(5, within(1e-6));
        for (double none : new double[] {-1, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> flow.depth(new double[] {0.1, none}, new double[2]))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageContaining("discharges[1]");
        }
    }

    /** Colebrook's law in a circle, rough and smooth, against the general search in the same section and law. */
    @Test
    void colebrookInACircle() {
        CircularSection circle = CircularSection.ofDiameter(0.3);
        for (ColebrookWhite law :
                new ColebrookWhite[] {ColebrookWhite.ofRoughnessMm(1.5), ColebrookWhite.ofRoughness(0)}) {
            Conduit conduit = Conduit.of(circle, GRADIENT, law);
            FlowState most = conduit.maximum();
            FlowState fastest = conduit.maximumVelocity();
            assertThat(fastest.depth() / 0.3).isBetween(0.80, 0.82);
            for (double beside : new double[] {-1e-3, 1e-3}) {
                assertThat(conduit.velocity(fastest.depth() + beside)).isLessThan(conduit.velocity(fastest.depth()));
                assertThat(conduit.discharge(most.depth() + beside)).isLessThan(most.discharge());
            }
            double q = 0.5 * (most.discharge() + conduit.fullBore().discharge());
            double[] two = conduit.normalDepths(q);
            assertThat(two).hasSize(2);
            for (double depth : two) {
                assertThat(conduit.dischargeByLaw(depth)).isCloseTo(q, within(1e-12 * q));
            }
            assertThat(conduit.normalDepth(q)).isCloseTo(two[0], within(1e-12));
            assertThat(conduit.normalDepths(1.001 * most.discharge())).isEmpty();
            double[] depths = new double[6];
            double[] some = {0, 1e-9, 0.01, q, Double.NaN, 1e-3};
            conduit.normalDepth(some, depths);
            for (int i = 0; i < 6; i++) {
                if (i == 4) {
                    assertThat(depths[i]).isNaN();
                } else {
                    assertThat(depths[i]).isEqualTo(conduit.normalDepth(some[i]));
                    assertThat(conduit.dischargeByLaw(depths[i])).isCloseTo(some[i], within(1e-12 * some[i]));
                }
            }
        }
    }

    /** The first depths asked of a pipe are those it finds later. */
    @Test
    void theFirstDepths() {
        Conduit conduit = Conduit.of(CircularSection.ofDiameter(0.3), GRADIENT, ColebrookWhite.ofRoughnessMm(1.5));
        double[] first = new double[12];
        for (int i = 0; i < 12; i++) {
            first[i] = conduit.normalDepth(0.004 * i);
        }
        for (int i = 0; i < 12; i++) {
            assertThat(conduit.normalDepth(0.004 * i)).isCloseTo(first[i], within(1e-12));
            assertThat(conduit.dischargeByLaw(first[i])).isCloseTo(0.004 * i, within(1e-12));
        }
    }

    @Test
    void aConduitWithoutACurveOfItsOwn() {
        Conduit egg = Conduit.of(Egg.normal(0.6), GRADIENT, Manning.of(0.013));
        FlowState fastest = egg.maximumVelocity();
        assertThat(egg.maximumVelocity().depth()).isEqualTo(fastest.depth());
        for (double beside : new double[] {-1e-3, 1e-3}) {
            assertThat(egg.velocity(fastest.depth() + beside)).isLessThan(egg.velocity(fastest.depth()));
        }
        Conduit fitted = egg.fittedTo(0.3, 1.1);
        assertThat(fitted.velocity(0.3)).isCloseTo(1.1, within(1e-12));
        Conduit own = egg.withResistance((section, depth) -> Manning.of(0.013).at(section, depth));
        assertThatThrownBy(() -> own.fittedTo(0.3, 1.1))
                .isInstanceOf(IllegalStateException.class)
                .hasMessageStartingWith("the law has no single roughness to fit: ");
    }
}
