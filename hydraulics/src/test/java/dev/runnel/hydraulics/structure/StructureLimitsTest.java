package dev.runnel.hydraulics.structure;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.catchThrowable;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CircularSection;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Structures on both sides of their limits, drowned beyond what was published, and in channels hardly larger than they. */
class StructureLimitsTest {
    private static final double G = 9.80665;
    private static final ApproachChannel CHANNEL = ApproachChannel.ofWidth(1).withCrestHeight(0.5);

    /** So deep that water stands still in it. */
    private static final ApproachChannel STILL = ApproachChannel.ofWidth(1).withCrestHeight(1000);

    private static double number(Throwable error, String before, String after) {
        String text = String.valueOf(error.getMessage());
        int from = text.indexOf(before) + before.length();
        return Double.parseDouble(text.substring(from, text.indexOf(after, from)));
    }

    @Test
    void aLevelTailwaterIsTheLimitOfEach() {
        List<TailwaterDischarge> all = List.of(
                RectangularWeir.fullWidth(CHANNEL),
                CrumpWeir.of(CHANNEL),
                BroadCrestedWeir.squareEdged(1, CHANNEL),
                ParshallFlume.ofFeet(3),
                LongThroatedFlume.of(Throat.uShaped(0.3), 0.9),
                LargeOrifice.circular(0.1),
                CoefficientWeir.rectangular(1),
                SluiceGate.ofWidthAndOpening(2, 0.1));
        assertThat(all)
                .allSatisfy(each -> assertThat(each.drownedLimit(0.3).value(0.6))
                        .as("%s", each)
                        .isEqualTo(0.5));
    }

    /** CJ/T 3008.3-1993: least and greatest head by throat; each row begins a range of throats. */
    @Test
    void headsOfParshallFlumesByThroat() {
        double[][] rows = {
            {0.299, 0.03, 0.75}, {0.599, 0.03, 0.75}, {0.6, 0.05, 0.75}, {0.749, 0.05, 0.75}, {0.75, 0.06, 0.75},
            {0.999, 0.06, 0.75}, {1, 0.06, 0.80}, {1.799, 0.06, 0.80}, {1.8, 0.08, 0.80}, {2.441, 0.08, 0.80},
            {3.039, 0.09, 1.07}, {3.599, 0.09, 1.07}, {3.6, 0.09, 1.37}, {4.499, 0.09, 1.37}, {4.5, 0.09, 1.67},
            {5.999, 0.09, 1.67}, {6, 0.09, 1.83}, {15.251, 0.09, 1.83}
        };
        for (double[] row : rows) {
            ApplicationLimit heads = ParshallFlume.ofThroat(row[0]).limits().get(0);
            assertThat(heads.from()).as("%s m", row[0]).isEqualTo(row[1]);
            assertThat(heads.to()).as("%s m", row[0]).isEqualTo(row[2]);
        }
        for (double outside : new double[] {0.298, 2.442, 3.038, 15.252}) {
            assertThatThrownBy(() -> ParshallFlume.ofThroat(outside)).hasMessageEndingWith("was " + outside);
        }
    }

    /** Beyond what was published a root leads to no flow: half is left where a quarter of the difference of levels is. */
    @Test
    void parshallFlumesNearLevelWater() {
        for (double throat : new double[] {0.9, 6}) {
            ParshallFlume flume = ParshallFlume.ofThroat(throat);
            double last = flume.formula(0.5, 0.475);
            assertThat(last).isPositive().isLessThan(0.9 * flume.formula(0.5));
            assertThat(flume.formula(0.5, 0.5 * 0.9875)).isCloseTo(last / 2, within(1e-12));
            assertThat(flume.formula(0.5, 0.5)).isZero();
            double modular = flume.modularLimit(0.5).orElseThrow();
            assertThat(flume.formula(0.5, 0.5 * modular)).isEqualTo(flume.formula(0.5));
            assertThat(flume.formula(0.5, 0.501 * modular)).isLessThan(flume.formula(0.5));
        }
        assertThat(ParshallFlume.ofThroat(0.9).drownedLimit(0.1).source()).isEqualTo("Parshall 1928");
        assertThat(ParshallFlume.ofThroat(6).drownedLimit(0.1).source()).isEqualTo("Kilpatrick and Schneider 1983");
        assertThat(ParshallFlume.ofThroat(0.25).drownedLimit(0.1).source()).isEqualTo("charts only");
    }

