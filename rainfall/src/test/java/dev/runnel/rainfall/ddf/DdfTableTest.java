package dev.runnel.rainfall.ddf;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class DdfTableTest {
    private static final ReturnPeriodBasis ANNUAL = ReturnPeriodBasis.ANNUAL_MAXIMUM;
    private static final ReturnPeriodBasis PEAKS = ReturnPeriodBasis.PEAKS_OVER_THRESHOLD;

    private static final String TABLE = """
            # Marram Bay, invented
            duration_min, 2,  5,   10,  30

            15,           10, 14,  17,  22
            60,           16, 22,  26,  33
            240,          24, 32,  38,  48
            """;

    private static DdfTable table() {
        return DdfTable.parse(TABLE, ANNUAL);
    }

    private static Duration minutes(long minutes) {
        return Duration.ofMinutes(minutes);
    }

    static DdfTable kostra() throws IOException {
        try (InputStream in =
                Objects.requireNonNull(DdfTableTest.class.getResourceAsStream("kostra-dwd-2010r-42016.csv"))) {
            return DdfTable.parse(new String(in.readAllBytes(), StandardCharsets.UTF_8), PEAKS);
        }
    }

    @Test
    void tabulatedValuesComeBackExactly() {
        assertThat(table().depthMm(minutes(60), 5)).isEqualTo(22);
        assertThat(table().depthMm(minutes(240), 30)).isEqualTo(48);
        assertThat(table().returnPeriod(minutes(15), 10))
                .isEqualTo(new ReturnPeriod(ReturnPeriod.Standing.WITHIN, 2, ANNUAL));
        assertThat(table().returnPeriod(minutes(240), 48).years()).isEqualTo(30);
    }

    @Test
    void interpolatesInTheLogarithms() {
        // Half way in ln D between 15 and 60 min: the geometric mean of the depths.
        assertThat(table().depthMm(minutes(30), 2)).isCloseTo(Math.sqrt(160), within(1e-13));
        // Half way in ln T between 10 and 30 years of peaks over threshold: the mean of the depths.
        DdfTable peaks = DdfTable.parse(TABLE, PEAKS);
        assertThat(peaks.depthMm(minutes(60), Math.sqrt(300))).isCloseTo(29.5, within(1e-13));
        assertThat(peaks.returnPeriod(minutes(60), 29.5).years()).isCloseTo(Math.sqrt(300), within(1e-12));
        assertThat(table().intensityMmPerHour(minutes(30), 2)).isCloseTo(2 * Math.sqrt(160), within(1e-13));
    }

    /** Depths of the Gumbel law, location 30 mm and scale 8 mm, by its own formula: 30 - 8 ln(-ln(1 - 1/T)). */
    @Test
    void annualMaximaOfTheGumbelLawAreStraight() {
        double[] years = {1.1, 2, 10, 100};
        double[] depths = Arrays.stream(years).map(DdfTableTest::gumbel).toArray();
        DdfTable table = DdfTable.of(ANNUAL, List.of(minutes(60)), years, new double[][] {depths});
        for (double between : new double[] {1.2, 1.3, 1.5, 3, 7, 40}) {
            assertThat(table.depthMm(minutes(60), between)).isCloseTo(gumbel(between), within(1e-12));
            assertThat(table.returnPeriod(minutes(60), gumbel(between)).years())
                    .isCloseTo(between, within(1e-12 * between));
        }
    }

    private static double gumbel(double years) {
        return 30 - 8 * Math.log(-Math.log(1 - 1 / years));
    }

    /** The same depths given by years of annual maxima or by those of peaks over threshold. */
    @Test
    void oneTableHasOneAnswerInEitherBasis() {
        DdfTable annual = table();
        double[] years = Arrays.stream(annual.years())
                .map(each -> ANNUAL.convert(each, PEAKS))
                .toArray();
        double[][] depths = annual.durations().stream()
                .map(duration -> Arrays.stream(annual.years())
                        .map(each -> annual.depthMm(duration, each))
                        .toArray())
                .toArray(double[][]::new);
        DdfTable peaks = DdfTable.of(PEAKS, annual.durations(), years, depths);
        for (double between : new double[] {2.1, 3, 4.5, 7, 20}) {
            assertThat(annual.depthMm(minutes(30), between))
                    .isCloseTo(peaks.withBasis(ANNUAL).depthMm(minutes(30), between), within(1e-12));
        }
    }

    /**
     * Deutscher Wetterdienst, KOSTRA-DWD-2010R, cell 42016: the columns for 2 to 20 years, printed to 0.1 mm, from those
     * for 1 and 30 years alone. The table is made by a law linear in ln T, so the difference is rounding: half a unit of
     * the printed value and up to half a unit of the interpolated ends.
     */
    @Test
    void linearInTheLogarithmOfReturnPeriodAgreesWithKostra() throws IOException {
        DdfTable full = kostra();
        double[][] ends = full.durations().stream()
                .map(d -> new double[] {full.depthMm(d, 1), full.depthMm(d, 30)})
                .toArray(double[][]::new);
        DdfTable sparse = DdfTable.of(PEAKS, full.durations(), new double[] {1, 30}, ends);
        int compared = 0;
        for (Duration duration : full.durations()) {
            for (double years : new double[] {2, 3, 5, 10, 20}) {
                assertThat(sparse.depthMm(duration, years))
                        .as("%s, %s years", duration, years)
                        .isCloseTo(full.depthMm(duration, years), within(0.1 + 1e-9));
                compared++;
            }
        }
        assertThat(compared).isEqualTo(90);
    }

    /** The same source prints, for 75.2 mm in a day, that it is rarer than 30 years, and 26.4 mm less than one. */
    @Test
    void saysWhatLiesBeyondTheTable() throws IOException {
        ReturnPeriod rare = kostra().returnPeriod(minutes(1440), 75.2);
        assertThat(rare.isAbove()).isTrue();
        assertThat(rare.isWithin()).isFalse();
        assertThat(rare).hasToString("ReturnPeriod[rarer than 1 in 30 years, peaks over threshold]");
        ReturnPeriod frequent = kostra().returnPeriod(minutes(1440), 26.4);
        assertThat(frequent.isBelow()).isTrue();
        assertThat(frequent).hasToString("ReturnPeriod[more frequent than 1 in 1 year, peaks over threshold]");
        assertThat(kostra().returnPeriod(minutes(1440), 38.2).years()).isEqualTo(2);
        assertThat(table().returnPeriod(minutes(60), 0).isBelow()).isTrue();
    }

    @Test
    void refusesWhatItWouldHaveToExtrapolate() {
        assertThatThrownBy(() -> table().depthMm(minutes(60), 100))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("returnPeriodYears must be in [2, 30] years, was 100");
        assertThatThrownBy(() -> table().depthMm(minutes(14), 5))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("duration must be in [15 min, 4 h], was 14 min");
        assertThatThrownBy(() -> table().returnPeriod(minutes(241), 5)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> table().returnPeriod(minutes(60), Double.NaN))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthMm must be 0 or greater and finite (mm), was NaN");
    }

    @Test
    void refusesATableThatIsNone() {
        double[] years = {2, 5};
        List<Duration> durations = List.of(minutes(15), minutes(30));
        assertThatThrownBy(() -> DdfTable.of(ANNUAL, durations, years, new double[][] {{10, 14}, {9, 15}}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "depth must not fall with duration, below 10 mm in 15 min, was 9 mm for 30 min and 2 years");
        assertThatThrownBy(() -> DdfTable.of(ANNUAL, durations, years, new double[][] {{10, 9}, {12, 15}}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depth must not fall with return period, below 10 mm at 2 years, was 9 mm for 15 min and"
                        + " 5 years");
        assertThatThrownBy(() -> DdfTable.of(ANNUAL, durations, years, new double[][] {{10, 14}, {12, 0}}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depth must be greater than 0 and finite (mm), was 0 for 30 min and 5 years");
        double[][] blank = {{10, 14}, {Double.NaN, Double.NaN}};
        assertThatThrownBy(() -> DdfTable.of(ANNUAL, durations, years, blank))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthMm of 30 min must hold at least one depth, was blank");
        assertThatThrownBy(() -> DdfTable.of(ANNUAL, durations, years, new double[][] {{10, 14}}))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("depthMm must have length 2, was 1");
        assertThatThrownBy(() -> DdfTable.of(ANNUAL, durations, new double[] {1, 5}, new double[2][2]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("return period must be above 1 (years, annual maximum) and finite, was 1");
        assertThatThrownBy(() -> DdfTable.of(ANNUAL, List.of(), new double[0], new double[0][]))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("table must have at least one duration and one return period, had 0 and 0");
    }

    @Test
    void readsAFile(@TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("ddf.csv"), "\uFEFF" + TABLE, StandardCharsets.UTF_8);
        assertThat(DdfTable.read(file, ANNUAL)).isEqualTo(table());
        Path hours = Files.writeString(folder.resolve("hours.csv"), "duration_h,2\r\n0.5,9\r\n1,12\r\n");
        assertThat(DdfTable.read(hours, PEAKS).durations()).containsExactly(minutes(30), minutes(60));
        Path bytes = Files.write(folder.resolve("bytes.csv"), new byte[] {(byte) 0xC3, (byte) 0x28});
        assertThatThrownBy(() -> DdfTable.read(bytes, ANNUAL))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(bytes + ": must be text in UTF-8, was not");
        Path none = folder.resolve("none.csv");
        assertThatThrownBy(() -> DdfTable.read(none, ANNUAL))
                .isInstanceOf(UncheckedIOException.class)
                .hasMessage("cannot read " + none + ": there is no such file");
    }

    @Test
    void saysWhereATextGoesWrong() {
        assertWrong("", "text: must hold a line such as duration_min,1,2,5,10,30,100, was empty");
        assertWrong("duration_min,2\n", "text: must hold at least one line of depths, had none");
        assertWrong("time;depth", "text line 1, column 1: must be duration_min or duration_h, was 'time;depth'");
        assertWrong(
                "duration_min",
                "text line 1, column 1: must be followed by return periods in years, a line such as"
                        + " duration_min,1,2,5,10,30,100");
        assertWrong(
                "duration_min,5,2\n", "text line 1, column 3: return period must be above 5 years before it, was 2");
        assertWrong("# a\nduration_min,2,5\n5,1,two\n", "text line 3, column 3: must be a number, was 'two'");
        assertWrong(
                "duration_min,2,5\n5,1\n",
                "text line 2, column 2: must be the last of 3 columns, as in the first line");
        assertWrong(
                "duration_min,2,5\n5,1,2\n5,1,2\n",
                "text line 3, column 1: duration must be longer than 5 min before it, was 5 min");
        assertWrong(
                "duration_min,2,5\n5,4,5\n10,3,6\n",
                "text line 3, column 2: depth must not fall with duration, below 4 mm in 5 min, was 3 mm for 10 min and"
                        + " 2 years");
    }

    private static void assertWrong(String text, String message) {
        assertThatThrownBy(() -> DdfTable.parse(text, ANNUAL))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(message);
    }

    @Test
    void aTableOfOneDurationAndOneReturnPeriod() {
        DdfTable one = DdfTable.parse("duration_h,10\n1,30\n", ANNUAL);
        assertThat(one.depthMm(Duration.ofHours(1), 10)).isEqualTo(30);
        assertThat(one.returnPeriod(Duration.ofHours(1), 30).years()).isEqualTo(10);
        assertThat(one.returnPeriod(Duration.ofHours(1), 31).isAbove()).isTrue();
    }

    @Test
    void readsWellAtThePrompt() {
        assertThat(table())
                .hasToString("DdfTable[3 durations 15 min to 4 h, 4 return periods 2 to 30 years, annual maximum]")
                .hasSameHashCodeAs(table());
        assertThat(table().returnPeriod(minutes(60), 24)).hasToString("ReturnPeriod[1 in 7.03 years, annual maximum]");
    }

    /** A published table rounded to whole millimetres has the same depth for two return periods. */
    @Test
    void equalDepthsOfTwoReturnPeriodsHaveTheShorter() {
        DdfTable table = DdfTable.parse("""
                duration_h,2,5,10,25
                6,40,45,50,50
                12,48,48,55,60
                """, PEAKS);
        assertThat(table.depthMm(Duration.ofHours(12), 3)).isEqualTo(48);
        assertThat(table.returnPeriod(Duration.ofHours(12), 48).years()).isEqualTo(2);
        assertThat(table.returnPeriod(Duration.ofHours(6), 50).years()).isEqualTo(10);
        assertThat(table.returnPeriod(Duration.ofHours(6), 50.5).isAbove()).isTrue();
        assertThat(table.returnPeriod(Duration.ofHours(12), 51.5).years()).isCloseTo(Math.sqrt(50), within(1e-12));
    }

    @Test
    void blankCellsAreLeftOutAndNamed() {
        DdfTable table = DdfTable.parse("""
                duration_min,2,5,20,100
                15,10,,20,
                60,16,22,28,40
                """, PEAKS);
        assertThat(table.blanks()).containsExactly("15 min at 5 years", "15 min at 100 years");
        assertThat(table.toString()).contains(", blank [15 min at 5 years, 15 min at 100 years]");
        double share = Math.log(2.5) / Math.log(10);
        assertThat(table.depthMm(minutes(15), 5)).isCloseTo(10 + 10 * share, within(1e-12));
        assertThat(table.returnPeriod(minutes(15), 21).isAbove()).isTrue();
        assertThat(table.returnPeriod(minutes(15), 21).years()).isEqualTo(20);
        assertThat(table.depthMm(minutes(60), 100)).isEqualTo(40);
        assertThatThrownBy(() -> table.depthMm(minutes(15), 50))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage(
                        "returnPeriodYears must be in [2, 20] years for 15 min, beyond which the table is blank, was"
                                + " 50");
        assertThatThrownBy(() -> DdfTable.parse("duration_min,2,5\n15,10,12\n60,,11\n", PEAKS))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("line 3, column 3: depth must not fall with duration, below 12 mm");
    }
}
