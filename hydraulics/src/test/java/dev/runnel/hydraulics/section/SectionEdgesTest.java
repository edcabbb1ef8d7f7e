package dev.runnel.hydraulics.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;

/** Shapes of steps, slopes and quarters of circles, whose areas and perimeters are sums of a few pieces. */
class SectionEdgesTest {
    private static final double TIGHT = 1e-12;

    private static void holds(CrossSection section, double depth, double area, double perimeter) {
        assertThat(section.area(depth)).as("area").isCloseTo(area, within(TIGHT));
        assertThat(section.wettedPerimeter(depth)).as("perimeter").isCloseTo(perimeter, within(TIGHT));
        if (area > 0) {
            assertThat(section.depthForArea(area)).as("depth").isCloseTo(depth, within(TIGHT));
        }
    }

    /** 1 m wide up to 1 m, 2 m wide up to 2 m. A bench at the surface is dry. */
    private static final Wall STEP =
            Wall.from(0.5, 0).lineTo(0.5, 1).lineTo(1, 1).lineTo(1, 2);

    @Test
    void aStep() {
        ProfileSection step = STEP.mirrored();
        holds(step, 0, 0, 0);
        holds(step, 0.5, 0.5, 2);
        holds(step, 1, 1, 3);
        holds(step, 1.5, 2, 5);
        holds(step, 2, 3, 8);
        assertThat(step.width()).isEqualTo(2);
        assertThat(step.topWidth(1)).isEqualTo(1);
        assertThat(step.centroidDepth(2) * 3).isCloseTo(1 * 1.5 + 2 * 0.5, within(TIGHT));
        assertThat(step)
                .isEqualTo(STEP.mirrored())
                .isNotEqualTo(STEP.inverted().mirrored())
                .hasSameHashCodeAs(STEP.mirrored());
        assertThat(step.hashCode()).isNotEqualTo(STEP.inverted().mirrored().hashCode());
        ProfileSection turned = STEP.inverted().mirrored();
        holds(turned, 0.5, 1, 3);
        holds(turned, 1, 2, 4);
        holds(turned, 1.5, 2.5, 6);
        holds(turned, 2, 3, 8);
    }

    /** A bed on the bench is 2 m wide; one below it leaves the bench to be wetted. */
    @Test
    void sedimentInAStep() {
        ClosedSection onBench = STEP.mirrored().withSediment(1);
        holds(onBench, 0.5, 1, 3);
        holds(onBench, 1, 2, 6);
        ClosedSection low = STEP.mirrored().withSediment(0.25);
        holds(low, 0.75, 0.75, 2.5);
        holds(low, 1.25, 1.75, 4.5);
        assertThat(low.height()).isEqualTo(1.75);
        assertThat(low.withoutSediment()).isEqualTo(STEP.mirrored());
    }

    /** A bottle is widest just above its step. */
    @Test
    void theWidestPlaceIsFoundAboveAStep() {
        ProfileSection bottle =
                Wall.from(0.5, 0).lineTo(0.5, 1).lineTo(1, 1).lineTo(0.2, 2).mirrored();
        assertThat(bottle.width()).isCloseTo(2, within(TIGHT));
        assertThat(bottle.topWidth(1)).isEqualTo(1);
    }

    /** A V with sides of 45° up to 1 m, upright above; turned over, a box with a roof. */
    @Test
    void aHopper() {
        Wall wall = Wall.from(0, 0).lineTo(1, 1).lineTo(1, 2);
        double root = Math.sqrt(2);
        holds(wall.mirrored(), 0.5, 0.25, root);
        holds(wall.mirrored(), 1.5, 2, 2 * root + 1);
        holds(wall.mirrored(), 2, 3, 2 * root + 2 + 2);
        ClosedSection low = wall.mirrored().withSediment(0.5);
        holds(low, 0.5, 0.75, 1 + root);
        holds(low, 1, 1.75, 2 + root);
        ClosedSection high = wall.mirrored().withSediment(1.5);
        holds(high, 0.25, 0.5, 2.5);
        ProfileSection turned = wall.inverted().mirrored();
        holds(turned, 1, 2, 4);
        holds(turned, 1.5, 2.75, 4 + root);
        holds(turned, 2, 3, 4 + 2 * root);
        assertThat(turned.topWidth(1.5)).isCloseTo(1, within(TIGHT));
    }

