package dev.runnel.examples.review;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.hydraulics.watch.ChangeShape;
import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.hydraulics.watch.FindingName;
import dev.runnel.hydraulics.watch.FindingStretch;
import dev.runnel.hydraulics.watch.LevelForecast;
import dev.runnel.timeseries.Interval;
import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What a finding is told in. */
class FindingTextTest {
    private static final Dates BERLIN = Dates.in(
            ZoneId.of("Europe/Berlin"),
            Interval.of(Instant.parse("2026-01-01T00:00:00Z"), Instant.parse("2026-03-01T00:00:00Z")));

    @Test
    void instantsOfTheWatchAreShownByTheClockOfTheSite() {
        assertThat(FindingText.local(
                                "rises (2026-01-09T06, 2026-01-12T23) at 2026-01-13T04:05:06Z, 2026 in all", BERLIN)
                        .replace(Page.BOUND, ' '))
                .isEqualTo("rises (Fri 9 Jan 07:00, Tue 13 Jan 00:00) at Tue 13 Jan 05:05, 2026 in all");
    }

    @Test
    void aForecastOverYearsTellsTheYearAndNoHour() {
        LevelForecast far = forecast("2026-10-02T23:22:00Z", "2026-06-29T20:12:00Z", "2028-10-17T18:59:00Z");
        assertThat(FindingText.forecast("the soffit", far, true, BERLIN).replace(Page.BOUND, ' '))
                .isEqualTo(" If it goes on, a dry day reaches the soffit about Sat 3 Oct 2026 (Mon 29 Jun 2026 to"
                        + " Tue 17 Oct 2028), by depths that are in doubt.");
        LevelForecast near = forecast("2026-03-02T04:00:00Z", "2026-03-02T02:00:00Z", "2026-03-02T07:00:00Z");
        assertThat(FindingText.forecast("the alarm level", near, false, BERLIN).replace(Page.BOUND, ' '))
                .isEqualTo(" If it goes on, a dry day reaches the alarm level about Mon 2 Mar 05:00 (Mon 2 Mar 03:00 to"
                        + " Mon 2 Mar 08:00).");
    }

    @Test
    void whatCameBackSaysHowLongItStoodInAll() {
        Instant first = Instant.parse("2026-01-09T06:00:00Z");
        Instant second = Instant.parse("2026-01-19T00:00:00Z");
        Finding finding = new Finding(
                1,
                List.of(FindingName.FROZEN_LOGGER),
                Direction.NONE,
                ChangeShape.STEP,
                Interval.of(first, first),
                first,
                List.of(
                        new FindingStretch(first, Optional.of(first.plusSeconds(6 * 3600))),
                        new FindingStretch(second, Optional.of(second.plusSeconds(12 * 3600)))),
                0,
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                "what was seen");
        assertThat(FindingText.stretches(finding, Instant.parse("2026-02-01T00:00:00Z"), BERLIN)
                        .replace(Page.BOUND, ' '))
                .isEqualTo(
                        "It stood for 18.0 h in 2 stretches, 7.3 % of the time since it began, the last from Mon 19 Jan"
                                + " 01:00 to Mon 19 Jan 13:00; between them it was as usual. ");
    }

    private static LevelForecast forecast(String time, String earliest, String latest) {
        return new LevelForecast(0.6, Instant.parse(time), Instant.parse(earliest), Instant.parse(latest));
    }
}
