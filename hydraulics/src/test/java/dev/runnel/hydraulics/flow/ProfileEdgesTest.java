package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.BenchedChannel;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.RectangularSection;
import dev.runnel.internal.Text;
import java.util.List;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegrator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Varied flow against quadrature between few depths, and where reaches meet, by hand. */
class ProfileEdgesTest {
    private static final double G = 9.80665;
    private static final Manning LAW = Manning.of(0.013);
    private static final GaussIntegrator GAUSS = new GaussIntegratorFactory().legendre(20);
    private static final CrossSection CHANNEL = RectangularSection.open(2);
    private static final CircularSection PIPE = CircularSection.ofDiameter(0.6);

    private static Reach channel(double gradient, double length) {
        return Reach.of(CHANNEL, Gradient.of(gradient), LAW, length);
    }

    /** x = ∫ (1 − Fr²)/(S₀ − Sf) dy by Gauss in 64 parts, with y = from + (to − from)(3t² − 2t³), so that a root at an end is none. */
    static double quadrature(CrossSection section, double gradient, double q, double from, double to) {
        double sum = 0;
        for (int part = 0; part < 64; part++) {
            for (int i = 0; i < GAUSS.getNumberOfPoints(); i++) {
                double t = (part + 0.5 + GAUSS.getPoint(i) / 2) / 64;
                double y = from + (to - from) * t * t * (3 - 2 * t);
                double area = section.area(y);
                double v = q / area;
                double froude2 = v * v * section.topWidth(y) / (G * area);
                double friction = Math.pow(0.013 * v, 2) / Math.pow(section.hydraulicRadius(y), 4 / 3.0);
                double rate = (1 - froude2) / (gradient - friction) * (to - from) * 6 * t * (1 - t);
                sum += GAUSS.getWeight(i) / 128 * rate;
            }
        }
        return sum;
    }

    /** 2 m³/s in 2 m: critical at 0.467 m; normal at 0.7305 m on 1 in 1000 and at 0.262 m on 1 in 50. */
    @ParameterizedTest
    @CsvSource({
        "0.001, 1.5, 0.9",
        "0.001, 1.5, 0.76",
        "0.001, 0.4673, 0.6",
        "0.001, 0.5, 0.73",
        "0.02, 2, 0.6",
        "0, 0.5, 1.2",
        "-0.002, 0.6, 0.9"
    })
    void slowFlowUpstream(double gradient, double start, double end) {
        double distance = -quadrature(CHANNEL, gradient, 2, start, end);
        ReachFlow flow = new ReachFlow(channel(gradient, 1), 2);
        DepthCurve curve = DepthCurve.slow(flow, start);
        assertThat(curve.depthAt(0)).isEqualTo(start);
        assertThat(curve.depthAt(distance)).isCloseTo(end, within(2e-10));
        assertThat(curve.depthWithin(distance)).isEqualTo(curve.depthAt(distance));
        // Asked beyond it before, it gives the same.
        DepthCurve again = DepthCurve.slow(flow, start);
        again.depthAt(1.2 * distance);
        assertThat(again.depthAt(distance)).isCloseTo(end, within(2e-10));
    }

    @ParameterizedTest
    @CsvSource({
        "0.001, 0.1, 0.2",
        "0.001, 0.1, 0.45",
        "0.02, 0.467, 0.3",
        "0.02, 0.46, 0.263",
        "0.02, 0.1, 0.25",
        "0, 0.15, 0.4",
        "-0.002, 0.15, 0.3"
    })
    void fastFlowDownstream(double gradient, double start, double end) {
        double distance = quadrature(CHANNEL, gradient, 2, start, end);
        DepthCurve curve = DepthCurve.fast(new ReachFlow(channel(gradient, 1), 2), start);
        assertThat(curve.depthAt(0)).isEqualTo(start);
        assertThat(curve.depthAt(distance)).isCloseTo(end, within(2e-10));
    }