    /** A half circle turned over: chords 2√(r² − y²). */
    @Test
    void anArcTurnedOver() {
        ProfileSection arch = Wall.from(0, 0).arcTo(0.5, 0.5, 0, 0.5).inverted().mirrored();
        assertThat(arch.topWidth(0.25)).isCloseTo(2 * Math.sqrt(0.1875), within(TIGHT));
        holds(arch, 0.25, 0.25 * Math.sqrt(0.1875) + 0.25 * Math.asin(0.5), 1 + Math.asin(0.5));
        holds(arch, 0.5, Math.PI / 8, 1 + Math.PI / 2);
        ProfileSection same = ArchSection.of(1, 0);
        holds(same, 0.5, Math.PI / 8, 1 + Math.PI / 2);
        holds(ArchSection.of(2, 0.5), 1.5, 1 + Math.PI / 2, 3 + Math.PI);
        holds(ArchSection.of(2, 0.5), 0.25, 0.5, 2.5);
    }

    /** Walls of their own on either side: upright on the right, 45° on the left. */
    @Test
    void twoWalls() {
        ProfileSection uneven = ProfileSection.between(
                Wall.from(-1, 0).lineTo(-2, 1), Wall.from(0, 0).lineTo(0, 1));
        holds(uneven, 0.5, 0.625, 1 + Math.sqrt(0.5) + 0.5);
        holds(uneven, 1, 1.5, 1 + Math.sqrt(2) + 1 + 2);
        ProfileSection benches = ProfileSection.between(
                Wall.from(0, 0).lineTo(0, 1).lineTo(-0.5, 1).lineTo(-0.5, 2),
                Wall.from(0, 0).lineTo(1, 1).lineTo(1.25, 1).lineTo(1.25, 2));
        holds(benches, 1.5, 0.5 + 0.875, 1 + Math.sqrt(2) + 0.75 + 1);
        assertThatThrownBy(() -> ProfileSection.between(
                        Wall.from(0, 0).lineTo(0, 1), Wall.from(1, 0).lineTo(1, 1.5)))
                .hasMessage("both walls must end at one level, were 1 m and 1.5 m");
        String crossed = "the left wall must stay left of the right wall, they cross below level ";
        assertThatThrownBy(() -> ProfileSection.between(
                        Wall.from(0, 0).lineTo(2, 1), Wall.from(1, 0).lineTo(1, 1)))
                .hasMessageStartingWith(crossed);
        assertThatThrownBy(() -> ProfileSection.between(
                        Wall.from(0, 0).lineTo(1.5, 1).lineTo(0, 2),
                        Wall.from(1, 0).lineTo(1, 2)))
                .hasMessageStartingWith(crossed);
        // apart at both ends, crossed between: the arc sags to 0.13 m where the line is at 0.45 m
        Wall sagging = Wall.from(1, 0).arcTo(0, 1, 1, 1);
        assertThatThrownBy(() -> ProfileSection.between(Wall.from(0.9, 0).lineTo(-0.01, 1), sagging))
                .hasMessage(crossed + "1 m");
        assertThatThrownBy(() -> ProfileSection.between(Wall.from(0, 0), sagging))
                .hasMessageStartingWith("a wall must rise, it ended at level 0 m");
    }

