package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.evidence.Direction;
import dev.runnel.timeseries.Interval;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/** Findings of which a test says no more than it asks about: a step up, found as it began, with nothing measured. */
final class KnownFinding {
    private KnownFinding() {}

    static Finding of(int number, List<FindingName> names, Instant since, FindingStretch... stretches) {
        return new Finding(
                number,
                names,
                Direction.UP,
                ChangeShape.STEP,
                Interval.of(since, since),
                since,
                List.of(stretches),
                0,
                Optional.empty(),
                List.of(),
                Optional.empty(),
                Optional.empty(),
                "what was seen");
    }
}
