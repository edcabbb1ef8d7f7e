package dev.runnel.hydraulics.section;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.hydraulics.Reference;
import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.BiConsumer;
import java.util.function.DoubleUnaryOperator;
import java.util.function.ToDoubleBiFunction;
import org.junit.jupiter.api.Test;

class CircularSectionTest {
    private static final CircularSection SECTION = CircularSection.ofDiameter(0.450);

    @Test
    void areaKeepsRelativeAccuracyFromFilmToFull() {
        assertThat(worst("area", CircularSection::area)).isLessThan(1.5e-15);
    }

    @Test
    void perimeterKeepsRelativeAccuracyFromFilmToFull() {
        assertThat(worst("perimeter", CircularSection::wettedPerimeter)).isLessThan(6e-16);
    }

    @Test
    void topWidthKeepsRelativeAccuracyFromFilmToFull() {
        assertThat(worst("width", CircularSection::topWidth)).isLessThan(3e-16);
    }

    @Test
    void centroidKeepsRelativeAccuracyFromFilmToFull() {
        assertThat(worst("centroid", CircularSection::centroidDepth)).isLessThan(1e-14);
    }

    /** Largest relative deviation from the reference file, whose making is told in its header. */
    private static double worst(String column, ToDoubleBiFunction<CircularSection, Double> function) {
        var rows = Reference.rows(CircularSectionTest.class, "circular-section.csv");
        assertThat(rows).hasSize(284);
        return rows.stream()
                .mapToDouble(row -> Reference.deviation(
                        function.applyAsDouble(
                                CircularSection.ofDiameter(Double.parseDouble(row.get("diameter"))),
                                Double.parseDouble(row.get("depth"))),
                        row.get(column)))
                .max()
                .orElseThrow();
    }

    @Test
    void emptySectionIsAllZero() {
        assertThat(SECTION.area(0)).isZero();
        assertThat(SECTION.wettedPerimeter(0)).isZero();
        assertThat(SECTION.hydraulicRadius(0)).isZero();
        assertThat(SECTION.topWidth(0)).isZero();
        assertThat(SECTION.hydraulicDepth(0)).isZero();
        assertThat(SECTION.centroidDepth(0)).isZero();
        assertThat(SECTION.depthForArea(0)).isZero();
    }

    @Test
    void fullSectionHasNoSurface() {
        assertThat(SECTION.area(0.450)).isEqualTo(0.450 * 0.450 * (Math.PI / 4)).isEqualTo(SECTION.fullArea());
        assertThat(SECTION.wettedPerimeter(0.450)).isEqualTo(0.450 * Math.PI).isEqualTo(SECTION.fullPerimeter());
        assertThat(SECTION.topWidth(0.450)).isZero();
        assertThat(SECTION.hydraulicDepth(0.450)).isEqualTo(Double.POSITIVE_INFINITY);
        assertThat(SECTION.centroidDepth(0.450)).isEqualTo(0.225);
        assertThat(SECTION.depthForArea(SECTION.fullArea())).isEqualTo(0.450);
    }

