package dev.runnel.rainfall.event;

import dev.runnel.internal.Moments;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.gauge.Tips;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.apiguardian.api.API;

/**
 * The dry gaps of a record, and the minimum inter-event time they suggest. Immutable and thread-safe.
 *
 * <p><b>Exponential method.</b> If storms arrive independently the gaps between them follow an exponential law, whose
 * coefficient of variation is 1. Short gaps, inside storms, spoil that: leave out all gaps shorter than a candidate and
 * raise the candidate until the coefficient has fallen to 1. Source: Restrepo-Posada and Eagleson (1982), Identification
 * of independent rainstorms, Journal of Hydrology 55, 303-319 (abstract). Texts differ in what they take the coefficient
 * of: {@link Convention} has both.
 *
 * <p>A gap that touches a missing step is left out, since its length is not known, and counted.
 *
 * <p>What this is not: a time that suits a sewer, which needs its flow back at dry weather.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DryGaps {
    private final double[] hours;
    private final int unknown;

    private DryGaps(double[] hours, int unknown) {
        this.hours = hours;
        this.unknown = unknown;
        Arrays.sort(hours);
    }

    /** What the coefficient of variation is taken of. */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public enum Convention {
        /** The gaps themselves, with the population standard deviation (divisor n). */
        GAPS,
        /** What is left of the gaps after the candidate, with the sample standard deviation (divisor n - 1). */
        EXCESSES
    }

    /**
     * The coefficient of variation at a candidate.
     *
     * @param minimum the candidate: gaps at least as long are kept
     * @param gaps how many are kept
     * @param coefficientOfVariation standard deviation over mean of what the convention names
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Candidate(Duration minimum, int gaps, double coefficientOfVariation) {
        /**
         * Checks that nothing is missing.
         *
         * @param minimum the candidate: gaps at least as long are kept
         * @param gaps how many are kept
         * @param coefficientOfVariation standard deviation over mean of what the convention names
         */
        public Candidate {
            Objects.requireNonNull(minimum, "minimum");
        }

        @Override
        public String toString() {
            return "Candidate[" + Text.duration(minimum) + ", " + gaps + " gaps, coefficient of variation "
                    + Text.significant(coefficientOfVariation, 4) + "]";
        }
    }

    /**
     * Returns gaps of known length.
     *
     * @param hours lengths, h; each greater than 0
     * @return the gaps
     * @throws IllegalArgumentException if a length is not greater than 0
     */
    public static DryGaps ofHours(double... hours) {
        Objects.requireNonNull(hours, "hours");
        for (double gap : hours) {
            Require.positive("hours", gap, "h");
        }
        return new DryGaps(hours.clone(), 0);
    }

    /**
     * Returns the gaps of a record of fixed steps: the dry steps between two wet ones.
     *
     * @param rain depth in each step, mm; 0 or greater, NaN for missing
     * @return the gaps; the dry ends of the record are none
     * @throws IllegalArgumentException if a depth is negative
     */
    public static DryGaps of(RegularSeries rain) {
        Rain.requireNonNegative("rain", rain, "mm");
        double step = Rain.hours(rain.step());
        List<Double> gaps = new ArrayList<>();
        int unknown = 0;
        int last = -1;
        boolean missing = false;
        for (int i = 0; i < rain.size(); i++) {
            if (rain.value(i) > 0) {
                if (missing && last >= 0) {
                    unknown++;
                } else if (last >= 0 && i - last > 1) {
                    gaps.add(step * (i - last - 1));
                }
                last = i;
                missing = false;
            } else if (Double.isNaN(rain.value(i))) {
                missing = true;
            }
        }
        return new DryGaps(gaps.stream().mapToDouble(Double::doubleValue).toArray(), unknown);
    }

    /**
     * Returns the gaps between tips, from tip to tip.
     *
     * @param tips the tips
     * @return the gaps; coincident tips leave none
     */
    public static DryGaps of(Tips tips) {
        double[] gaps = new double[Math.max(0, tips.size() - 1)];
        for (int i = 0; i < gaps.length; i++) {
            gaps[i] = (tips.epochNanos(i + 1) - tips.epochNanos(i)) / 3.6e12;
        }
        return new DryGaps(Arrays.stream(gaps).filter(gap -> gap > 0).toArray(), 0);
    }

    /**
     * Returns the number of gaps.
     *
     * @return count
     */
    public int size() {
        return hours.length;
    }

    /**
     * Returns the number of gaps left out because a missing step touches them.
     *
     * @return count
     */
    public int unknown() {
        return unknown;
    }

    /**
     * Returns the coefficient of variation at every candidate, which are the lengths that occur, as long as at least
     * three gaps are kept.
     *
     * @param convention what it is taken of
     * @return candidates, rising
     */
    public List<Candidate> candidates(Convention convention) {
        Objects.requireNonNull(convention, "convention");
        List<Candidate> candidates = new ArrayList<>();
        for (int i = 0; i + 3 <= hours.length; i++) {
            if (i == 0 || hours[i] > hours[i - 1]) {
                candidates.add(candidate(i, convention));
            }
        }
        return candidates;
    }

    private Candidate candidate(int from, Convention convention) {
        int count = hours.length - from;
        double origin = convention == Convention.EXCESSES ? hours[from] : 0;
        double[] lengths = Arrays.stream(hours, from, hours.length)
                .map(gap -> gap - origin)
                .toArray();
        double squares = Moments.squares(lengths);
        double deviation = Math.sqrt(squares / (convention == Convention.EXCESSES ? count - 1 : count));
        // All gaps equal: no variation, and with EXCESSES no mean either.
        double coefficient = squares == 0 ? 0 : deviation / Moments.mean(lengths);
        return new Candidate(Duration.ofNanos(Math.round(hours[from] * 3.6e12)), count, coefficient);
    }

    /**
     * Returns the shortest candidate at which the coefficient of variation has fallen to 1 or less, all shorter ones being
     * above. Where few lengths occur it may fall far below at once: its value tells how near to 1 the record comes.
     *
     * @param convention what it is taken of
     * @return the candidate; empty if it never falls to 1, as with very uneven gaps, or was never above, as with gaps more
     *     even than those of independent storms: then the method does not tell
     */
    public Optional<Candidate> exponential(Convention convention) {
        Objects.requireNonNull(convention, "convention");
        List<Candidate> candidates = candidates(convention);
        return candidates.isEmpty() || candidates.get(0).coefficientOfVariation() <= 1
                ? Optional.empty()
                : candidates.stream()
                        .filter(candidate -> candidate.coefficientOfVariation() <= 1)
                        .findFirst();
    }

    @Override
    public String toString() {
        return "DryGaps[" + hours.length + " gaps"
                + (hours.length == 0
                        ? ""
                        : " of " + Text.significant(hours[0], 3) + " to " + Text.significant(hours[hours.length - 1], 3)
                                + " h")
                + ", " + unknown + " of unknown length]";
    }
}
