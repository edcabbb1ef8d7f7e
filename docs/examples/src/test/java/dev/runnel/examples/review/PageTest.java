package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PageTest {
    @Test
    void labelStandsOnceAndLongParagraphsAreBroken() {
        String text = new Page().section("rain").say("word ".repeat(30).strip()).toString();

        List<String> lines = text.lines().toList();
        assertThat(lines).hasSize(2).allMatch(line -> line.length() <= Page.WIDTH);
        assertThat(lines.get(0)).startsWith("rain        word word");
        assertThat(lines.get(1)).startsWith("            word word");
        assertThat(text.replaceAll("\\s+", " ").strip())
                .isEqualTo("rain " + "word ".repeat(30).strip());
    }

    @Test
    void whatHangsFromANumberIsIndented() {
        String text = new Page()
                .section("look at")
                .hanging("1 ", "word ".repeat(20).strip())
                .toString();

        assertThat(text.lines().toList().get(0)).startsWith("look at     1 word");
        assertThat(text.lines().toList().get(1)).startsWith("              word");
    }

    @Test
    void numberAndUnitStayTogether() {
        String text =
                new Page().say("x".repeat(80) + " " + Show.mm(0.45) + " end").toString();

        assertThat(text.lines().toList().get(1).strip()).isEqualTo("450 mm end");
    }

    @Test
    void tablesAlignTheirColumns() {
        String text = new Page()
                .section("t")
                .table("lr", List.of(List.of("name", "mm"), List.of("a", "12.5"), List.of("longer", "3")))
                .toString();

        assertThat(text).isEqualTo("t           name      mm\n            a       12.5\n            longer     3\n");
    }

    @ParameterizedTest
    @CsvSource({"PT45S, 45 s", "PT1M, 1 min", "PT12M, 12 min", "PT3H20M, 3 h 20 min", "PT24H, 24 h", "PT52H, 2 d 4 h"})
    void durationsAreShownInTheUnitsOfTheDay(Duration duration, String expected) {
        assertThat(Show.plain(duration)).isEqualTo(expected);
    }

    @Test
    void valuesHaveNoMoreDigitsThanAMonitorDeserves() {
        assertThat(Show.flowValue(0.2337)).isEqualTo("234");
        assertThat(Show.flowValue(0.01637)).isEqualTo("16.4");
        assertThat(Show.flowValue(0.00829)).isEqualTo("8.29");
        assertThat(Show.flowValue(Double.NaN)).isEqualTo("-");
        assertThat(Show.percent(0.0017).replace(Page.BOUND, ' ')).isEqualTo("0.2 %");
        assertThat(Show.percent(0.984).replace(Page.BOUND, ' ')).isEqualTo("98 %");
    }

    @Test
    void timesAreThoseOfTheSite() {
        Instant time = Instant.parse("2026-10-17T18:32:00Z");

        Interval record = Interval.of(time, time.plus(Duration.ofDays(300)));
        Interval longer = Interval.of(time, time.plus(Duration.ofDays(301)));

        assertThat(Dates.in(ZoneId.of("Europe/London"), record).time(time).replace(Page.BOUND, ' '))
                .isEqualTo("Sat 17 Oct 19:32");
        assertThat(Dates.in(ZoneId.of("UTC"), record).time(time).replace(Page.BOUND, ' '))
                .isEqualTo("Sat 17 Oct 18:32");
        assertThat(Dates.in(ZoneId.of("UTC"), longer).time(time).replace(Page.BOUND, ' '))
                .isEqualTo("Sat 17 Oct 2026 18:32");
        assertThat(Dates.in(ZoneId.of("UTC"), longer)
                        .day(LocalDate.of(2027, 1, 3))
                        .replace(Page.BOUND, ' '))
                .isEqualTo("Sun 3 Jan 2027");
    }
}
