package dev.runnel.timeseries.quality;

import dev.runnel.timeseries.Reading;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A reading with what all checks said of it. Immutable and thread-safe.
 *
 * @param reading the reading, its value as it came, its quality joined with the verdicts
 * @param flags one for each check, in their order
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record CheckedReading(Reading reading, List<QualityFlag> flags) {
    /**
     * Copies the list.
     *
     * @param reading the reading
     * @param flags one for each check
     */
    public CheckedReading {
        Objects.requireNonNull(reading, "reading");
        Objects.requireNonNull(flags, "flags");
        flags = List.copyOf(flags);
    }
}
