package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The loss of a bar screen, clean or partly blinded, and the way back: how blinded a screen must be to cost the head that
 * is measured. Immutable and thread-safe.
 *
 * <p>Kirschmer: h = β (s/b)^(4/3) · V²/2g · sin α, with β the {@linkplain BarShape factor} of the bars, s their thickness
 * and b the clear gap (m), V the velocity of approach in front of the screen (m/s), α the angle of the bars from the
 * horizontal. Source: O. Kirschmer (1926); it holds for flow square to the rack.
 *
 * <p>Blinding is our extension: a blinded fraction f of every gap is counted to the bars, at the same pitch, so that
 * s/b becomes (s + f b)/(b (1 − f)). At f = 0 it is Kirschmer's own law; at half blinded gaps that equal the bars the loss
 * is 4.3 times the clean one. Rags do not spread evenly; read the fraction as a trend and as a reason to rake, not as a
 * measurement of area. The inverse is closed: with r = (2g h/(β V² sin α))^(3/4), f = (r − s/b)/(r + 1).
 *
 * <p>What it is not: a strength check. A blinded screen carries the full water load; entering a channel to clear one is
 * work in a confined space.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class BarScreen extends OfParts {
    private final BarShape shape;
    private final double thickness;
    private final double gap;
    private final double angleDegrees;
    private final double blindedFraction;
    private final double sine;

    private BarScreen(BarShape shape, double thickness, double gap, double angleDegrees, double blindedFraction) {
        super(shape, thickness, gap, angleDegrees, blindedFraction);
        this.shape = shape;
        this.thickness = thickness;
        this.gap = gap;
        this.angleDegrees = angleDegrees;
        this.blindedFraction = blindedFraction;
        sine = Math.sin(Math.toRadians(angleDegrees));
    }

    /**
     * Returns an upright, clean screen.
     *
     * @param shape form of the bars
     * @param thickness thickness of a bar across the flow s, m; in [1e-6, 1e6]
     * @param gap clear gap between bars b, m; in [1e-6, 1e6]
     * @return the screen, at 90° from the horizontal
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public static BarScreen ofBarsAndGaps(BarShape shape, double thickness, double gap) {
        return new BarScreen(
                Objects.requireNonNull(shape, "shape"),
                Sizes.length("thickness", thickness),
                Sizes.length("gap", gap),
                90,
                0);
    }

    /**
     * Returns a copy at another inclination.
     *
     * @param newAngleDegrees angle of the bars from the horizontal α, degrees; greater than 0, at most 90
     * @return the copy
     * @throws IllegalArgumentException if {@code newAngleDegrees} is not
     */
    public BarScreen withInclination(double newAngleDegrees) {
        if (!(newAngleDegrees > 0 && newAngleDegrees <= 90)) {
            throw new IllegalArgumentException(
                    "newAngleDegrees must be greater than 0 and at most 90, was " + Text.number(newAngleDegrees));
        }
        return new BarScreen(shape, thickness, gap, newAngleDegrees, blindedFraction);
    }

    /**
     * Returns a copy that is blinded by a share of its gaps.
     *
     * @param newBlindedFraction share of every gap that is blinded f, in [0, 1); 0 for a clean screen
     * @return the copy
     * @throws IllegalArgumentException if {@code newBlindedFraction} is not
     */
    public BarScreen withBlindedFraction(double newBlindedFraction) {
        if (!(newBlindedFraction >= 0 && newBlindedFraction < 1)) {
            throw new IllegalArgumentException(
                    "newBlindedFraction must be in [0, 1), was " + Text.number(newBlindedFraction));
        }
        return new BarScreen(shape, thickness, gap, angleDegrees, newBlindedFraction);
    }

    /**
     * Returns the loss of the screen, as blinded as it is.
     *
     * @param approachVelocity velocity in front of the screen V, m/s; 0 or greater, finite
     * @return loss h, m
     * @throws IllegalArgumentException if {@code approachVelocity} is outside its range
     */
    public double headLoss(double approachVelocity) {
        Require.nonNegative("approachVelocity", approachVelocity, "m/s");
        return lossFactor() * approachVelocity * approachVelocity / (2 * GravityFactors.G);
    }

    /** Returns ζ in h = ζ V²/2g. */
    double lossFactor() {
        double ratio = (thickness + blindedFraction * gap) / (gap * (1 - blindedFraction));
        return shape.factor() * ratio * Math.cbrt(ratio) * sine;
    }

    /**
     * Returns how blinded the screen is for a measured loss, whatever {@linkplain #withBlindedFraction share} was given to it.
     *
     * @param headLoss level in front of the screen minus level behind it h, m; 0 or greater, finite
     * @param approachVelocity velocity in front of the screen V, m/s; greater than 0, finite
     * @return the blinded fraction beside the loss of the clean screen
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public Blinding blinding(double headLoss, double approachVelocity) {
        Require.nonNegative("headLoss", headLoss, "m");
        Require.positive("approachVelocity", approachVelocity, "m/s");
        double scale = shape.factor() * sine * approachVelocity * approachVelocity / (2 * GravityFactors.G);
        double ratio = Math.pow(headLoss / scale, 0.75);
        double fraction = (ratio - thickness / gap) / (ratio + 1);
        double clean = withBlindedFraction(0).headLoss(approachVelocity);
        return new Blinding(Math.max(0, fraction), headLoss, clean);
    }

    @Override
    public String toString() {
        return "BarScreen[" + shape + ", bars " + Text.significant(thickness, 6) + " m, gaps "
                + Text.significant(gap, 6) + " m, " + Text.significant(angleDegrees, 6) + " degrees"
                + (blindedFraction == 0 ? "" : ", blinded " + Text.significant(blindedFraction, 6)) + "]";
    }
}
