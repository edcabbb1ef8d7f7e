package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * The loss while the bucket moves, as a time: what runs in during the time τ before the bucket is level still goes to
 * the full side and is lost. Immutable and thread-safe.
 *
 * <p>With tip depth d [mm] and time between tips Δt [s] the bucket filled in Δt − τ, so
 *
 * <blockquote>I = 3600 d / (Δt − τ) = I<sub>r</sub> / (1 − τ I<sub>r</sub> / (3600 d)),   I<sub>r</sub> = 3600 d / Δt</blockquote>
 *
 * which is the straight line of Δt over 1/I that laboratories find (Humphrey, Istok, Lee, Hevesi and Flint 1997, Journal
 * of Atmospheric and Oceanic Technology 14, 1513-1519). Duchon, Fiebrich and Grimsley (2014), the same journal 31(6),
 * measured τ = 0.450 s on an 8 in gauge.
 *
 * <p>Valid to I<sub>r</sub> = 1800 d/τ, where half the water is lost; faster tips are no rain that this model can
 * explain, and get the factor 2 of that limit.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class LostTime implements Calibration {
    private final double seconds;

    private LostTime(double seconds) {
        this.seconds = seconds;
    }

    /**
     * Returns the calibration with the given lost time.
     *
     * @param seconds lost time τ, s; 0 to 5, which is ten times what is measured (common practice)
     * @return the calibration
     * @throws IllegalArgumentException if it is out of range
     */
    public static LostTime ofSeconds(double seconds) {
        return new LostTime(GaugeRanges.lostTime("seconds", seconds));
    }

    /**
     * Returns the lost time.
     *
     * @return τ, s
     */
    public double seconds() {
        return seconds;
    }

    @Override
    public double factor(double recordedMmPerHour, double tipMm) {
        double recorded = Math.min(recordedMmPerHour, highestMmPerHour(tipMm));
        return 1 / (1 - lostShare(recorded, tipMm));
    }

    /**
     * Returns the intensity that a gauge records when a known one falls, I<sub>r</sub> = I / (1 + τ I / (3600 d)).
     *
     * @param bucket the gauge
     * @param trueMmPerHour intensity that falls, mm/h; 0 or greater
     * @return recorded intensity, mm/h
     * @throws IllegalArgumentException if an argument is out of range
     */
    public double recordedMmPerHour(TippingBucket bucket, double trueMmPerHour) {
        Require.nonNegative("trueMmPerHour", trueMmPerHour, "mm/h");
        return trueMmPerHour / (1 + lostShare(trueMmPerHour, bucket.tipMm()));
    }

    /**
     * Returns the highest recorded intensity for which the model is used, 1800 d/τ.
     *
     * @param tipMm depth of one tip, mm
     * @return intensity, mm/h; infinite if no time is lost
     */
    @Override
    public double highestMmPerHour(double tipMm) {
        return 1800 * tipMm / seconds;
    }

    private double lostShare(double mmPerHour, double tipMm) {
        return seconds == 0 ? 0 : seconds * mmPerHour / (3600 * tipMm);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LostTime that && Double.compare(seconds, that.seconds) == 0;
    }

    @Override
    public int hashCode() {
        return Double.hashCode(seconds);
    }

    @Override
    public String toString() {
        return "LostTime[" + Text.significant(seconds, 6) + " s]";
    }
}
