package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.hydraulics.section.RectangularSection;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Test;

/** Curves whose inverse is known, over sections of which only the height matters; how often a search asks is counted. */
class InvertibleCurveTest {
    private static final CrossSection OPEN = RectangularSection.open(1);
    private static final CrossSection CLOSED = RectangularSection.box(1, 1);
    private static final double[] NONE = {0, 1};

    private int calls;

    private InvertibleCurve curve(CrossSection section, double[] breaks, DoubleUnaryOperator quantity) {
        InvertibleCurve curve = InvertibleCurve.of(section, breaks, depth -> {
            calls++;
            return quantity.applyAsDouble(depth);
        });
        calls = 0;
        return curve;
    }

    private double depthOf(InvertibleCurve curve, double value, int mostCalls) {
        calls = 0;
        double depth = curve.lowestDepthFor(value);
        assertThat(calls).as("calls for %s", value).isLessThanOrEqualTo(mostCalls);
        return depth;
    }

    /** q = 3 y^1.5 from films to seas. */
    @Test
    void aPowerOfTheDepthWithoutEnd() {
        InvertibleCurve curve = curve(OPEN, new double[] {0}, y -> 3 * y * Math.sqrt(y));
        for (int decade = -60; decade <= 12; decade += 3) {
            double depth = 1.7 * Math.pow(10, decade);
            // A step for each factor of 16 down from 1 or of 2 up, and a search that is straight in the logarithms.
            int mostCalls = 12 + (int) Math.ceil(Math.abs(decade) / Math.log10(decade < 0 ? 16 : 2));
            double found = depthOf(curve, 3 * depth * Math.sqrt(depth), mostCalls);
            assertThat(found).isCloseTo(depth, within(1e-13 * depth));
            assertThat(curve.depthsFor(3 * depth * Math.sqrt(depth))).containsExactly(found);
        }
        assertThat(depthOf(curve, 0, 0)).isZero();
        assertThat(depthOf(curve, -1, 0)).isNaN();
        assertThat(curve.depthsFor(-1)).isEmpty();
        assertThat(curve.depthsFor(Double.NaN)).isEmpty();
    }

    /** A hump: q = sin(3πy/4) is 1 at y = 2/3 and √½ at the soffit. */
    @Test
    void aHumpUnderASoffit() {
        InvertibleCurve curve = curve(CLOSED, NONE, y -> Math.sin(0.75 * Math.PI * y));
        assertThat(curve.depthOfMaximum()).isCloseTo(2 / 3.0, within(1e-11));
        double atSoffit = Math.sin(0.75 * Math.PI);
        for (double value : new double[] {1e-30, 1e-9, 0.01, 0.3, 0.499, 0.55, 0.7, 0.75, 0.9, 0.999}) {
            double lower = Math.asin(value) / (0.75 * Math.PI);
            assertThat(depthOf(curve, value, value < 1e-20 ? 36 : 19)).isCloseTo(lower, within(1e-12 * lower));
            double[] depths = curve.depthsFor(value);
            assertThat(depths).hasSize(value < atSoffit ? 1 : 2);
            if (value > atSoffit) {
                assertThat(depths[1]).isCloseTo(4 / 3.0 - lower, within(1e-12));
            }
        }
        assertThat(curve.depthsFor(atSoffit)).hasSize(2).endsWith(1);
        // Rising and falling branch meet at the one depth of the most.
        double top = curve.depthOfMaximum();
        assertThat(curve.depthsFor(Math.sin(0.75 * Math.PI * top))).containsExactly(top);
        assertThat(curve.depthsFor(0)).containsExactly(0);
        assertThat(curve.depthsFor(1.0001)).isEmpty();
        assertThat(depthOf(curve, 1.0001, 0)).isNaN();
    }

