package dev.runnel.rainfall.areal;

import java.time.Duration;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The factor from depth at a point to depth of the same return period over an area.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface ArealReduction {
    /**
     * Returns the areal reduction factor.
     *
     * @param areaKm2 area A, km², not m²: {@link Catchment#areaKm2()}; in the range of the method
     * @param duration duration of rain D; in the range of the method
     * @return factor, above 0, no more than 1
     * @throws IllegalArgumentException if an argument is out of range
     */
    double factor(double areaKm2, Duration duration);

    /**
     * Returns the areal reduction factor of a catchment.
     *
     * @param catchment its area in the range of the method
     * @param duration duration of rain D; in the range of the method
     * @return factor, above 0, no more than 1
     * @throws IllegalArgumentException if area or duration are out of range
     */
    default double factor(Catchment catchment, Duration duration) {
        return factor(catchment.areaKm2(), duration);
    }

    /**
     * Returns the reduction for the United Kingdom, ARF = 1 − b D<sup>−a</sup> with D in hours and a and b functions of the
     * area. Source: Keers and Wescott (1977), A computer-based model for design rainfall in the United Kingdom,
     * Meteorological Office Scientific Paper 36.
     *
     * <p>Valid for 1 to 20000 km² and 5 min to 25 days; answers that would not be above 0 (short rain on large areas) are
     * refused. b jumps by less than 0.5 % at 100 and 1000 km²: that is the method.
     *
     * @return the reduction
     */
    static ArealReduction keersWescott() {
        return KeersWescott.INSTANCE;
    }

    /**
     * Returns the reduction for a region of Australia. Source: Ball et al. (2019), Australian Rainfall and Runoff, book 2,
     * chapter 4: up to 12 hours one equation everywhere, from 24 hours one by region, between them linear in duration; both
     * depend on the rarity.
     *
     * <blockquote>D ≤ 12 h: 1 − 0.287 (A<sup>0.265</sup> − 0.439 lg D) D<sup>−0.36</sup> + 0.00226 A<sup>0.226</sup>
     * D<sup>0.125</sup> (0.3 + lg p) + 0.0141 A<sup>0.213</sup> 10<sup>−0.021 (D − 180)²/1440</sup> (0.3 + lg p)<br>
     * D ≥ 24 h: 1 − a (A<sup>b</sup> − c lg D) D<sup>−d</sup> + e A<sup>f</sup> D<sup>g</sup> (0.3 + lg p) + h 10<sup>i A
     * D/1440</sup> (0.3 + lg p)</blockquote>
     *
     * <p>A [km²], D [min], p annual exceedance probability; no factor above 1. Up to 1 km² the factor is 1, up to 10 km² it is
     * 1 − 0.6614 (1 − factor of 10 km²) (A<sup>0.4</sup> − 1). Valid up to 1000 km² below 24 hours and 30000 km² from there to
     * 168 hours; for p from 0.5 to 0.005, and down to 0.0005 by extension. The shortest duration, 30 min, is a limit of this
     * library: none was seen in the source.
     *
     * @param region region of the catchment
     * @param annualExceedanceProbability share of years in which the depth is reached, p; in [0.0005, 0.5]
     * @return the reduction
     * @throws IllegalArgumentException if p is out of range
     */
    static ArealReduction australia2019(AustralianRegion region, double annualExceedanceProbability) {
        return new Australia2019(Objects.requireNonNull(region, "region"), annualExceedanceProbability);
    }
}
