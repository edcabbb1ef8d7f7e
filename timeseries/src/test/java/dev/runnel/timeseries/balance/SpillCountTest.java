package dev.runnel.timeseries.balance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.TextState;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SpillCountTest {
    private static final Instant T0 = Instant.parse("2026-01-01T05:00:00Z");
    private static final SpillCount RULE = SpillCount.twelveTwentyFour();

    /** Each case is counted by hand from the words of the rule. */
    @ParameterizedTest(name = "{0}: {2}")
    @CsvSource({
        "one of 10 min, 0-10, 1",
        "exactly 12 h, 0-720, 1",
        "12 h and 1 min, 0-721, 2",
        "exactly 36 h, 0-2160, 2",
        "36 h and 1 min, 0-2161, 3",
        "two in the first block, 0-10 600-610, 1",
        "ends with the first block, 0-10 719-720, 1",
        "starts with the second block, 0-10 720-721, 2",
        "across the edge, 0-10 710-730, 2",
        "second block just entered, 0-10 2150-2160, 2",
        "a dry block restarts, 0-10 2160-2170, 2",
        "after the restart 13 h on, 0-1 2160-2161 2940-2941, 3",
        "after the restart 11 h on, 0-1 2160-2161 2820-2821, 2",
        "ten days, 0-14400, 11",
        "long dry between, 0-1 10000-10001, 2"
    })
    void countsBlocksWithDischarge(String name, String minutes, long expected) {
        assertThat(RULE.count(discharges(minutes)).count()).as(name).isEqualTo(expected);
    }

    @Test
    void aYearOfContinuousDischargeIs366() {
        assertThat(RULE.count(discharges("0-525600"))).isEqualTo(new SpillTally(366, 1, Duration.ofDays(365)));
    }

    @Test
    void tellsTheBlocksAsTheyCount() {
        SpillCounter counter = RULE.start();
        assertThat(counter.next(discharge(0, 10))).containsExactly(discharge(0, 720));
        assertThat(counter.next(discharge(20, 30))).isEmpty();
        assertThat(counter.next(discharge(700, 2170))).containsExactly(discharge(720, 2160), discharge(2160, 3600));
        assertThat(counter.tally()).hasToString("SpillTally[3 spills, 3 discharges, 1 d 50 min]");
    }

    @Test
    void aBlockThatReachesBeyondTheLastInstantEndsThere() {
        Instant last = Instant.parse("2262-04-11T23:00:00Z");
        assertThat(RULE.count(List.of(Interval.of(last.minusSeconds(60), last))).count())
                .isEqualTo(1);
    }

    @Test
    void eventsAreParted() {
        SpillCount apart = SpillCount.eventsApart(Duration.ofHours(24));
        assertThat(apart.count(discharges("0-10 1450-1460")).count())
                .as("exactly 24 h apart")
                .isEqualTo(2);
        assertThat(apart.count(discharges("0-10 1449-1460")).count()).isEqualTo(1);
        SpillCount split = apart.withLongestEvent(Duration.ofDays(5));
        assertThat(split.count(discharges("0-7200")).count()).as("exactly 5 d").isEqualTo(1);
        assertThat(split.count(discharges("0-7201")).count()).isEqualTo(2);
        assertThat(split.count(discharges("0-7190 7200-7210")).count()).isEqualTo(2);
        assertThat(split).hasToString("SpillCount[events 1 d apart, of at most 5 d, merge gap 0 s]");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RULE.withLongestEvent(Duration.ofDays(5)))
                .withMessageStartingWith("a longest event must belong to a rule of events, was SpillCount[first block");
    }

    @Test
    void daysAreLocalAndShortOnesMayCountOnce() {
        SpillCount days = SpillCount.days(ZoneId.of("Europe/Paris"));
        // T0 is 06:00 in Paris: 18 hours to midnight.
        List<Interval> overMidnight = discharges("1070-1090");
        assertThat(days.count(overMidnight).count()).isEqualTo(2);
        assertThat(days.withShortOnesOnce().count(overMidnight).count()).isEqualTo(1);
        assertThat(days.withShortOnesOnce()
                        .count(discharges("1070-1090 1100-1110"))
                        .count())
                .isEqualTo(2);
        assertThat(days.withShortOnesOnce().count(discharges("0-1440")).count()).isEqualTo(2);
        assertThat(days.count(discharges("0-10 20-30 1079-1080")).count()).isEqualTo(1);
        assertThat(days.start().next(discharge(1070, 1090)))
                .extracting(Object::toString)
                .containsExactly(
                        "2025-12-31T23:00:00Z/2026-01-01T23:00:00Z", "2026-01-01T23:00:00Z/2026-01-02T23:00:00Z");
        assertThat(days.withShortOnesOnce())
                .hasToString("SpillCount[days in Europe/Paris, discharges under 1 d once, merge gap 0 s]");
        assertThatIllegalArgumentException()
                .isThrownBy(RULE::withShortOnesOnce)
                .withMessageStartingWith("short discharges once must belong to a rule of days");
    }

    @Test
    void mergingIsDeclaredAndCountsTheGapAsDischarge() {
        List<Interval> chatter = discharges("0-10 15-20 26-30");
        assertThat(RULE.count(chatter)).isEqualTo(new SpillTally(1, 3, Duration.ofMinutes(19)));
        SpillCount merging = RULE.withMergeGap(Duration.ofMinutes(5));
        assertThat(merging.count(chatter)).isEqualTo(new SpillTally(1, 2, Duration.ofMinutes(24)));
        // Merged across the edge of a block, the gap itself makes the second block count.
        assertThat(RULE.count(discharges("0-720 2161-2162")).count()).isEqualTo(2);
        assertThat(RULE.withMergeGap(Duration.ofDays(2))
                        .count(discharges("0-720 2161-2162"))
                        .count())
                .isEqualTo(3);
        assertThat(merging).hasToString("SpillCount[first block 12 h, next 1 d, merge gap 5 min]");
    }

    @Test
    void touchingDischargesAreAllowedOverlappingAndEmptyOnesAreNot() {
        assertThat(RULE.count(discharges("0-10 10-20")).discharges()).isEqualTo(2);
        assertThat(RULE.count(List.of())).isEqualTo(new SpillTally(0, 0, Duration.ZERO));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RULE.count(discharges("0-10 9-20")))
                .withMessage("discharge must not start before the one before it ends, at 2026-01-01T05:10:00Z, "
                        + "was 2026-01-01T05:09:00Z/2026-01-01T05:20:00Z");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RULE.count(discharges("5-5")))
                .withMessage("discharge must not be empty, was 2026-01-01T05:05:00Z/2026-01-01T05:05:00Z");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RULE.withMergeGap(Duration.ofSeconds(-1)))
                .withMessage("mergeGap must not be negative, was -1 s");
    }

    @Test
    @Timeout(10)
    void aDischargeOfAMillionEventsIsRefusedAndLeavesTheCountAsItWas() {
        SpillCount rule = SpillCount.eventsApart(Duration.ofHours(24)).withLongestEvent(Duration.ofNanos(60_000));
        // A minute is a million times 60 microseconds.
        assertThatIllegalArgumentException()
                .isThrownBy(() -> rule.count(discharges("0-1")))
                .withMessageStartingWith("discharge must make fewer than 1000000 events of at most ")
                .withMessageEndingWith(", was 2026-01-01T05:00:00Z/2026-01-01T05:01:00Z");
        Interval century = Interval.of(T0, T0.plus(Duration.ofDays(36_500)));
        SpillCounter counter = SpillCount.eventsApart(Duration.ofHours(24))
                .withLongestEvent(Duration.ofNanos(1))
                .withMergeGap(Duration.ofMinutes(5))
                .start();
        TextState before = counter.state();
        assertThatIllegalArgumentException().isThrownBy(() -> counter.next(century));
        assertThat(counter.state()).isEqualTo(before);
    }

    @Test
    void dischargesMergedIntoAMillionEventsAreRefusedToo() {
        SpillCounter counter = SpillCount.eventsApart(Duration.ofHours(24))
                .withLongestEvent(Duration.ofNanos(120_000))
                .withMergeGap(Duration.ofMinutes(5))
                .start();
        counter.next(discharge(0, 1));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> counter.next(discharge(1, 2)))
                .withMessageEndingWith("merged from 2026-01-01T05:00:00Z");
    }

    static List<Interval> discharges(String minutes) {
        List<Interval> discharges = new ArrayList<>();
        for (String pair : minutes.split(" ")) {
            String[] ends = pair.split("-");
            discharges.add(discharge(Integer.parseInt(ends[0]), Integer.parseInt(ends[1])));
        }
        return discharges;
    }

    private static Interval discharge(int from, int to) {
        return Interval.of(T0.plusSeconds(60L * from), T0.plusSeconds(60L * to));
    }

    /** Nanoseconds hold 292 years: what is longer, by itself or in all, was counted as a time below 0. */
    @Test
    void dischargesOfMoreThan292YearsAreRefused() {
        Interval all = Interval.of(Instant.parse("1677-10-01T00:00:00Z"), Instant.parse("2262-01-01T00:00:00Z"));
        Interval early = Interval.of(Instant.parse("1700-01-01T00:00:00Z"), Instant.parse("1900-01-01T00:00:00Z"));
        Interval late = Interval.of(Instant.parse("1950-01-01T00:00:00Z"), Instant.parse("2150-01-01T00:00:00Z"));

        assertThatIllegalArgumentException()
                .isThrownBy(() -> RULE.count(List.of(all)))
                .withMessage("discharges must last at most 292 years in all, did longer with " + all);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RULE.count(List.of(early, late)))
                .withMessage("discharges must last at most 292 years in all, did longer with " + late);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> RULE.withMergeGap(Duration.ofDays(1)).count(List.of(early, late)))
                .withMessage("discharges must last at most 292 years in all, did longer with " + late);
        assertThat(RULE.count(List.of(early)).duration()).isEqualTo(early.duration());
    }

    /** The time between two discharges may be more than nanoseconds hold. */
    @Test
    void dischargesFarApartAreNotMerged() {
        Interval early = Interval.of(Instant.parse("1680-01-01T00:00:00Z"), Instant.parse("1680-01-01T01:00:00Z"));
        Interval late = Interval.of(Instant.parse("2261-01-01T00:00:00Z"), Instant.parse("2261-01-01T01:00:00Z"));

        assertThat(RULE.withMergeGap(Duration.ofHours(1))
                        .count(List.of(early, late))
                        .discharges())
                .isEqualTo(2);
        assertThat(SpillCount.eventsApart(Duration.ofHours(6))
                        .count(List.of(early, late))
                        .count())
                .isEqualTo(2);
    }
}
