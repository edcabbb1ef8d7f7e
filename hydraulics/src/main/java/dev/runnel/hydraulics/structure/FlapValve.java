package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The head that a flap valve costs on the end of a round pipe that runs full. Immutable and thread-safe.
 *
 * <p>h = (4 V²/g) exp(−1.15 V/√D) in feet and seconds (F. A. Nagler 1923, from memory), with V the velocity in the pipe and
 * D its bore; in SI the constant in the exponent is 1.15/√0.3048 = 2.083 s/√m. A slow stream hangs on the flap, a fast one
 * lifts it: the loss rises to V = 0.96 √D (m) and falls again beyond. A given loss therefore belongs to two velocities, and
 * both are returned.
 *
 * <p>What it is not: the opening pressure of a stuck, weighted or silted flap, or the loss of a rubber duckbill; these only
 * the maker or a measurement knows. A flap held open by a rag lets the sea in.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class FlapValve extends OfParts {
    private static final double EXPONENT = 1.15 / Math.sqrt(0.3048);

    private final double diameter;

    private FlapValve(double diameter) {
        super(diameter);
        this.diameter = diameter;
    }

    /**
     * Returns a flap of the weight that Nagler tested.
     *
     * @param diameter bore D, m; in [1e-6, 1e6]
     * @return the flap
     * @throws IllegalArgumentException if {@code diameter} is not
     */
    public static FlapValve ofDiameter(double diameter) {
        return new FlapValve(Sizes.length("diameter", diameter));
    }

    /**
     * Returns the loss at a velocity.
     *
     * @param velocity mean velocity in the full pipe V, m/s; 0 or greater, finite
     * @return loss h, m
     * @throws IllegalArgumentException if {@code velocity} is outside its range
     */
    public double headLoss(double velocity) {
        Require.nonNegative("velocity", velocity, "m/s");
        return 4 * velocity * velocity / GravityFactors.G * Math.exp(-EXPONENT * velocity / Math.sqrt(diameter));
    }

    /**
     * Returns the loss as a coefficient K in h = K V²/2g.
     *
     * @param velocity mean velocity V, m/s; 0 or greater, finite
     * @return K, from 8 at rest towards 0
     * @throws IllegalArgumentException if {@code velocity} is outside its range
     */
    public double lossCoefficient(double velocity) {
        Require.nonNegative("velocity", velocity, "m/s");
        return 8 * Math.exp(-EXPONENT * velocity / Math.sqrt(diameter));
    }

    /**
     * Returns the velocity of the greatest loss, 2√D/2.083.
     *
     * @return velocity, m/s
     */
    public double worstVelocity() {
        return 2 * Math.sqrt(diameter) / EXPONENT;
    }

    /**
     * Returns the velocities with a given loss.
     *
     * @param headLoss loss h, m; 0 or greater, finite
     * @return ascending: {0} for no loss, two for one below the greatest, one at the greatest, none above; a new array
     * @throws IllegalArgumentException if {@code headLoss} is outside its range
     */
    public double[] velocities(double headLoss) {
        Require.nonNegative("headLoss", headLoss, "m");
        if (headLoss == 0) {
            return new double[] {0};
        }
        double worst = worstVelocity();
        double greatest = headLoss(worst);
        if (headLoss >= greatest) {
            return headLoss == greatest ? new double[] {worst} : new double[0];
        }
        double high = Roots.doubled(v -> headLoss - headLoss(v), worst);
        return new double[] {
            Roots.between(v -> headLoss(v) - headLoss, 0, worst),
            Roots.between(v -> headLoss(v) - headLoss, worst, high)
        };
    }

    @Override
    public String toString() {
        return "FlapValve[D = " + Text.significant(diameter, 6) + " m]";
    }
}
