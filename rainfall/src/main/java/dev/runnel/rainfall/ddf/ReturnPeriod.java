package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.apiguardian.api.API;

/**
 * A return period as far as a relation knows it: a figure, or only that it lies below or above the range. Immutable and
 * thread-safe.
 *
 * @param standing whether the figure is the return period itself or a bound of it
 * @param years return period, years; beyond the range, the limit of the range
 * @param basis what the return period counts
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ReturnPeriod(Standing standing, double years, ReturnPeriodBasis basis) {
    private static final double DEPTH_ROUNDING = 1e-12;

    /**
     * Where a depth stands against the range of a relation.
     *
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public enum Standing {
        /** More frequent than the relation covers: {@code years} is an upper bound. */
        BELOW,
        /** Inside the relation: {@code years} is the return period. */
        WITHIN,
        /** Rarer than the relation covers: {@code years} is a lower bound. */
        ABOVE
    }

    /**
     * Checks the arguments.
     *
     * @param standing whether the figure is the return period itself or a bound of it
     * @param years return period, years
     * @param basis what the return period counts
     * @throws IllegalArgumentException if {@code years} is out of the range of the basis
     */
    public ReturnPeriod {
        Objects.requireNonNull(standing, "standing");
        basis.requireYears("years", years);
    }

    /**
     * Returns the return period of a depth, for those who write a relation. A depth that differs from the one at a limit of the
     * range by no more than 1e-12 of it is the depth at that limit: multiplying, dividing and converting on the way here and
     * back must not push it out of the range.
     *
     * @param relation the relation, whose range and basis count
     * @param depthMm the depth P, mm; 0 or greater
     * @param depthMmOfYears depth, mm, at the duration in question, by return period in years
     * @param yearsOfDepthMm its inverse, asked only for depths between those at the limits; what it gives beside the range by
     *     a rounding is taken as the limit
     * @return the return period, or that it lies below or above the range
     * @throws IllegalArgumentException if {@code depthMm} is negative or not finite
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public static ReturnPeriod of(
            DepthDurationFrequency relation,
            double depthMm,
            DoubleUnaryOperator depthMmOfYears,
            DoubleUnaryOperator yearsOfDepthMm) {
        Objects.requireNonNull(yearsOfDepthMm, "yearsOfDepthMm");
        return of(
                relation.basis(),
                relation.smallestYears(),
                relation.greatestYears(),
                depthMm,
                depthMmOfYears,
                yearsOfDepthMm);
    }

    /** The same for a duration of which the range is known apart. */
    static ReturnPeriod of(
            ReturnPeriodBasis basis,
            double smallest,
            double greatest,
            double depthMm,
            DoubleUnaryOperator depthMmOfYears,
            DoubleUnaryOperator yearsOfDepthMm) {
        Require.nonNegative("depthMm", depthMm, "mm");
        double least = depthMmOfYears.applyAsDouble(smallest);
        double most = depthMmOfYears.applyAsDouble(greatest);
        if (depthMm < least * (1 - DEPTH_ROUNDING)) {
            return new ReturnPeriod(Standing.BELOW, smallest, basis);
        }
        if (depthMm > most * (1 + DEPTH_ROUNDING)) {
            return new ReturnPeriod(Standing.ABOVE, greatest, basis);
        }
        if (depthMm <= least * (1 + DEPTH_ROUNDING)) {
            return new ReturnPeriod(Standing.WITHIN, smallest, basis);
        }
        if (depthMm >= most * (1 - DEPTH_ROUNDING)) {
            return new ReturnPeriod(Standing.WITHIN, greatest, basis);
        }
        double years = yearsOfDepthMm.applyAsDouble(depthMm);
        return new ReturnPeriod(Standing.WITHIN, Math.max(smallest, Math.min(greatest, years)), basis);
    }

    /**
     * Tells whether {@link #years} is the return period and not only a bound.
     *
     * @return true if the relation covers it
     */
    public boolean isWithin() {
        return standing == Standing.WITHIN;
    }

    /**
     * Tells whether the depth is rarer than the relation covers.
     *
     * @return true if {@link #years} is a lower bound
     */
    public boolean isAbove() {
        return standing == Standing.ABOVE;
    }

    /**
     * Tells whether the depth is more frequent than the relation covers.
     *
     * @return true if {@link #years} is an upper bound
     */
    public boolean isBelow() {
        return standing == Standing.BELOW;
    }

    /**
     * Returns the same in another basis.
     *
     * @param target what the return period should count
     * @return the return period, or bound, converted
     * @throws IllegalArgumentException if it is so short that as annual maxima it cannot be told from one year, below 0.03
     *     years
     */
    public ReturnPeriod withBasis(ReturnPeriodBasis target) {
        return new ReturnPeriod(standing, basis.convertNamed("years", years, target), target);
    }

    /**
     * Returns the figure in words, without the basis.
     *
     * @return for example {@code 1 in 12.3 years}, {@code rarer than 1 in 100 years}
     */
    public String toText() {
        String figure = "1 in " + Text.significant(years, 3) + (years == 1 ? " year" : " years");
        return switch (standing) {
            case BELOW -> "more frequent than " + figure;
            case WITHIN -> figure;
            case ABOVE -> "rarer than " + figure;
        };
    }

    @Override
    public String toString() {
        return "ReturnPeriod[" + toText() + ", " + basis.toText() + "]";
    }
}
