package dev.runnel.timeseries.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.csv.CsvIssue.Kind;
import java.io.StringReader;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;

class LocalTimeTest {
    private static final CsvLayout LONDON =
            CsvLayout.of("time").withColumn("depth").withZone(ZoneId.of("Europe/London"));

    /** Every half hour of the night of 25 October 2026, when 01:00 to 02:00 came twice. */
    private static final String AUTUMN = """
            time,depth
            2026-10-25T00:30:00,1
            2026-10-25T01:00:00,2
            2026-10-25T01:30:00,3
            2026-10-25T01:00:00,4
            2026-10-25T01:30:00,5
            2026-10-25T02:00:00,6
            """;

    @Test
    void readsLocalTimesOfTheZone() {
        assertThat(times("time,depth\n2026-01-31T12:00:00,1\n2026-07-31T12:00:00,1\n2026-07-31T12:00:00Z,1\n", LONDON))
                .containsExactly("2026-01-31T12:00:00Z", "2026-07-31T11:00:00Z", "2026-07-31T12:00:00Z");
    }

    @Test
    void rejectsTheRepeatedHourUnlessToldWhichIsMeant() {
        CsvResult result = CsvRecords.parse(AUTUMN, LONDON);
        assertThat(result.series("depth").toValues()).containsExactly(1, 6);
        assertThat(result.report().count(Kind.AMBIGUOUS_TIME)).isEqualTo(4);
        assertThat(result.report().rejected()).isEqualTo(4);
        assertThat(result.report().issues().get(0))
                .hasToString("line 3, column 1: ambiguous time, \"2026-10-25T01:00:00\" occurred twice in "
                        + "Europe/London; rejected");
    }

    @Test
    void takesTheRepeatedHourByItsOrder() {
        CsvResult result = CsvRecords.parse(AUTUMN, LONDON.withRepeatedHour(RepeatedHour.BY_ORDER));
        assertThat(result.series("depth").stream().map(reading -> reading.time().toString()))
                .containsExactly(
                        "2026-10-24T23:30:00Z",
                        "2026-10-25T00:00:00Z",
                        "2026-10-25T00:30:00Z",
                        "2026-10-25T01:00:00Z",
                        "2026-10-25T01:30:00Z",
                        "2026-10-25T02:00:00Z");
        assertThat(result.report().altered()).isEqualTo(4);
        assertThat(result.report().issues().get(2).text())
                .isEqualTo("\"2026-10-25T01:00:00\" occurred twice in Europe/London; taken as the later");
    }

    @Test
    void takesTheRepeatedHourAsEarlierOrLater() {
        CsvResult earlier = CsvRecords.parse(AUTUMN, LONDON.withRepeatedHour(RepeatedHour.EARLIER));
        assertThat(earlier.series("depth").toValues()).containsExactly(1, 2, 3, 6);
        assertThat(earlier.report().count(Kind.CONFLICTING_DUPLICATE)).isEqualTo(2);
        assertThat(earlier.report().altered()).isEqualTo(2);
        CsvResult later = CsvRecords.parse(AUTUMN, LONDON.withRepeatedHour(RepeatedHour.LATER));
        assertThat(later.series("depth").time(1)).hasToString("2026-10-25T01:00:00Z");
    }

    @Test
    void anOffsetColumnSettlesTheRepeatedHour() {
        String text = """
                time,offset,depth
                2026-10-25T01:30:00,+01:00,1
                2026-10-25T01:00:00,Z,2
                2026-10-25T01:30:00,+00:00,3
                2026-10-25T02:00:00,later,4
                """;
        CsvResult result = CsvRecords.parse(text, LONDON.withOffsetColumn("offset"));
        assertThat(result.series("depth").toValues()).containsExactly(1, 2, 3);
        assertThat(result.series("depth").time(2)).hasToString("2026-10-25T01:30:00Z");
        assertThat(result.report().issues().get(0))
                .hasToString("line 5, column 2: unreadable time, \"later\" must be an offset from UTC such as +01:00; "
                        + "rejected");
    }

    @Test
    void rejectsTheSkippedHour() {
        CsvResult result = CsvRecords.parse("""
                time,depth
                2026-03-29T00:58:00,1
                2026-03-29T01:00:00,2
                2026-03-29T01:59:59,3
                2026-03-29T02:00:00,4
                """, LONDON.withRepeatedHour(RepeatedHour.BY_ORDER));
        assertThat(result.series("depth").toValues()).containsExactly(1, 4);
        assertThat(result.series("depth").time(1)).hasToString("2026-03-29T01:00:00Z");
        assertThat(result.report().count(Kind.SKIPPED_TIME)).isEqualTo(2);
        assertThat(result.report().issues().get(0).text())
                .isEqualTo("\"2026-03-29T01:00:00\" never occurred in Europe/London; rejected");
    }

