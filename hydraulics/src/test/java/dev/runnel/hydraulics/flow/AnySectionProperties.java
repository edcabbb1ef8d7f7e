package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.section.Shapes;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

/** What holds for pipes holds for every shape, open ones and such with several normal depths included. */
class AnySectionProperties {
    @Provide
    Arbitrary<Conduit> closed() {
        Arbitrary<Conduit> plain = Pipes.of(Shapes.closed());
        return Arbitraries.oneOf(
                plain, Combinators.combine(plain, Pipes.depthLaws()).as(Conduit::withResistance));
    }

    @Provide
    Arbitrary<Conduit> open() {
        return Pipes.of(Shapes.open());
    }

    @Provide
    Arbitrary<Double> part() {
        return Arbitraries.oneOf(
                Pipes.logUniform(1e-9, 1), Arbitraries.doubles().between(0.5, 1).ofScale(12));
    }

    @Property(tries = 3000)
    void everyNormalDepthOfAClosedSectionCloses(@ForAll("closed") Conduit conduit, @ForAll("part") double part) {
        double discharge = part * conduit.maximum().discharge();
        double[] depths = conduit.normalDepths(discharge);
        assertThat(depths).isNotEmpty().isSorted();
        assertThat(conduit.normalDepth(discharge)).isEqualTo(depths[0]);
        for (double depth : depths) {
            Closing.assertCloses(conduit::discharge, depth, discharge);
        }
    }

    @Property(tries = 300)
    void maximumOfAClosedSectionIsTheMaximum(@ForAll("closed") Conduit conduit) {
        double most = conduit.maximum().discharge();
        double fastest = conduit.maximumVelocity().velocity();
        for (double x = 0.001; x <= 1; x += 0.001) {
            double depth = x * conduit.section().height();
            assertThat(conduit.discharge(depth)).isLessThanOrEqualTo(most * (1 + 1e-14));
            assertThat(conduit.velocity(depth)).isLessThanOrEqualTo(fastest * (1 + 1e-14));
        }
        assertThat(conduit.normalDepths(most * (1 + 1e-12))).isEmpty();
    }

    /** Counted independently: sign changes of the discharge less the wanted one on a fine grid. */
    @Property(tries = 300)
    void noBranchIsMissed(@ForAll("closed") Conduit conduit, @ForAll("part") double part) {
        double discharge = part * conduit.maximum().discharge();
        int crossings = 0;
        double last = -discharge;
        for (int i = 1; i <= 2000; i++) {
            double excess = conduit.discharge(conduit.section().height() * i / 2000) - discharge;
            if (excess * last < 0) {
                crossings++;
            }
            last = excess == 0 ? last : excess;
        }
        // A jump over the value at a bench or a level soffit is a crossing without a depth.
        long jumps = java.util.Arrays.stream(conduit.section().breakDepths())
                .filter(level -> level > 0)
                .filter(level -> {
                    boolean top = level == conduit.section().height();
                    double below = conduit.discharge(top ? Math.nextDown(level) : level) - discharge;
                    double above = conduit.discharge(top ? level : Math.nextUp(level)) - discharge;
                    return below * above < 0 && Math.abs(above - below) > 1e-5 * discharge;
                })
                .count();
        assertThat(conduit.normalDepths(discharge).length + jumps).isGreaterThanOrEqualTo(crossings);
    }

    @Property(tries = 3000)
    void everyNormalDepthOfAnOpenSectionCloses(@ForAll("open") Conduit conduit, @ForAll("anyDepth") double depth) {
        double discharge = conduit.discharge(depth);
        double[] depths = conduit.normalDepths(discharge);
        assertThat(depths).isNotEmpty().isSorted();
        for (double found : depths) {
            Closing.assertCloses(conduit::discharge, found, discharge);
        }
    }

    @Property(tries = 3000)
    void criticalDepthCloses(@ForAll("open") Conduit conduit, @ForAll("anyDepth") double depth) {
        double discharge = conduit.criticalDischarge(depth);
        double critical = conduit.criticalDepth(discharge);
        Closing.assertCloses(conduit::criticalDischarge, critical, discharge);
        assertThat(critical).isLessThanOrEqualTo(depth * (1 + 1e-10));
    }

    @Provide
    Arbitrary<Double> anyDepth() {
        return Pipes.logUniform(1e-6, 100);
    }

    @Property(tries = 2000)
    void criticalDepthOfAClosedSectionClosesOrIsSaidNotToExist(
            @ForAll("closed") Conduit conduit, @ForAll("critical") double relative) {
        double size = conduit.section().height();
        double discharge = relative * Math.sqrt(conduit.gravity() * size) * size * size;
        double depth;
        try {
            depth = conduit.criticalDepth(discharge);
        } catch (NoSolutionException e) {
            double soffit = conduit.criticalDischarge(Math.nextDown(size));
            assertThat(discharge).isGreaterThan(soffit);
            assertThat(e).hasMessageContaining("is not critical at any depth below the soffit");
            return;
        }
        Closing.assertCloses(conduit::criticalDischarge, depth, discharge);
    }

    @Provide
    Arbitrary<Double> critical() {
        return Pipes.logUniform(1e-9, 1e3);
    }
}
