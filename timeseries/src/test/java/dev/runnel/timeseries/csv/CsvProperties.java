package dev.runnel.timeseries.csv;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.SeriesBuilder;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.LongRange;

class CsvProperties {
    @Property
    void whatIsWrittenReadsBackToTheSameBits(@ForAll("records") Series series) {
        CsvLayout layout = CsvLayout.of("time").withColumn(CsvColumn.of("x").withQuality("x_quality"));
        String text = CsvWriter.standard().withQuality().toText(Map.of("x", series));
        CsvResult result = CsvRecords.parse(text, layout);
        assertThat(result.series("x")).isEqualTo(series);
        assertThat(result.report().issueCount()).isZero();
        assertThat(result.report().lines()).isEqualTo(series.size());
    }

    /** Columns of other instants, or of the same ones, with as many decimals as asked for: as the JDK writes each cell. */
    @Property(tries = 300)
    void rowsAreThoseOfAllInstants(
            @ForAll("records") Series one,
            @ForAll("records") Series other,
            @ForAll boolean alike,
            @ForAll @IntRange(max = 9) int decimals) {
        Map<String, Series> columns = new LinkedHashMap<>();
        columns.put("a", one);
        columns.put("b", alike ? one : other);
        SortedSet<Instant> instants = new TreeSet<>();
        columns.values().forEach(each -> each.forEach(reading -> instants.add(reading.time())));
        StringBuilder expected = new StringBuilder("time,a,a_quality,b,b_quality\n");
        for (Instant instant : instants) {
            expected.append(instant);
            for (Series column : columns.values()) {
                int at = column.firstIndexAtOrAfter(instant);
                boolean here = at < column.size() && column.time(at).equals(instant);
                expected.append(',');
                if (here && !Double.isNaN(column.value(at))) {
                    expected.append(String.format(Locale.ROOT, "%." + decimals + "f", column.value(at)));
                }
                expected.append(',').append(here ? column.quality(at).toText() : "");
            }
            expected.append('\n');
        }
        assertThat(CsvWriter.standard().withDecimals(decimals).withQuality().toText(columns))
                .isEqualTo(expected.toString());
    }

    @Property
    void decimalsAreReadAsTheJdkReadsThem(
            @ForAll("decimals") String text, @ForAll @IntRange(min = 0, max = 5) int padding) {
        char[] buffer = (" ".repeat(padding) + text + "x").toCharArray();
        double parsed = Decimals.parse(buffer, padding, padding + text.length(), '.');
        assertThat(Double.doubleToLongBits(parsed)).isEqualTo(Double.doubleToLongBits(Double.parseDouble(text)));
    }

    @Property
    void everyLineIsAccountedFor(@ForAll List<String> garbage) {
        String text = "time,x\n" + String.join("\n", garbage) + "\n";
        CsvLayout layout = CsvLayout.of("time").withColumn("x").withIssueLimit(3);
        if (text.chars().anyMatch(c -> c < ' ' && c != '\n' && c != '\r' && c != '\t' && c != '\f')) {
            return;
        }
        CsvReport report = CsvRecords.parse(text, layout).report();
        assertThat(report.accepted() + report.rejected()).isEqualTo(report.lines());
        assertThat(report.issueCount()).isGreaterThanOrEqualTo(report.rejected());
        assertThat(report.issues().size()).isLessThanOrEqualTo(3);
    }

    @Property
    void theShortCutReadsTimesAsTheFormatterDoes(
            @ForAll("patterns") String pattern,
            @ForAll @LongRange(min = -60_000_000_000L, max = 250_000_000_000L) long second,
            @ForAll @IntRange(max = 40) int spoiled) {
        DateTimeFormatter formatter = PatternTime.formatter(pattern);
        StringBuilder text =
                new StringBuilder(formatter.format(LocalDateTime.ofEpochSecond(second, 0, ZoneOffset.UTC)));
        if (spoiled < text.length()) {
            text.setCharAt(spoiled, '9');
        }
        FixedFields shortCut = FixedFields.of(pattern);
        assertThat(shortCut).isNotNull();
        char[] characters = text.toString().toCharArray();
        if (shortCut.parse(characters, 0, characters.length)) {
            TemporalAccessor parsed = formatter.parse(text);
            LocalDate date = LocalDate.from(parsed);
            LocalTime time = parsed.isSupported(ChronoField.SECOND_OF_DAY) ? LocalTime.from(parsed) : LocalTime.MIN;
            assertThat(shortCut.localSecond())
                    .isEqualTo(LocalDateTime.of(date, time).toEpochSecond(ZoneOffset.UTC));
        } else {
            assertThat(spoiled).isLessThan(text.length());
        }
    }

    @Provide
    Arbitrary<String> patterns() {
        return Arbitraries.of(
                "dd/MM/yyyy HH:mm", "dd.MM.uuuu HH:mm:ss", "yyyy-MM-dd", "yyyyMMdd HHmm", "MM/dd/yyyy HH:mm:ss");
    }

    @Provide
    Arbitrary<String> decimals() {
        Arbitrary<String> sign = Arbitraries.of("", "-", "+");
        Arbitrary<String> whole = Arbitraries.strings().numeric().ofMinLength(1).ofMaxLength(20);
        Arbitrary<String> fraction = Arbitraries.strings().numeric().ofMaxLength(25);
        Arbitrary<String> exponent = Arbitraries.of("", "e5", "E-7", "e+12");
        return Combinators.combine(sign, whole, fraction, exponent)
                .as((s, w, f, e) -> s + w + (f.isEmpty() ? "" : "." + f) + e);
    }

    @Provide
    Arbitrary<Series> records() {
        Arbitrary<Long> spacing = Arbitraries.longs().between(1, 4_000_000_000_000L);
        Arbitrary<Double> value =
                Arbitraries.longs().map(Double::longBitsToDouble).filter(x -> !Double.isInfinite(x));
        Arbitrary<Quality> quality =
                Arbitraries.of(Quality.GOOD, Quality.UNCHECKED, Quality.ESTIMATE, Quality.POOR, Quality.SUSPECT);
        Arbitrary<Long> start = Arbitraries.longs().between(-9_000_000_000_000_000_000L, 9_000_000_000_000_000_000L);
        return Combinators.combine(
                        start,
                        Combinators.combine(spacing, value, quality)
                                .as(Entry::new)
                                .list()
                                .ofMaxSize(20))
                .as(CsvProperties::series);
    }

    private record Entry(long spacing, double value, Quality quality) {}

    private static Series series(long start, List<Entry> entries) {
        SeriesBuilder builder = Series.builder();
        long time = start;
        for (Entry entry : entries) {
            time += entry.spacing;
            boolean missing = Double.isNaN(entry.value);
            builder.add(time, missing ? Double.NaN : entry.value, missing ? Quality.MISSING : entry.quality);
        }
        return builder.build();
    }
}
