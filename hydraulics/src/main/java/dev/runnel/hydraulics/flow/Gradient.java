package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The fall of a conduit per length, positive downstream, m/m. Immutable and thread-safe.
 *
 * <p>A horizontal bed has gradient 0, an adverse one a negative gradient; neither has uniform flow.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Gradient {
    /** Chosen here: as steep as long, 1 in 1. */
    private static final double STEEPEST = 1;

    /** Chosen here: a millimetre in a million kilometres. */
    private static final double FLATTEST = 1e-12;

    private final double value;

    private Gradient(double value) {
        this.value = value;
    }

    /**
     * Returns a gradient.
     *
     * @param gradient fall per length, m/m; 0, or of 1e-12 to 1, or adverse by as much
     * @return the gradient
     * @throws IllegalArgumentException if {@code gradient} is not
     */
    public static Gradient of(double gradient) {
        Require.finite("gradient", gradient, "m/m");
        double steepness = Math.abs(gradient);
        if (steepness > STEEPEST || steepness > 0 && steepness < FLATTEST) {
            throw new IllegalArgumentException("gradient must be 0 or of " + Text.number(FLATTEST) + " to "
                    + Text.number(STEEPEST) + " m/m, was " + Text.number(gradient)
                    + (steepness > STEEPEST
                            ? ": 1 in 150 is Gradient.ofRatio(1, 150); there are ofPercent and ofPerMille too"
                            : ""));
        }
        return ofAny(gradient);
    }

    /** A gradient that was computed and need not be that of a pipe. */
    static Gradient ofAny(double gradient) {
        // + 0.0 makes one horizontal out of 0 and −0.
        return new Gradient(gradient + 0.0);
    }

    /**
     * Returns the gradient "fall in length", as in 1 in 150.
     *
     * @param fall fall, any unit of length; finite
     * @param length length, the same unit; greater than 0
     * @return the gradient
     * @throws IllegalArgumentException if one is out of range
     */
    public static Gradient ofRatio(double fall, double length) {
        Require.finite("fall", fall, "");
        return of(fall / Require.positive("length", length, ""));
    }

    /**
     * Returns a gradient in per cent.
     *
     * @param percent fall per 100 of length, %; finite
     * @return the gradient
     * @throws IllegalArgumentException if {@code percent} is not finite
     */
    public static Gradient ofPercent(double percent) {
        return of(Require.finite("percent", percent, "%") / 100);
    }

    /**
     * Returns a gradient in per mille (m per km).
     *
     * @param perMille fall per 1000 of length, ‰; finite
     * @return the gradient
     * @throws IllegalArgumentException if {@code perMille} is not finite
     */
    public static Gradient ofPerMille(double perMille) {
        return of(Require.finite("perMille", perMille, "‰") / 1000);
    }

    /**
     * Returns the fall per length.
     *
     * @return gradient S, m/m
     */
    public double value() {
        return value;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Gradient && Double.compare(value, ((Gradient) other).value) == 0;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(value);
    }

    @Override
    public String toString() {
        String text = "Gradient[" + Text.significant(value, 5) + " m/m";
        return value > 0 && value <= 1 ? text + ", 1 in " + Text.significant(1 / value, 4) + "]" : text + "]";
    }
}