    /** The factor of a drowned Crump weir by hand: curve, line from 0.9301 on, and down to nothing from 0.985. */
    @Test
    void crumpWeirUpToLevelWater() {
        CrumpWeir weir = CrumpWeir.of(STILL);
        double[][] rows = {
            {0.7, 1},
            {0.8, 0.9765820},
            {0.9, 0.9196118},
            {0.93, 0.8705480},
            {0.9302, 0.8695294},
            {0.95, 0.7031500},
            {0.985, 0.4090450},
            {0.9925, 0.4090450 / 2},
            {1, 0}
        };
        for (double[] row : rows) {
            assertThat(weir.formula(0.4, row[0] * 0.4) / weir.formula(0.4))
                    .as("%s", row[0])
                    .isCloseTo(row[1], within(1e-6));
        }
        assertThat(weir.formula(0.4, 0.41)).isZero();
    }

    @Test
    void crumpWeirByItsTapping() {
        CrumpWeir weir = CrumpWeir.of(CHANNEL);
        assertThat(weir.dischargeByCrestTapping(0.4, 0.05)).isEqualTo(weir.discharge(0.4));
        assertThat(weir.dischargeByCrestTapping(0.4, 0.93 * 0.4)).isPositive();
        assertThatThrownBy(() -> weir.dischargeByCrestTapping(0.4, 0.38))
                .hasMessage("tappingHead must be in [0, 0.37200000000000005] m, was 0.38");
        assertThatThrownBy(() -> weir.dischargeByCrestTapping(0.02, 0.01))
                .hasMessageContaining("head h must be at least 0.03 m");
        assertThatThrownBy(() -> weir.dischargeByCrestTapping(3.1, 0.01))
                .hasMessageStartingWith("head must be in [0, ");
    }

    /** The jet of a gate is drowned beyond its conjugate depth; below twice the opening the share left is that at twice it. */
    @Test
    void gatesNearTheirOpening() {
        SluiceGate gate = SluiceGate.ofWidthAndOpening(2, 0.2);
        assertThat(gate.modularLimit(1).orElseThrow()).isCloseTo(gate.modularTailwater(1), within(1e-15));
        assertThat(gate.modularLimit(0.3).orElseThrow())
                .isEqualTo(gate.modularLimit(0.4).orElseThrow());
        assertThat(gate.modularLimit(0.3).orElseThrow())
                .isNotEqualTo(gate.modularLimit(0.5).orElseThrow());
        double share = gate.formula(0.4, 0.38) / gate.formula(0.4);
        assertThat(share).isLessThan(0.8);
        assertThat(gate.formula(0.3, 0.285) / gate.formula(0.3)).isCloseTo(share, within(1e-14));
        assertThat(gate.formula(0.1, 0.095) / gate.formula(0.1)).isCloseTo(share, within(1e-14));
        double drowned = gate.discharge(1, 0.8);
        assertThat(drowned).isLessThan(gate.discharge(1));
        assertThat(gate.head(drowned, 0.8)).isCloseTo(1, within(1e-12));
        assertThat(gate.head(gate.discharge(1), 0.3)).isCloseTo(1, within(1e-12));
    }

    @Test
    void penstocks() {
        LargeOrifice orifice = LargeOrifice.circular(0.4);
        assertThat(orifice.closedTo(0.4)).isEqualTo(orifice);
        for (double outside : new double[] {0, 0.41, Double.NaN}) {
            assertThatThrownBy(() -> orifice.closedTo(outside))
                    .hasMessageStartingWith("newOpening must be greater than 0 and at most the opening 0.4 m, was ");
        }
    }

