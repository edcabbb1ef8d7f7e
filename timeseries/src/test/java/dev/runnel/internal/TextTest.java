package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Random;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class TextTest {
    @Test
    void numbersAreAsShortAsTheyCanBe() {
        assertThat(Text.number(3)).isEqualTo("3");
        assertThat(Text.number(-0.45)).isEqualTo("-0.45");
        assertThat(Text.number(1e-9)).isEqualTo("1.0E-9");
        assertThat(Text.number(1e10)).isEqualTo("1.0E10");
        assertThat(Text.number(Double.NaN)).isEqualTo("NaN");
        assertThat(Text.number(Double.NEGATIVE_INFINITY)).isEqualTo("-Infinity");
    }

    @Test
    void significantDigitsAreRoundedAndNotCut() {
        assertThat(Text.significant(0.012345, 3)).isEqualTo("0.0123");
        assertThat(Text.significant(99.96, 3)).isEqualTo("100");
        assertThat(Text.significant(-1234567, 3)).isEqualTo("-1230000");
        assertThat(Text.significant(0.00001234, 3)).isEqualTo("1.23e-05");
        assertThat(Text.significant(1e7, 3)).isEqualTo("1e+07");
        assertThat(Text.significant(0, 3)).isEqualTo("0");
        assertThat(Text.significant(Double.NaN, 3)).isEqualTo("NaN");
        assertThat(Text.significant(2.5, 6)).isEqualTo("2.5");
    }

    /** The formatter of Java rounds what it writes out in full, half up, as well. */
    @Test
    void anExponentIsWrittenAsTheFormatterOfJavaHasIt() {
        Random random = new Random(3);
        for (int i = 0; i < 20_000; i++) {
            double value = (random.nextDouble() - 0.5) * Math.pow(10, random.nextInt(-310, 300));
            int digits = random.nextInt(1, 10);
            if (value != 0 && (Math.abs(value) < 1e-4 || Math.abs(value) >= 1e7)) {
                assertThat(Text.significant(value, digits))
                        .as("%s to %d digits", value, digits)
                        .isEqualTo(String.format(Locale.ROOT, "%." + (digits - 1) + "e", value)
                                .replaceFirst("\\.?0*e", "e"));
            }
        }
        assertThat(Text.significant(9.9996e-5, 4)).isEqualTo("1e-04");
        assertThat(Text.significant(-1.25e100, 2)).isEqualTo("-1.3e+100");
    }

    @Test
    void doesNotFollowTheDefaultLocale() {
        Locale before = Locale.getDefault();
        try {
            Locale.setDefault(Locale.GERMANY);
            assertThat(Text.fixed(1234.5, 2)).isEqualTo("1234.50");
            assertThat(Text.significant(0.000012345, 3)).isEqualTo("1.23e-05");
        } finally {
            Locale.setDefault(before);
        }
    }

    @Test
    void quotedTextIsShortAndVisible() {
        assertThat(Text.quoted("12,5")).isEqualTo("\"12,5\"");
        assertThat(Text.quoted("a\u0000b")).isEqualTo("\"a\uFFFDb\"");
        assertThat(Text.quoted("x".repeat(61))).isEqualTo("\"" + "x".repeat(60) + "...\"");
    }

    /** The quick way and the general one, sizes and decimals at random, middles between two last digits among them. */
    @Test
    void fixedIsWhatTheFormatterWrites() {
        var random = new SplittableRandom(3);
        double[] special = {
            0,
            -0.0,
            0.5,
            1.5,
            -0.001,
            0.125,
            1e12,
            1e300,
            Double.MIN_VALUE,
            999.9995,
            Double.NaN,
            Double.NEGATIVE_INFINITY,
            0.0005,
            2.675,
            1.005,
            9.9999999995
        };
        for (int i = 0; i < 200_000; i++) {
            int decimals = random.nextInt(12);
            double size = Math.pow(10, random.nextInt(16) - 4);
            double value = i < 1000
                    ? special[i % special.length]
                    : i % 3 == 0
                            ? (random.nextInt(20_000) - 10_000) / 2000.0
                            : i % 3 == 1 ? size * (random.nextDouble() - 0.5) : random.nextInt(100_000) / 1e4;
            assertThat(Text.fixed(value, decimals)).isEqualTo(String.format(Locale.ROOT, "%." + decimals + "f", value));
        }
    }

    /** In the middle between two last digits and up to three doubles off it, of all sizes that are written the quick way. */
    @Test
    void aMiddleIsRoundedAsTheFormatterDoes() {
        var random = new SplittableRandom(5);
        for (int i = 0; i < 100_000; i++) {
            int decimals = random.nextInt(10);
            double whole = Math.floor(Math.pow(10, 12 * random.nextDouble()));
            double value = (10 * whole + 5) / Math.pow(10, decimals + 1);
            int off = random.nextInt(7) - 3;
            for (int k = 0; k < Math.abs(off); k++) {
                value = off > 0 ? Math.nextUp(value) : Math.nextDown(value);
            }
            double signed = random.nextBoolean() ? value : -value;
            assertThat(Text.fixed(signed, decimals))
                    .isEqualTo(String.format(Locale.ROOT, "%." + decimals + "f", signed));
        }
    }
}
