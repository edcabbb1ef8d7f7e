package dev.runnel.hydraulics.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.Reference;
import java.util.Map;
import java.util.function.ToDoubleBiFunction;
import org.junit.jupiter.api.Test;

class ProfileSectionTest {
    private static final Map<String, ProfileSection> SHAPES = Map.of(
            "egg-normal", Egg.normal(2),
            "egg-widened", Egg.widened(2),
            "egg-depressed", Egg.depressed(2),
            "egg-sharp", Egg.sharp(2),
            "mouth", MouthSection.ofWidth(2),
            "horseshoe", Horseshoe.ofDiameter(2));

    @Test
    void areaIsExactFromFilmToFull() {
        assertThat(worst("area", ProfileSection::area)).isLessThan(1e-14);
    }

    @Test
    void perimeterIsExactFromFilmToFull() {
        assertThat(worst("perimeter", ProfileSection::wettedPerimeter)).isLessThan(1e-14);
    }

    @Test
    void widthIsExactFromFilmToNearlyFull() {
        assertThat(worst("width", ProfileSection::topWidth)).isLessThan(1e-14);
    }

    @Test
    void centroidIsExactFromFilmToFull() {
        assertThat(worst("centroid", ProfileSection::centroidDepth)).isLessThan(1e-13);
    }

    private static double worst(String column, ToDoubleBiFunction<ProfileSection, Double> function) {
        var rows = Reference.rows(ProfileSectionTest.class, "profile-sections.csv");
        assertThat(rows).hasSize(84);
        return rows.stream()
                // Close to the soffit the width hangs on the last digit of the height, which is no double for every
                // shape.
                .filter(row -> !column.equals("width")
                        || Double.parseDouble(row.get("width")) > 0.2
                        || Double.parseDouble(row.get("depth")) < 1)
                .mapToDouble(row -> Reference.deviation(
                        function.applyAsDouble(SHAPES.get(row.get("shape")), Double.parseDouble(row.get("depth"))),
                        row.get(column)))
                .max()
                .orElseThrow();
    }

    @Test
    void wallOfACircleIsTheCircularSection() {
        var circle = CircularSection.ofDiameter(0.45);
        var wall = Wall.from(0, 0).arcTo(0, 0.45, 0, 0.225).mirrored();
        for (double x : new double[] {1e-9, 1e-4, 0.1, 0.3, 0.5, 0.7, 0.999, 1}) {
            double depth = x * 0.45;
            assertThat(wall.area(depth)).isCloseTo(circle.area(depth), within(4e-15 * circle.area(depth)));
            assertThat(wall.wettedPerimeter(depth))
                    .isCloseTo(circle.wettedPerimeter(depth), within(4e-15 * circle.wettedPerimeter(depth)));
            assertThat(wall.topWidth(depth)).isCloseTo(circle.topWidth(depth), within(4e-15 * circle.topWidth(depth)));
            assertThat(wall.centroidDepth(depth))
                    .isCloseTo(circle.centroidDepth(depth), within(4e-14 * circle.centroidDepth(depth)));
        }
    }

    /** Box 2 m by 1 m by hand. */
    @Test
    void boxByHand() {
        var box = RectangularSection.box(2, 1);
        assertThat(box.area(0.25)).isEqualTo(0.5);
        assertThat(box.wettedPerimeter(0.25)).isEqualTo(2.5);
        assertThat(box.wettedPerimeter(Math.nextDown(1.0))).isCloseTo(4, within(1e-15));
        assertThat(box.wettedPerimeter(1)).isEqualTo(6);
        assertThat(box.topWidth(0.25)).isEqualTo(2);
        assertThat(box.centroidDepth(0.25)).isEqualTo(0.125);
        assertThat(box.depthForArea(1.3)).isCloseTo(0.65, within(1e-16));
        assertThat(box.fullArea()).isEqualTo(2);
        assertThat(box.width()).isEqualTo(2);
        assertThat(box).hasToString("RectangularSection[W = 2 m, H = 1 m]");
    }

    /** Trapezoid: bed 3 m, sides 2 : 1, depth 1.5 m by hand: A = 9, P = 3 + 2·1.5·√5, T = 9, M = 3·1.5²/2 + 2·1.5³/3. */
    @Test
    void trapezoidByHand() {
        var channel = TrapezoidalSection.ofBedWidthAndSideSlope(3, 2);
        assertThat(channel.area(1.5)).isEqualTo(9);
        assertThat(channel.wettedPerimeter(1.5)).isCloseTo(3 + 3 * Math.sqrt(5), within(1e-14));
        assertThat(channel.topWidth(1.5)).isEqualTo(9);
        assertThat(channel.centroidDepth(1.5)).isCloseTo((3.375 + 2.25) / 9, within(1e-15));
        assertThat(channel.depthForArea(9)).isCloseTo(1.5, within(1e-15));
        assertThat(channel.height()).isInfinite();
        assertThat(channel.area(1e6)).isCloseTo(2e12 + 3e6, within(1.0));
        assertThat(channel).hasToString("TrapezoidalSection[open, bed width 3 m]");
    }

