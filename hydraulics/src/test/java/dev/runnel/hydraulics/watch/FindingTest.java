package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.hydraulics.evidence.Direction;
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

    private static Instant hour(int hour) {
        return BEGIN.plus(Duration.ofHours(hour));
    }

    private static FindingStretch stretch(int from, int to) {
        return new FindingStretch(hour(from), to < 0 ? Optional.empty() : Optional.of(hour(to)));
    }

    private static Finding standing(FindingStretch... stretches) {
        return new Finding(
                1,
                List.of(FindingName.FROZEN_LOGGER),
                Direction.NONE,
                ChangeShape.STEP,
                Interval.of(BEGIN, BEGIN),
                BEGIN,
                List.of(stretches),
                0,
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                "what was seen");
    }

    private static Finding named(FindingName... names) {
        return new Finding(
                1,
                List.of(names),
                Direction.UP,
                ChangeShape.STEP,
                Interval.of(BEGIN, BEGIN),
                BEGIN,
                List.of(new FindingStretch(BEGIN, Optional.empty())),
                0,
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                "what was seen");
    }
}