    /** Fast flow on a mild bed reaches critical depth and ends there; on a steep one it goes on at normal depth. */
    @Test
    void whereCurvesEnd() {
        double critical = Math.cbrt(1 / G);
        for (double gradient : new double[] {0.001, 0, -0.002}) {
            ReachFlow flow = new ReachFlow(channel(gradient, 1), 2);
            double end = quadrature(CHANNEL, gradient, 2, 0.15, critical);
            DepthCurve fast = DepthCurve.fast(flow, 0.15);
            assertThat(fast.end(2 * end)).isCloseTo(end, within(1e-7));
            assertThat(fast.end(0.5 * end)).as("not seen yet").isGreaterThanOrEqualTo(end * (1 - 1e-7));
            assertThat(fast.depthAt(0.999999 * end)).isBetween(0.999 * critical, critical);
            assertThat(fast.depthAt(1.000001 * end)).isNaN();
            assertThat(fast.depthWithin(1.000001 * end)).isCloseTo(critical, within(1e-12));
        }
        ReachFlow steep = new ReachFlow(channel(0.02, 1), 2);
        double normal = steep.normalDepths()[0];
        DepthCurve down = DepthCurve.fast(steep, 0.4);
        assertThat(down.depthAt(1e6)).isCloseTo(normal, within(1e-9));
        assertThat(down.end(1e6)).isEqualTo(Double.POSITIVE_INFINITY);
        // Backed up on a steep bed slow flow ends upstream at critical depth.
        double end = -quadrature(CHANNEL, 0.02, 2, 1, critical);
        DepthCurve up = DepthCurve.slow(steep, 1);
        assertThat(up.end(2 * end)).isCloseTo(end, within(1e-7));
        assertThat(up.depthAt(1.001 * end)).isNaN();
        // At critical depth on a steep bed there is no slow flow at all, at normal depth nothing moves.
        DepthCurve none = DepthCurve.slow(steep, steep.critical());
        assertThat(none.depthAt(0)).isEqualTo(steep.critical());
        assertThat(none.depthAt(1)).isNaN();
        assertThat(none.end(1)).isZero();
        DepthCurve uniform = DepthCurve.fast(steep, normal);
        assertThat(uniform.depthAt(500)).isCloseTo(normal, within(1e-12));
        assertThat(uniform.end(500)).isEqualTo(Double.POSITIVE_INFINITY);
    }

    /** A pipe into its upper half, where the surface closes; each way and back. */
    @Test
    void backwaterInAPipe() {
        Backwater backwater = Backwater.of(Conduit.of(PIPE, Gradient.of(0.003), LAW), 0.1);
        double normal = backwater.normalDepth();
        for (double raised : new double[] {0.3, 0.45, 0.55, 0.599, 0.6}) {
            for (double end : new double[] {0.005, 0.05}) {
                double distance = quadrature(PIPE, 0.003, 0.1, normal + end, raised);
                assertThat(backwater.length(raised, end)).isCloseTo(distance, within(1e-8 * distance));
                assertThat(backwater.depthUpstream(raised, distance)).isCloseTo(normal + end, within(1e-10));
                assertThat(backwater.raisedDepth(normal + end, distance)).isCloseTo(raised, within(1e-9));
            }
        }
        // Above the soffit the line falls with the friction of the full pipe, (n v)²/(D/4)^(4/3).
        double friction = Math.pow(0.013 * 0.1 / PIPE.fullArea(), 2) / Math.pow(0.15, 4 / 3.0);
        double free = backwater.length(0.6, 0.05);
        assertThat(backwater.length(0.9, 0.05)).isCloseTo(free + 0.3 / (0.003 - friction), within(1e-9 * free));
        assertThat(backwater.raisedDepth(0.6, 50)).isCloseTo(0.6 + 50 * (0.003 - friction), within(1e-9));
        assertThat(backwater.depthUpstream(0.9, 0)).isCloseTo(0.9, within(1e-12));
        assertThat(backwater.raisedDepth(0.4, 0)).isCloseTo(0.4, within(1e-8));
        assertThat(backwater.depthUpstream(normal, 10)).isEqualTo(normal);
        assertThat(backwater.length(normal + 0.05, 0.05)).isZero();
        for (double none : new double[] {normal, 0.1, Double.POSITIVE_INFINITY, Double.NaN}) {
            assertThatThrownBy(() -> backwater.raisedDepth(none, 10))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("seenDepth must be greater than 0.224255")
                    .hasMessageEndingWith(" m, where backwater ends, was " + Text.number(none));
        }
    }

    /** Normal depth in the upper half and close to the soffit: both ends of the integral bend. */
    @Test
    void backwaterCloseToTheSoffit() {
        Conduit conduit = Conduit.of(PIPE, Gradient.of(0.003), LAW);
        for (double part : new double[] {0.7, 0.9, 0.99}) {
            double q = part * conduit.discharge(0.6);
            Backwater backwater = Backwater.of(conduit, q);
            double normal = backwater.normalDepth();
            assertThat(normal).isBetween(0.3, 0.5);
            for (double rise : new double[] {1e-4, 1e-3, 1e-2, 0.05}) {
                double distance = quadrature(PIPE, 0.003, q, normal + rise, 0.6);
                assertThat(backwater.length(0.6, rise)).isCloseTo(distance, within(1e-9 * distance));
            }
        }
    }

