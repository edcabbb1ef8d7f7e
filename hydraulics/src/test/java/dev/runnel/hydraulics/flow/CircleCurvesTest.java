package dev.runnel.hydraulics.flow;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.Reference;
import dev.runnel.hydraulics.internal.Coefficients;
import dev.runnel.hydraulics.section.CircularSection;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The pieces against values from the defining formulas at 100 digits, from films of 1e-12 to air of 1e-12. */
class CircleCurvesTest {
    private static final CircularSection UNIT = CircularSection.ofDiameter(1);
    private static final Conduit CONDUIT = Conduit.of(UNIT, Gradient.of(0.01), Manning.of(0.013));
    private static final double FULL = CONDUIT.fullBore().discharge();
    private static final CriticalFlow CRITICAL = CriticalFlow.of(UNIT);
    private static final double CREST = 0.938181216160607;

    private static List<Map<String, String>> rows() {
        List<Map<String, String>> rows = Reference.rows(CircleCurvesTest.class, "circle-curves.csv");
        assertThat(rows).hasSizeGreaterThan(280);
        return rows;
    }

    @Test
    void dischargeByManningHasFullPrecision() {
        for (Map<String, String> row : rows()) {
            double ratio = CONDUIT.discharge(Double.parseDouble(row.get("part"))) / FULL;
            assertThat(Reference.deviation(ratio, row.get("manning")))
                    .as("%s", row)
                    .isLessThan(1.5e-15);
        }
    }

    /** Below the crest the lowest depth comes back; near the crest only as well as the flat curve lets it. */
    @Test
    void depthByManningComesBack() {
        for (Map<String, String> row : rows()) {
            double part = Double.parseDouble(row.get("part"));
            if (part > CREST) {
                continue;
            }
            double depth = CONDUIT.normalDepth(Double.parseDouble(row.get("manning")) * FULL);
            double steep = Math.max(CREST - part, 1e-8);
            assertThat(depth / part - 1).as("%s", row).isBetween(-1.5e-15 / steep, 1.5e-15 / steep);
        }
    }

    /** In loops of many the root comes from another loop, and in place from the same. */
    @Test
    void manyByManningAreOneByOne() {
        SplittableRandom random = new SplittableRandom(5);
        double most = CONDUIT.maximum().discharge();
        double[] depths = new double[3000];
        double[] discharges = new double[depths.length];
        for (int i = 0; i < depths.length; i++) {
            depths[i] = i % 3 == 0 ? Math.exp(-40 * random.nextDouble()) : random.nextDouble();
            discharges[i] = most * (i % 3 == 0 ? Math.exp(-60 * random.nextDouble()) : random.nextDouble());
        }
        depths[7] = Double.NaN;
        depths[8] = 0;
        depths[9] = 1;
        depths[10] = 0.5;
        discharges[7] = Double.NaN;
        discharges[8] = 0;
        discharges[9] = most;
        discharges[10] = FULL / 2;
        double[] found = new double[depths.length];
        double[] inPlace = depths.clone();
        CONDUIT.discharge(depths, found);
        CONDUIT.discharge(inPlace, inPlace);
        assertThat(inPlace).isEqualTo(found);
        for (int i = 0; i < depths.length; i++) {
            if (i != 7) {
                assertThat(found[i]).isEqualTo(CONDUIT.discharge(depths[i]));
            }
        }
        assertThat(found[7]).isNaN();
        inPlace = discharges.clone();
        CONDUIT.normalDepth(discharges, found);
        CONDUIT.normalDepth(inPlace, inPlace);
        assertThat(inPlace).isEqualTo(found);
        for (int i = 0; i < depths.length; i++) {
            if (i != 7) {
                assertThat(found[i]).isEqualTo(CONDUIT.normalDepth(discharges[i]));
            }
        }
        assertThat(found[7]).isNaN();
    }

    @Test
    void criticalDepthHasFullPrecision() {
        for (Map<String, String> row : rows()) {
            double part = Double.parseDouble(row.get("part"));
            double discharge = Double.parseDouble(row.get("critical")) * Math.sqrt(CRITICAL.gravity());
            assertThat(CRITICAL.depth(discharge) / part - 1).as("%s", row).isBetween(-1.5e-15, 1.5e-15);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "circle-manning-above",
                "circle-critical-depth",
                "circle-critical-air",
                "log-omega",
                "reynolds-log"
            })
    void coefficientsAreThoseThatWereComputed(String name) throws IOException, NoSuchAlgorithmException {
        String text;
        try (var stream = Objects.requireNonNull(Pieces.class.getResourceAsStream(name + ".csv"), name)) {
            text = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
        }
        var digest = MessageDigest.getInstance("SHA-256");
        for (double coefficient : Pieces.read(name + ".csv")) {
            digest.update(ByteBuffer.allocate(8).putDouble(coefficient).array());
        }
        assertThat(text).contains("row by row: " + HexFormat.of().formatHex(digest.digest()));
    }

    @ParameterizedTest
    @ValueSource(strings = {"circle-manning", "circle-manning-depth"})
    void longTablesToo(String name) throws IOException, NoSuchAlgorithmException {
        String text;
        try (var stream = Objects.requireNonNull(Pieces.class.getResourceAsStream(name + ".doubles"), name)) {
            text = new String(stream.readAllBytes(), StandardCharsets.ISO_8859_1);
        }
        var digest = MessageDigest.getInstance("SHA-256");
        for (double coefficient : Coefficients.read(Pieces.class, name + ".doubles")) {
            digest.update(ByteBuffer.allocate(8).putDouble(coefficient).array());
        }
        assertThat(text).contains("row by row: " + HexFormat.of().formatHex(digest.digest()) + "\n\n");
    }
}