    @Test
    void wallsRefuse() {
        Wall wall = Wall.from(0.5, 0).lineTo(0.5, 1);
        assertThatThrownBy(() -> wall.lineTo(1, 0.9))
                .hasMessage("endLevel must be at least the level reached, 1 m, was 0.9");
        assertThatThrownBy(() -> wall.lineTo(1, Double.POSITIVE_INFINITY)).hasMessageStartingWith("endLevel must be ");
        assertThatThrownBy(() -> wall.lineTo(0.5, 1)).hasMessageStartingWith("a piece must have a length");
        assertThatThrownBy(() -> wall.lineTo(2e6, 2)).hasMessageStartingWith("endX must be in ");
        assertThatThrownBy(() -> wall.arcTo(0.5, 1, 0, 1)).hasMessageStartingWith("endLevel of an arc must be above");
        assertThatThrownBy(() -> wall.arcTo(0, 2, 0, 1)).hasMessageStartingWith("both ends of an arc must be equally");
        assertThatThrownBy(() -> wall.arcTo(-0.5, 1 + 1e-3, 0, 1 + 5e-4))
                .hasMessageStartingWith("an arc must rise all the way, from ");
        assertThatThrownBy(() -> Wall.from(0.5, 0).lineTo(-0.25, 1).mirrored())
                .hasMessage("a mirrored wall must stay right of the middle line, x was -0.25 m");
        assertThatThrownBy(() -> Wall.from(0.5, 0).lineTo(0.4, 1).mirroredOpen())
                .hasMessageStartingWith("an open wall must not lean inwards at its end");
        assertThatThrownBy(() -> Wall.from(0, 0).arcTo(0.5, 0.5, 0, 0.5).mirroredOpen())
                .hasMessage("an open wall must end with a rising straight piece, was an arc");
    }

    /** A U of 1 m in a chamber of 2 m, benches rising one in ten: half a circle, 0.075 m² of bench, walls. */
    @Test
    void benches() {
        OpenSection channel =
                BenchedChannel.ofWidthAndDepth(1, 0.5).withBenchSlope(0.1).inChamberOfWidth(2);
        double bench = 2 * Math.hypot(0.5, 0.05);
        holds(channel, 0.5, Math.PI / 8, Math.PI / 2);
        holds(channel, 0.55, Math.PI / 8 + 0.075, Math.PI / 2 + bench);
        holds(channel, 1.55, Math.PI / 8 + 2.075, Math.PI / 2 + bench + 2);
        holds(BenchedChannel.ofWidthAndDepth(1, 0.8).inChamberOfWidth(2), 0.8, Math.PI / 8 + 0.3, Math.PI / 2 + 0.6);
        holds(BenchedChannel.ofWidthAndDepth(1, 0.8).inChamberOfWidth(2), 0.9, Math.PI / 8 + 0.5, Math.PI / 2 + 1.8);
        assertThat(BenchedChannel.ofWidthAndDepth(1, 0.8))
                .hasToString("BenchedChannel[1 m wide, 0.8 m deep, benches rising by 0]");
        assertThatThrownBy(() -> BenchedChannel.ofWidthAndDepth(1, 0.49))
                .hasMessage("channelDepth must be at least half of channelWidth, 0.5 m, was 0.49");
        assertThatThrownBy(() -> BenchedChannel.ofWidthAndDepth(1, Double.POSITIVE_INFINITY))
                .hasMessageStartingWith("channelDepth must be ");
        assertThatThrownBy(() -> BenchedChannel.ofWidthAndDepth(1, 0.5).inChamberOfWidth(1))
                .hasMessage("chamberWidth must be greater than channelWidth, 1 m, was 1");
        assertThatThrownBy(() -> BenchedChannel.ofWidthAndDepth(1, 0.5).inChamberOfWidth(Double.POSITIVE_INFINITY))
                .hasMessageStartingWith("chamberWidth must be ");
    }

    @Test
    void smallShapes() {
        holds(RectangularSection.open(2), 3, 6, 8);
        VInvertSection bed = VInvertSection.ofWidthAndFall(2, 0.5);
        holds(bed.open(), 0.5, 0.5, 2 * Math.hypot(1, 0.5));
        holds(bed.open(), 2, 3.5, 2 * Math.hypot(1, 0.5) + 3);
        holds(bed.coveredAt(1), 1, 1.5, 2 * Math.hypot(1, 0.5) + 1 + 2);
        assertThat(bed).hasToString("VInvertSection[2 m wide, V of 0.5 m]");
        assertThatThrownBy(() -> bed.coveredAt(0.5)).hasMessage("height must be greater than fall, 0.5 m, was 0.5");
        assertThatThrownBy(() -> USection.covered(1, 0.5))
                .hasMessage("height must be greater than half of the width, 0.5 m, was 0.5");
        assertThat(Ovoid.ofWidthAndHeight(1, 1.5)).hasToString("Ovoid[1 m wide, 1.5 m high]");
        assertThatThrownBy(() -> Ovoid.ofWidthAndHeight(1, 1.5).withInvertRadius(0.6))
                .hasMessageStartingWith("no tangent arcs join an invert of radius 0.6 m with a crown of radius 0.5 m");
    }

