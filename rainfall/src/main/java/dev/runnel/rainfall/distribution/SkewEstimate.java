package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A skew of logarithms and how far off it may be, of a station or of its region. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SkewEstimate {
    private final double skew;
    private final double meanSquareError;

    private SkewEstimate(double skew, double meanSquareError) {
        this.skew = skew;
        this.meanSquareError = meanSquareError;
    }

    /**
     * Returns a skew whose error is known.
     *
     * @param skew G; in [-3, 3]
     * @param meanSquareError mean square error of it; greater than 0
     * @return the estimate
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static SkewEstimate ofSkewAndMeanSquareError(double skew, double meanSquareError) {
        return new SkewEstimate(
                Require.inRange("skew", skew, -3, 3, ""), Require.positive("meanSquareError", meanSquareError, ""));
    }

    /**
     * Returns the skew.
     *
     * @return G
     */
    public double skew() {
        return skew;
    }

    /**
     * Returns the mean square error of the skew.
     *
     * @return MSE
     */
    public double meanSquareError() {
        return meanSquareError;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SkewEstimate that
                && Double.compare(skew, that.skew) == 0
                && Double.compare(meanSquareError, that.meanSquareError) == 0;
    }

    @Override
    public int hashCode() {
        return Objects.hash(skew, meanSquareError);
    }

    @Override
    public String toString() {
        return "SkewEstimate[" + Text.significant(skew, 4) + ", mean square error "
                + Text.significant(meanSquareError, 4) + "]";
    }
}
