package dev.runnel.hydraulics.internal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** By another way: quadrature of the chord 2 √(t (1 − t)) over the heights t = u², which has no root at the invert. */
class SegmentTest {
    private static final double EIGHTH = Math.PI / 8;

    @Test
    void coefficientsAreThoseThatWereComputed() throws Exception {
        var digest = MessageDigest.getInstance("SHA-256");
        addAll(digest, "A", 16);
        addAll(digest, "P", 18);
        assertThat(HexFormat.of().formatHex(digest.digest())).isEqualTo(SegmentPolynomials.DIGEST);
    }

    private static void addAll(MessageDigest digest, String letter, int count) throws Exception {
        for (int i = 0; i < count; i++) {
            var field = SegmentPolynomials.class.getDeclaredField(letter + i);
            digest.update(
                    ByteBuffer.allocate(8).putDouble(field.getDouble(null)).array());
        }
    }

    @ParameterizedTest
    @ValueSource(doubles = {1e-9, 1e-4, 0.02, 0.13, 0.3, 0.4999, 0.5})
    void areaAngleAndDepth(double w) {
        double area = Gauss.integrate(u -> 4 * u * u * Math.sqrt(1 - u * u), 0, Math.sqrt(w));
        assertThat(Segment.area(w)).isCloseTo(area, within(2e-15 * area));
        assertThat(Segment.areaPlus(w, 3)).isCloseTo(area + 3, within(1e-15));
        double angle = 2 * Math.asin(Math.sqrt(w));
        assertThat(Segment.halfAngle(w)).isCloseTo(angle, within(1e-15 * angle));
        assertThat(Segment.depthForArea(area)).isCloseTo(w, within(4e-15 * w));
    }

    /** About the chord: each strip of the area by its distance from there. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-9, 1e-4, 0.02, 0.13, 0.15})
    void momentIsThatOfTheStrips(double w) {
        double moment = Gauss.integrate(u -> (w - u * u) * 4 * u * u * Math.sqrt(1 - u * u), 0, Math.sqrt(w));
        assertThat(Segment.moment(w)).isCloseTo(moment, within(3e-15 * moment));
    }

    @Test
    void ends() {
        assertThat(Segment.area(0)).isZero();
        assertThat(Segment.halfAngle(0)).isZero();
        assertThat(Segment.moment(0)).isZero();
        assertThat(Segment.depthForArea(0)).isZero();
        assertThat(Segment.area(0.5)).isCloseTo(EIGHTH, within(1e-16));
        // Half a circle, and what rounding makes of it: never above the middle.
        assertThat(Segment.depthForArea(EIGHTH)).isCloseTo(0.5, within(1e-15));
        assertThat(Segment.depthForArea(Math.nextUp(EIGHTH))).isLessThanOrEqualTo(0.5000000000000001);
    }
}