    @Test
    void roundingAtTheLimits() {
        assertThat(Depths.checked(0, 1)).isZero();
        assertThat(Depths.checked(1, 1)).isEqualTo(1);
        assertThat(Depths.checked(0.5, 1)).isEqualTo(0.5);
        assertThat(Depths.checked(5, Double.POSITIVE_INFINITY)).isEqualTo(5);
        assertThat(Depths.checkedArea(0, 1)).isZero();
        assertThat(Depths.checkedArea(1, 1)).isEqualTo(1);
        assertThat(Depths.checkedArea(0.5, 1)).isEqualTo(0.5);
        assertThat(Depths.checkedArea(5, Double.POSITIVE_INFINITY)).isEqualTo(5);
        for (double limit : new double[] {0.3, 1, 4}) {
            assertThat(Depths.checked(-1e-12 * limit, limit)).isZero();
            assertThat(Depths.checked(limit + 1e-12 * limit, limit)).isEqualTo(limit);
            assertThat(Depths.checkedArea(-1e-12 * limit, limit)).isZero();
            assertThat(Depths.checkedArea(limit + 1e-12 * limit, limit)).isEqualTo(limit);
            for (double wrong : new double[] {-2e-12 * limit, limit + 2e-12 * limit, Double.NaN}) {
                assertThatThrownBy(() -> Depths.checked(wrong, limit)).hasMessageStartingWith("depth must be in [0, ");
                assertThatThrownBy(() -> Depths.checkedArea(wrong, limit))
                        .hasMessageStartingWith("area must be in [0, ");
            }
        }
        for (double wrong : new double[] {-1e-13, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> Depths.checked(wrong, Double.POSITIVE_INFINITY))
                    .hasMessageStartingWith("depth must be 0 or greater and finite");
            assertThatThrownBy(() -> Depths.checkedArea(wrong, Double.POSITIVE_INFINITY))
                    .hasMessageStartingWith("area must be 0 or greater and finite");
        }
        assertThat(Sizes.closed("width", 50)).isEqualTo(50);
        assertThat(Sizes.closed("width", 1e-6)).isEqualTo(1e-6);
        assertThat(Sizes.place("x", -3)).isEqualTo(-3);
        assertThat(Sizes.centre("x", 1e9)).isEqualTo(1e9);
        assertThatThrownBy(() -> Sizes.closed("width", 9e-7)).hasMessageEndingWith("was 9.0E-7");
    }

    /** √(10 g H) for the slowest wave and A/10H for the widest slot, in a pipe of 2 m. */
    @Test
    void slotsAtTheirLimits() {
        CircularSection pipe = CircularSection.ofDiameter(2);
        double widest = Math.PI / 20;
        assertThat(SlottedSection.ofWidth(pipe, widest * 0.999).slotWidth()).isEqualTo(widest * 0.999);
        assertThatThrownBy(() -> SlottedSection.ofWidth(pipe, widest * 1.001))
                .hasMessageStartingWith("slotWidth must be in [0, 0.157");
        assertThat(SlottedSection.ofWaveSpeed(pipe, 1500).slotWidth())
                .isCloseTo(9.80665 * Math.PI / 2_250_000, within(1e-18));
        assertThat(SlottedSection.ofWaveSpeed(pipe, 14.01).slotWidth()).isPositive();
        assertThatThrownBy(() -> SlottedSection.ofWaveSpeed(pipe, 14))
                .hasMessage("waveSpeed must be greater than 14 and at most 1500 m/s, was 14");
        SlottedSection slotted = SlottedSection.ofWidth(pipe, 0.1);
        assertThat(slotted.centroidDepth(0.7)).isEqualTo(pipe.centroidDepth(0.7));
        assertThat(slotted)
                .isEqualTo(SlottedSection.ofWidth(pipe, 0.1))
                .hasSameHashCodeAs(SlottedSection.ofWidth(pipe, 0.1))
                .isNotEqualTo(SlottedSection.ofWidth(pipe, 0.11))
                .isNotEqualTo(SlottedSection.ofWidth(CircularSection.ofDiameter(2.1), 0.1))
                .isNotEqualTo(pipe);
        assertThat(slotted.hashCode())
                .isEqualTo(31 * pipe.hashCode() + Double.hashCode(0.1))
                .isNotEqualTo(SlottedSection.ofWidth(pipe, 0.11).hashCode());
        assertThat(slotted.toString()).startsWith("SlottedSection[Circular").endsWith(", slot 0.1 m]");
        // a level soffit is wider than the slot right up to the crown
        SlottedSection box = SlottedSection.ofWidth(RectangularSection.box(1, 2), 0.05);
        holds(box, 3, 2.05, 6);
        assertThat(box.breakDepths()).containsExactly(0, 2);
    }

