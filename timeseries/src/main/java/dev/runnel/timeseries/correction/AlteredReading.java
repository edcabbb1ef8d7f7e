package dev.runnel.timeseries.correction;

import dev.runnel.timeseries.Reading;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A reading that corrections reached: what it was, what it is, and why. Immutable and thread-safe.
 *
 * @param raw the reading as it came
 * @param corrected the reading as it is now
 * @param numbers the corrections in the order in which they worked, numbered from 1 in their list
 * @param reasons their reasons, in the same order
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record AlteredReading(Reading raw, Reading corrected, List<Integer> numbers, List<String> reasons) {
    /**
     * Copies the lists.
     *
     * @param raw the reading as it came
     * @param corrected the reading as it is now
     * @param numbers the corrections
     * @param reasons their reasons
     * @throws IllegalArgumentException if the lists differ in length or there is no correction
     */
    public AlteredReading {
        Objects.requireNonNull(raw, "raw");
        Objects.requireNonNull(corrected, "corrected");
        Objects.requireNonNull(numbers, "numbers");
        Objects.requireNonNull(reasons, "reasons");
        numbers = List.copyOf(numbers);
        reasons = List.copyOf(reasons);
        if (numbers.isEmpty() || numbers.size() != reasons.size()) {
            throw new IllegalArgumentException(
                    "reasons must be as many as numbers, at least one, were " + reasons + " for " + numbers);
        }
    }

    @Override
    public String toString() {
        return raw + " -> " + corrected + " by " + numbers + " " + reasons;
    }
}