    /** Critical in the throat while free, of one energy with the tailwater while drowned; both with the approach in it. */
    @Test
    void aDrownedThroatInAChannel() {
        LongThroatedFlume still = LongThroatedFlume.of(Throat.rectangular(0.3), 0.9);
        LongThroatedFlume flume = still.inChannel(ApproachChannel.ofWidth(0.5));
        double free = flume.formula(0.3);
        double modular = flume.modularLimit(0.3).orElseThrow() * 0.3;
        assertThat(modular).isGreaterThan(0.2);
        assertThat(flume.formula(0.3, modular)).isEqualTo(free);
        assertThat(flume.formula(0.3, modular * (1 + 1e-9))).isCloseTo(free, within(1e-6));
        double drowned = flume.formula(0.3, 0.27);
        assertThat(drowned).isLessThan(free).isGreaterThan(still.formula(0.3, 0.27));
        double energy = 0.3 + drowned * drowned / (2 * G * 0.15 * 0.15);
        assertThat(still.inChannel(STILL).formula(energy, 0.27) / flume.coefficient(energy))
                .isCloseTo(drowned / flume.coefficient(0.3), within(1e-6));
        assertThat(still.inChannel(STILL).formula(0.3, 0.27)).isCloseTo(still.formula(0.3, 0.27), within(1e-9));
        assertThatThrownBy(() -> flume.velocityCoefficient(2e4)).hasMessageStartingWith("head must be in [0, ");
    }

    /** Over a hump of 0.1 m the approach is as wide and as large as 0.1 m further up. */
    @Test
    void froudeNumberOfAPipeBeforeAThroat() {
        CircularSection pipe = CircularSection.ofDiameter(0.6);
        LongThroatedFlume flume = LongThroatedFlume.of(Throat.uShaped(0.3), 0.6).in(pipe, 0.1);
        double area = pipe.area(0.3);
        assertThat(flume.limits().get(3).quantity()).isEqualTo("Froude number of the approach");
        assertThat(flume.limits().get(3).value(0.2))
                .isCloseTo(flume.discharge(0.2) / (area * Math.sqrt(G * area / pipe.topWidth(0.3))), within(1e-12));
    }

    @Test
    void totalHeadOverABroadCrest() {
        BroadCrestedWeir weir = BroadCrestedWeir.squareEdged(1, CHANNEL);
        double velocity = weir.formula(0.3) / 0.8;
        assertThat(weir.modularLimit(0.3).orElseThrow() * 0.3)
                .isCloseTo(2.0 / 3 * (0.3 + velocity * velocity / (2 * G)), within(1e-12));
        assertThatThrownBy(() -> BroadCrestedWeir.roundNosed(
                        50, ApproachChannel.ofWidth(0.3).withCrestHeight(1)))
                .hasMessage(
                        "width of the channel must be greater than 0.3 m, twice the displacement thickness, was 0.3");
    }

    /** A drowned sharp edge by the shares of the discharges: 1.5 for a level crest, 2.5 for a notch. */
    @Test
    void drownedWeirsOfACoefficient() {
        CoefficientWeir crest = CoefficientWeir.rectangular(1);
        assertThat(crest.formula(0.4, 0.1)).isCloseTo(crest.formula(0.4) * Math.pow(0.875, 0.385), within(1e-14));
        CoefficientWeir notch = CoefficientWeir.vNotch(90);
        assertThat(notch.formula(0.4, 0.1)).isCloseTo(notch.formula(0.4) * Math.pow(31.0 / 32, 0.385), within(1e-14));
    }

    @Test
    void weirsThatFillTheirChannel() {
        ApproachChannel two = ApproachChannel.ofWidth(2).withCrestHeight(1);
        assertThat(CoefficientWeir.rectangular(1)
                        .withSideSlope(0.5)
                        .withApproach(two)
                        .highestHead())
                .isCloseTo(1, within(1e-12));
        assertThat(CoefficientWeir.rectangular(1).withEndContractions(2).highestHead())
                .isEqualTo(2.5);
        assertThat(CoefficientWeir.rectangular(2).withApproach(two))
                .hasToString(CoefficientWeir.rectangular(2).toString().replace("]", ", " + two.dimensions() + "]"));
        assertThatThrownBy(() -> CoefficientWeir.rectangular(2.01).withApproach(two))
                .hasMessage("width of the channel must be at least the crest length 2.01 m, was 2");
        assertThat(CoefficientWeir.vNotch(90).withEndContractions(0)).isEqualTo(CoefficientWeir.vNotch(90));
        assertThatThrownBy(() -> CoefficientWeir.vNotch(90).withEndContractions(1))
                .hasMessage("count must be 0 for a notch without a crest, was 1");
        // With a coefficient of 1 over a low sill the approach turns critical, and there the formula ends.
        CoefficientWeir swift = CoefficientWeir.rectangular(1)
                .withCoefficient(1)
                .withApproach(ApproachChannel.ofWidth(1).withCrestHeight(0.1));
        assertThat(swift.highestHead()).isBetween(0.01, 10.0);
        assertThat(swift.formula(swift.highestHead())).isFinite();
        assertThat(swift.formula(1.001 * swift.highestHead())).isNaN();
    }

