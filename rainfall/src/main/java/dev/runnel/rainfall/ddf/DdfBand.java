package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.distribution.ConfidenceInterval;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.rainfall.event.RainfallEvent;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.apiguardian.api.API;

/**
 * A depth-duration-frequency relation with limits of confidence, of which some authorities print tables beside that of the
 * depths. The lower limit of a return period comes from the upper table: were so much rain usual, it would be less rare.
 * Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DdfBand {
    private static final Comparator<ReturnPeriod> BY_RARITY =
            Comparator.comparing(ReturnPeriod::standing).thenComparingDouble(ReturnPeriod::years);

    private final DepthDurationFrequency relation;
    private final DepthDurationFrequency lower;
    private final DepthDurationFrequency upper;
    private final double confidence;

    private DdfBand(
            DepthDurationFrequency relation,
            DepthDurationFrequency lower,
            DepthDurationFrequency upper,
            double confidence) {
        this.relation = relation;
        this.lower = lower;
        this.upper = upper;
        this.confidence = confidence;
    }

    /**
     * Returns the band.
     *
     * @param relation the depths
     * @param lower their lower limits
     * @param upper their upper limits
     * @param confidence probability between the limits as the source states it; in (0, 1)
     * @return the band
     * @throws IllegalArgumentException if the three differ in what their return periods count, or the confidence is out of range
     */
    public static DdfBand of(
            DepthDurationFrequency relation,
            DepthDurationFrequency lower,
            DepthDurationFrequency upper,
            double confidence) {
        Objects.requireNonNull(relation, "relation must not be null");
        if (lower.basis() != relation.basis() || upper.basis() != relation.basis()) {
            throw new IllegalArgumentException("lower and upper must be of the basis of the relation, "
                    + relation.basis().toText() + ", were " + lower.basis().toText() + " and "
                    + upper.basis().toText());
        }
        if (!(confidence > 0 && confidence < 1)) {
            throw new IllegalArgumentException("confidence must be inside (0, 1), was " + Text.number(confidence));
        }
        return new DdfBand(relation, lower, upper, confidence);
    }

    /**
     * How rare something was, with limits. A plain result.
     *
     * @param estimate the return period
     * @param lower its lower limit
     * @param upper its upper limit
     * @param confidence probability between the limits
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Rarity(ReturnPeriod estimate, ReturnPeriod lower, ReturnPeriod upper, double confidence) {
        /**
         * Checks that nothing is missing.
         *
         * @param estimate the return period
         * @param lower its lower limit
         * @param upper its upper limit
         * @param confidence probability between the limits
         */
        public Rarity {
            Objects.requireNonNull(estimate, "estimate");
            Objects.requireNonNull(lower, "lower");
            Objects.requireNonNull(upper, "upper");
        }

        /**
         * Returns the rarity in a sentence.
         *
         * @return for example {@code 1 in 10 years, 90 % between 6 and 31}; a limit beyond the tables as {@code more than 100}
         */
        public String toText() {
            return estimate.toText() + ", " + limitsText();
        }

        /**
         * Returns the limits in words.
         *
         * @return for example {@code 90 % between 6 and 31}
         */
        public String limitsText() {
            return Text.significant(100 * confidence, 3) + " % between " + limit(lower) + " and " + limit(upper);
        }

        private static String limit(ReturnPeriod limit) {
            String figure = Text.significant(limit.years(), 3);
            return limit.isAbove() ? "more than " + figure : limit.isBelow() ? "less than " + figure : figure;
        }

        @Override
        public String toString() {
            return "Rarity[" + toText() + ", " + estimate.basis().toText() + "]";
        }
    }

    /**
     * Returns the relation without its limits.
     *
     * @return the depths
     */
    public DepthDurationFrequency relation() {
        return relation;
    }

    /**
     * Tells whether there are limits for a duration.
     *
     * @param duration duration of rain
     * @return true if relation and limits all cover it
     */
    public boolean covers(Duration duration) {
        return relation.covers(duration) && lower.covers(duration) && upper.covers(duration);
    }

    /**
     * Returns the probability between the limits.
     *
     * @return confidence, in (0, 1)
     */
    public double confidence() {
        return confidence;
    }

    /**
     * Returns the limits of a depth.
     *
     * @param duration duration of rain, in the range of all three
     * @param years return period, years, in the range of all three
     * @return depth and limits, mm
     * @throws IllegalArgumentException if an argument is out of range, or the limits do not hold the depth there
     */
    public ConfidenceInterval depthMm(Duration duration, double years) {
        Objects.requireNonNull(duration, "duration");
        double depth = relation.depthMm(duration, years);
        ConfidenceInterval limits = new ConfidenceInterval(
                depth, lower.depthMm(duration, years), upper.depthMm(duration, years), confidence);
        if (!limits.contains(depth)) {
            throw new IllegalArgumentException("lower and upper must hold the depth of " + Text.duration(duration)
                    + " and " + Text.number(years) + " years, were " + limits);
        }
        return limits;
    }

    /**
     * Returns how rare a depth is, with limits.
     *
     * @param duration duration of rain, in the range of all three
     * @param depthMm depth, mm; 0 or greater
     * @return return period and limits
     * @throws IllegalArgumentException if an argument is out of range
     */
    public Rarity returnPeriod(Duration duration, double depthMm) {
        return new Rarity(
                relation.returnPeriod(duration, depthMm),
                upper.returnPeriod(duration, depthMm),
                lower.returnPeriod(duration, depthMm),
                confidence);
    }

    /**
     * Returns how rare an event is over several durations at once: the greatest return period among them, and the greatest of
     * each limit.
     *
     * @param event the event
     * @return return period and limits, over the durations of the event that all three cover
     * @throws IllegalArgumentException if they cover none of them
     */
    public Rarity rarity(RainfallEvent event) {
        List<PeakDepth> covered =
                event.peaks().stream().filter(peak -> covers(peak.duration())).toList();
        if (covered.isEmpty()) {
            throw new IllegalArgumentException(
                    "event must have a duration between " + Text.exactDuration(relation.shortestDuration()) + " and "
                            + Text.exactDuration(relation.longestDuration()) + ", had none");
        }
        return new Rarity(rarest(covered, relation), rarest(covered, upper), rarest(covered, lower), confidence);
    }

    private static ReturnPeriod rarest(List<PeakDepth> peaks, DepthDurationFrequency by) {
        Function<PeakDepth, ReturnPeriod> rarity = peak -> by.returnPeriod(peak.duration(), peak.depthMm());
        return peaks.stream().map(rarity).max(BY_RARITY).orElseThrow();
    }

    @Override
    public String toString() {
        return "DdfBand[" + relation + ", limits at " + Text.significant(100 * confidence, 6) + " %]";
    }
}