    @Test
    void agreesWithTheZoneRulesOnEveryHourOfYearsInThreeZones() {
        for (String name : List.of("Europe/London", "Australia/Lord_Howe", "America/St_Johns")) {
            ZoneId zone = ZoneId.of(name);
            LocalClock clock = new LocalClock(zone);
            int compared = 0;
            LocalDateTime local = LocalDateTime.of(2024, 1, 1, 0, 0);
            for (; local.getYear() < 2027; local = local.plusMinutes(10), compared++) {
                List<java.time.ZoneOffset> valid = zone.getRules().getValidOffsets(local);
                LocalClock.Occurrence occurrence = clock.resolve(local.toEpochSecond(java.time.ZoneOffset.UTC));
                assertThat(occurrence.ordinal()).isEqualTo(valid.isEmpty() ? 2 : valid.size() - 1);
                if (!valid.isEmpty()) {
                    assertThat(clock.offset()).isEqualTo(valid.get(0).getTotalSeconds());
                }
            }
            assertThat(compared).isEqualTo(1096 * 144);
        }
    }

    @Test
    void readsTimesByAPatternStrictly() {
        CsvLayout layout = LONDON.withTimePattern("dd/MM/yyyy HH:mm");
        CsvResult result = CsvRecords.parse("""
                time,depth
                31/01/2026 12:00,1
                31/02/2026 12:00,2
                01/03/2026 24:00,3
                2026-03-01T00:00:00,4
                31/07/2026 12:00,5
                """, layout);
        assertThat(result.series("depth").toValues()).containsExactly(1, 5);
        assertThat(result.series("depth").time(1)).hasToString("2026-07-31T11:00:00Z");
        assertThat(result.report().issues().get(0).text())
                .isEqualTo("\"31/02/2026 12:00\" must be dd/MM/yyyy HH:mm; rejected");
        assertThat(result.report().count(Kind.UNREADABLE_TIME)).isEqualTo(3);
    }

    @Test
    void patternsMayHaveNamesOffsetsAndDatesAlone() {
        assertThat(times("time,depth\n31-JAN-2026 06:30 PM,1\n", LONDON.withTimePattern("d-MMM-yyyy hh:mm a")))
                .containsExactly("2026-01-31T18:30:00Z");
        assertThat(times("time,depth\n20260131 1200+0200,1\n", LONDON.withTimePattern("yyyyMMdd HHmmxx")))
                .containsExactly("2026-01-31T10:00:00Z");
        assertThat(times("time,depth\n31.07.2026,1\n", LONDON.withTimePattern("dd.MM.yyyy")))
                .containsExactly("2026-07-30T23:00:00Z");
        assertThat(times("time,depth\n2026-07-31,1\n", LONDON)).containsExactly("2026-07-30T23:00:00Z");
    }

    @Test
    void onlyPatternsOfDigitsInFixedPlacesHaveAShortCut() {
        assertThat(FixedFields.of("dd/MM/yyyy HH:mm")).isNotNull();
        for (String pattern : List.of(
                "d/MM/yyyy",
                "dd/MM/yy",
                "dd/MM/yyyy HH",
                "dd/MM/yyyy hh:mm a",
                "dd/MMM/yyyy",
                "MM/yyyy",
                "dd/MM/yyyy'T'HH:mm",
                "dd/MM/yyyy HH:mm XXX",
                "dd/MM/yyyy dd",
                "dd/MM/yyyy HH:mm:s")) {
            assertThat(FixedFields.of(pattern)).as(pattern).isNull();
        }
    }

    @Test
    void joinsDateAndTimeOfDay() {
        CsvLayout iso = CsvLayout.of("Date")
                .withTimeOfDayColumn("Time")
                .withColumn("depth")
                .withZone(ZoneId.of("Europe/London"));
        assertThat(times("Date,Time,depth\n2026-07-31,12:00:30,1\n", iso)).containsExactly("2026-07-31T11:00:30Z");
        assertThat(times("depth,Time,Date\n1,12:00,31/07/2026\n", iso.withTimePattern("dd/MM/yyyy HH:mm")))
                .containsExactly("2026-07-31T11:00:00Z");
    }

    @Test
    void tipsInTheRepeatedHourMayCoincide() {
        CsvLayout layout =
                CsvLayout.of("tip").withZone(ZoneId.of("Europe/London")).withRepeatedHour(RepeatedHour.BY_ORDER);
        CsvInstants tips = CsvRecords.readInstants(
                "tips.csv",
                new StringReader("tip\n2026-10-25T01:30:00\n2026-10-25T01:30:00\n2026-10-25T01:10:00\n"),
                layout);
        assertThat(tips.toInstants().stream().map(Object::toString))
                .containsExactly("2026-10-25T00:30:00Z", "2026-10-25T00:30:00Z", "2026-10-25T01:10:00Z");
        assertThat(tips.report().altered()).isEqualTo(3);
    }

    @Test
    void refusesWhatIsNoPattern() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LONDON.withTimePattern("dd/MM/bbbb"))
                .withMessage("pattern must be one of java.time such as dd/MM/yyyy HH:mm, was dd/MM/bbbb");
    }

    @Test
    void aLayoutSaysWhatItIs() {
        assertThat(LONDON.withTimePattern("dd/MM/yyyy").withColumn("q", "flow", CsvUnit.LITRE_PER_SECOND))
                .hasToString("CsvLayout[time in time as dd/MM/yyyy, Europe/London, depth from depth, "
                        + "q from flow in L/s]");
    }

    private static List<String> times(String text, CsvLayout layout) {
        return CsvRecords.parse(text, layout).series("depth").stream()
                .map(reading -> reading.time().toString())
                .toList();
    }
}