    @Test
    void culvertsEndWithTheirFormulas() {
        CircularSection barrel = CircularSection.ofDiameter(1.2);
        CulvertInlet inlet = CulvertInlet.of(barrel, CulvertEdge.values()[0]).withGradient(0.01);
        double most = number(catchThrowable(() -> inlet.headwater(100)), "end at ", " m3/s");
        assertThat(inlet.headwater(0.999 * most)).isPositive();
        assertThatThrownBy(() -> inlet.headwater(1.001 * most)).hasMessageContaining("the formulas of the inlet end");
        double deepest = number(catchThrowable(() -> inlet.discharge(100)), "headwater of ", " m,");
        assertThat(deepest).isCloseTo(inlet.headwater(0.9999 * most), within(0.01));
        assertThat(inlet.discharge(0.999 * deepest)).isCloseTo(most, within(0.01));
        assertThat(inlet.headwater(0)).isZero();
    }

    /** What a refusal names as the limit is the limit. */
    @Test
    void sideWeirsNameTheirLimits() {
        Box box = new Box(2.5);
        SideWeir weir = SideWeir.ofSillAndLength(box, 0.6, 50).withCoefficient(0.7);
        double critical = number(
                catchThrowable(() -> weir.fromDownstreamDepthAndDischarge(1.0608, 5.46)), "turns critical ", " m");
        SideWeir shorter = SideWeir.ofSillAndLength(box, 0.6, 0.9999 * critical).withCoefficient(0.7);
        SideWeir longer = SideWeir.ofSillAndLength(box, 0.6, 1.0001 * critical).withCoefficient(0.7);
        assertThat(shorter.fromDownstreamDepthAndDischarge(1.0608, 5.46).positions()[40])
                .isCloseTo(0.9999 * critical, within(1e-9));
        assertThatThrownBy(() -> longer.fromDownstreamDepthAndDischarge(1.0608, 5.46))
                .hasMessageContaining("turns critical");

        double all = number(catchThrowable(() -> weir.fromUpstreamDepthAndDischarge(1.0608, 5.46)), "within ", " m");
        SideWeirProfile nearly = SideWeir.ofSillAndLength(box, 0.6, 0.9999 * all)
                .withCoefficient(0.7)
                .fromUpstreamDepthAndDischarge(1.0608, 5.46);
        assertThat(nearly.downstreamDischarge()).isBetween(0.0, 0.05);

        double most = number(
                catchThrowable(() -> weir.lengthFromDepthAndDischargeToSpill(1.0608, 5.46, 9)), "at most ", " m3/s");
        assertThat(weir.lengthFromDepthAndDischargeToSpill(1.0608, 5.46, 0.9999 * most))
                .isLessThan(critical)
                .isGreaterThan(0.9 * critical);
        assertThatThrownBy(() -> weir.lengthFromDepthAndDischargeToSpill(1.0608, 5.46, 1.0001 * most))
                .hasMessageStartingWith("spill must be at most ");
        assertThat(weir.lengthFromDepthAndDischargeToSpill(1.0608, 5.46, 0)).isCloseTo(0, within(1e-9));
        assertThatThrownBy(() -> SideWeir.ofSillAndLength(new Box(1.2), 0.3, 2)
                        .withCoefficient(0.55)
                        .lengthFromDepthAndDischargeToSpill(0.5, 3, 0.1))
                .hasMessage("depth must be subcritical at the downstream end, was 0.5 m with 3 m3/s");
    }

