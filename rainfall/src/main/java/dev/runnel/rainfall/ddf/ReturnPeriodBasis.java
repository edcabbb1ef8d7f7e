package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What a return period counts. The two are related by
 *
 * <blockquote>T<sub>a</sub> = 1 / (1 − exp(−1/T<sub>p</sub>)),   T<sub>p</sub> = −1 / ln(1 − 1/T<sub>a</sub>)</blockquote>
 *
 * <p>for events that arrive independently of each other (Poisson). Source: Langbein (1949), Annual floods and the
 * partial-duration flood series, Transactions of the American Geophysical Union 30(6), 879-881. At 10 years the
 * difference is half a year.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public enum ReturnPeriodBasis {
    /** One over the share of years whose greatest depth reaches the value; above 1 year. */
    ANNUAL_MAXIMUM("annual maximum", 1),

    /** Mean time between events that reach the value, also called partial-duration series; above 0 years. */
    PEAKS_OVER_THRESHOLD("peaks over threshold", 0);

    private final String words;
    private final double limit;

    ReturnPeriodBasis(String words, double limit) {
        this.words = words;
        this.limit = limit;
    }

    /**
     * Converts a return period of this basis.
     *
     * @param years return period T, years; finite, above 1 for annual maxima, above 0 for peaks over threshold
     * @param target basis to convert to
     * @return return period in that basis, years; relative error below 4 ulp. Below about 0.03 years of peaks over threshold
     *     it cannot be told from one year of annual maxima and is 1
     * @throws IllegalArgumentException if {@code years} is out of range
     */
    public double convert(double years, ReturnPeriodBasis target) {
        Objects.requireNonNull(target, "target");
        requireYears("years", years);
        if (this == target) {
            return years;
        }
        return target == ANNUAL_MAXIMUM ? -1 / Math.expm1(-1 / years) : -1 / Math.log1p(-1 / years);
    }

    /** Converts a return period that must be one in the target too, and names the one given if it is none. */
    double convertNamed(String name, double years, ReturnPeriodBasis target) {
        double converted = convert(years, target);
        if (!(converted > target.limit)) {
            throw new IllegalArgumentException(name + " must be so long that as " + target.words
                    + " it can be told from one year, about 0.03 years, was " + Text.number(years) + " (years, " + words
                    + ")");
        }
        return converted;
    }

    double requireYears(String name, double years) {
        if (!(years > limit && years < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(name + " must be above " + (int) limit + " (years, " + words
                    + ") and finite, was " + Text.number(years));
        }
        return years;
    }

    /**
     * Returns the basis in words.
     *
     * @return {@code annual maximum} or {@code peaks over threshold}
     */
    public String toText() {
        return words;
    }
}