    /** Moments about the surface: those of the clean pipe, less what lies under the bed. */
    @Test
    void sedimentInACircle() {
        CircularSection pipe = CircularSection.ofDiameter(1);
        ClosedSection silted = pipe.withSediment(0.3);
        double area = pipe.area(0.7) - pipe.area(0.3);
        holds(silted, 0.4, area, pipe.topWidth(0.3) + pipe.wettedPerimeter(0.7) - pipe.wettedPerimeter(0.3));
        double moment = pipe.area(0.7) * pipe.centroidDepth(0.7) - pipe.area(0.3) * (pipe.centroidDepth(0.3) + 0.4);
        assertThat(silted.centroidDepth(0.4)).isCloseTo(moment / area, within(TIGHT));
        assertThat(silted.centroidDepth(0)).isZero();
        // a circle is widest at half its height
        assertThat(silted.breakDepths()).containsExactly(new double[] {0, 0.2, 0.7}, within(TIGHT));
        assertThat(silted.topWidth(0.2)).isEqualTo(pipe.topWidth(0.5));
        assertThat(silted.hashCode()).isNotEqualTo(pipe.withSediment(0.31).hashCode());
        assertThat(silted)
                .isEqualTo(pipe.withSediment(0.3))
                .isNotEqualTo(pipe.withSediment(0.31))
                .isNotEqualTo(CircularSection.ofDiameter(1.1).withSediment(0.3));
        assertThat(pipe.hashCode()).isNotEqualTo(CircularSection.ofDiameter(1.1).hashCode());
    }

    private static double[] each(double[] from, ToDoubleFunction<Double> by) {
        double[] to = new double[from.length];
        for (int i = 0; i < from.length; i++) {
            to[i] = by.applyAsDouble(from[i]);
        }
        return to;
    }

    /** Loops over arrays answer bit for bit as one by one. */
    @Test
    void arrays() {
        for (CrossSection section : new CrossSection[] {STEP.mirrored(), CircularSection.ofDiameter(2)}) {
            double[] depth = {0, 1e-9, 0.4, 1, 1.7, 2};
            double[] out = new double[6];
            section.area(depth, out);
            assertThat(out).containsExactly(each(depth, section::area));
            double[] areas = out.clone();
            section.wettedPerimeter(depth, out);
            assertThat(out).containsExactly(each(depth, section::wettedPerimeter));
            section.hydraulicRadius(depth, out);
            assertThat(out).containsExactly(each(depth, section::hydraulicRadius));
            section.topWidth(depth, out);
            assertThat(out).containsExactly(each(depth, section::topWidth));
            section.depthForArea(areas, out);
            assertThat(out).containsExactly(each(areas, section::depthForArea));
        }
    }

