package dev.runnel.timeseries.csv;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Series;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.function.DoubleFunction;
import org.junit.jupiter.api.Test;

/** Numbers that come again and again are written as they were the first time, and those that do not as ever. */
class KnownNumbersTest {
    private static final int SIZE = 40_000;

    @Test
    void columnsOfFewAndOfManyNumbersAreWrittenAlike() {
        var random = new SplittableRandom(11);
        double[] few = new double[SIZE];
        double[] many = new double[SIZE];
        double[] odd = new double[SIZE];
        double[] strange = {Double.NaN, 0, -0.0, 123_456.7, 1e15, -0.00001, 5e-324, 0.123456789012};
        for (int i = 0; i < SIZE; i++) {
            few[i] = random.nextInt(3000) / 1000.0;
            many[i] = random.nextDouble();
            odd[i] = i % 2 == 0 ? strange[random.nextInt(strange.length)] : random.nextInt(50) / 8.0;
        }
        compare(few, many, odd, CsvWriter.standard().withDecimals(5), value -> Text.fixed(value, 5));
        compare(few, many, odd, CsvWriter.standard(), Text::number);
    }

    private static void compare(
            double[] few, double[] many, double[] odd, CsvWriter writer, DoubleFunction<String> text) {
        long[] times = new long[SIZE];
        StringBuilder expected = new StringBuilder("time,few,many,odd\n");
        for (int i = 0; i < SIZE; i++) {
            times[i] = i * 120_000_000_000L;
            expected.append(java.time.Instant.ofEpochSecond(i * 120L))
                    .append(',')
                    .append(text.apply(few[i]))
                    .append(',')
                    .append(text.apply(many[i]))
                    .append(',')
                    .append(Double.isNaN(odd[i]) ? "" : text.apply(odd[i]))
                    .append('\n');
        }
        Map<String, Series> columns = new LinkedHashMap<>();
        columns.put("few", Series.of(times, few));
        columns.put("many", Series.of(times, many));
        columns.put("odd", Series.of(times, odd));
        assertThat(writer.toText(columns).equals(expected.toString())).isTrue();
    }

    @Test
    void isGivenUpWhereNumbersDoNotComeAgain() {
        KnownNumbers known = new KnownNumbers();
        byte[] text = "1.25    ".getBytes(java.nio.charset.StandardCharsets.US_ASCII);
        known.learn(1.25, text, 0, 4);
        assertThat(known.write(1.25, new byte[8], 0)).isEqualTo(4);
        for (int i = 0; i < 20_000; i++) {
            assertThat(known.write(2 + i, new byte[8], 0)).isEqualTo(-1);
        }
        assertThat(known.write(1.25, new byte[8], 0)).isEqualTo(-1);
    }
}