    /** Towards normal depth the rise falls to a hundredth over always the same distance. */
    @Test
    void backwaterThinsOut() {
        for (CrossSection section : List.of(PIPE, CHANNEL)) {
            Backwater backwater = Backwater.of(Conduit.of(section, Gradient.of(0.003), LAW), 0.1);
            double hundredth = backwater.length(0.45, 1e-6) - backwater.length(0.45, 1e-4);
            assertThat(hundredth).isPositive();
            assertThat(backwater.length(0.45, 1e-8) - backwater.length(0.45, 1e-6))
                    .isCloseTo(hundredth, within(5e-3 * hundredth));
            assertThat(backwater.depthUpstream(0.45, backwater.length(0.45, 1e-8)))
                    .isCloseTo(backwater.normalDepth() + 1e-8, within(1e-12));
        }
    }

    /** More than the full pipe carries: backwater stays below the second normal depth, and what reaches it rises without end. */
    @Test
    void backwaterBelowASecondNormalDepth() {
        Conduit conduit = Conduit.of(PIPE, Gradient.of(0.003), LAW);
        double q = 1.04 * conduit.discharge(0.6);
        double[] normal = conduit.normalDepths(q);
        Backwater backwater = Backwater.of(conduit, q);
        double seen = 0.7 * normal[0] + 0.3 * normal[1];
        double raised = normal[1] - 1e-3;
        double distance = backwater.length(raised, seen - normal[0]);
        assertThat(distance).isCloseTo(quadrature(PIPE, 0.003, q, seen, raised), within(1e-9 * distance));
        assertThat(backwater.raisedDepth(seen, distance)).isCloseTo(raised, within(1e-9));
        assertThat(backwater.depthUpstream(raised, distance)).isCloseTo(seen, within(1e-9));
        for (double none : new double[] {normal[1], 0.6, 0.8}) {
            assertThatThrownBy(() -> backwater.length(none, 0.01))
                    .isInstanceOf(NoSolutionException.class)
                    .hasMessageStartingWith(
                            "close to the soffit the conduit does not carry the discharge on its gradient")
                    .hasMessageContaining("the level rises upstream without end, in SectionFlow[");
        }
        assertThatThrownBy(() -> backwater.raisedDepth(seen, 1e6)).isInstanceOf(NoSolutionException.class);
        assertThatThrownBy(() -> backwater.raisedDepth(normal[1], 1)).isInstanceOf(NoSolutionException.class);
    }

    /** On a steep bed backwater ends in a jump, at the depth conjugate to the normal one. */
    @Test
    void backwaterOnASteepBed() {
        Backwater backwater = Backwater.of(Conduit.of(CHANNEL, Gradient.of(0.02), LAW), 2);
        double normal = backwater.normalDepth();
        double froude2 = 1 / (G * normal * normal * normal);
        double conjugate = normal / 2 * (Math.sqrt(1 + 8 * froude2) - 1);
        double distance = quadrature(CHANNEL, 0.02, 2, conjugate, 2);
        assertThat(backwater.length(2, 0.01)).isCloseTo(distance, within(1e-9 * distance));
        assertThat(backwater.length(0.99 * conjugate, 0.01)).isZero();
        assertThat(backwater.depthUpstream(2, 0.99 * distance)).isGreaterThan(conjugate);
        assertThat(backwater.depthUpstream(2, 1.01 * distance)).isEqualTo(normal);
        assertThat(backwater.raisedDepth(1.2, quadrature(CHANNEL, 0.02, 2, 1.2, 2)))
                .isCloseTo(2, within(1e-9));
        assertThat(backwater.toString()).endsWith("normal depth 0.2621 m, steep]");
    }

    /** A step of equal depths is none; from critical depth on a profile is smooth to both sides. */
    @Test
    void depthSteps() {
        Reach steep = channel(0.02, 1);
        double critical = new ReachFlow(steep, 2).critical();
        assertThat(DepthSteps.through(steep, 2, 1, 1).get(1).distance()).isZero();
        assertThat(DepthSteps.through(steep, 2, critical, 0.4).get(1).distance())
                .isCloseTo(quadrature(CHANNEL, 0.02, 2, critical, 0.4), within(0.1));
        assertThat(DepthSteps.through(channel(0.001, 1), 2, critical, 0.5)
                        .get(1)
                        .distance())
                .isNegative();
        assertThat(DepthSteps.through(steep, 2, 0.4, critical).get(1).distance())
                .isNegative();
        List<Station> two = DepthSteps.through(channel(0.001, 1), 2, 1.2, 1.1);
        // E2 − E1 over the mean of S₀ − Sf.
        double[] e = new double[2];
        double[] s = new double[2];
        for (int i = 0; i < 2; i++) {
            double y = 1.2 - 0.1 * i;
            e[i] = y + 1 / (2 * G * y * y);
            s[i] = 0.001 - Math.pow(0.013 / y, 2) / Math.pow(2 * y / (2 + 2 * y), 4 / 3.0);
        }
        double step = (e[1] - e[0]) / ((s[0] + s[1]) / 2);
        assertThat(two.get(1).distance()).isCloseTo(step, within(1e-9));
        assertThat(two.get(1).invert()).isCloseTo(-0.001 * step, within(1e-12));
    }