    /** Ends within 1e-9 of the radius are equally far from the centre, and straight above it. */
    @Test
    void arcsWithinRounding() {
        assertThat(Wall.from(0, 0)
                        .arcTo(10 + 9e-9, 10, 0, 10)
                        .lineTo(10 + 9e-9, 11)
                        .mirrored()
                        .area(10))
                .isCloseTo(50 * Math.PI, within(1e-6));
        assertThatThrownBy(() -> Wall.from(0, 0).arcTo(10 + 1.2e-8, 10, 0, 10))
                .hasMessage("both ends of an arc must be equally far from its centre (0, 10), were 10 m and "
                        + "10.000000012 m");
        assertThatThrownBy(() -> Wall.from(0, 0).arcTo(10 - 1.2e-8, 10, 0, 10))
                .hasMessageStartingWith("both ends of an arc must be equally far from its centre");
        Wall foot = Wall.from(-5e-9, 0).arcTo(10, 10, 0, 10);
        assertThat(ProfileSection.between(Wall.from(-10, 0).lineTo(-10, 10), foot)
                        .area(10))
                .isCloseTo(100 + 25 * Math.PI, within(1e-6));
        assertThatThrownBy(() -> Wall.from(-2e-8, 0).arcTo(10, 10, 0, 10))
                .hasMessageStartingWith("an arc must rise all the way, from ");
        assertThatThrownBy(() -> Wall.from(10, 0).arcTo(Double.NaN, 1, 0, 0)).hasMessageStartingWith("endX must be ");
        for (double wrong : new double[] {Double.POSITIVE_INFINITY, Double.NaN}) {
            assertThatThrownBy(() -> Wall.from(10, 0).arcTo(10, wrong, 0, 0)).hasMessageStartingWith("endLevel ");
            assertThatThrownBy(() -> Wall.from(10, 0).lineTo(10, wrong)).hasMessageStartingWith("endLevel ");
            assertThatThrownBy(() -> USection.covered(1, wrong)).hasMessageStartingWith("height must be ");
            assertThatThrownBy(() -> VInvertSection.ofWidthAndFall(1, 0.1).coveredAt(wrong))
                    .hasMessageStartingWith("height must be ");
        }
    }

    /** A wall upright at 0.5 m and one that comes near it at one level alone. */
    private static ProfileSection near(double x, double level) {
        return ProfileSection.between(
                Wall.from(0, 0).lineTo(x, level).lineTo(0, 1), Wall.from(0.5, 0).lineTo(0.5, 1));
    }

    @Test
    void wallsMayTouchButNotCross() {
        for (double level : new double[] {0.01, 0.5, 0.99}) {
            assertThat(near(0.5, level).area(1)).isCloseTo(0.25, within(TIGHT));
            assertThatThrownBy(() -> near(0.501, level)).hasMessageStartingWith("the left wall must stay left of");
        }
        // Bulging arcs between common ends: crossed all the way, and apart all the way.
        Wall straight = Wall.from(0, 0).lineTo(0, 1);
        Wall left = Wall.from(0, 0).arcTo(-0.5, 0.5, 0, 0.5).arcTo(0, 1, 0, 0.5);
        assertThat(ProfileSection.between(left, straight).area(1)).isCloseTo(Math.PI / 8, within(TIGHT));
        assertThatThrownBy(() -> ProfileSection.between(straight, left))
                .hasMessageStartingWith("the left wall must stay left of the right wall");
        assertThatThrownBy(() -> ProfileSection.between(straight, Wall.from(1, 0)))
                .hasMessage("a wall must rise, it ended at level 0 m");
    }

    /** A wall may start and end on the middle line, and a mirrored one may not pass it in between. */
    @Test
    void wallsOnTheMiddleLine() {
        ProfileSection lozenge = Wall.from(0, 0).lineTo(1, 1).lineTo(0, 2).mirrored();
        holds(lozenge, 2, 2, 4 * Math.sqrt(2));
        holds(lozenge, 1.5, 1.75, 3 * Math.sqrt(2));
        assertThat(Wall.from(1, 0).lineTo(0.5, 1).lineTo(0.5, 2).mirroredOpen().topWidth(3))
                .isEqualTo(1);
        assertThatThrownBy(() ->
                        Wall.from(0.5, 0).lineTo(-0.25, 0.5).lineTo(0.5, 1).mirrored())
                .hasMessage("a mirrored wall must stay right of the middle line, x was -0.25 m");
        assertThatThrownBy(() -> Wall.from(-0.2, 0).lineTo(0.5, 1).mirrored())
                .hasMessage("a mirrored wall must stay right of the middle line, x was -0.2 m");
    }