    @Test
    void sideWeirsAtTheSillAndTheCrown() {
        CircularSection pipe = CircularSection.ofDiameter(1.2);
        SideWeir weir = SideWeir.ofSillAndLength(pipe, 0.6, 1);
        assertThat(weir.fromDownstreamDepthAndDischarge(1.1, 0.1).downstreamDepth())
                .isCloseTo(1.1, within(1e-12));
        assertThatThrownBy(() -> weir.fromDownstreamDepthAndDischarge(1.2001, 0.1))
                .hasMessage(
                        "depth must be above the sill 0.6 m and at most the height of the section 1.2 m, was 1.2001");
        assertThatThrownBy(() -> weir.split(0.25, y -> 0.25))
                .hasMessage("inflow must be greater than 0.25 m3/s, which goes on below the sill, was 0.25");
    }

    /** Supercritical along a weir far longer than the first guess: the profile is as long as the weir. */
    @Test
    void aLongWeirInSwiftFlow() {
        SideWeirProfile profile = SideWeir.ofSillAndLength(new Box(1.2), 0.3, 60)
                .withCoefficient(0.55)
                .fromUpstreamDepthAndDischarge(0.5, 3);
        assertThat(profile.positions()[40]).isCloseTo(60, within(1e-8));
        assertThat(profile.downstreamDepth()).isBetween(0.3, 0.36);
        assertThat(profile.downstreamDischarge()).isLessThan(2);
    }

    @Test
    void arraysOnTheLimits() {
        HeadDischarge weir =
                RectangularWeir.contracted(0.1, ApproachChannel.ofWidth(1).withCrestHeight(0.1));
        double[] discharge = new double[3];
        boolean[] outside = new boolean[3];
        assertThat(weir.evaluate(new double[] {0, 2.5, 2.51}, discharge, outside))
                .isEqualTo(2);
        assertThat(discharge).containsExactly(0, weir.formula(2.5), Double.NaN);
        assertThat(outside).containsExactly(false, true, true);
        assertThatThrownBy(() -> weir.evaluate(new double[3], new double[2], outside))
                .hasMessage("discharge must have length 3, was 2");
        assertThatThrownBy(() -> weir.evaluate(new double[3], discharge, new boolean[4]))
                .hasMessage("outside must have length 3, was 4");
        for (double outsideAngle : new double[] {0, 180}) {
            assertThatThrownBy(() -> VNotchWeir.ofAngle(outsideAngle, CHANNEL))
                    .hasMessageStartingWith("angleDegrees must be greater than 0 and less than 180, was ");
        }
    }

    /** Near no head a correction and a boundary layer fade with the head, without a step. */
    @Test
    void smallHeads() {
        assertThat(Heads.corrected(0.02, 0.001)).isEqualTo(0.021);
        assertThat(Heads.corrected(0.01, 0.001)).isCloseTo(0.011, within(1e-17));
        assertThat(Heads.corrected(0.005, 0.001)).isCloseTo(0.0055, within(1e-17));
        assertThat(Heads.corrected(0.005, -0.002)).isCloseTo(0.004, within(1e-17));
        assertThat(Heads.share(0.1, 0.01)).isCloseTo(0.9, within(1e-15));
        assertThat(Heads.share(0.02, 0.01)).isEqualTo(0.5);
        assertThat(Heads.share(0.008, 0.01)).isCloseTo(0.2, within(1e-15));
    }

    /** Covered, the head acts on the centre; below, the discharge falls with the head to the power 1.5. */
    @Test
    void orificesHardlyCovered() {
        Orifice orifice = Orifice.ofWidthAndHeight(0.5, 0.2).withCoefficient(0.6);
        double full = 0.6 * 0.1 * Math.sqrt(2 * G);
        assertThat(orifice.formula(0.3)).isCloseTo(full * Math.sqrt(0.2), within(1e-15));
        assertThat(orifice.formula(0.4)).isCloseTo(full * Math.sqrt(0.3), within(1e-15));
        assertThat(orifice.formula(0.075)).isCloseTo(full * Math.sqrt(0.2) / 8, within(1e-15));
        assertThat(orifice.formula(0.4, 0.1)).isEqualTo(orifice.formula(0.4));
        assertThat(orifice.formula(0.4, 0.15)).isCloseTo(full * 0.5, within(1e-15));
        assertThat(orifice.modularLimit(0.4)).hasValue(0.25);
        assertThat(orifice.drownedLimit(0.1).value(0.4)).isEqualTo(0.25);
    }

