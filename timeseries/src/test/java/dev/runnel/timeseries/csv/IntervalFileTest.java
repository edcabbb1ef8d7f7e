package dev.runnel.timeseries.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.tuple;

import dev.runnel.timeseries.csv.CsvIssue.Kind;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;

class IntervalFileTest {
    private static final IntervalFile LAYOUT = IntervalFile.of("start", "stop").withSite("site");

    @Test
    void readsSitesAndSetsBadLinesAsideByName() {
        IntervalRecord record = LAYOUT.parse("""
                site,start,stop
                B,2026-01-05T08:52:34,2026-01-06T20:34:24
                A,2026-01-02T00:00:00Z,2026-01-02T01:00:00+01:00
                A,2026-01-01 00:00,2026-01-01T01:00
                # a remark
                A,never,2026-01-01T01:00
                A,2026-01-01T02:00,2026-01-01T01:00
                A,2026-01-01T00:00,2026-01-01T01:00
                DS-1,2,2026-01-01T00:00,2026-01-01T01:00
                A,2026-01-01T00:00
                A,"2026-01-01T00:00,2026
                A,1600-01-01T00:00,2026-01-01T01:00
                """);
        // The second line ends at midnight too: its offset is an hour.
        assertThat(record.of("A"))
                .extracting(Object::toString)
                .containsExactly("2026-01-01T00:00:00Z/2026-01-01T01:00:00Z");
        assertThat(record.of("B")).hasSize(1);
        assertThat(record.report().issues())
                .extracting(CsvIssue::line, CsvIssue::kind)
                .containsExactly(
                        tuple(3L, Kind.OUT_OF_ORDER),
                        tuple(6L, Kind.UNREADABLE_TIME),
                        tuple(7L, Kind.OUT_OF_ORDER),
                        tuple(8L, Kind.DUPLICATE),
                        tuple(9L, Kind.TOO_MANY_COLUMNS),
                        tuple(10L, Kind.TOO_FEW_COLUMNS),
                        tuple(11L, Kind.UNREADABLE_LINE),
                        tuple(12L, Kind.UNREADABLE_TIME));
        assertThat(record.report().lines()).isEqualTo(10);
        assertThat(record.report().rejected()).isEqualTo(8);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> record.of("C"))
                .withMessage("site must be one of [B, A], was C");
    }

    @Test
    void readsWithoutHeaderAndInAFormOfItsOwn() {
        IntervalRecord record = IntervalFile.of("3", "4")
                .withSite("1")
                .withTimePattern("uuuu-MM-dd HH:mm:ss xx")
                .withoutHeader()
                .parse("NB,3,2007-01-04 19:09:00 -0600,2007-01-04 23:11:00 -0600\n"
                        + "NB,42,16,2007-01-04 19:09:00 -0600,2007-01-04 23:11:00 -0600\n");
        assertThat(record.of("NB"))
                .extracting(Object::toString)
                .containsExactly("2007-01-05T01:09:00Z/2007-01-05T05:11:00Z");
        assertThat(record.report().rejected()).isEqualTo(1);
        assertThatIllegalArgumentException()
                .isThrownBy(LAYOUT::withoutHeader)
                .withMessage("without a header columns must be numbers from 1, was \"start\"");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LAYOUT.withTimePattern("{"))
                .withMessage("pattern must be one of date and time, was \"{\"");
    }

    @Test
    void localTimesThatOccurTwiceOrNeverAreSetAside() {
        IntervalRecord record = IntervalFile.of("start", "stop")
                .withZone(ZoneId.of("Europe/London"))
                .parse("start,stop\n2026-10-25T01:30,2026-10-25T03:00\n2026-03-29T01:30,2026-03-29T03:00\n"
                        + "2026-07-01T00:00,2026-07-01T01:00\n");
        assertThat(record.report().issues())
                .extracting(CsvIssue::kind)
                .containsExactly(Kind.AMBIGUOUS_TIME, Kind.UNREADABLE_TIME);
        assertThat(record.of(""))
                .extracting(Object::toString)
                .containsExactly("2026-06-30T23:00:00Z/2026-07-01T00:00:00Z");
    }

    @Test
    void aMissingColumnAndAnEmptyFileAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LAYOUT.parse("site,strat,stop\n"))
                .withMessage("text, line 1: header must have start, was [site, strat, stop]; did you mean \"strat\"?");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LAYOUT.parse(""))
                .withMessage("text: file must have a line, was empty");
    }

    @Test
    void aYearMayBeWrittenEitherWay() {
        String text = "start,end\n2007-01-04 19:09:00 -0600,2007-01-04 23:11:00 -0600\n";
        for (String year : new String[] {"uuuu", "yyyy"}) {
            IntervalRecord record = IntervalFile.of("start", "end")
                    .withTimePattern(year + "-MM-dd HH:mm:ss xx")
                    .parse(text);
            assertThat(record.bySite().values().iterator().next())
                    .hasToString("[2007-01-05T01:09:00Z/2007-01-05T05:11:00Z]");
        }
    }
}
