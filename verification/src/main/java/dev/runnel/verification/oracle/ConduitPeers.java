package dev.runnel.verification.oracle;

import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.verification.Check;
import dev.runnel.verification.Provenance;
import dev.runnel.verification.Selection;
import dev.runnel.verification.Source;
import dev.runnel.verification.Version;
import java.util.List;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import java.util.stream.Stream;
import org.apiguardian.api.API;

/**
 * Random circular conduits, asked of the library and of {@code PeerConduit}: the worst relative difference of each
 * quantity over all cases is one check.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ConduitPeers {
    private static final long SEED = 20260101;
    private static final double GRAVITY = 9.81;
    /** A root found by Brent's method in double precision, through a discharge that rises steeply with depth. */
    private static final double OF_ROOT = 1e-11;

    private static final String MODULE = "hydraulics";
    private static final Source SOURCE = new Source(
            "Runnel (2026), independent recomputation with Brent's methods of Apache Commons Math 3.6.1",
            Provenance.DERIVED_ORACLE);
    private static final Version SINCE = Version.parse("0.1");

    private final int cases;
    private final SplittableRandom random = new SplittableRandom(SEED);
    private double discharge;
    private double maximum;
    private double lowerDepth;
    private double upperDepth;
    private double criticalDepth;
    private double friction;

    private ConduitPeers(int cases) {
        this.cases = cases;
    }

    /**
     * Compares random conduits. Half of them follow Manning, half Colebrook-White; flows below a Reynolds number of 4000,
     * to which that law does not reach, are left out.
     *
     * @param cases how many; 1 or more
     * @param selection which quantities; nothing is computed if it wants none
     * @return one check for each wanted quantity, the expected value being a difference of 0
     * @throws IllegalArgumentException if {@code cases} is below 1
     */
    public static List<Check> compare(int cases, Selection selection) {
        if (cases < 1) {
            throw new IllegalArgumentException("cases must be 1 or more, was " + cases);
        }
        ConduitPeers peers = new ConduitPeers(cases);
        if (peers.checks(selection).isEmpty()) {
            return List.of();
        }
        for (int i = 0; i < cases; i++) {
            peers.one(i % 2 == 0);
        }
        return peers.checks(selection);
    }

    private List<Check> checks(Selection selection) {
        return Stream.of(
                        check("flow.discharge", discharge, 1e-12),
                        check("flow.maximum-discharge", maximum, 1e-12),
                        check("flow.normal-depth", lowerDepth, OF_ROOT),
                        check("flow.upper-normal-depth", upperDepth, OF_ROOT),
                        check("flow.critical-depth", criticalDepth, OF_ROOT),
                        check("resistance.friction-factor", friction, 1e-12))
                .filter(check -> selection.wants(MODULE, check.calculation(), SOURCE, SINCE))
                .toList();
    }

    private void one(boolean manning) {
        double diameter = between(0.1, 3);
        double gradient = Math.exp(between(Math.log(1e-3), Math.log(0.1)));
        double n = manning ? between(0.008, 0.03) : 0;
        double roughness = between(1e-5, 3e-3) * Math.min(1, diameter);
        double viscosity = between(0.8e-6, 1.8e-6);
        PeerConduit peer = new PeerConduit(diameter, gradient, n, roughness, viscosity, GRAVITY);
        Conduit conduit = Conduit.of(
                        CircularSection.ofDiameter(diameter),
                        Gradient.of(gradient),
                        manning
                                ? Manning.of(n)
                                : ColebrookWhite.ofRoughness(roughness).withViscosity(viscosity))
                .withGravity(GRAVITY);

        double depth = between(0.1, 0.999) * diameter;
        if (peer.isLawful(depth)) {
            discharge = worse(discharge, peer.discharge(depth), conduit.discharge(depth));
        }

        double top = peer.depthOfMaximum();
        maximum = worse(maximum, peer.discharge(top), conduit.maximum().discharge());

        double lowDepth = between(0.1, 0.95) * top;
        double low = peer.discharge(lowDepth);
        if (peer.isLawful(lowDepth)) {
            lowerDepth = worse(lowerDepth, peer.normalDepth(low, 0.01 * diameter, top), conduit.normalDepth(low));
        }

        double high = peer.discharge(top + between(0.2, 0.99) * (diameter - top));
        double[] depths = conduit.normalDepths(high);
        upperDepth = worse(upperDepth, peer.normalDepth(high, top, diameter), depths[depths.length - 1]);

        double any = peer.discharge(diameter / 2) * between(0.05, 2);
        criticalDepth = compareCritical(peer, conduit, any);
        frictionFactor(roughness / diameter);
    }

    private double compareCritical(PeerConduit peer, Conduit conduit, double wanted) {
        double expected = conduit.section().height() * 0.999;
        double highest = peer.area(expected)
                * Math.sqrt(GRAVITY * peer.area(expected) / conduit.section().topWidth(expected));
        double q = Math.min(wanted, 0.9 * highest);
        return worse(criticalDepth, peer.criticalDepth(q), conduit.criticalDepth(q));
    }

    private void frictionFactor(double relativeRoughness) {
        double reynolds = Math.exp(between(Math.log(4e3), Math.log(1e8)));
        double gradient = ColebrookWhite.ofRoughness(relativeRoughness)
                .withViscosity(1 / reynolds)
                .gradient(1, 0.25, GRAVITY);
        friction = worse(friction, PeerConduit.frictionFactor(reynolds, relativeRoughness), 2 * GRAVITY * gradient);
    }

    private double between(double from, double to) {
        return from + random.nextDouble() * (to - from);
    }

    /** A difference that is not a number stays the worst for good. */
    private static double worse(double worst, double expected, double computed) {
        double difference = Math.abs(computed / expected - 1);
        return difference <= worst ? worst : difference;
    }

    private Check check(String calculation, double worst, double tolerance) {
        return new Check(
                "peer:" + calculation,
                "peer",
                "",
                "verification/src/main/java/dev/runnel/verification/oracle/ConduitPeers.java",
                MODULE,
                calculation,
                SOURCE,
                "worst relative difference of " + cases + " random conduits, seed " + SEED,
                "cases=" + cases,
                "0",
                "relative",
                OptionalDouble.of(worst),
                tolerance,
                Check.judge(0, worst, tolerance),
                "");
    }
}
