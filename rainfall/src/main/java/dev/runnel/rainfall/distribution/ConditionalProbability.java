package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A log-Pearson III frequency curve of a record with zeros or low outliers, by conditional probability: the curve of the values
 * kept, each of whose probabilities of exceedance is multiplied by the share of years that were kept,
 *
 * <blockquote>P = P<sub>kept</sub> n/N</blockquote>
 *
 * <p>and the synthetic moments of a log-Pearson III through its levels of 50, 10 and 1 % exceedance,
 *
 * <blockquote>G = -2.50 + 3.12 log10(Q<sub>.01</sub>/Q<sub>.10</sub>)/log10(Q<sub>.10</sub>/Q<sub>.50</sub>),
 * S = log10(Q<sub>.01</sub>/Q<sub>.50</sub>)/(K<sub>.01</sub> - K<sub>.50</sub>), M = log10 Q<sub>.50</sub> -
 * K<sub>.50</sub> S</blockquote>
 *
 * <p>with K the standardised Pearson III variate of skew G. Use it where at most a quarter of the years are left out; the formula
 * of G is an approximation for -2.0 &lt; G &lt; 2.5. Source: Interagency Advisory Committee on Water Data (1982), Guidelines for
 * determining flood flow frequency, Bulletin 17B, appendix 5 (from memory). Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ConditionalProbability {
    /** Largest share of years left out, and the range of G its formula is an approximation for: Bulletin 17B, appendix 5. */
    private static final double LARGEST_SHARE_LEFT_OUT = 0.25;

    private static final double LEAST_SKEW = -2.0;
    private static final double LARGEST_SKEW = 2.5;

    private final LogPearsonIII ofKept;
    private final LogPearsonIII synthetic;
    private final int kept;
    private final int years;

    private ConditionalProbability(LogPearsonIII ofKept, LogPearsonIII synthetic, int kept, int years) {
        this.ofKept = ofKept;
        this.synthetic = synthetic;
        this.kept = kept;
        this.years = years;
    }

    /**
     * Adjusts the curve of the values at or above a level.
     *
     * @param lowest smallest value that counts, greater than 0: the threshold of {@link LowOutliers} or {@link GrubbsBeck}
     * @param sample one value a year, 0 or greater; at least 4 of them at or above {@code lowest}, not all equal; not modified
     * @return the curve
     * @throws IllegalArgumentException if an argument is out of range, more than a quarter of the years are below
     *     {@code lowest}, or the synthetic skew lies outside (-2.0, 2.5)
     */
    public static ConditionalProbability of(double lowest, double... sample) {
        Objects.requireNonNull(sample, "sample");
        if (!(lowest > 0 && lowest < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("lowest must be greater than 0 and finite, was " + Text.number(lowest));
        }
        for (double value : sample) {
            if (!(value >= 0 && value < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("sample must be 0 or greater and finite, had " + Text.number(value));
            }
        }
        double[] above = Arrays.stream(sample).filter(x -> x >= lowest).toArray();
        if (sample.length - above.length > LARGEST_SHARE_LEFT_OUT * sample.length) {
            throw new IllegalArgumentException("lowest must leave out at most a quarter of the years, left out "
                    + (sample.length - above.length) + " of " + sample.length);
        }
        LogPearsonIII ofKept = (LogPearsonIII) Fit.of(DistributionFamily.LOG_PEARSON_III, FitMethod.MOMENTS, above)
                .distribution();
        return of(ofKept, above.length, sample.length);
    }

    private static ConditionalProbability of(LogPearsonIII ofKept, int kept, int years) {
        double share = (double) kept / years;
        double q50 = Math.log10(ofKept.quantileOfExceedance(0.5 / share));
        double q10 = Math.log10(ofKept.quantileOfExceedance(0.1 / share));
        double q01 = Math.log10(ofKept.quantileOfExceedance(0.01 / share));
        double skew = -2.50 + 3.12 * (q01 - q10) / (q10 - q50);
        if (!(skew > LEAST_SKEW && skew < LARGEST_SKEW)) {
            throw new IllegalArgumentException(
                    "sample must have a synthetic skew inside (-2.0, 2.5), was " + Text.significant(skew, 4));
        }
        PearsonIII variate = PearsonIII.of(0, 1, skew);
        double k50 = variate.quantileOfExceedance(0.5);
        double deviation = (q01 - q50) / (variate.quantileOfExceedance(0.01) - k50);
        return new ConditionalProbability(
                ofKept, LogPearsonIII.of(q50 - k50 * deviation, deviation, skew), kept, years);
    }

    /**
     * Returns the synthetic log-Pearson III distribution, for all years; meant for levels rarer than those left out.
     *
     * @return the distribution
     */
    public LogPearsonIII distribution() {
        return synthetic;
    }

    /**
     * Returns the distribution of the values kept, before it is adjusted.
     *
     * @return the distribution, of the years kept
     */
    public LogPearsonIII ofKept() {
        return ofKept;
    }

    /**
     * Returns the level of a return period on the adjusted curve itself, without the synthetic moments.
     *
     * @param years return period among annual maxima, years; greater than N/n
     * @return the level, in the unit of the sample
     * @throws IllegalArgumentException if {@code years} is not greater than N/n and finite
     */
    public double returnLevel(double years) {
        double least = (double) this.years / kept;
        if (!(years > least && years < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("years must be greater than " + Text.significant(least, 4)
                    + " and finite, was " + Text.number(years));
        }
        return ofKept.quantileOfExceedance(least / years);
    }

    @Override
    public String toString() {
        return "ConditionalProbability[" + kept + " of " + years + " years kept, " + synthetic + "]";
    }
}
