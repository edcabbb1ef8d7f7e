package dev.runnel.hydraulics.evidence;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The roughness that would explain measured depths and velocities, each pair by itself, and how these scatter. Immutable
 * and thread-safe.
 *
 * <p>What this is not: the roughness of the wall. Gradient, bends, joints, sediment, backwater and the errors of both
 * sensors are all in it.
 *
 * @param spread median and scatter over the readings, in the unit of the roughness: s/m^(1/3) for Manning's n, m for an
 *     equivalent sand roughness
 * @param tooFast readings faster than any roughness allows; they count with roughness 0
 * @param tooSlow readings slower than the law can go; they count with the largest roughness it takes at their depth
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record RoughnessEstimate(MedianAndSpread spread, int tooFast, int tooSlow) {
    private static final int DIGITS = 4;

    /**
     * Checks the counts.
     *
     * @param spread median and scatter over the readings
     * @param tooFast readings faster than any roughness allows
     * @param tooSlow readings slower than the law can go
     * @throws IllegalArgumentException if a count is negative
     */
    public RoughnessEstimate {
        Objects.requireNonNull(spread, "spread");
        Require.atLeast("tooFast", tooFast, 0);
        Require.atLeast("tooSlow", tooSlow, 0);
    }

    /**
     * Returns the median over the readings.
     *
     * @return roughness
     */
    public double median() {
        return spread.median();
    }

    @Override
    public String toString() {
        return "RoughnessEstimate[" + Text.significant(spread.median(), DIGITS) + ", central 68 % "
                + Text.significant(spread.lower(), DIGITS) + " to " + Text.significant(spread.upper(), DIGITS) + ", "
                + spread.count() + " readings, " + tooFast + " too fast, " + tooSlow + " too slow]";
    }
}