    /** Up, down and up again, q = y + 0.3 sin(2πy). Where two branches meet the depth is named once. */
    @Test
    void aBench() {
        DoubleUnaryOperator quantity = y -> y + 0.3 * Math.sin(2 * Math.PI * y);
        InvertibleCurve curve = curve(CLOSED, NONE, quantity);
        // cos(2πy) = −1/(0.6π) turns at y = 0.33905 and 0.66095.
        double turn = Math.acos(-1 / (0.6 * Math.PI)) / (2 * Math.PI);
        double top = quantity.applyAsDouble(turn);
        double bottom = quantity.applyAsDouble(1 - turn);
        double[] three = curve.depthsFor((top + bottom) / 2);
        assertThat(three).hasSize(3).isSorted();
        assertThat(three[1]).isCloseTo(0.5, within(1e-12));
        assertThat(three[2]).isCloseTo(1 - three[0], within(1e-12));
        assertThat(curve.depthsFor(0.999 * bottom)).hasSize(1);
        assertThat(curve.depthsFor(1.001 * top)).hasSize(1);
        assertThat(curve.depthsFor(quantity.applyAsDouble(curve.depthsFor(bottom)[0])))
                .hasSizeBetween(1, 3);
        assertThat(curve.depthOfMaximum()).isEqualTo(1);
        for (double value = 0.01; value < 1; value += 0.01) {
            double last = -1;
            for (double depth : curve.depthsFor(value)) {
                assertThat(depth).isGreaterThan(last);
                assertThat(quantity.applyAsDouble(depth)).isCloseTo(value, within(2e-13 * value));
                last = depth;
            }
            depthOf(curve, value, 22);
        }
    }

    /** A lid that wets at once: the value falls from 1 to 0.8 at the soffit, and stays above 0.5 beyond a ledge. */
    @Test
    void valuesThatJump() {
        InvertibleCurve lid = curve(CLOSED, NONE, y -> y < 1 ? y : 0.8);
        assertThat(lid.depthsFor(0.8)).hasSize(2).endsWith(1);
        assertThat(lid.depthsFor(0.8)[0]).isCloseTo(0.8, within(1e-14));
        assertThat(lid.depthOfMaximum()).isEqualTo(Math.nextDown(1.0));
        assertThat(lid.depthsFor(0.9)).hasSize(1);
        assertThat(lid.depthsFor(1)).isEmpty();
        InvertibleCurve ledge = curve(CLOSED, new double[] {0, 0.5, 1}, y -> y <= 0.5 ? y : 0.5 * y);
        assertThat(ledge.depthsFor(0.4)).hasSize(2);
        assertThat(ledge.depthsFor(0.4)[0]).isCloseTo(0.4, within(1e-14));
        assertThat(ledge.depthsFor(0.4)[1]).isCloseTo(0.8, within(1e-14));
        assertThat(ledge.depthsFor(0.5)).containsExactly(0.5, 1);
        assertThat(ledge.depthsFor(0.2)).hasSize(1);
        assertThat(ledge.depthOfMaximum()).isEqualTo(0.5);
        InvertibleCurve up = curve(CLOSED, new double[] {0, 0.5, 1}, y -> y <= 0.5 ? y : 1.5 - y);
        assertThat(up.depthOfMaximum()).isEqualTo(Math.nextUp(0.5));
        assertThat(up.depthsFor(0.75)).hasSize(1);
        assertThat(up.depthsFor(0.75)[0]).isCloseTo(0.75, within(1e-14));
        assertThat(up.depthsFor(0.5)).containsExactly(0.5, 1);
        // Of two depths with the most the lower.
        double next = Math.nextUp(0.5);
        InvertibleCurve twice = curve(
                CLOSED,
                new double[] {0, 0.25, 0.5, 1},
                y -> y <= 0.25 ? 4 * y : y <= 0.5 ? 1.5 - 2 * y : 1 - (y - next));
        assertThat(twice.depthOfMaximum()).isEqualTo(0.25);
        assertThat(twice.depthsFor(1)).containsExactly(0.25, next);
    }

