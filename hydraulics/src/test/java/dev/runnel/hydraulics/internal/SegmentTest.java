package dev.runnel.hydraulics.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.ByteBuffer;
import java.security.MessageDigest;
import java.util.HexFormat;
import org.junit.jupiter.api.Test;

class SegmentTest {
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
}
