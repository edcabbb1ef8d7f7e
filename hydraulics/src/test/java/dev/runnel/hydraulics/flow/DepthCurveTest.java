package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.hydraulics.section.TabulatedSection;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Where curves go, what they cost, and across benches against quadrature in two parts. */
class DepthCurveTest {
    private static final Manning LAW = Manning.of(0.013);
    private static final CircularSection PIPE = CircularSection.ofDiameter(0.6);

    /** 1 m wide up to 0.5 m, above 1.3 m. */
    private static final CrossSection BENCHED =
            TabulatedSection.open(new double[] {0, 0.5, 0.5, 3}, new double[] {1, 1, 1.3, 1.3});

    private int calls;

    private static ReachFlow flow(CrossSection section, double gradient, Resistance law, double q) {
        return new ReachFlow(Reach.of(section, Gradient.of(gradient), law, 1), q);
    }

    private Resistance counted() {
        return (section, depth) -> {
            calls++;
            return LAW.at(section, depth);
        };
    }

    /** Between its two normal depths a pipe empties towards the lower, above the upper it comes under pressure without end. */
    @Test
    void aPipeWithTwoNormalDepths() {
        Conduit conduit = Conduit.of(PIPE, Gradient.of(0.003), LAW);
        double q = 1.04 * conduit.discharge(0.6);
        double[] normal = conduit.normalDepths(q);
        assertThat(normal).hasSize(2);
        ReachFlow flow = flow(PIPE, 0.003, LAW, q);
        assertThat(flow.critical()).isLessThan(normal[0]);
        for (double start :
                new double[] {1.02 * flow.critical(), 0.99 * normal[0], 0.3 * normal[0] + 0.7 * normal[1]}) {
            DepthCurve curve = DepthCurve.slow(flow, start);
            assertThat(curve.depthAt(1e6)).isCloseTo(normal[0], within(1e-9));
            assertThat(curve.depthAt(1)).isBetween(Math.min(start, normal[0]), Math.max(start, normal[0]));
            assertThat(curve.end(1e6)).isEqualTo(Double.POSITIVE_INFINITY);
        }
        DepthCurve curve = DepthCurve.slow(flow, 0.5 * (normal[1] + 0.6));
        double friction = flow.frictionSlope(0.6);
        assertThat(friction).isGreaterThan(0.003);
        assertThat(curve.depthAt(1100) - curve.depthAt(1000)).isCloseTo(100 * (friction - 0.003), within(1e-8));
        assertThat(curve.depthAt(1000)).isGreaterThan(0.6);
    }

    /** By less than rounding from normal depth nothing moves; by a ten-millionth it does, ever so slowly. */
    @Test
    void besideNormalDepth() {
        ReachFlow flow = flow(RectangularSection.open(2), 0.001, LAW, 2);
        double normal = flow.normalDepths()[0];
        for (double start : new double[] {normal, normal * (1 + 1e-14), normal * (1 - 1e-14)}) {
            assertThat(DepthCurve.slow(flow, start).depthAt(1e5)).isEqualTo(start);
        }
        for (double start : new double[] {normal * (1 + 1e-7), normal * (1 - 1e-7)}) {
            DepthCurve curve = DepthCurve.slow(flow, start);
            assertThat(curve.depthAt(1)).isCloseTo(start, within(1e-9)).isNotEqualTo(start);
            assertThat(curve.depthAt(1e5)).isCloseTo(normal, within(2e-10));
        }
    }

    /** A law of one's own, rough below a bench and smooth above: slow flow goes to the bench from both sides and stays there. */
    @Test
    void aBenchThatDrawsTheSurface() {
        CrossSection section = TabulatedSection.open(new double[] {0, 0.5, 0.5, 3}, new double[] {1, 1, 1.01, 1.01});
        Resistance law = (s, depth) -> Manning.of(depth <= 0.5 ? 0.03 : 0.01).at(s, depth);
        ReachFlow flow = flow(section, 0.0008, law, 0.3);
        assertThat(flow.ledges()).containsExactly(0.5);
        assertThat(flow.normalDepths()).isEmpty();
        assertThat(flow.slopeExcess(0.5)).isNegative();
        for (double start : new double[] {0.3, 0.45, 0.55, 0.9}) {
            DepthCurve curve = DepthCurve.slow(flow, start);
            assertThat(curve.depthAt(0)).isEqualTo(start);
            assertThat(curve.depthAt(1)).isBetween(Math.min(start, 0.5), Math.max(start, 0.5));
            assertThat(curve.depthAt(5000)).isEqualTo(0.5);
            assertThat(curve.end(5000)).isEqualTo(Double.POSITIVE_INFINITY);
        }
        // With the one law everywhere there is no such place.
        assertThat(flow(section, 0.0008, LAW, 0.3).ledges()).isEmpty();
    }

