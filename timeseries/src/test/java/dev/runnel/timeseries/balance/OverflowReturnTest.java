package dev.runnel.timeseries.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.Interval;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.MonthDay;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class OverflowReturnTest {
    private static final ZoneId LONDON = ZoneId.of("Europe/London");
    private static final List<Discharge> DISCHARGES = List.of(
            Discharge.of(hours("2025-12-31T18:00:00Z", 12)).withVolume(120),
            Discharge.of(hours("2026-03-01T00:00:00Z", 1)),
            Discharge.of(hours("2026-05-14T23:30:00Z", 2)).withVolume(50),
            Discharge.of(hours("2026-07-01T00:00:00Z", 3)).withVolume(7).asUncertain(),
            Discharge.of(hours("2026-09-30T22:00:00Z", 2)).withVolume(20));
    private static final List<Interval> OBSERVED =
            List.of(hours("2026-07-01T00:00:00Z", 100), hours("2025-01-01T00:00:00Z", 24 * 365 + 24 * 100));

    @Test
    void aYearIsCutAtItsEndsAndUncertainOnesStandApart() {
        OverflowReturn line = OverflowReturn.ofYear(
                "Saltings Lane", 2026, LONDON, SpillCount.twelveTwentyFour(), DISCHARGES, OBSERVED);
        assertThat(line.spills()).isEqualTo(4);
        assertThat(line.spillsWithUncertain()).isEqualTo(5);
        assertThat(line.cut()).isEqualTo(1);
        assertThat(line.duration()).isEqualTo(Duration.ofHours(6 + 1 + 2 + 2));
        // Half of the first discharge lies in the year.
        assertThat(line.volume()).isEqualTo(60 + 50 + 20);
        assertThat(line.withoutVolume()).isEqualTo(1);
        assertThat(line.observed()).isEqualTo((100 * 24 + 100) / (365 * 24.0));
        assertThat(line)
                .hasToString("OverflowReturn[Saltings Lane, 2026: 4 spills (5 with uncertain ones), 4 discharges, 11 h,"
                        + " 130 m3, 1 without volume, 1 cut at an end, 28.54 % observed]");
    }

    @Test
    void aBathingSeasonHoldsBothItsDaysInLocalTime() {
        OverflowReturn line = OverflowReturn.ofSeason(
                "Saltings Lane",
                2026,
                MonthDay.of(5, 15),
                MonthDay.of(9, 30),
                LONDON,
                SpillCount.twelveTwentyFour(),
                DISCHARGES,
                OBSERVED);
        // 15 May begins at 23:00 UTC on the 14th, so all of that discharge counts; the last one only to 23:00 UTC.
        assertThat(line.period()).hasToString("2026-05-14T23:00:00Z/2026-09-30T23:00:00Z");
        assertThat(line.spills()).isEqualTo(2);
        assertThat(line.duration()).isEqualTo(Duration.ofHours(3));
        assertThat(line.volume()).isEqualTo(50 + 10);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> OverflowReturn.ofSeason(
                        "x",
                        2026,
                        MonthDay.of(6, 1),
                        MonthDay.of(5, 1),
                        LONDON,
                        SpillCount.twelveTwentyFour(),
                        List.of(),
                        List.of()))
                .withMessage("last must not be before first, --06-01, was --05-01");
    }

    @Test
    void theTableIsPlainNumbers(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("return.csv");
        OverflowReturn.write(
                file,
                List.of(OverflowReturn.ofYear(
                        "Saltings Lane", 2026, LONDON, SpillCount.twelveTwentyFour(), DISCHARGES, OBSERVED)));
        assertThat(Files.readString(file))
                .isEqualTo("overflow,period,from,to,spills,spills with uncertain,discharges,uncertain discharges,hours,"
                        + "volume m3,discharges without volume,discharges cut at an end,percent observed\n"
                        + "Saltings Lane,2026,2026-01-01T00:00:00Z,2027-01-01T00:00:00Z,4,5,4,1,11.00,130,1,1,28.54\n");
    }

    @Test
    void nothingDischargedAndNothingObserved() {
        OverflowReturn line =
                OverflowReturn.ofYear("x", 2026, LONDON, SpillCount.twelveTwentyFour(), List.of(), List.of());
        assertThat(line.spills()).isZero();
        assertThat(line.observed()).isZero();
        assertThat(line.volume()).isZero();
    }

    @Test
    void dischargesAreJoinedCutAndWidened() {
        List<Interval> cutAtMidnight = List.of(
                Interval.of(Instant.parse("2026-01-02T00:00:00Z"), Duration.ofHours(3)),
                Interval.of(Instant.parse("2026-01-01T20:00:00Z"), Instant.parse("2026-01-01T23:59:00Z")),
                Interval.of(Instant.parse("2026-01-01T21:00:00Z"), Duration.ofMinutes(5)));
        assertThat(Discharges.joined(cutAtMidnight, Duration.ofMinutes(1)))
                .extracting(Object::toString)
                .containsExactly("2026-01-01T20:00:00Z/2026-01-02T03:00:00Z");
        assertThat(Discharges.joined(cutAtMidnight, Duration.ofSeconds(59))).hasSize(2);
        Instant at = Instant.parse("2026-01-01T00:00:00Z");
        List<Interval> seen = List.of(
                Interval.of(at, at),
                Interval.of(at.plusSeconds(60), at.plusSeconds(60)),
                Interval.of(at.plusSeconds(600), at.plusSeconds(900)));
        assertThat(Discharges.widened(seen, Duration.ofMinutes(2)))
                .extracting(each -> each.duration().toSeconds())
                .containsExactly(60L, 120L, 300L);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Discharges.widened(List.of(seen.get(0), seen.get(0)), Duration.ofMinutes(2)))
                .withMessageStartingWith("discharges must be in order of time and not overlap");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Discharges.joined(seen, Duration.ZERO))
                .withMessageStartingWith("discharge must not be empty");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Discharge.of(seen.get(2)).withVolume(-1))
                .withMessage("volume must be 0 or greater and finite (m3), or NaN, was -1");
    }

    private static Interval hours(String start, int hours) {
        return Interval.of(Instant.parse(start), Duration.ofHours(hours));
    }
}
