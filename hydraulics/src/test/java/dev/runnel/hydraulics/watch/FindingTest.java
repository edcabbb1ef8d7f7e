package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What a finding says of itself. */
class FindingTest {
    private static final Instant BEGIN = Instant.parse("2026-01-09T06:00:00Z");

    @Test
    void itsNamesAreNotAmongItsAlternatives() {
        assertThat(named(FindingName.DEPTH_DRIFT, FindingName.SEDIMENT).alternatives())
                .isEmpty();
        assertThat(named(FindingName.HELD_UP, FindingName.SEDIMENT).alternatives())
                .containsExactly(
                        "a high level downstream",
                        "a depth sensor and a velocity sensor that fail together",
                        "a depth sensor that drifts");
    }

    @Test
    void itSaysWhatElseItCouldBeAndWhatTells() {
        assertThat(named(FindingName.DEPTH_DRIFT, FindingName.SEDIMENT).otherwise())
                .isEqualTo("only a visit tells the two apart");
        assertThat(named(FindingName.SEDIMENT).otherwise())
                .isEqualTo("it could also be a depth sensor that drifts; only a visit tells the two apart");
        assertThat(named(FindingName.FROZEN_LOGGER).otherwise())
                .isEqualTo("it could also be two sensors that fail together or water that stands still");
        assertThat(named(FindingName.LESS_WATER).otherwise())
                .isEqualTo(
                        "it could also be a dry season, water that takes another way, a loss upstream, or pumps upstream that"
                                + " run otherwise");
        assertThat(named(FindingName.LEVEL_UP).describe().lines())
                .contains(
                        "it could also be water held up, more water such as that of a wet season, or the depth sensor, its"
                                + " zero or unit; without velocity nothing tells which");
    }

    @Test
    void everyNameHasAnAlternativeThatIsNotItself() {
        assertThat(FindingName.values())
                .allSatisfy(name -> assertThat(name.alternatives()).isNotEmpty().doesNotContain(name.words()));
        assertThat(Stream.of(FindingName.values()).map(FindingName::words)).doesNotHaveDuplicates();
    }

    @Test
    void itCountsTheTimesInWhichItStood() {
        Finding finding = standing(stretch(0, 6), stretch(30, 34), stretch(80, -1));
        assertThat(finding.since()).isEqualTo(BEGIN);
        assertThat(finding.closed()).isEmpty();
        assertThat(finding.returns()).isEqualTo(2);
        assertThat(finding.isOpen()).isTrue();
        assertThat(finding.stood(hour(90))).isEqualTo(Duration.ofHours(20));
        assertThat(finding.stood(hour(70))).isEqualTo(Duration.ofHours(10));
        assertThat(finding.interval(hour(90))).isEqualTo(Interval.of(BEGIN, hour(90)));
        assertThat(finding.intervals(hour(90)))
                .containsExactly(
                        Interval.of(BEGIN, hour(6)), Interval.of(hour(30), hour(34)), Interval.of(hour(80), hour(90)));
        assertThat(finding.contains(hour(5), hour(90))).isTrue();
        assertThat(finding.contains(hour(6), hour(90))).isFalse();
        assertThat(finding.contains(hour(80), hour(90))).isTrue();
        assertThat(finding.contains(hour(90), hour(90))).isFalse();
        assertThat(finding.overlaps(Interval.of(hour(6), hour(30)), hour(90))).isFalse();
        assertThat(finding.overlaps(Interval.of(hour(6), hour(31)), hour(90))).isTrue();
        assertThat(finding.describe().lines())
                .contains("came back 2 times, last 2026-01-12T14:00:00Z; before that it stood for 10 h in all");
        assertThat(finding.toString()).contains(", open, in 3 stretches");
        assertThat(standing(stretch(0, 6), stretch(30, 34)).closed()).contains(hour(34));
    }

    @Test
    void itsStretchesComeOneAfterTheOther() {
        assertThatThrownBy(FindingTest::standing).hasMessage("stretches must not be empty");
        assertThatThrownBy(() -> standing(stretch(0, 6), stretch(5, 9)))
                .hasMessageStartingWith("stretches must each begin when the last has ended, was ");
        assertThatThrownBy(() -> standing(stretch(0, -1), stretch(5, 9)))
                .hasMessageStartingWith("stretches must each begin when the last has ended, was ");
        assertThat(standing(stretch(0, 6), stretch(6, 9)).returns()).isEqualTo(1);
        assertThatThrownBy(() -> stretch(3, 2))
                .hasMessage("to must not be before 2026-01-09T09:00:00Z, was 2026-01-09T08:00:00Z");
        assertThat(stretch(3, -1).isOpen()).isTrue();
        assertThat(stretch(3, 3).isOpen()).isFalse();
        assertThat(stretch(3, -1)).hasToString("FindingStretch[2026-01-09T09:00:00Z, open]");
        assertThat(stretch(3, 4)).hasToString("FindingStretch[2026-01-09T09:00:00Z to 2026-01-09T10:00:00Z]");
    }

