package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.function.DoubleUnaryOperator;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class ConduitProperties {
    @Provide
    Arbitrary<Conduit> conduits() {
        return Pipes.circular();
    }

    /** Part of the maximum: tiny flows, flows a hair below the maximum, and everything between. */
    @Provide
    Arbitrary<Double> part() {
        return Arbitraries.oneOf(
                Pipes.logUniform(1e-9, 1),
                Pipes.logUniform(1e-16, 1).map(x -> 1 - x),
                Arbitraries.doubles().between(0.9, 1).ofScale(12));
    }

    @Property(tries = 4000)
    void normalDepthClosesTheRoundTrip(@ForAll("conduits") Conduit conduit, @ForAll("part") double part) {
        double discharge = part * conduit.maximum().discharge();
        double depth = conduit.normalDepth(discharge);
        Closing.assertCloses(conduit::discharge, depth, discharge);
        assertThat(depth).isLessThanOrEqualTo(conduit.maximum().depth());
    }

    @Property(tries = 4000)
    void everyBranchClosesTheRoundTrip(@ForAll("conduits") Conduit conduit, @ForAll("part") double part) {
        double full = conduit.fullBore().discharge();
        double most = conduit.maximum().discharge();
        double discharge = full + part * (most - full);
        double[] depths = conduit.normalDepths(discharge);
        // Where the flow of the full bore is hardly turbulent, the kink of the law makes a second maximum of its own.
        FlowState fullBore = conduit.fullBore();
        boolean kinked = conduit.resistance() instanceof ColebrookWhite law
                && fullBore.velocity() * conduit.section().height() / law.viscosity()
                        < 1.5 * DarcyFriction.TURBULENT_LIMIT;
        assertThat(depths.length).isBetween(1, kinked ? 4 : 2);
        if (discharge < most * (1 - 1e-14)) {
            assertThat(depths).hasSizeGreaterThan(1);
        }
        assertThat(depths[0]).isEqualTo(conduit.normalDepth(discharge));
        for (double depth : depths) {
            Closing.assertCloses(conduit::discharge, depth, discharge);
        }
    }

    @Property(tries = 500)
    void maximumIsAMaximumAndExactlyThereIsOneDepth(@ForAll("conduits") Conduit conduit) {
        FlowState most = conduit.maximum();
        assertThat(conduit.normalDepths(most.discharge())).containsExactly(most.depth());
        assertThat(conduit.normalDepth(most.discharge())).isEqualTo(most.depth());
        assertThat(conduit.normalDepths(Math.nextUp(most.discharge()))).isEmpty();
        FlowState fastest = conduit.maximumVelocity();
        for (double x = 0.001; x <= 1; x += 0.001) {
            double depth = x * conduit.section().height();
            assertThat(conduit.discharge(depth)).isLessThanOrEqualTo(most.discharge() * (1 + 1e-15));
            assertThat(conduit.velocity(depth)).isLessThanOrEqualTo(fastest.velocity() * (1 + 1e-15));
        }
        assertThat(fastest.depth()).isLessThan(most.depth());
    }

    @Property(tries = 2000)
    void criticalDepthClosesTheRoundTrip(@ForAll("conduits") Conduit conduit, @ForAll("criticalPart") double relative) {
        double size = conduit.section().height();
        double discharge = relative * Math.sqrt(conduit.gravity() * size) * size * size;
        double depth = conduit.criticalDepth(discharge);
        Closing.assertCloses(conduit::criticalDischarge, depth, discharge);
    }

    @Provide
    Arbitrary<Double> criticalPart() {
        return Pipes.logUniform(1e-9, 1e4);
    }

    @Property(tries = 1000)
    void froudeNumberIsOneAtCriticalDepth(@ForAll("conduits") Conduit conduit, @ForAll("mid") double part) {
        double depth = part * conduit.section().height();
        double critical = conduit.criticalDischarge(depth);
        var steep = conduit.withGradient(conduit.gradientForDischargeAtDepth(critical, depth));
        assertThat(steep.at(depth).froudeNumber()).isCloseTo(1, within(1e-12));
    }

    @Provide
    Arbitrary<Double> mid() {
        return Arbitraries.doubles().between(0.001, 0.999).ofScale(9);
    }

    @Property(tries = 2000)
    void gradientForClosesTheRoundTrip(@ForAll("conduits") Conduit conduit, @ForAll("wanted") double relative) {
        double size = conduit.section().height();
        double discharge = relative * Math.sqrt(conduit.gravity() * size) * size * size;
        var fitted = conduit.withGradient(conduit.gradientFor(discharge));
        assertThat(fitted.fullBore().discharge()).isCloseTo(discharge, within(1e-13 * discharge));
    }

    @Provide
    Arbitrary<Double> wanted() {
        return Pipes.logUniform(1e-6, 1e2);
    }

    @Property
    void bulkFormsGiveTheSameBits(@ForAll("conduits") Conduit conduit, @ForAll("part") double part) {
        double height = conduit.section().height();
        double[] depths = {part * height, Double.NaN, height, 0, 0.3 * height};
        double[] out = new double[5];
        conduit.discharge(depths, out);
        assertScalar(conduit::discharge, depths, out);
        conduit.velocity(depths, out);
        assertScalar(conduit::velocity, depths, out);
        double most = conduit.maximum().discharge();
        double[] discharges = {part * most, Double.NaN, most, 0, 0.3 * most};
        conduit.normalDepth(discharges, out);
        assertScalar(conduit::normalDepth, discharges, out);
        conduit.criticalDepth(discharges, out);
        assertScalar(conduit::criticalDepth, discharges, out);
    }

    private static void assertScalar(DoubleUnaryOperator scalar, double[] in, double[] out) {
        for (int i = 0; i < in.length; i++) {
            double expected = Double.isNaN(in[i]) ? Double.NaN : scalar.applyAsDouble(in[i]);
            assertThat(Double.doubleToLongBits(out[i])).isEqualTo(Double.doubleToLongBits(expected));
        }
    }
}