    @Test
    void invertedEggHoldsTheAirOfTheEgg() {
        var egg = Egg.normal(0.8);
        var inverted = Egg.inverted(0.8);
        assertThat(inverted.height()).isCloseTo(egg.height(), within(1e-15));
        for (double depth = 0.05; depth < 1.2; depth += 0.05) {
            assertThat(inverted.area(depth)).isCloseTo(egg.fullArea() - egg.area(egg.height() - depth), within(1e-14));
            assertThat(inverted.topWidth(depth)).isCloseTo(egg.topWidth(egg.height() - depth), within(1e-13));
        }
        var turned = Wall.from(0.3, 0)
                .lineTo(0.5, 0.4)
                .arcTo(0, 0.9, 0, 0.4)
                .inverted()
                .mirrored();
        assertThat(turned.wettedPerimeter(0.9)).isCloseTo(0.6 + 2 * Math.hypot(0.2, 0.4) + Math.PI / 2, within(1e-14));
        assertThat(turned.topWidth(Math.nextDown(0.9))).isCloseTo(0.6, within(1e-14));
    }

    @Test
    void benchIsWetAsSoonAsTheWaterIsAboveIt() {
        var channel = BenchedChannel.ofWidthAndDepth(0.3, 0.3).inChamberOfWidth(1.2);
        assertThat(channel.topWidth(0.3)).isEqualTo(0.3);
        assertThat(channel.topWidth(Math.nextUp(0.3))).isEqualTo(1.2);
        assertThat(channel.wettedPerimeter(Math.nextUp(0.3)) - channel.wettedPerimeter(0.3))
                .isCloseTo(0.9, within(1e-14));
        assertThat(channel.breakDepths()).containsExactly(0, 0.15, 0.3);
    }

