package dev.runnel.timeseries.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.csv.CsvIssue.Kind;
import java.io.IOException;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CsvRecordsTest {
    private static final CsvLayout DEPTH = CsvLayout.of("time").withColumn("depth");

    @Test
    void aHeaderAloneGivesAnEmptySeriesAndNoError() {
        CsvResult result = CsvRecords.parse("time,d\n", CsvLayout.of("time").withColumn("d", "d", CsvUnit.METRE));
        assertThat(result.series("d").isEmpty()).isTrue();
        assertThat(result.report().lines()).isZero();
        assertThat(result.report().issues()).isEmpty();
    }

    @Test
    void readsInstantsAndChosenColumnsInTheirUnits() {
        CsvLayout layout = CsvLayout.of("time")
                .withColumn("flow", "q", CsvUnit.LITRE_PER_SECOND)
                .withColumn("depth", "level", CsvUnit.MILLIMETRE);
        CsvResult result = CsvRecords.parse("""
                # logger 17
                level,battery,time,q

                123,3.6,2026-01-01T00:00:00Z,12.5
                # a note
                124,3.6,2026-01-01T01:02+01:00,-0.5
                """, layout);
        assertThat(result.series("depth"))
                .isEqualTo(series("2026-01-01T00:00:00Z", 0.123, "2026-01-01T00:02:00Z", 0.124));
        assertThat(result.series("flow").toValues()).containsExactly(0.0125, -0.0005);
        assertThat(result.names()).containsExactly("flow", "depth");
        assertThat(result.report()).hasToString("CsvReport[text: 2 lines, 2 accepted, 0 rejected, 0 altered]");
    }

    @Test
    void acceptsTheFormsOfIso8601() {
        CsvResult result = CsvRecords.parse("""
                time,depth
                2026-01-01 00:00Z,1
                2026-01-01T00:00:00.5Z,2
                2026-01-01T00:00:01,000000001Z,3
                2026-01-01T02:00:02+02,4
                2025-12-31T18:30:03-0530,5
                """.replace("01,000000001Z", "01.000000001Z"), DEPTH);
        assertThat(result.series("depth").stream().map(reading -> reading.time().toString()))
                .containsExactly(
                        "2026-01-01T00:00:00Z",
                        "2026-01-01T00:00:00.500Z",
                        "2026-01-01T00:00:01.000000001Z",
                        "2026-01-01T00:00:02Z",
                        "2026-01-01T00:00:03Z");
    }

    @Test
    void rejectsTimesThatAreNotThere() {
        CsvResult result = CsvRecords.parse("""
                time,depth
                2026-02-29T00:00:00Z,1
                2026-13-01T00:00:00Z,1
                2026-01-00T00:00:00Z,1
                2026-01-01T24:00:00Z,1
                2026-01-01T00:60:00Z,1
                2026-01-01T00:00:60Z,1
                2026-01-01T00:00:00,1
                2026-01-01T00:00:00.Z,1
                2026-01-01T00:00:00.1234567890Z,1
                2026-01-01T00:00:00+19:00,1
                2026-01-01T00:00:00Zulu,1
                2026-01-01X00:00:00Z,1
                01/01/2026 00:00,1
                1600-01-01T00:00:00Z,1
                ,1
                """, DEPTH);
        assertThat(result.series("depth").isEmpty()).isTrue();
        assertThat(result.report().count(Kind.UNREADABLE_TIME)).isEqualTo(15);
        assertThat(result.report().issues().get(0))
                .hasToString("line 2, column 1: unreadable time, \"2026-02-29T00:00:00Z\" must be ISO 8601 such as "
                        + "2026-01-31T12:00:00Z; rejected");
        assertThat(result.report().issues().get(6).text())
                .isEqualTo("\"2026-01-01T00:00:00\" has no offset and the layout no zone; rejected");
        assertThat(result.report().issues().get(13).text())
                .isEqualTo("\"1600-01-01T00:00:00Z\" must be from 1677-09-21 to 2262-04-11; rejected");
    }

    @Test
    void anUnreadableNumberMakesItsReadingMissingAndLeavesTheOthers() {
        CsvResult result = CsvRecords.parse("""
                time,depth,velocity
                2026-01-01T00:00:00Z,0.1,1e-1
                2026-01-01T00:02:00Z,o.1,0.2
                2026-01-01T00:04:00Z,0x1p3,0.3
                2026-01-01T00:06:00Z,1e999,0.4
                2026-01-01T00:08:00Z,Infinity,0.5
                2026-01-01T00:10:00Z,1f,.5
                2026-01-01T00:12:00Z,1.2.3,5.
                2026-01-01T00:14:00Z,-,+7
                """, DEPTH.withColumn("velocity"));
        Series depth = result.series("depth");
        assertThat(depth.count(Quality.MISSING)).isEqualTo(7);
        assertThat(result.series("velocity").toValues()).containsExactly(0.1, 0.2, 0.3, 0.4, 0.5, 0.5, 5, 7);
        assertThat(result.report().count(Kind.UNREADABLE_NUMBER)).isEqualTo(7);
        assertThat(result.report().accepted()).isEqualTo(8);
        assertThat(result.report().altered()).isEqualTo(7);
        assertThat(result.report().issues().get(0))
                .hasToString("line 3, column 2: unreadable number, \"o.1\" must be a decimal number; taken as missing");
    }

    @Test
    void missingMarksAreMissingWithoutComplaint() {
        String text = """
                time,depth
                2026-01-01T00:00:00Z,
                2026-01-01T00:02:00Z,NaN
                2026-01-01T00:04:00Z,-999
                2026-01-01T00:06:00Z,NA
                """;
        CsvResult standard = CsvRecords.parse(text, DEPTH);
        assertThat(standard.series("depth").count(Quality.MISSING)).isEqualTo(3);
        assertThat(standard.report().issueCount()).isZero();
        CsvResult marked = CsvRecords.parse(text, DEPTH.withMissingMarks("-999"));
        assertThat(marked.series("depth").count(Quality.MISSING)).isEqualTo(4);
        assertThat(marked.report().count(Kind.UNREADABLE_NUMBER)).isEqualTo(2);
        // Said twice is said once.
        assertThat(CsvRecords.parse(text, DEPTH.withMissingMarks("NaN", "-999", "NA", "-999"))
                        .series("depth")
                        .count(Quality.MISSING))
                .isEqualTo(4);
    }

    @Test
    void tellsDuplicatesFromConflictsFromLateLines() {
        String text = """
                time,depth
                2026-01-01T00:00:00Z,1
                2026-01-01T00:04:00Z,3
                2026-01-01T00:04:00Z,3.0
                2026-01-01T00:04:00Z,4
                2026-01-01T00:02:00Z,2
                2026-01-01T00:02:00Z,2
                2026-01-01T00:00:00Z,1
                2026-01-01T00:06:00Z,5
                """;
        CsvResult result = CsvRecords.parse(text, DEPTH);
        assertThat(result.series("depth").toValues()).containsExactly(1, 3, 5);
        assertThat(result.report())
                .hasToString("CsvReport[text: 8 lines, 3 accepted, 5 rejected, 0 altered; 2 out of order, 2 duplicate, "
                        + "1 conflicting duplicate]");
        assertThat(result.report().issues().get(2))
                .hasToString("line 6: out of order, earlier than a line before; rejected");

        CsvResult sorted = CsvRecords.parse(text, DEPTH.withSorting());
        assertThat(sorted.series("depth").toValues()).containsExactly(1, 2, 3, 5);
        assertThat(sorted.report())
                .hasToString("CsvReport[text: 8 lines, 4 accepted, 4 rejected, 1 altered; 1 out of order, 3 duplicate, "
                        + "1 conflicting duplicate]");
    }

    @Test
    void sortsAFileThatRunsBackwards() {
        StringBuilder text = new StringBuilder("time,depth\n");
        Instant last = Instant.parse("2026-01-02T00:00:00Z");
        for (int i = 0; i < 3000; i++) {
            text.append(last.minusSeconds(i)).append(',').append(i).append('\n');
        }
        CsvResult result = CsvRecords.parse(text.toString(), DEPTH.withSorting().withIssueLimit(2));
        assertThat(result.series("depth").size()).isEqualTo(3000);
        assertThat(result.series("depth").value(0)).isEqualTo(2999);
        assertThat(result.report().altered()).isEqualTo(2999);
        assertThat(result.report().issueCount()).isEqualTo(2999);
        assertThat(result.report().issues()).hasSize(2);
    }

    @Test
    void rejectsLinesOfTheWrongShape() {
        CsvResult result = CsvRecords.parse("""
                time,depth
                2026-01-01T00:00:00Z
                2026-01-01T00:02:00Z,0,5
                2026-01-01T00:04:00Z,1,,
                "2026-01-01T00:06:00Z,1
                2026-01-01T00:08:00Z,"1"2
                "2026-01-01T00:10:00Z"  ,"2"
                garbage
                """, DEPTH);
        assertThat(result.series("depth").toValues()).containsExactly(1, 2);
        assertThat(result.report().issues().stream().map(CsvIssue::toString))
                .containsExactly(
                        "line 2, column 1: too few columns, must have 2, has 1; rejected",
                        "line 3, column 3: too many columns, must have at most 2 as the header, has \"5\" beyond; "
                                + "rejected",
                        "line 5, column 1: unreadable line, a quoted field must end on its line and at a separator; "
                                + "rejected",
                        "line 6, column 2: unreadable line, a quoted field must end on its line and at a separator; "
                                + "rejected",
                        "line 8, column 1: too few columns, must have 2, has 1; rejected");
    }

    @Test
    void readsSemicolonsWithDecimalCommas() {
        CsvLayout layout = DEPTH.withSeparator(';').withDecimalComma();
        CsvResult result = CsvRecords.parse("""
                time;depth
                2026-01-01T00:00:00Z;0,45
                2026-01-01T00:02:00Z;1,5e-3
                2026-01-01T00:04:00Z;0.45
                """, layout);
        assertThat(result.series("depth").toValues()).containsExactly(0.45, 0.0015, Double.NaN);
        assertThat(result.report().count(Kind.UNREADABLE_NUMBER)).isEqualTo(1);
        assertThatIllegalArgumentException()
                .isThrownBy(DEPTH::withDecimalComma)
                .withMessage("separator must not be a comma where decimals have one: set another separator first, "
                        + "was ,");
        assertThatIllegalArgumentException().isThrownBy(() -> layout.withSeparator(','));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> layout.withSeparator(':'))
                .withMessage("separator must be a comma, semicolon, tab or vertical bar, was 58 as code");
    }

    @Test
    void tabsSeparateWithoutBeingBlanks() {
        CsvResult result = CsvRecords.parse(
                "time\tdepth\tnote\n2026-01-01T00:00:00Z\t\tx\n2026-01-01T00:01:00Z\t 2 \t\n",
                DEPTH.withSeparator('\t'));
        assertThat(result.series("depth").toValues()).containsExactly(Double.NaN, 2);
    }

    @Test
    void passesOverAPreambleAndReadsFilesWithoutHeader() {
        CsvLayout layout =
                CsvLayout.of("1").withColumn("depth", "3", CsvUnit.CENTIMETRE).withoutHeader();
        CsvResult result = CsvRecords.parse("""
                Site 12
                serial,"4711
                2026-01-01T00:00:00Z,x,45
                2026-01-01T00:02:00Z,x,46,more
                """, layout.withPreamble(2));
        assertThat(result.series("depth").toValues()).containsExactly(0.45, 0.46);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.parse(
                        "a\n", CsvLayout.of("time").withColumn("2").withoutHeader()))
                .withMessage("text: column must be a position from 1 to 9999 in a file without header, was time");
    }

    @Test
    void readsQualityBesideTheValue() {
        CsvLayout layout = CsvLayout.of("time")
                .withColumn(CsvColumn.of("d")
                        .withName("depth")
                        .withUnit(CsvUnit.METRE)
                        .withQuality("flag"));
        CsvResult result = CsvRecords.parse("""
                time,d,flag
                2026-01-01T00:00:00Z,1,good
                2026-01-01T00:02:00Z,2,
                2026-01-01T00:04:00Z,3,fine
                2026-01-01T00:06:00Z,,missing
                2026-01-01T00:08:00Z,5,missing
                """, layout);
        Series depth = result.series("depth");
        assertThat(depth.stream().map(reading -> reading.quality().toText()))
                .containsExactly("good", "unchecked", "suspect", "missing", "suspect");
        assertThat(result.report().issues().get(0))
                .hasToString("line 4, column 3: unreadable quality, \"fine\" must be good, unchecked, estimate, poor "
                        + "or suspect where there is a value; taken as suspect");
        assertThat(result.report().altered()).isEqualTo(2);
    }

    /** Of lines of one length the number is known beforehand, and may still be wrong: what follows may be longer, or shorter. */
    @Test
    void readsAllLinesHoweverManyWereExpected(@TempDir Path folder) throws IOException {
        CsvLayout layout = CsvLayout.of("time").withColumn("depth");
        for (int rows : new int[] {1, 1023, 1024, 1025, 1535, 1536, 1537, 5000}) {
            StringBuilder text = new StringBuilder("time,depth\n");
            for (int i = 0; i < rows; i++) {
                text.append(Instant.EPOCH.plusSeconds(60L * i))
                        .append(',')
                        .append(100 + i % 900)
                        .append('\n');
            }
            String longer = Instant.EPOCH.plusSeconds(60L * rows) + ",0.123456789\n";
            String comments = "# nothing\n".repeat(2000);
            for (String end : new String[] {"", longer, longer.replace(".123456789", "") + comments, comments}) {
                String whole = text + end;
                boolean isOneMore = end.startsWith("1970");
                for (String each :
                        new String[] {whole, whole.substring(0, whole.length() - 1), whole.replace("\n", "\r\n")}) {
                    Path file = folder.resolve("lines.csv");
                    Files.writeString(file, each);
                    Series depth = CsvRecords.read(file, layout).series("depth");
                    assertThat(depth.size()).isEqualTo(rows + (isOneMore ? 1 : 0));
                    assertThat(depth.value(rows - 1)).isEqualTo(100 + (rows - 1) % 900);
                    assertThat(depth).isEqualTo(CsvRecords.parse(each, layout).series("depth"));
                }
            }
        }
    }

    @Test
    void doesNotMindByteOrderMarksAndLineEnds(@TempDir Path folder) throws IOException {
        String text = "\uFEFFtime,depth\r\n2026-01-01T00:00:00Z,1\r2026-01-01T00:01:00Z,2\n\r\n2026-01-01T00:02:00Z,3";
        Path file = folder.resolve("depth.csv");
        Files.writeString(file, text);
        assertThat(CsvRecords.read(file, DEPTH).series("depth").toValues()).containsExactly(1, 2, 3);
        Files.writeString(file, text.substring(1), StandardCharsets.UTF_16);
        assertThat(CsvRecords.read(file, DEPTH.withCharset(StandardCharsets.UTF_16))
                        .series("depth")
                        .toValues())
                .containsExactly(1, 2, 3);
    }

    @Test
    void linesAcrossTheEdgesOfTheBufferAreWhole() {
        StringBuilder text = new StringBuilder("time,depth\r\n");
        Instant first = Instant.parse("2026-01-01T00:00:00Z");
        for (int i = 0; i < 20_000; i++) {
            text.append(first.plusSeconds(i)).append(',').append(i).append(i % 2 == 0 ? "\r\n" : "\n");
        }
        CsvResult result = CsvRecords.parse(text.toString(), DEPTH);
        assertThat(result.report().accepted()).isEqualTo(20_000);
        for (int i = 0; i < 20_000; i++) {
            assertThat(result.series("depth").value(i)).isEqualTo(i);
        }
    }

    @Test
    void aHeaderAloneIsAnEmptyRecord() {
        CsvResult result = CsvRecords.parse("time,depth\n", DEPTH);
        assertThat(result.series("depth").isEmpty()).isTrue();
        assertThat(result.report().lines()).isZero();
    }

    @Test
    void readsBareInstantsAndKeepsTwoInOne() {
        CsvLayout layout = CsvLayout.of("tip");
        String text = """
                tip
                2026-01-01T00:00:00Z
                2026-01-01T00:00:10Z
                2026-01-01T00:00:10Z
                2026-01-01T00:00:05Z
                rain
                2026-01-01T00:00:20Z
                """;
        CsvInstants tips = CsvRecords.readInstants("tips.csv", new StringReader(text), layout);
        assertThat(tips.toInstants().stream().map(Instant::getEpochSecond).map(s -> s % 60))
                .containsExactly(0L, 10L, 10L, 20L);
        assertThat(tips)
                .hasToString("CsvInstants[4 instants, CsvReport[tips.csv: 6 lines, 4 accepted, 2 rejected, 0 altered; "
                        + "1 unreadable time, 1 out of order, 1 repeated instant]]");
        CsvInstants sorted = CsvRecords.readInstants("tips.csv", new StringReader(text), layout.withSorting());
        assertThat(sorted.toInstants().stream().map(Instant::getEpochSecond).map(s -> s % 60))
                .containsExactly(0L, 5L, 10L, 10L, 20L);
        assertThat(sorted.report().altered()).isEqualTo(1);
    }

    private static Series series(String time, double value, String laterTime, double laterValue) {
        return Series.builder()
                .add(Instant.parse(time), value)
                .add(Instant.parse(laterTime), laterValue)
                .build();
    }

    private static final String AMOUNTS = """
            time,mm,count
            2026-01-01T00:00:05Z,0.2,1
            2026-01-01T00:00:05Z,0.2,2
            2026-01-01T00:00:05Z,0.2,2
            2026-01-01T00:00:09Z,0.2,3
            2026-01-01T00:00:07Z,0.2,4
            2026-01-01T00:00:07Z,,5
            """;

    @Test
    void amountsOfOneInstantAreAddedWhenTold() {
        CsvLayout layout = CsvLayout.of("time").withColumn("mm").withSorting().withRepeatedTime(RepeatedTime.ADD);
        CsvResult result = CsvRecords.parse(AMOUNTS, layout);
        Series mm = result.series("mm");
        assertThat(mm.toValues()).containsExactly(0.2 + 0.2 + 0.2, 0.2, 0.2);
        assertThat(mm.quality(0)).isEqualTo(Quality.UNCHECKED);
        assertThat(mm.quality(1)).isEqualTo(Quality.SUSPECT);
        assertThat(result.report())
                .hasToString("CsvReport[text: 6 lines, 6 accepted, 0 rejected, 4 altered;"
                        + " 1 out of order, 3 repeated instant]");
        assertThat(CsvRecords.parse(AMOUNTS, layout.withRepeatedTime(RepeatedTime.REJECT))
                        .report()
                        .rejected())
                .isEqualTo(3);
    }

    @Test
    void aWholeLineAgainCanStillBeADuplicate() {
        CsvLayout layout =
                CsvLayout.of("time").withColumn("mm").withSorting().withRepeatedTime(RepeatedTime.ADD_UNLESS_SAME_LINE);
        CsvResult result = CsvRecords.parse(AMOUNTS, layout);
        assertThat(result.series("mm").toValues()).containsExactly(0.2 + 0.2, 0.2, 0.2);
        assertThat(result.report().rejected()).isEqualTo(1);
        CsvLayout instants = CsvLayout.of("time").withSorting();
        assertThat(CsvRecords.readInstants("text", new StringReader(AMOUNTS), instants)
                        .size())
                .isEqualTo(6);
        assertThat(CsvRecords.readInstants(
                                "text",
                                new StringReader(AMOUNTS),
                                instants.withRepeatedTime(RepeatedTime.ADD_UNLESS_SAME_LINE))
                        .size())
                .isEqualTo(5);
    }
}
