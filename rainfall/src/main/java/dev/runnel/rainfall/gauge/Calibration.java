package dev.runnel.rainfall.gauge;

import org.apiguardian.api.API;

/**
 * The relation between the intensity that a gauge records and the one that fell, as found in the laboratory: the loss
 * while the bucket moves, and a bucket that is not quite of its nominal size.
 *
 * <p>A calibration is known over a range of intensity. Above it the factor of the limit is used; below it, where little
 * is lost, the factor goes to that of a slow tip. {@link #covers} says whether an intensity is in the range, and
 * {@link TippingBucket#summary} counts the tips below and above.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface Calibration {
    /**
     * Returns the depth that fell for one unit of depth recorded.
     *
     * @param recordedMmPerHour recorded intensity I<sub>r</sub> = 3600 d / Δt, mm/h; 0 or greater, infinite for two
     *     tips at one instant
     * @param tipMm depth of one tip d, mm; greater than 0
     * @return true over recorded intensity, greater than 0
     */
    double factor(double recordedMmPerHour, double tipMm);

    /**
     * Returns the lowest recorded intensity at which the calibration is known.
     *
     * @param tipMm depth of one tip, mm
     * @return intensity, mm/h; 0 if it is known for the slowest tips
     */
    default double lowestMmPerHour(double tipMm) {
        return 0;
    }

    /**
     * Returns the highest recorded intensity at which the calibration is known.
     *
     * @param tipMm depth of one tip, mm
     * @return intensity, mm/h; infinite if there is no limit
     */
    default double highestMmPerHour(double tipMm) {
        return Double.POSITIVE_INFINITY;
    }

    /**
     * Tells whether an intensity lies in the range of the calibration.
     *
     * @param recordedMmPerHour recorded intensity, mm/h
     * @param tipMm depth of one tip, mm
     * @return true from the lowest to the highest intensity, both included
     */
    default boolean covers(double recordedMmPerHour, double tipMm) {
        return recordedMmPerHour >= lowestMmPerHour(tipMm) && recordedMmPerHour <= highestMmPerHour(tipMm);
    }

    /**
     * Returns the calibration that changes nothing.
     *
     * @return factor 1 at every intensity
     */
    static Calibration none() {
        return NoCalibration.INSTANCE;
    }
}