    /** The bed of a chain falls by its gradients and the drops between its reaches. */
    @Test
    void levelsOfAChain() {
        List<Reach> reaches =
                List.of(channel(0.001, 200).withDrop(0.3), channel(0.002, 100).withDrop(5));
        WaterProfile profile = VariedFlow.of(reaches, 2)
                .withOutletDepth(1.5)
                .withOutletInvert(10)
                .profile();
        assertThat(profile.outlet().invert()).isCloseTo(10, within(1e-12));
        assertThat(profile.inlet().invert()).isCloseTo(10 + 0.2 + 0.3 + 0.2, within(1e-12));
        assertThat(profile.outlet().distance()).isEqualTo(300);
    }

    /** Fast flow over a drop of 0.1 m with a loss of 0.3 v²/2g keeps the rest of its energy. */
    @Test
    void fastFlowFromReachToReach() {
        List<Reach> reaches = List.of(
                channel(0.02, 50).withDrop(0.1).withLoss(0.3),
                Reach.of(RectangularSection.open(1.8), Gradient.of(0.02), LAW, 50));
        WaterProfile profile = VariedFlow.of(reaches, 2).profile();
        Station above = profile.stations().get(200);
        Station below = profile.stations().get(201);
        double head = above.velocity() * above.velocity() / (2 * G);
        assertThat(below.froudeNumber()).isGreaterThan(1);
        assertThat(below.depth() + below.velocity() * below.velocity() / (2 * G))
                .isCloseTo(above.depth() + 0.7 * head + 0.1, within(1e-9));
        assertThat(profile.jumps()).isEmpty();
    }

    /** A loss that leaves less than critical flow needs: the reach below begins with slow flow. */
    @Test
    void aLossThatFastFlowCannotPay() {
        List<Reach> reaches = List.of(channel(0.03, 200).withLoss(0.95), channel(0.001, 200));
        WaterProfile profile = VariedFlow.of(reaches, 2).profile();
        Station below = profile.stations().get(201);
        assertThat(below.froudeNumber()).isLessThan(1);
        assertThat(profile.stations())
                .allSatisfy(station -> assertThat(station.depth()).isPositive());
        assertThat(profile.outlet().froudeNumber()).isCloseTo(1, within(1e-12));
    }

    /** A benched channel with several critical depths: fast flow begins below the lowest, with the energy it has. */
    @Test
    void fastFlowInABenchedChannel() {
        CrossSection benched =
                BenchedChannel.ofWidthAndDepth(0.3, 0.3).withBenchSlope(0.02).inChamberOfWidth(1.5);
        SectionFlow flow = SectionFlow.of(benched, 0.11);
        double[] critical = flow.criticalDepths();
        ReachFlow reach = new ReachFlow(Reach.of(benched, Gradient.of(0.02), LAW, 1), 0.11);
        assertThat(reach.lowestCritical()).isEqualTo(critical[0]);
        assertThat(reach.critical()).isEqualTo(critical[critical.length - 1]);
        double low = 0.8 * critical[0];
        assertThat(reach.fastestFor(low)).isEqualTo(low);
        assertThat(reach.fastestFor(critical[0])).isEqualTo(critical[0]);
        double from = reach.fastestFor(1.2 * critical[critical.length - 1]);
        assertThat(from).isLessThan(critical[0]);
        assertThat(flow.specificEnergy(from))
                .isCloseTo(flow.specificEnergy(1.2 * critical[critical.length - 1]), within(1e-12));
        for (double energy : new double[] {1.01, 1.5, 20}) {
            double value = energy * flow.specificEnergy(critical[0]);
            double fast = reach.fastDepth(value);
            assertThat(fast).isLessThan(critical[0]);
            assertThat(flow.specificEnergy(fast)).isCloseTo(value, within(1e-12 * value));
        }
        assertThat(reach.fastDepth(0.99 * flow.specificEnergy(critical[0]))).isNaN();
        for (double loss : new double[] {0, 0.5}) {
            double level = reach.slowLevel(5, loss);
            assertThat(reach.energy(level) - loss * reach.velocityHead(level)).isCloseTo(5, within(1e-12));
            assertThat(reach.slowLevel(0.1, loss)).isEqualTo(reach.critical());
        }
    }
}
