package dev.runnel.rainfall.design;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The symmetric storm profile of the Flood Studies Report. Immutable and thread-safe.
 *
 * <blockquote>y = (1 − a<sup>z</sup>)/(1 − a), z = x<sup>b</sup></blockquote>
 *
 * <p>y is the share of the depth in the share x of the duration that is centred on the peak. Source: NERC (1975), Flood
 * Studies Report, volume II; constants from memory: 50 % summer a 0.100, b 0.815; 75 % winter a 0.060, b 1.026. A published
 * unit profile of 13 steps agrees with the winter pair to 0.012; the summer pair is unconfirmed.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class SymmetricProfile implements StormShape {
    private final double a;
    private final double b;

    private SymmetricProfile(double a, double b) {
        this.a = a;
        this.b = b;
    }

    /**
     * Returns the profile peakier than half of summer storms.
     *
     * @return a 0.100, b 0.815 (from memory)
     */
    public static SymmetricProfile summer50() {
        return of(0.100, 0.815);
    }

    /**
     * Returns the profile peakier than three quarters of winter storms.
     *
     * @return a 0.060, b 1.026 (from memory)
     */
    public static SymmetricProfile winter75() {
        return of(0.060, 1.026);
    }

    /**
     * Returns a profile with other constants.
     *
     * @param a constant a; above 0, below 1: the less, the peakier
     * @param b constant b; above 0: the less, the peakier
     * @return the profile
     * @throws IllegalArgumentException if an argument is out of range
     */
    public static SymmetricProfile of(double a, double b) {
        if (!(a > 0 && a < 1)) {
            throw new IllegalArgumentException("a must be above 0 and below 1, was " + Text.number(a));
        }
        return new SymmetricProfile(a, Require.positive("b", b, ""));
    }

    /**
     * Returns the share of the depth around the peak.
     *
     * @param fraction share x of the duration, centred on the peak; in [0, 1]
     * @return y
     * @throws IllegalArgumentException if {@code fraction} is outside [0, 1] or NaN
     */
    public double aroundPeak(double fraction) {
        Require.inRange("fraction", fraction, 0, 1, "");
        double exponent = Math.log(a) * Math.pow(fraction, b);
        return Math.expm1(exponent) / Math.expm1(Math.log(a));
    }

    @Override
    public double depthShare(double fraction) {
        Require.inRange("fraction", fraction, 0, 1, "");
        double half = aroundPeak(Math.abs(2 * fraction - 1)) / 2;
        return fraction < 0.5 ? 0.5 - half : 0.5 + half;
    }

    @Override
    public String toString() {
        return "SymmetricProfile[a " + Text.significant(a, 6) + ", b " + Text.significant(b, 6) + "]";
    }
}
