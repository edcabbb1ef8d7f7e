package dev.runnel.hydraulics.watch;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * What a {@link BaselineRule} found in a record: a baseline, or why there is none. Immutable and thread-safe.
 *
 * @param baseline the baseline, if a stretch passed all tests
 * @param refused the stretches that were tried before, in order, with what spoke against them
 * @param shift what velocity and depth of the stretch and of the week after it show of a depth sensor that was moved, if they do
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record BaselineSearch(Optional<SiteBaseline> baseline, List<Refused> refused, Optional<Shift> shift) {
    /**
     * A depth that is read otherwise from some day on, as by a sensor that was moved. The watch need not tell a finding of it: it
     * may be less than what wanders at the site. Which of the two depths is the true one the readings do not say.
     *
     * @param from beginning of the first day that is read otherwise
     * @param metres by how much the depth is read higher since, m; negative if lower
     * @param isLearned whether days since then are among those that the baseline was learned from, for the days before are too few
     */
    public record Shift(Instant from, double metres, boolean isLearned) {
        /**
         * Checks the shift.
         *
         * @param from beginning of the first day that is read otherwise
         * @param metres by how much the depth is read higher since, m; negative if lower
         * @param isLearned whether days since then are among those that the baseline was learned from
         * @throws IllegalArgumentException if the shift is 0 or not finite
         */
        public Shift {
            Objects.requireNonNull(from, "from");
            if (!(Math.abs(metres) > 0 && Double.isFinite(metres))) {
                throw new IllegalArgumentException("metres must be finite and other than 0, was " + metres);
            }
        }

        @Override
        public String toString() {
            return "velocity and depth part at about " + from.toString().substring(0, 10)
                    + ", as if the depth were read " + Text.fixed(1000 * Math.abs(metres), 0) + " mm "
                    + (metres < 0 ? "lower" : "higher") + " since";
        }
    }

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
     * @param shift what is seen of a depth sensor that was moved
     */
    public BaselineSearch {
        Objects.requireNonNull(baseline, "baseline");
        Objects.requireNonNull(shift, "shift");
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
        shift.ifPresent(found -> text.append("\nshift: ")
                .append(found)
                .append(found.isLearned() ? "; days since then are learned from, for those before are too few" : ""));
        return text.toString();
    }

    @Override
    public String toString() {
        return "BaselineSearch[" + baseline.map(SiteBaseline::toString).orElse("no baseline") + ", " + refused.size()
                + " stretches refused]";
    }
}