    @Test
    void limitsSayWhatTheyAre() {
        ApplicationLimit limit = ApplicationLimit.of("h/b", "m/m", 2, 2, "a source", h -> h);
        assertThat(limit.quantity()).isEqualTo("h/b");
        assertThat(limit.unit()).isEqualTo("m/m");
        assertThat(limit.source()).isEqualTo("a source");
        for (double met : new double[] {2, 2 - 1e-12, 2 + 1e-12}) {
            assertThat(limit.isMet(met)).as("%s", met).isTrue();
        }
        for (double broken : new double[] {2 - 1e-11, 2 + 1e-11, Double.NaN}) {
            assertThat(limit.isMet(broken)).as("%s", broken).isFalse();
        }
        assertThat(CHANNEL).hasToString("ApproachChannel[B = 1 m, p = 0.5 m]");
        assertThat(CHANNEL.widerThan(0.5)).isEqualTo(1);
    }

    @Test
    void recordsOfTwoLevelsOnTheirLimits() {
        TailwaterDischarge weir =
                RectangularWeir.contracted(0.3, ApproachChannel.ofWidth(1).withCrestHeight(0.1));
        double[] head = {2.5, 0.2, 0.2, 0.2, 2.51, 0.2};
        double[] tail = {2.5, 2.51, -1e4, -1.1e4, 0, Double.NaN};
        double[] discharge = new double[6];
        boolean[] drowned = new boolean[6];
        boolean[] outside = new boolean[6];
        assertThat(weir.evaluate(head, tail, discharge, drowned, outside)).isEqualTo(5);
        assertThat(discharge).containsExactly(0, Double.NaN, weir.formula(0.2), Double.NaN, Double.NaN, Double.NaN);
        assertThat(outside).containsExactly(true, true, false, true, true, true);
        assertThatThrownBy(() -> weir.evaluate(head, new double[5], discharge, drowned, outside))
                .hasMessage("tailwater must have length 6, was 5");
        assertThatThrownBy(() -> weir.evaluate(head, tail, new double[5], drowned, outside))
                .hasMessage("discharge must have length 6, was 5");
        assertThatThrownBy(() -> weir.evaluate(head, tail, discharge, new boolean[5], outside))
                .hasMessage("drowned must have length 6, was 5");
        assertThatThrownBy(() -> weir.evaluate(head, tail, discharge, drowned, new boolean[5]))
                .hasMessage("outside must have length 6, was 5");
    }

    @Test
    void belowADrownedWeir() {
        RectangularWeir weir = RectangularWeir.fullWidth(CHANNEL);
        assertThat(weir.isDrowned(0.3, 0)).isFalse();
        assertThat(weir.isDrowned(0.3, 1e-9)).isTrue();
        assertThat(ParshallFlume.ofThroat(0.9).isDrowned(0.5, 0.35)).isFalse();
        HeadDischarge drowned = weir.under(0.2);
        assertThatThrownBy(() -> drowned.discharge(1e5)).hasMessageStartingWith("head must be in [0, ");
        assertThatThrownBy(() -> drowned.head(4)).hasMessageContaining("is outside the limits of application");
        assertThat(drowned.head(drowned.discharge(0.31))).isCloseTo(0.31, within(1e-12));
        // With dry land upstream the water runs back: outside, and counted once.
        boolean[] outside = new boolean[4];
        assertThat(drowned.evaluate(new double[] {0, 0.3, -1, 1e5}, new double[4], outside))
                .isEqualTo(3);
        assertThat(outside).containsExactly(true, false, true, true);
    }

    @Test
    void uncertaintyOfARectangularWeirByItsHead() {
        RectangularWeir weir = RectangularWeir.fullWidth(CHANNEL);
        double[][] rows = {{0.5, 0.015}, {0.51, 0.02}, {0.75, 0.02}, {0.76, 0.03}};
        for (double[] row : rows) {
            assertThat(weir.coefficientUncertainty(row[0])).hasValue(row[1]);
        }
    }

