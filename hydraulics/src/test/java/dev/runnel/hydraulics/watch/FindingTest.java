package dev.runnel.hydraulics.watch;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.timeseries.Interval;
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

    private static Finding named(FindingName... names) {
        return new Finding(
                1,
                List.of(names),
                Direction.UP,
                ChangeShape.STEP,
                BEGIN,
                Interval.of(BEGIN, BEGIN),
                BEGIN,
                Optional.empty(),
                0,
                0,
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                "what was seen");
    }
}