    @Test
    void itIsConsistentWithItsNamesAlone() {
        Finding finding = named(FindingName.DEPTH_DRIFT, FindingName.SEDIMENT);
        assertThat(finding.isConsistentWith(FindingName.DEPTH_DRIFT)).isTrue();
        assertThat(finding.isConsistentWith(FindingName.SEDIMENT)).isTrue();
        assertThat(finding.isConsistentWith(FindingName.HELD_UP)).isFalse();
    }

    @Test
    void itSaysWhenItClosedAndWhetherItComesAndGoes() {
        Finding once = standing(stretch(0, 30));
        assertThat(once.describe().lines()).contains("found 2026-01-09T06:00:00Z, as usual again 2026-01-10T12:00:00Z");
        assertThat(once.describe()).doesNotContain("came back").doesNotContain("if it goes on");
        assertThat(once.isRecurring()).isFalse();
        assertThat(once)
                .hasToString("Finding[1, " + FindingName.FROZEN_LOGGER.words() + ", " + ChangeShape.STEP
                        + ", since 2026-01-09T06:00:00Z, found 2026-01-09T06:00:00Z, closed 2026-01-10T12:00:00Z]");
        Finding falls = like(once, 5, Optional.of(Duration.ofHours(84)), Optional.empty(), Optional.empty());
        assertThat(falls.isRecurring()).isTrue();
        assertThat(falls.describe().lines()).contains("recurring: fell back 5 times, about every 3.5 days");
        assertThat(falls.toString()).endsWith("closed 2026-01-10T12:00:00Z, recurring every 3.5 days]");
    }

    @Test
    void itSaysWhenTheAlarmAndTheSoffitWouldBeReached() {
        LevelForecast alarm = new LevelForecast(0.3, hour(48), hour(40), hour(60));
        LevelForecast soffit = new LevelForecast(0.6, hour(480), hour(400), hour(600));
        Finding finding = like(standing(stretch(0, -1)), 0, Optional.empty(), Optional.of(alarm), Optional.of(soffit));
        assertThat(finding.describe().lines())
                .contains(
                        "if it goes on, the highest level of a dry day reaches the alarm at " + alarm,
                        "if it goes on, the highest level of a dry day reaches the soffit at " + soffit
                                + "; rain fills the pipe before that");
    }

    @Test
    void theNumberOfAFindingThatWasNeverToldIsFree() {
        Findings findings = new Findings();
        Track first = findings.open(FindingName.SEDIMENT, 0, 0);
        Track second = findings.open(FindingName.SEDIMENT, 0, 0);
        findings.withdraw(second);
        assertThat(findings.open(FindingName.SEDIMENT, 0, 0).number).isEqualTo(2);
        findings.withdraw(first);
        assertThat(findings.open(FindingName.SEDIMENT, 0, 0).number).isEqualTo(3);
    }

    private static Finding like(
            Finding other,
            int falls,
            Optional<Duration> recurrence,
            Optional<LevelForecast> alarm,
            Optional<LevelForecast> soffit) {
        return new Finding(
                other.number(),
                other.names(),
                other.direction(),
                other.shape(),
                other.sinceRange(),
                other.found(),
                other.stretches(),
                falls,
                recurrence,
                other.moved(),
                alarm,
                soffit,
                other.detail());
    }

    private static Instant hour(int hour) {
        return BEGIN.plus(Duration.ofHours(hour));
    }

    private static FindingStretch stretch(int from, int to) {
        return new FindingStretch(hour(from), to < 0 ? Optional.empty() : Optional.of(hour(to)));
    }

    private static Finding standing(FindingStretch... stretches) {
        return KnownFinding.of(1, List.of(FindingName.FROZEN_LOGGER), BEGIN, stretches);
    }

    private static Finding named(FindingName... names) {
        return KnownFinding.of(1, List.of(names), BEGIN, stretch(0, -1));
    }
}