    @Test
    void depthWithinRoundingOfTheSoffitIsTheSoffit() {
        var bore = CircularSection.ofDiameter(0.19029999999999997);
        assertThat(0.1903).isGreaterThan(bore.diameter());
        assertThat(bore.area(0.1903)).isEqualTo(bore.fullArea());
        assertThat(bore.topWidth(0.1903)).isZero();
        assertThat(SECTION.area(0.450 * (1 + 0.9e-12))).isEqualTo(SECTION.fullArea());
        assertThatThrownBy(() -> SECTION.area(0.450 * (1 + 1.1e-12))).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void depthWithinRoundingOfTheInvertIsTheInvert() {
        double rounding = 0.3 - 0.1 - 0.2;
        assertThat(rounding).isNegative();
        assertThat(SECTION.area(rounding)).isZero();
        assertThatThrownBy(() -> SECTION.area(-1e-12)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void refusesDepthsOutside() {
        assertThatThrownBy(() -> SECTION.area(0.46))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depth must be in [0, 0.45] m, was 0.46");
        assertThatThrownBy(() -> SECTION.wettedPerimeter(-0.001))
                .hasMessage("depth must be in [0, 0.45] m, was -0.001");
        assertThatThrownBy(() -> SECTION.topWidth(Double.NaN)).hasMessage("depth must be in [0, 0.45] m, was NaN");
        assertThatThrownBy(() -> SECTION.centroidDepth(Double.POSITIVE_INFINITY))
                .hasMessage("depth must be in [0, 0.45] m, was Infinity");
        assertThatThrownBy(() -> SECTION.depthForArea(0.2))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageStartingWith("area must be in [0, 0.159043128087983")
                .hasMessageEndingWith("] m2, was 0.2");
        assertThatThrownBy(() -> SECTION.depthForArea(Double.NaN)).hasMessageContaining("was NaN");
    }

    @Test
    void refusesImpossibleDiameters() {
        for (double diameter : new double[] {0, -0.0, -0.45, Double.NaN, Double.POSITIVE_INFINITY}) {
            assertThatThrownBy(() -> CircularSection.ofDiameter(diameter))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessageStartingWith("diameter must be greater than 0 and finite (m), was ");
        }
    }

    @Test
    void bulkFormNamesTheIndexAndKeepsMissing() {
        double[] area = new double[3];
        SECTION.area(new double[] {0.1, Double.NaN, 0.45}, area);
        assertThat(area[0]).isEqualTo(SECTION.area(0.1));
        assertThat(area[1]).isNaN();
        assertThat(area[2]).isEqualTo(SECTION.fullArea());
        assertThatThrownBy(() -> SECTION.area(new double[] {0.1, 0.46}, new double[2]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depth[1]: depth must be in [0, 0.45] m, was 0.46");
        assertThatThrownBy(() -> SECTION.topWidth(new double[2], new double[3]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("width must have length 2, was 3");
    }

    @Test
    void fourPropertiesAtOnceNameWhatIsWrong() {
        double[] a = new double[2];
        double[] b = new double[2];
        double[] c = new double[2];
        double[] d = new double[2];
        assertThatThrownBy(() -> SECTION.properties(new double[] {0.1, 0.46}, a, b, c, d))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depth[1]: depth must be in [0, 0.45] m, was 0.46");
        assertThatThrownBy(() -> SECTION.properties(new double[] {0.1, 0.2}, a, b, new double[3], d))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("hydraulicRadius must have length 2, was 3");
        assertThatThrownBy(() -> SECTION.properties(new double[] {0.1, 0.2}, a, b, c, a))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("topWidth must be another array than area");
    }

    /** Films and air down to 1e-13 of the bore, missing depths, rounding at both limits, and lengths beside the block. */
    @Test
    void manyDepthsGiveTheSameBitsAsOne() {
        var random = new SplittableRandom(20260101);
        for (int count : new int[] {0, 1, 1023, 1024, 1025, 5000}) {
            double[] depth = new double[count];
            for (int i = 0; i < count; i++) {
                double film = 0.45 * Math.pow(10, -13 * random.nextDouble());
                double air = 0.45 - film;
                double rounding = i % 2 == 0 ? 0.45 * (1 + 5e-13) : -1e-14;
                double middle = i % 2 == 0 ? Math.nextUp(0.225) : Math.nextDown(0.225);
                double soffit = i % 2 == 0 ? Math.nextUp(0.45) : Math.nextDown(0.45);
                double[] kinds = {
                    film, air, 0.45 * random.nextDouble(), Double.NaN, rounding, 0, -0.0, 0.225, 0.45, middle, soffit
                };
                depth[i] = kinds[random.nextInt(kinds.length)];
            }
            assertSameBits(depth, SECTION::area, SECTION::area);
            assertSameBits(depth, SECTION::wettedPerimeter, SECTION::wettedPerimeter);
            assertSameBits(depth, SECTION::topWidth, SECTION::topWidth);
            assertSameBits(depth, SECTION::hydraulicRadius, SECTION::hydraulicRadius);
            double[][] four = new double[4][count];
            SECTION.properties(depth, four[0], four[1], four[2], four[3]);
            assertSameBits(depth, (each, out) -> System.arraycopy(four[0], 0, out, 0, count), SECTION::area);
            assertSameBits(depth, (each, out) -> System.arraycopy(four[1], 0, out, 0, count), SECTION::wettedPerimeter);
            assertSameBits(depth, (each, out) -> System.arraycopy(four[2], 0, out, 0, count), SECTION::hydraulicRadius);
            assertSameBits(depth, (each, out) -> System.arraycopy(four[3], 0, out, 0, count), SECTION::topWidth);
        }
    }

    private static void assertSameBits(double[] depth, BiConsumer<double[], double[]> many, DoubleUnaryOperator one) {
        double[] expected = Arrays.stream(depth)
                .map(d -> Double.isNaN(d) ? d : one.applyAsDouble(d))
                .toArray();
        double[] given = depth.clone();
        double[] out = new double[depth.length];
        many.accept(given, out);
        assertThat(out).isEqualTo(expected);
        assertThat(given).isEqualTo(depth);
        many.accept(given, given);
        assertThat(given).isEqualTo(expected);
    }

    @Test
    void refusesBoresThatNobodyBuilds() {
        assertThatThrownBy(() -> CircularSection.ofDiameter(1e-101))
                .hasMessage("diameter must be in [1.0E-6, 50] m, was 1.0E-101");
        assertThatThrownBy(() -> CircularSection.ofDiameter(1e101)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void isAValue() {
        assertThat(SECTION)
                .isEqualTo(CircularSection.ofDiameter(0.45))
                .hasSameHashCodeAs(CircularSection.ofDiameter(0.45))
                .isNotEqualTo(CircularSection.ofDiameter(0.3))
                .hasToString("CircularSection[D = 0.45 m]");
        assertThat(SECTION.breakDepths()).containsExactly(0, 0.45);
    }
}