    @Test
    void tanksAndJetsAreValues() {
        UprightTank tank = UprightTank.ofDiameter(2);
        assertThat(tank.planArea()).isCloseTo(Math.PI, within(1e-15));
        assertThat(tank)
                .isEqualTo(UprightTank.ofPlanArea(tank.planArea()))
                .hasSameHashCodeAs(UprightTank.ofPlanArea(tank.planArea()))
                .isNotEqualTo(UprightTank.ofDiameter(2.1))
                .isNotEqualTo(tank.withGravity(9.8))
                .isNotEqualTo("a tank")
                .hasToString("UprightTank[A = 3.14159 m2]");
        assertThat(tank.hashCode())
                .isNotEqualTo(UprightTank.ofDiameter(2.1).hashCode())
                .isNotEqualTo(tank.withGravity(9.8).hashCode());
        // An outlet that passes nothing below the sill keeps the tank from falling that far.
        HeadDischarge sill = RectangularWeir.fullWidth(CHANNEL).under(0.2);
        assertThatThrownBy(() -> tank.emptyingTime(sill, 0.3, 0.1))
                .hasMessage(
                        "the outlet passes nothing at some head between 0.1 and 0.3 m: the tank does not fall that far");
        FreeJet jet = FreeJet.of(1000);
        assertThat(jet).hasToString("FreeJet[1000 m/s]").isNotEqualTo("a jet");
        assertThat(jet.hashCode())
                .isEqualTo(FreeJet.of(1000).hashCode())
                .isNotEqualTo(FreeJet.of(999).hashCode())
                .isNotEqualTo(jet.withGravity(9.8).hashCode());
    }

    /** A flap loses most at one velocity and the same at two others. */
    @Test
    void flapsLoseMostAtOneVelocity() {
        FlapValve flap = FlapValve.ofDiameter(0.5);
        double worst = flap.worstVelocity();
        double most = flap.headLoss(worst);
        assertThat(flap.headLoss(0.999 * worst)).isLessThan(most);
        assertThat(flap.headLoss(1.001 * worst)).isLessThan(most);
        assertThat(flap.velocities(most)).containsExactly(worst);
        assertThat(flap.velocities(1.0001 * most)).isEmpty();
        for (double share : new double[] {0.9, 0.01, 1e-6}) {
            double[] both = flap.velocities(share * most);
            assertThat(both[0]).isLessThan(worst);
            assertThat(both[1]).isGreaterThan(worst);
            for (double velocity : both) {
                assertThat(flap.headLoss(velocity)).isCloseTo(share * most, within(1e-9 * most));
            }
        }
    }

    @Test
    void screensAndOutfallsAtTheirLimits() {
        BarScreen screen = BarScreen.ofBarsAndGaps(BarShape.CIRCULAR, 0.01, 0.02);
        assertThat(screen.withInclination(90)).isEqualTo(screen);
        for (double outside : new double[] {0, 90.1}) {
            assertThatThrownBy(() -> screen.withInclination(outside))
                    .hasMessageStartingWith("newAngleDegrees must be greater than 0 and at most 90, was ");
        }
        ScreenedWeir screened = ScreenedWeir.of(RectangularWeir.fullWidth(CHANNEL), screen, CHANNEL);
        assertThat(screened.blinding(0.3, 0.3).headLoss()).isZero();
        for (double outside : new double[] {0.29, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> screened.blinding(outside, 0.3))
                    .hasMessageStartingWith("headInFront must be at least headBehind 0.3 m and finite, was ");
        }
        CircularSection pipe = CircularSection.ofDiameter(1);
        assertThat(FreeOutfall.of(pipe, 1).highestHead()).isCloseTo(0.95, within(1e-15));
        assertThatThrownBy(() -> FreeOutfall.of(pipe, 0))
                .hasMessage("brinkRatio must be greater than 0 and at most 1, was 0");
        double width = 0.0009;
        assertThatThrownBy(() ->
                        RectangularWeir.fullWidth(ApproachChannel.ofWidth(width).withCrestHeight(0.5)))
                .hasMessage("width of the channel must be greater than 9.0E-4 m, was 9.0E-4");
    }
}
