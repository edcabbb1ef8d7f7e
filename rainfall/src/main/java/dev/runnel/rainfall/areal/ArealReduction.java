package dev.runnel.rainfall.areal;

import java.time.Duration;
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
}