    /** A surface that closes: q = y/√(1 − y) is infinite at the soffit. No double beside the depth found is closer. */
    @Test
    void aValueThatGrowsWithoutEndTowardsTheSoffit() {
        DoubleUnaryOperator quantity = y -> y / Math.sqrt(1 - y);
        InvertibleCurve curve = curve(CLOSED, NONE, quantity);
        for (double value = 1e-12; value < 1e8; value *= 7) {
            double depth = depthOf(curve, value, 150);
            double square = value * value;
            // y² = v² (1 − y)
            double byHand = 2 / (1 + Math.sqrt(1 + 4 / square));
            assertThat(depth).isCloseTo(byHand, within(1e-12 * byHand));
            double off = Math.abs(Math.log(quantity.applyAsDouble(depth) / value));
            if (off > 1e-13) {
                assertThat(off)
                        .isLessThanOrEqualTo(Math.abs(Math.log(quantity.applyAsDouble(Math.nextUp(depth)) / value)))
                        .isLessThanOrEqualTo(Math.abs(Math.log(quantity.applyAsDouble(Math.nextDown(depth)) / value)));
            }
        }
    }

    /** A steep neck high in a section: an ulp of the depth is much of the value there, on a falling branch as on a rising one. */
    @Test
    void asCloseAsADoubleCanBe() {
        for (double sign : new double[] {1, -1}) {
            DoubleUnaryOperator quantity = y -> 2 + sign * Math.tanh((y - 0.75) * 1e6) + sign * y;
            InvertibleCurve curve =
                    curve(CLOSED, new double[] {0, 0.5, 1}, y -> y == 0 ? 0 : quantity.applyAsDouble(y));
            for (double value : new double[] {2 + sign * 0.3, 2 + sign * 0.75, 2 + sign * 1.2}) {
                double[] depths = curve.depthsFor(value);
                assertThat(depths).isNotEmpty();
                double depth = depths[depths.length - 1];
                assertThat(depth).isCloseTo(0.75, within(1e-5));
                double off = Math.abs(quantity.applyAsDouble(depth) - value);
                assertThat(off)
                        .isLessThanOrEqualTo(
                                1e-13 * value + Math.abs(quantity.applyAsDouble(Math.nextUp(depth)) - value))
                        .isLessThanOrEqualTo(
                                1e-13 * value + Math.abs(quantity.applyAsDouble(Math.nextDown(depth)) - value));
            }
        }
    }

    /** Prepared for many values it gives the same depths, and asks the curve for none that it has learned. */
    @Test
    void cellsGiveTheSameDepths() {
        DoubleUnaryOperator quantity = y -> Math.sin(0.75 * Math.PI * y) * Math.sqrt(y);
        InvertibleCurve plain = curve(CLOSED, NONE, quantity);
        InvertibleCurve many = plain.forManyValues();
        double most = quantity.applyAsDouble(plain.depthOfMaximum());
        for (double part = 0.001; part < 1; part += 0.013) {
            double depth = many.lowestDepthFor(part * most);
            assertThat(depth).isCloseTo(plain.lowestDepthFor(part * most), within(2e-13));
            calls = 0;
            assertThat(many.lowestDepthFor(part * most)).isEqualTo(depth);
            assertThat(calls).isZero();
        }
        // The value at the soffit is nothing special on the branch below.
        double beside = quantity.applyAsDouble(1) * (1 - 1e-5);
        many.lowestDepthFor(beside);
        calls = 0;
        many.lowestDepthFor(beside);
        assertThat(calls).isZero();
        assertThat(many.depthOfMaximum()).isEqualTo(plain.depthOfMaximum());
        assertThat(many.lowestDepthFor(0)).isZero();
    }

    /** No polynomial follows a bend: the cell that holds one is left to the search. */
    @Test
    void cellsThatHoldACornerAreLeftToTheSearch() {
        DoubleUnaryOperator quantity = y -> y <= 0.5 ? y : 0.5 + 1.2 * (y - 0.5);
        InvertibleCurve many = curve(CLOSED, new double[] {0, 0.5, 1}, quantity).forManyValues();
        for (double depth = 0.4; depth < 0.6; depth += 0.0007) {
            double found = many.lowestDepthFor(quantity.applyAsDouble(depth));
            assertThat(found).isCloseTo(depth, within(3e-13));
        }
        double corner = 0.5;
        many.lowestDepthFor(Math.nextUp(corner));
        calls = 0;
        many.lowestDepthFor(Math.nextUp(corner));
        assertThat(calls).as("the corner is searched").isPositive();
        calls = 0;
        many.lowestDepthFor(0.3);
        calls = 0;
        many.lowestDepthFor(0.3);
        assertThat(calls).as("what lies away from it is not").isZero();
    }
}
