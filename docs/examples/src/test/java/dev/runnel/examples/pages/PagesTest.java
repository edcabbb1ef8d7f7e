package dev.runnel.examples.pages;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayInputStream;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.GZIPInputStream;
import org.junit.jupiter.api.Test;

class PagesTest {
    private static final String PAGE = Demo.page().toHtml();

    @Test
    void aYearAtTwoMinutesIsBelowFiveMegabytes() {
        assertThat(PAGE.length()).isBetween(100_000, 5_000_000);
    }

    @Test
    void nothingReachesOutOfThePage() {
        assertThat(Pattern.compile("(src|href)=\"(?!#|index\\.html)")
                        .matcher(PAGE)
                        .find())
                .isFalse();
        assertThat(PAGE).contains("default-src 'none'");
        assertThat(PAGE).doesNotContain("url(");
    }

    @Test
    void namesAndTextsCannotBecomeMarkup() {
        assertThat(PAGE).contains("<h1>Marram Bay &lt;demo&gt;</h1>").contains("a year &amp; two minutes");
        assertThat(PAGE).doesNotContain("a finding with </script>");
    }

    /** The script reads back what was packed: every reading to the step that is drawn, missing ones where they are. */
    @Test
    void whatIsPackedIsWhatWasRead() throws Exception {
        RecordRows record = Demo.page().record().orElseThrow();
        byte[] bytes;
        try (var in = new GZIPInputStream(
                new ByteArrayInputStream(Base64.getDecoder().decode(between("id=\"data\">", "</script>"))))) {
            bytes = in.readAllBytes();
        }
        int at = 0;
        for (RecordRows.Row row : record.rows()) {
            long before = 0;
            for (double value : row.values()) {
                long code = 0;
                int shift = 0;
                int next;
                do {
                    next = bytes[at++] & 0xff;
                    code |= (long) (next & 127) << shift;
                    shift += 7;
                } while (next > 127);
                if (code == 0) {
                    assertThat(value).isNaN();
                    continue;
                }
                long folded = code - 1;
                before += (folded >>> 1) ^ -(folded & 1);
                if (Math.abs(before * row.step() - value * row.factor()) > 0.5000001 * row.step()) {
                    throw new AssertionError(row.name() + ": " + before * row.step() + " for " + value * row.factor());
                }
            }
        }
        assertThat(at).isEqualTo(bytes.length);
    }

    /** Every column of the printed record reaches as high as the highest reading that is drawn there, found one by one. */
    @Test
    void printedColumnsReachAsHighAsTheirReadings() {
        long[] times = new long[5000];
        double[] values = new double[times.length];
        for (int i = 0; i < times.length; i++) {
            // Steps of many lengths, one of them longer than a column.
            times[i] = 1_700_000_000_000_000_000L + 1_000_000_000L * (60L * i + i * i % 50 + (i > 3000 ? 4000 : 0));
            values[i] = i % 7 == 3 ? Double.NaN : 0.4 + 0.3 * Math.sin(i / 40.0) + (i % 11) / 100.0;
        }
        RecordRows record = RecordRows.in(java.time.ZoneOffset.UTC)
                .withReadings("Level, mm", dev.runnel.timeseries.Series.of(times, values), 1000, 1);
        Matcher columns = Pattern.compile("M([0-9.]+) ([0-9.]+)V([0-9.]+)").matcher(PrintedRecord.of(record));
        double[] highest = new double[1000];
        double span = times[times.length - 1] - times[0];
        for (int i = 0; i < times.length; i++) {
            int column = 52 + (int) (818 * ((times[i] - times[0]) / span));
            highest[column] = values[i] > highest[column] ? values[i] : highest[column];
        }
        int drawn = 0;
        while (columns.find()) {
            int column = (int) Double.parseDouble(columns.group(1));
            // The row ends at 24 and begins at 98, for 0 to 800 mm.
            double top = 98 - 74 * highest[column] / 0.8;
            // A column of one reading is a short line above it; the drawing has one decimal.
            assertThat(Double.parseDouble(columns.group(3))).isBetween(top - 0.76, top + 0.06);
            highest[column] = 0;
            drawn++;
        }
        assertThat(drawn).isGreaterThan(700);
        assertThat(highest).containsOnly(0);
    }

    @Test
    void timesAreRunsOfEqualSteps() {
        Matcher runs = Pattern.compile("\"name\":\"Level, mm\",.*?\"runs\":\\[([^\\]]*)\\]")
                .matcher(PAGE);
        assertThat(runs.find()).isTrue();
        String[] parts = runs.group(1).split(",");
        long size = 0;
        for (int i = 2; i < parts.length; i += 3) {
            size += Long.parseLong(parts[i]);
        }
        assertThat(size).isEqualTo(Demo.level().size());
        assertThat(parts.length / 3).isLessThan(20);
    }

    @Test
    void theClockOfThePageKnowsItsTurns() {
        assertThat(PAGE)
                .contains("[" + Instant.parse("2025-03-30T01:00:00Z").getEpochSecond() + ",3600]")
                .contains("[" + Instant.parse("2025-10-26T01:00:00Z").getEpochSecond() + ",0]");
    }

    @Test
    void drawingsAreWellFormed() throws Exception {
        List<SurveyPage.Line> chain = new java.util.ArrayList<>();
        for (int i = 0; i < 21; i++) {
            chain.add(new SurveyPage.Line(
                    "s" + i, "Site " + i, "", 0, "", "", "", "", i == 0 ? List.of() : List.of("s" + (i - 1))));
        }
        // Twenty-one in a row would be too small to read across a page.
        assertThat(SurveyPage.network(chain)).contains("viewBox=\"0 0 440 1154\"");
        List<String> drawings = List.of(
                SurveyPage.network(chain),
                PrintedRecord.of(Demo.page().record().orElseThrow()),
                SurveyPage.network(List.of(
                        new SurveyPage.Line("a", "A & B", "", 0, "", "", "", "", List.of()),
                        new SurveyPage.Line("b", "Beach", "", 0, "", "", "", "", List.of("a", "c")),
                        new SurveyPage.Line("c", "ring", "", 0, "", "", "", "", List.of("b")))));
        for (String drawing : drawings) {
            var parser = javax.xml.parsers.DocumentBuilderFactory.newInstance().newDocumentBuilder();
            assertThat(parser.parse(new ByteArrayInputStream(drawing.getBytes(java.nio.charset.StandardCharsets.UTF_8)))
                            .getDocumentElement()
                            .getTagName())
                    .isEqualTo("svg");
            assertThat(drawing).doesNotContain("NaN").doesNotContain("Infinity");
        }
    }

    private static String between(String start, String end) {
        int from = PAGE.indexOf(start) + start.length();
        return PAGE.substring(from, PAGE.indexOf(end, from));
    }
}