    /** Sums of quadratures up to the bench and from it on. */
    @ParameterizedTest
    @CsvSource({
        "0.3, 0.9, 0.47, -1",
        "0.3, 0.9, 0.499999, -1",
        "0.3, 0.51, 0.46, -1",
        "1.5, 0.3, 0.6, 1",
        "1.5, 0.499, 0.5001, 1"
    })
    void acrossABench(double q, double start, double end, int sign) {
        double distance = sign
                * (ProfileEdgesTest.quadrature(BENCHED, 0.0005, q, start, 0.5)
                        + ProfileEdgesTest.quadrature(BENCHED, 0.0005, q, 0.5, end));
        ReachFlow flow = flow(BENCHED, 0.0005, LAW, q);
        DepthCurve curve = sign > 0 ? DepthCurve.fast(flow, start) : DepthCurve.slow(flow, start);
        assertThat(distance).isPositive();
        assertThat(curve.depthAt(distance)).isCloseTo(end, within(2e-10));
        double toBench = sign * ProfileEdgesTest.quadrature(BENCHED, 0.0005, q, start, 0.5);
        assertThat(curve.depthAt(toBench)).isCloseTo(0.5, within(2e-10));
    }

    /** A closing surface bends like a root into the soffit: from there down, and through it from pressure. */
    @ParameterizedTest
    @CsvSource({"0.6, 0.599", "0.6, 0.58", "0.6, 0.4", "0.9, 0.59", "0.9, 0.3"})
    void throughTheSoffitOfAPipe(double start, double end) {
        ReachFlow flow = flow(PIPE, 0.003, LAW, 0.1);
        double full = (start - 0.6) / flow.slopeExcess(0.6);
        double distance = full - ProfileEdgesTest.quadrature(PIPE, 0.003, 0.1, 0.6, end);
        DepthCurve curve = DepthCurve.slow(flow, start);
        assertThat(curve.depthAt(distance)).isCloseTo(end, within(5e-11));
        assertThat(curve.depthAt(full)).isCloseTo(0.6, within(1e-12));
        assertThat(curve.depthAt(0.5 * full)).isCloseTo((start + 0.6) / 2, within(1e-12));
    }

    /** At its end a curve still has a depth: the critical one. */
    @Test
    void theEndBelongsToTheCurve() {
        ReachFlow mild = flow(RectangularSection.open(2), 0.001, LAW, 2);
        DepthCurve fast = DepthCurve.fast(mild, 0.2);
        double end = fast.end(1e4);
        assertThat(fast.depthAt(end)).isCloseTo(mild.critical(), within(1e-9));
        assertThat(fast.depthAt(Math.nextUp(end))).isNaN();
        assertThat(fast.depthWithin(Math.nextUp(end))).isEqualTo(mild.critical());
        assertThat(DepthCurve.fast(mild, 0.01).end(0.001)).isEqualTo(Double.POSITIVE_INFINITY);
    }

    /** How often friction is asked for: pieces are halved only where they must be, and a depth inside one needs a few integrals. */
    @ParameterizedTest
    @CsvSource({
        "0.001, 1.5, 3000, 440, 40",
        "0.001, 0.7, 3000, 530, 48",
        "0.001, 0.5, 2000, 410, 37",
        "0.02, 1.5, 60, 76, 53",
        "0.001, 0.1, 50, 97, 46",
        "0, 0.5, 3000, 130, 62",
        "-1, 0.6, 200, 830, 60",
        "-1, 0.9, 400, 1210, 56"
    })
    void callsOfFriction(double gradient, double start, double length, int toIntegrate, int foreachDepth) {
        ReachFlow flow = gradient < 0
                ? flow(PIPE, 0.003, counted(), 0.1)
                : flow(RectangularSection.open(2), gradient, counted(), 2);
        // Which a flow finds once.
        flow.normalDepths();
        calls = 0;
        DepthCurve curve = start < flow.critical() ? DepthCurve.fast(flow, start) : DepthCurve.slow(flow, start);
        double reach = Math.min(length, curve.end(length));
        curve.depthAt(reach);
        int made = calls;
        calls = 0;
        for (int i = 0; i <= 100; i++) {
            curve.depthAt(reach * i / 100);
        }
        assertThat(made).isLessThanOrEqualTo(toIntegrate);
        assertThat(calls / 101).isLessThanOrEqualTo(foreachDepth);
    }

    /** The same depths, in whatever order they are asked for. */
    @Test
    void inAnyOrder() {
        ReachFlow flow = flow(PIPE, 0.003, LAW, 0.1);
        double[] up = new double[40];
        DepthCurve rising = DepthCurve.slow(flow, 0.55);
        Arrays.setAll(up, i -> rising.depthAt(3.0 * i));
        DepthCurve falling = DepthCurve.slow(flow, 0.55);
        for (int i = 39; i >= 0; i--) {
            assertThat(falling.depthAt(3.0 * i)).isEqualTo(up[i]);
        }
        for (int i = 1; i < 40; i++) {
            assertThat(up[i]).isLessThan(up[i - 1]);
        }
    }
}