    @Test
    void arraysOfOneLength() {
        CircularSection pipe = CircularSection.ofDiameter(1);
        double[] depth = new double[3];
        for (int length : new int[] {2, 4}) {
            double[] out = new double[length];
            assertThatThrownBy(() -> pipe.area(depth, out)).hasMessage("area must have length 3, was " + length);
            assertThatThrownBy(() -> pipe.wettedPerimeter(depth, out))
                    .hasMessage("perimeter must have length 3, was " + length);
            assertThatThrownBy(() -> pipe.topWidth(depth, out)).hasMessage("width must have length 3, was " + length);
            assertThatThrownBy(() -> pipe.hydraulicRadius(depth, out))
                    .hasMessage("radius must have length 3, was " + length);
        }
    }

    @Test
    void breaksAreFinite() {
        assertThat(TrapezoidalSection.ofBedWidthAndSideSlope(1, 1).breakDepths())
                .containsExactly(0);
        assertThat(STEP.mirroredOpen().breakDepths()).containsExactly(0, 1);
        assertThat(STEP.mirrored().breakDepths()).containsExactly(0, 1, 2);
    }

    /** A bed in a pipe under a slot: what was a break above it still is one, that much lower. */
    @Test
    void sedimentUnderASlot() {
        SlottedSection slotted = SlottedSection.ofWidth(RectangularSection.box(1, 2), 0.05);
        CrossSection silted = slotted.withSediment(0.5);
        assertThat(silted.breakDepths()).containsExactly(0, 1.5);
        assertThat(slotted.withSediment(2).breakDepths()).containsExactly(0);
        assertThat(silted.height()).isEqualTo(Double.POSITIVE_INFINITY);
        holds(silted, 1, 1, 3);
        holds(silted, 2.5, 1.55, 5);
        assertThat(silted.hashCode()).isNotEqualTo(slotted.withSediment(0.51).hashCode());
        assertThat(Depths.checked(1e-13, Double.POSITIVE_INFINITY)).isEqualTo(1e-13);
        // An ovoid of a radius of which its invert arc would end on the springing line, or beyond.
        assertThatThrownBy(() -> Ovoid.ofWidthAndHeight(1, 0.5).withInvertRadius(0.2))
                .hasMessage(
                        "no tangent arcs join an invert of radius 0.2 m with a crown of radius 0.5 m in a height of "
                                + "0.5 m");
    }

    /** Turned over, a section holds up to a depth what it did not hold before. */
    @Test
    void turnedOverHoldsTheRest() {
        double root = Math.sqrt(0.125);
        Wall wall = Wall.from(0.5, 0).arcTo(root, root, 0, 0).lineTo(0.1, 0.6);
        ProfileSection upright = wall.mirrored();
        ProfileSection turned = wall.inverted().mirrored();
        for (double depth : new double[] {0.1, 0.25, 0.4, 0.55}) {
            assertThat(turned.area(depth)).isCloseTo(upright.area(0.6) - upright.area(0.6 - depth), within(TIGHT));
            assertThat(turned.topWidth(depth)).isCloseTo(upright.topWidth(0.6 - depth), within(TIGHT));
        }
    }

    /** A straight wall that cuts into a hollow one by 1 mm at three tenths of the height, between all breaks. */
    @Test
    void aCutBetweenBreaksIsFound() {
        Wall hollow = Wall.from(1, 0).arcTo(0, 1, 1, 1);
        double slope = -0.7 / Math.sqrt(0.51);
        double touching = 1 - Math.sqrt(0.51) - 0.3 * slope;
        Wall clear = Wall.from(touching - 1e-3, 0).lineTo(touching - 1e-3 + slope, 1);
        assertThat(ProfileSection.between(clear, hollow).height()).isEqualTo(1);
        Wall cutting = Wall.from(touching + 1e-3, 0).lineTo(touching + 1e-3 + slope, 1);
        assertThatThrownBy(() -> ProfileSection.between(cutting, hollow))
                .hasMessageStartingWith("the left wall must stay left of the right wall");
    }

    @Test
    void hashesTellWallsAndPipesApart() {
        assertThat(Wall.from(0, 0).lineTo(1, 1).lineTo(0, 2).mirrored().hashCode())
                .isNotEqualTo(
                        Wall.from(0, 0).lineTo(1.1, 1).lineTo(0, 2).mirrored().hashCode());
        assertThat(CircularSection.ofDiameter(1).withSediment(0.3).hashCode())
                .isNotEqualTo(CircularSection.ofDiameter(1.1).withSediment(0.3).hashCode());
    }
}
