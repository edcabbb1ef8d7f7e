package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.Reading;
import java.time.Instant;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The verdict of one test on one reading. Immutable and thread-safe.
 *
 * @param time time of the reading
 * @param verdict the verdict
 * @param reason why, with the figures; empty for a pass
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record QualityFlag(Instant time, Verdict verdict, String reason) {
    /**
     * Checks that nothing is missing.
     *
     * @param time time of the reading
     * @param verdict the verdict
     * @param reason why, with the figures; empty for a pass
     */
    public QualityFlag {
        Objects.requireNonNull(time, "time");
        Objects.requireNonNull(verdict, "verdict");
        Objects.requireNonNull(reason, "reason");
    }

    static QualityFlag pass(Instant time) {
        return new QualityFlag(time, Verdict.PASS, "");
    }

    /** For a reading that has no value, or whose value has failed before. */
    static QualityFlag unusable(Reading reading) {
        return reading.isMissing()
                ? new QualityFlag(reading.time(), Verdict.MISSING, "no value")
                : notEvaluated(reading.time(), "suspect before");
    }

    static QualityFlag notEvaluated(Instant time, String reason) {
        return new QualityFlag(time, Verdict.NOT_EVALUATED, reason);
    }

    @Override
    public String toString() {
        return time + " " + verdict.toText() + (reason.isEmpty() ? "" : ": " + reason);
    }
}
