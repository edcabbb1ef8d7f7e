package dev.runnel.hydraulics.flow;

import org.apiguardian.api.API;

/**
 * A law whose one roughness can be found from a gauged velocity.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface FittableResistance extends LawByRadius {
    /**
     * Returns the law with the roughness at which the uniform velocity is the gauged one.
     *
     * @param velocity gauged mean velocity V, m/s; greater than 0
     * @param hydraulicRadius hydraulic radius R, m; greater than 0
     * @param gradient energy gradient S, m/m; greater than 0
     * @param gravity acceleration of free fall g, m/s²; greater than 0
     * @return the law
     * @throws IllegalArgumentException if an argument is not greater than 0 and finite
     * @throws NoSolutionException if no roughness gives that velocity
     */
    FittableResistance fittedTo(double velocity, double hydraulicRadius, double gradient, double gravity);

    /**
     * Returns the velocity with the least roughness that the law takes: faster water fits no roughness.
     *
     * @param hydraulicRadius hydraulic radius R, m; greater than 0
     * @param gradient energy gradient S, m/m; greater than 0
     * @param gravity acceleration of free fall g, m/s²; greater than 0
     * @return velocity, m/s; +∞ if the law has no least roughness
     */
    double fastest(double hydraulicRadius, double gradient, double gravity);

    /**
     * Returns the velocity with the largest roughness that the law takes: slower water fits no roughness.
     *
     * @param hydraulicRadius hydraulic radius R, m; greater than 0
     * @param gradient energy gradient S, m/m; greater than 0
     * @param gravity acceleration of free fall g, m/s²; greater than 0
     * @return velocity, m/s; 0 if the law has no largest roughness
     */
    double slowest(double hydraulicRadius, double gradient, double gravity);
}
