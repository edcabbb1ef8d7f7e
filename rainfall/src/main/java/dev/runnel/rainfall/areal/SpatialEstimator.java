package dev.runnel.rainfall.areal;

import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A rule that tells the rain of a place from the gauges around it: a weight for each. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface SpatialEstimator {
    /**
     * Returns the weights of gauges for a place.
     *
     * @param target the place
     * @param gauges where the gauges stand; at least one, all at different places
     * @return one weight for each gauge, in their order, together 1; and the variance of the estimate, if the rule knows it
     * @throws IllegalArgumentException if there is no gauge, or two stand at one place
     */
    PlaceWeights weights(Location target, List<Location> gauges);

    /**
     * Returns the rule that weighs gauges by a power of one over their distance, w ∝ 1/d<sup>p</sup>; a gauge at the place itself takes
     * all. Source: Shepard (1968), A two-dimensional interpolation function for irregularly-spaced data, Proceedings of the 23rd
     * ACM national conference, 517-524.
     *
     * @param power exponent p; greater than 0, usually 2
     * @return the rule, which knows no variance
     * @throws IllegalArgumentException if the power is out of range
     */
    static SpatialEstimator inverseDistance(double power) {
        return InverseDistance.of(power);
    }

    /**
     * Returns ordinary kriging: of all weights that add up to 1 those of the least variance, from
     *
     * <blockquote>Σ<sub>j</sub> λ<sub>j</sub> γ(x<sub>i</sub> − x<sub>j</sub>) + μ = γ(x<sub>i</sub> − x₀) for each i, Σ λ<sub>j</sub> = 1;
     * σ² = Σ λ<sub>i</sub> γ(x<sub>i</sub> − x₀) + μ</blockquote>
     *
     * <p>Weights may be below 0 for gauges behind others, and the rain they give is then cut at 0. Source: Matheron (1963), Principles of
     * geostatistics, Economic Geology 58, 1246-1266; Cressie (1993), Statistics for spatial data, section 3.2.
     *
     * @param variogram how unlike the rain of two places is
     * @return the rule, which knows its variance as far as the variogram is right
     */
    static SpatialEstimator ordinaryKriging(Variogram variogram) {
        return new OrdinaryKriging(Objects.requireNonNull(variogram, "variogram"));
    }
}