    @Test
    void twoDifferentWalls() {
        // A half circle on the left, an upright wall on the right.
        var left = Wall.from(0, 0).arcTo(0, 1, 0, 0.5).inverted();
        assertThat(left.toString()).isEqualTo("Wall[2 pieces, from (0, 0) to (0, 1) m]");
        var section = ProfileSection.between(
                Wall.from(0, 0).lineTo(-0.5, 0.5).lineTo(-0.5, 1),
                Wall.from(0, 0).arcTo(0.5, 0.5, 0, 0.5).lineTo(0.5, 1));
        assertThat(section.area(0.5)).isCloseTo(0.125 + Math.PI / 16, within(1e-15));
        assertThat(section.fullArea()).isCloseTo(0.625 + Math.PI / 16, within(1e-15));
        assertThat(section.fullPerimeter()).isCloseTo(Math.sqrt(0.5) + 0.5 + Math.PI / 4 + 0.5 + 1, within(1e-15));
        assertThatThrownBy(() -> ProfileSection.between(
                        Wall.from(0.1, 0).lineTo(0.1, 1), Wall.from(0, 0).lineTo(0, 1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("the left wall must stay left of the right wall");
        // Apart below the ledge, crossed above it.
        assertThatThrownBy(() -> ProfileSection.between(
                        Wall.from(-0.1, 0).lineTo(-0.1, 0.5).lineTo(0.2, 0.5).lineTo(-0.2, 1),
                        Wall.from(0.1, 0).lineTo(0.1, 1)))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("the left wall must stay left of the right wall, they cross below level 1 m");
        // Apart at both ends, crossed by the bulge between.
        assertThatThrownBy(() -> ProfileSection.between(
                        Wall.from(-0.5, 0).arcTo(0, 0.5, -0.5, 0.5).arcTo(-0.5, 1, -0.5, 0.5),
                        Wall.from(-0.1, 0).lineTo(-0.1, 1)))
                .hasMessageStartingWith("the left wall must stay left of the right wall");
        assertThatThrownBy(() -> ProfileSection.between(
                        Wall.from(0, 0).lineTo(0, 2), Wall.from(0, 0).lineTo(0, 1)))
                .hasMessage("both walls must end at one level, were 2 m and 1 m");
    }

    @Test
    void concaveWallsBulgeInwards() {
        // Box with a quarter circle taken out of each lower corner: centre at the corner (1, 0), radius 0.5.
        var section = Wall.from(0.5, 0).arcTo(1, 0.5, 1, 0).lineTo(1, 1).mirrored();
        double corner = Math.PI / 16;
        assertThat(section.fullArea()).isCloseTo(2 - 2 * corner, within(1e-15));
        assertThat(section.area(0.3)).isLessThan(0.6);
        // First moment about the surface at 1 m: box 1, less corners with centroid 4 r/(3 π) above the floor.
        double moment = 1 - 2 * corner * (1 - 4 * 0.5 / (3 * Math.PI));
        assertThat(section.centroidDepth(1)).isCloseTo(moment / section.fullArea(), within(1e-15));
    }

    @Test
    void depthsFollowTheRuleOfTheLimits() {
        var egg = Egg.normal(0.8);
        assertThat(egg.area(1.2 * (1 + 1e-13))).isEqualTo(egg.fullArea());
        assertThat(egg.topWidth(egg.height())).isZero();
        assertThat(egg.hydraulicDepth(egg.height())).isInfinite();
        assertThatThrownBy(() -> egg.area(1.21))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("depth must be in [0, 1.2")
                .hasMessageEndingWith("] m, was 1.21");
        assertThatThrownBy(() -> egg.depthForArea(2)).hasMessageStartingWith("area must be in [0, 0.735060817");
        var open = TrapezoidalSection.ofBedWidthAndSideSlope(1, 1);
        assertThatThrownBy(() -> open.area(Double.POSITIVE_INFINITY))
                .hasMessage("depth must be 0 or greater and finite (m), was Infinity");
        assertThatThrownBy(() -> open.depthForArea(Double.NaN))
                .hasMessage("area must be 0 or greater and finite (m2), was NaN");
    }

    @Test
    void wallsRefuseWhatIsNoWall() {
        var foot = Wall.from(0, 0);
        assertThatThrownBy(() -> Wall.from(0, 0.1)).hasMessage("level must be in [0, 0] m, was 0.1");
        assertThatThrownBy(() -> foot.lineTo(1, -0.5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("endLevel must be at least the level reached, 0 m, was -0.5");
        assertThatThrownBy(() -> foot.lineTo(0, 0)).hasMessageContaining("a piece must have a length");
        assertThatThrownBy(() -> foot.arcTo(0, 1, 0, 0.4))
                .hasMessage("both ends of an arc must be equally far from its centre (0, 0.4), were 0.4 m and 0.6 m");
        assertThatThrownBy(() -> foot.arcTo(0.5, 0, 0.25, 0)).hasMessageContaining("must be above the level reached");
        assertThatThrownBy(() -> Wall.from(0.6, 0).arcTo(-0.8, 0.2, 0, 0.8))
                .hasMessageContaining("an arc must rise all the way");
        assertThatThrownBy(foot::mirrored).hasMessage("a wall must rise, it ended at level 0 m");
        assertThatThrownBy(() -> foot.lineTo(-1, 1).mirrored())
                .hasMessage("a mirrored wall must stay right of the middle line, x was -1 m");
        assertThatThrownBy(() -> foot.arcTo(1, 1, 0, 1).mirroredOpen())
                .hasMessageContaining("an open wall must end with a rising straight piece");
        assertThatThrownBy(() -> Wall.from(1, 0).lineTo(0.5, 1).mirroredOpen())
                .hasMessage("an open wall must not lean inwards at its end, its slope dx/dy was -0.5");
    }

    @Test
    void shapesRefuseImpossibleMeasures() {
        assertThatThrownBy(() -> Egg.normal(0)).hasMessage("width must be greater than 0 and finite (m), was 0");
        assertThatThrownBy(() -> Ovoid.ofWidthAndHeight(1, 0.4).withInvertRadius(0.2))
                .hasMessageContaining("no tangent arcs join");
        assertThatThrownBy(() -> Ovoid.ofWidthAndHeight(1, 1).withInvertRadius(0.5))
                .hasMessageContaining("no tangent arcs join");
        assertThatThrownBy(() -> USection.covered(1, 0.5))
                .hasMessage("height must be greater than half of the width, 0.5 m, was 0.5");
        assertThatThrownBy(() -> VInvertSection.ofWidthAndFall(1, 0.5).coveredAt(0.5))
                .hasMessageContaining("height must be greater");
        assertThatThrownBy(() -> TrapezoidalSection.ofBedWidthAndSideSlope(0, 0))
                .hasMessageContaining("sideSlope must be greater than 0");
        assertThatThrownBy(() -> BenchedChannel.ofWidthAndDepth(0.3, 0.1).inChamberOfWidth(1))
                .hasMessageContaining("channelDepth must be");
        assertThatThrownBy(() -> BenchedChannel.ofWidthAndDepth(0.3, 0.2).inChamberOfWidth(0.3))
                .hasMessageContaining("chamberWidth must be");
        assertThatThrownBy(() -> ArchSection.of(1, -1)).hasMessageContaining("wallHeight must be 0 or greater");
        assertThatThrownBy(() -> Horseshoe.ofDiameter(Double.NaN)).hasMessageContaining("was NaN");
        assertThatThrownBy(() -> RectangularSection.box(1, 0)).hasMessageContaining("height must be greater than 0");
    }

    @Test
    void sectionsAreValues() {
        assertThat(Egg.normal(0.8)).isEqualTo(Egg.normal(0.8)).hasSameHashCodeAs(Egg.normal(0.8));
        assertThat(Egg.normal(0.8)).isNotEqualTo(Egg.normal(0.9)).isNotEqualTo(Egg.sharp(0.8));
        assertThat(Egg.normal(0.8)).hasToString("Egg.normal[W = 0.8 m, H = 1.2 m]");
        assertThat(USection.open(0.4)).isEqualTo(USection.open(0.4)).hasSameHashCodeAs(USection.open(0.4));
        assertThat(USection.open(0.4)).isNotEqualTo(USection.open(0.5));
        assertThat(USection.open(0.4).named("gutter").toString()).startsWith("gutter[open");
    }
}
