package dev.runnel.verification.oracle;

import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * An invented rain record of thirty years in steps of ten minutes, the same to the last digit in any language: whole
 * tenths of a millimetre from a linear congruential generator (multiplier and increment of Knuth's MMIX). It has
 * scattered gaps and one year, 1997, that lost a hundred days. Its twin in Python, {@code long_record.py}, computes the
 * expected values with SciPy; both are to be changed together.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class InventedRecord {
    private static final Instant START = Instant.parse("1991-01-01T00:00:00Z");
    private static final Instant END = Instant.parse("2021-01-01T00:00:00Z");
    private static final Instant BAD_FROM = Instant.parse("1997-05-01T00:00:00Z");
    private static final Duration STEP = Duration.ofMinutes(10);
    private static final int BAD_STEPS = 100 * 144;
    private static final int STEPS_A_YEAR = 52_560;

    private long state = 20_261_125;

    private InventedRecord() {}

    /**
     * Makes the record.
     *
     * @return depth in each step, mm; NaN where nothing was measured
     */
    public static RegularSeries tenMinutes() {
        return new InventedRecord().made();
    }

    private RegularSeries made() {
        double[] depths = new double[(int) Duration.between(START, END).dividedBy(STEP)];
        int wet = 0;
        int gap = 0;
        int scale = 0;
        for (int i = 0; i < depths.length; i++) {
            int season = i % STEPS_A_YEAR / 4380;
            if (wet == 0 && draw() % 100_000 < 180 + 30L * Math.min(season, 11 - season)) {
                int longest = 1 + (int) (draw() % 90);
                wet = 1 + (int) (draw() % longest);
                int level = Math.min(20, Long.numberOfTrailingZeros(draw()));
                scale = (2 + level * (level + 1) / 2) * 40 / (10 + wet);
            }
            if (wet > 0) {
                wet--;
                int u = (int) (draw() % 8);
                int tenths = u * u * scale / 40;
                depths[i] = tenths / 10.0;
            }
            if (gap == 0 && draw() % 20_000 == 0) {
                gap = 1 + (int) (draw() % 500);
            }
            if (gap > 0) {
                gap--;
                depths[i] = Double.NaN;
            }
        }
        int bad = (int) Duration.between(START, BAD_FROM).dividedBy(STEP);
        Arrays.fill(depths, bad, bad + BAD_STEPS, Double.NaN);
        return RegularSeries.of(START, STEP, depths);
    }

    /** Returns the next 31 bits. */
    private long draw() {
        state = state * 6_364_136_223_846_793_005L + 1_442_695_040_888_963_407L;
        return state >>> 33;
    }
}
