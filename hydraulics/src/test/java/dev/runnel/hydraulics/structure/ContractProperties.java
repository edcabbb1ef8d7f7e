package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.function.Supplier;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;

/**
 * The contract of {@link HeadDischarge} for every structure, over all heads that it takes and over sizes from a micrometre to a
 * thousand kilometres: the discharge rises with the head and the inverse closes.
 */
class ContractProperties {
    /** A size between 10^from and 10^to. */
    private static double size(Random random, double from, double to) {
        return Math.pow(10, from + (to - from) * random.nextDouble());
    }

    private static void add(List<HeadDischarge> all, Supplier<HeadDischarge> made) {
        try {
            all.add(made.get());
        } catch (IllegalArgumentException e) {
            // a size that the factory refuses with a reason
            assertThat(e.getMessage()).containsAnyOf("must be", "must fit");
        }
    }

    private static List<HeadDischarge> all(Random random, double from, double to) {
        double a = size(random, from, to);
        double b = size(random, from, to);
        double p = size(random, from, to);
        ApproachChannel channel = ApproachChannel.ofWidth(Math.max(a, b)).withCrestHeight(p);
        double less = Math.min(a, b) * 0.999;
        List<HeadDischarge> all = new ArrayList<>();
        add(all, () -> RectangularWeir.fullWidth(channel));
        add(all, () -> RectangularWeir.contracted(less, channel));
        add(all, () -> VNotchWeir.ofAngle(1 + 177 * random.nextDouble(), channel));
        add(all, () -> VNotchWeir.ofAngle(90, channel));
        add(all, () -> CipollettiWeir.ofCrestLength(less, channel));
        add(all, () -> RehbockWeir.of(channel));
        add(all, () -> CrumpWeir.of(channel));
        add(all, () -> BroadCrestedWeir.squareEdged(b, channel));
        add(all, () -> BroadCrestedWeir.roundNosed(b, channel));
        add(all, () -> FiniteCrestWeir.ofCrestLength(b, channel));
        add(
                all,
                () -> BroadCrestedWeir.ofCoefficient(0.9, channel)
                        .withCrestWidth(less)
                        .withModularLimit(0.85));
        add(all, () -> CoefficientWeir.rectangular(less).withEndContractions(2));
        add(
                all,
                () -> CoefficientWeir.rectangular(less)
                        .withSideSlope(random.nextDouble())
                        .withApproach(channel));
        add(all, () -> CoefficientWeir.vNotch(60));
        add(all, () -> KhafagiFlume.ofThroat(a));
        add(all, () -> ParshallFlume.ofThroat(0.3 + 2.1 * random.nextDouble()));
        add(all, () -> ParshallFlume.ofThroat(3.05 + 12 * random.nextDouble()));
        add(all, () -> ParshallFlume.ofInches(6));
        add(all, () -> LongThroatedFlume.of(Throat.rectangular(a), b));
        add(all, () -> LongThroatedFlume.of(Throat.rectangular(a).withSideSlope(1), b));
        add(all, () -> LongThroatedFlume.of(Throat.uShaped(less), b).inChannel(channel));
        add(
                all,
                () -> LongThroatedFlume.of(Throat.rectangular(less), b)
                        .inChannel(channel)
                        .withModularLimit(0.8));
        add(all, () -> Orifice.circular(a));
        add(all, () -> LargeOrifice.ofWidthAndOpening(a, b));
        add(all, () -> LargeOrifice.circular(a).closedTo(less));
        add(all, () -> SluiceGate.ofWidthAndOpening(a, b));
        add(all, () -> FreeOutfall.rectangular(a));
        add(all, () -> FreeOutfall.circular(a));
        add(all, () -> FreeOutfall.of(CircularSection.ofDiameter(a), 0.75));
        BarScreen screen = BarScreen.ofBarsAndGaps(BarShape.RECTANGULAR, 0.006, 0.010);
        add(
                all,
                () -> ScreenedWeir.of(RectangularWeir.fullWidth(channel), screen, channel)
                        .withBlindedFraction(0.99 * random.nextDouble()));
        return all;
    }

    @Property(tries = 300)
    void risesAndComesBackOverAllHeads(@ForAll long seed) {
        Random random = new Random(seed);
        for (HeadDischarge structure : all(random, -2, 1)) {
            double head = structure.highestHead() * 0.99 * Math.pow(10, -6 * random.nextDouble());
            holds(structure, head, 1e-9);
            holds(structure.atGravity(9.81), head, 1e-9);
        }
    }

    @Property(tries = 300)
    void absurdSizesNeitherHangNorGiveNaN(@ForAll long seed) {
        Random random = new Random(seed);
        for (HeadDischarge structure : all(random, -6, 6)) {
            double head = structure.highestHead() * 0.99 * Math.pow(10, -6 * random.nextDouble());
            double discharge = structure.formula(head);
            assertThat(discharge).as("%s at %s", structure, head).isPositive().isFinite();
            assertThat(structure.evaluate(head).discharge()).isEqualTo(discharge);
        }
    }

    private static void holds(HeadDischarge structure, double head, double closing) {
        double discharge = structure.formula(head);
        assertThat(discharge).as("%s at %s", structure, head).isPositive().isFinite();
        assertThat(structure.formula(head * 1.001))
                .as("%s above %s", structure, head)
                .isGreaterThan(discharge);
        assertThat(structure.evaluateDischarge(discharge).head())
                .as("head of %s in %s", discharge, structure)
                .isCloseTo(head, within(closing * head));
        assertThat(structure.evaluate(head).toString()).doesNotContain("NaN");
    }

    /** Under a tailwater: never more than free, falling with the tailwater, rising with the head, and back again. */
    @Property(tries = 300)
    void drownedDischargesFallWithTheTailwater(@ForAll long seed) {
        Random random = new Random(seed);
        for (HeadDischarge structure : all(random, -1, 1)) {
            if (!(structure instanceof TailwaterDischarge drownable)) {
                continue;
            }
            double head = Math.min(3, 0.5 * structure.highestHead()) * (0.02 + 0.9 * random.nextDouble());
            double tailwater = head * random.nextDouble();
            double discharge = drownable.evaluate(head, tailwater).discharge();
            assertThat(discharge)
                    .as("%s at %s over %s", structure, head, tailwater)
                    .isPositive()
                    .isLessThanOrEqualTo(structure.formula(head) * (1 + 1e-12));
            assertThat(drownable.evaluate(head, tailwater * 0.98).discharge())
                    .as("%s at %s over less than %s", structure, head, tailwater)
                    .isGreaterThanOrEqualTo(discharge * (1 - 1e-12));
            assertThat(drownable.evaluate(head * 1.01, tailwater).discharge())
                    .as("%s above %s over %s", structure, head, tailwater)
                    .isGreaterThan(discharge);
            // Drowned deeper than the law reaches, a weir with a strong approach has two heads for one discharge.
            if (drownable.drownedLimit(tailwater).isMet(head)) {
                assertThat(drownable
                                .under(tailwater)
                                .evaluateDischarge(discharge)
                                .head())
                        .as("head of %s over %s in %s", discharge, tailwater, structure)
                        .isCloseTo(head, within(1e-9 * head));
            }
            assertThat(drownable.isDrowned(head, tailwater))
                    .isEqualTo(drownable.evaluate(head, tailwater).isDrowned());
        }
    }
}
