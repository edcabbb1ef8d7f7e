package dev.runnel.hydraulics.watch;

import dev.runnel.timeseries.Interval;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * What a {@link BaselineRule} found in a record: a baseline, or why there is none. Immutable and thread-safe.
 *
 * @param baseline the baseline, if a stretch passed all tests
 * @param refused the stretches that were tried before, in order, with what spoke against them
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record BaselineSearch(Optional<SiteBaseline> baseline, List<Refused> refused) {
    /**
     * A stretch that failed the tests of a baseline.
     *
     * @param interval the stretch
     * @param reasons what spoke against it; at least one
     */
    public record Refused(Interval interval, List<String> reasons) {
        /**
         * Copies the reasons.
         *
         * @param interval the stretch
         * @param reasons what spoke against it; at least one
         * @throws IllegalArgumentException if there is no reason
         */
        public Refused {
            Objects.requireNonNull(reasons, "reasons");
            Objects.requireNonNull(interval, "interval");
            reasons = List.copyOf(reasons);
            if (reasons.isEmpty()) {
                throw new IllegalArgumentException("reasons must not be empty");
            }
        }

        @Override
        public String toString() {
            return interval + ": " + String.join("; ", reasons);
        }
    }

    /**
     * Copies the list.
     *
     * @param baseline the baseline, if a stretch passed all tests
     * @param refused the stretches that were tried before
     */
    public BaselineSearch {
        Objects.requireNonNull(baseline, "baseline");
        refused = List.copyOf(refused);
    }

    /**
     * Returns the outcome in words, a statement a line.
     *
     * @return the text
     */
    public String describe() {
        StringBuilder text = new StringBuilder();
        text.append(baseline.map(SiteBaseline::describe)
                .orElse("no baseline is to be had; nothing is judged. What is missing, by stretch:"));
        int shown = Math.min(refused.size(), 3);
        for (Refused each : refused.subList(0, shown)) {
            text.append("\nnot taken: ").append(each);
        }
        if (refused.size() > shown) {
            text.append("\nand ").append(refused.size() - shown).append(" later stretches for like reasons");
        }
        return text.toString();
    }

    @Override
    public String toString() {
        return "BaselineSearch[" + baseline.map(SiteBaseline::toString).orElse("no baseline") + ", " + refused.size()
                + " stretches refused]";
    }
}
