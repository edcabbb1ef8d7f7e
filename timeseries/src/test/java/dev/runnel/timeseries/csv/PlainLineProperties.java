package dev.runnel.timeseries.csv;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import net.jqwik.api.Tuple;

/** Plain lines are read by a way of their own; a blank behind the time sends the same line the general way. */
class PlainLineProperties {
    private static final CsvLayout LAYOUT = CsvLayout.of("time")
            .withZone(ZoneId.of("Europe/London"))
            .withMissingMarks("NA", "-999")
            .withColumn("a", "depth", CsvUnit.MILLIMETRE)
            .withColumn("velocity");

    @Provide
    Arbitrary<List<String>> lines() {
        Arbitrary<String> time = Arbitraries.oneOf(
                Arbitraries.integers().between(0, 59).map(i -> String.format("2026-03-01T10:%02d:00", i)),
                Arbitraries.strings().withChars("0123456789/:;").ofLength(2).map(two -> "2026-03-02T11:" + two + ":00"),
                Arbitraries.strings().withChars("0123456789/:;").ofLength(2).map(two -> "2026-03-02T11:00:" + two),
                Arbitraries.strings().withChars("0123456789-T").ofLength(5).map(five -> "2026-03-" + five + "11:00"),
                Arbitraries.of(
                        "\0\0\0\0\0\0\0\0\0\0\00011:00:00",
                        "2026-03-02 11:00",
                        "2026-03-02T11:00Z",
                        "2026-03-02T11:00:07Z",
                        "2026-03-29T01:30:00",
                        "2026-10-25T01:30:00",
                        "2026-02-29T00:00",
                        "2026-03-02T24:00",
                        "2026-03-02T11:60",
                        "2026-03-02T11:00:00.5",
                        "2026-03-02T11:00:0",
                        "2026-03-02T11:00:00+01:00",
                        "1677-01-01T00:00",
                        "2262-04-11T23:47:17Z",
                        "2026-03-02",
                        "x",
                        ""));
        Arbitrary<String> number = Arbitraries.oneOf(
                Arbitraries.doubles().between(-5, 5).ofScale(4).map(String::valueOf),
                Arbitraries.strings().withChars("0123456789").ofMaxLength(9),
                Arbitraries.strings().withChars("0123456789.-").ofMaxLength(18),
                Arbitraries.strings().withChars("0123456789./:;\u0080é\u00fe").ofMaxLength(9),
                Arbitraries.of(
                        "",
                        "-",
                        "-0",
                        ".5",
                        "5.",
                        ".",
                        "1..2",
                        "1e3",
                        "NaN",
                        "NA",
                        "-999",
                        "999",
                        "+1",
                        "\"1.5\"",
                        "1 ",
                        "123456789012345",
                        "1234567890123456",
                        "0.000000000000001",
                        "12345678.12345678",
                        "1x",
                        "٣"));
        Arbitrary<String> other = Arbitraries.of("", "x", "\"a,b\"", "a\"b", " ", "nul\u0000");
        return Combinators.combine(time, number, number, other, Arbitraries.of("", ",", ",7"))
                .as((t, a, b, o, end) -> t + "," + a + "," + o + "," + b + end)
                .list()
                .ofMaxSize(30);
    }

    @Property(tries = 2000)
    void bothWaysReadAndReportTheSame(@ForAll("lines") List<String> lines) {
        String head = "time,depth,note,velocity\n";
        String plain = head + String.join("\n", lines) + "\n";
        String general = head
                + lines.stream()
                        .map(line -> line.replaceFirst(",", " ,") + "\n")
                        .collect(Collectors.joining());
        assertSame(CsvRecords.parse(plain, LAYOUT), CsvRecords.parse(general, LAYOUT));
    }

    /** Numbers that look like the one above them, some with a letter that does not belong there. */
    @Provide
    Arbitrary<List<String>> alike() {
        Arbitrary<String> digits = Arbitraries.integers()
                .between(0, 4)
                .flatMap(whole -> Arbitraries.strings().numeric().ofLength(whole));
        Arbitrary<String> number = Combinators.combine(
                        Arbitraries.of("", "", "", "-"), digits, Arbitraries.of(".", ".", ""), digits)
                .as((sign, whole, point, fraction) -> sign + whole + point + fraction);
        Arbitrary<String> odd = Combinators.combine(
                        number,
                        Arbitraries.integers().between(0, 8),
                        Arbitraries.of('.', '-', 'x', '/', ':', '\u0080', 'é'))
                .as((text, at, letter) -> text.isEmpty()
                        ? ""
                        : new StringBuilder(text)
                                .replace(at % text.length(), at % text.length() + 1, letter.toString())
                                .toString());
        Arbitrary<String> usual = Combinators.combine(
                        Arbitraries.integers().between(0, 9),
                        Arbitraries.integers().between(0, 999))
                .as((whole, fraction) -> String.format(Locale.ROOT, "%d.%03d", whole, fraction));
        return Arbitraries.frequencyOf(Tuple.of(6, usual), Tuple.of(3, number), Tuple.of(1, odd))
                .list()
                .ofMaxSize(40);
    }

    @Property(tries = 1000)
    void numbersThatLookAlikeTooAreReadTheSame(
            @ForAll("alike") List<String> first, @ForAll("alike") List<String> other) {
        CsvLayout layout = CsvLayout.of("time")
                .withZone(ZoneOffset.UTC)
                .withColumn("a", "depth", CsvUnit.MILLIMETRE)
                .withColumn("velocity");
        StringBuilder plain = new StringBuilder("time,depth,velocity\n");
        StringBuilder general = new StringBuilder(plain);
        for (int i = 0; i < Math.min(first.size(), other.size()); i++) {
            String time = String.format(Locale.ROOT, "2026-03-01T10:%02d:00", i);
            plain.append(time + "," + first.get(i) + "," + other.get(i) + "\n");
            general.append(time + " ," + first.get(i) + "," + other.get(i) + "\n");
        }
        assertSame(CsvRecords.parse(plain.toString(), layout), CsvRecords.parse(general.toString(), layout));
    }

    /** The file's own reader takes bytes as they are until one is not ASCII. */
    @Property(tries = 200)
    void aFileIsReadAsItsText(@ForAll("lines") List<String> lines) throws IOException {
        String text = "time,depth,note,velocity\n" + String.join(lines.size() % 2 == 0 ? "\r\n" : "\r", lines);
        for (boolean mark : new boolean[] {false, true}) {
            ByteArrayOutputStream bytes = new ByteArrayOutputStream();
            bytes.writeBytes((mark ? "\uFEFF" : "").getBytes(StandardCharsets.UTF_8));
            bytes.writeBytes(text.getBytes(StandardCharsets.UTF_8));
            Path file = Files.createTempFile("plain", ".csv");
            try {
                Files.write(file, bytes.toByteArray());
                assertSame(CsvRecords.read(file, LAYOUT), CsvRecords.parse(text, LAYOUT));
            } finally {
                Files.delete(file);
            }
        }
    }

    private static void assertSame(CsvResult one, CsvResult other) {
        assertThat(one.series("a")).isEqualTo(other.series("a"));
        assertThat(one.series("velocity")).isEqualTo(other.series("velocity"));
        assertThat(one.report().lines()).isEqualTo(other.report().lines());
        assertThat(one.report().accepted()).isEqualTo(other.report().accepted());
        assertThat(one.report().altered()).isEqualTo(other.report().altered());
        assertThat(one.report().issues().toString())
                .isEqualTo(other.report().issues().toString());
    }
}
