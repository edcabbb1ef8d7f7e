package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import java.time.Duration;
import org.apiguardian.api.API;

/**
 * Bilham's formula for heavy falls in short periods in Britain.
 *
 * <blockquote>N = 1.214·10<sup>5</sup> D (P + 2.54)<sup>−3.55</sup>, T = 10/N</blockquote>
 *
 * <p>N occurrences in 10 years, D duration [h], P depth [mm], T return period [years], peaks over threshold. Source:
 * Bilham (1936), Classification of heavy falls of rain in short periods, British Rainfall 1935; constants from memory, in
 * agreement with the form in inches, N = 1.25 t (r + 0.1)<sup>−3.55</sup>.
 *
 * <p>Valid for 5 min to 2 h; return periods 0.1 to 100 years are answered (range from memory). Superseded for design; for
 * old records and old reports.
 *
 * <p><b>Great intensities.</b> Above a mean rate of about 1.25 in/h, 31.75 mm/h, the formula overstates how often a depth
 * is reached: the true return period is longer than the one it gives (from memory). Holland later changed the formula for that
 * range; his change is not included, because no readable source of it was found. {@link #isDoubtful} tells such depths.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Bilham implements DepthDurationFrequency {
    private static final Bilham INSTANCE = new Bilham();
    private static final double COEFFICIENT = 1.214e5;
    private static final double ADDEND_MM = 2.54;
    private static final double EXPONENT = 3.55;
    private static final double DOUBTFUL_ABOVE_MM_PER_HOUR = 1.25 * 25.4;

    private Bilham() {}

    /**
     * Returns the relation.
     *
     * @return the relation
     */
    public static Bilham relation() {
        return INSTANCE;
    }

    @Override
    public double depthMm(Duration duration, double returnPeriodYears) {
        Require.inRange("returnPeriodYears", returnPeriodYears, smallestYears(), greatestYears(), "years");
        return depthMm(hours(duration), returnPeriodYears);
    }

    private static double depthMm(double hours, double years) {
        return Math.pow(COEFFICIENT * hours * years / 10, 1 / EXPONENT) - ADDEND_MM;
    }

    @Override
    public ReturnPeriod returnPeriod(Duration duration, double depthMm) {
        double hours = hours(duration);
        return ReturnPeriod.of(
                this,
                depthMm,
                years -> depthMm(hours, years),
                depth -> 10 * Math.pow(depth + ADDEND_MM, EXPONENT) / (COEFFICIENT * hours));
    }

    /**
     * Tells whether the mean rate is above 31.75 mm/h, where the formula overstates how often a depth is reached.
     *
     * @param duration duration of rain D; 5 min to 2 h
     * @param depthMm depth P in that duration, mm; 0 or greater
     * @return true if P/D is above 1.25 in/h
     * @throws IllegalArgumentException if an argument is out of range
     */
    @Override
    public boolean isDoubtful(Duration duration, double depthMm) {
        Require.nonNegative("depthMm", depthMm, "mm");
        return depthMm / hours(duration) > DOUBTFUL_ABOVE_MM_PER_HOUR;
    }

    private double hours(Duration duration) {
        if (!covers(duration)) {
            throw new IllegalArgumentException("duration must be in [" + Text.exactDuration(shortestDuration()) + ", "
                    + Text.exactDuration(longestDuration()) + "], was " + Text.exactDuration(duration));
        }
        return Rain.hours(duration);
    }

    @Override
    public ReturnPeriodBasis basis() {
        return ReturnPeriodBasis.PEAKS_OVER_THRESHOLD;
    }

    @Override
    public Duration shortestDuration() {
        return Duration.ofMinutes(5);
    }

    @Override
    public Duration longestDuration() {
        return Duration.ofHours(2);
    }

    @Override
    public double smallestYears() {
        return 0.1;
    }

    @Override
    public double greatestYears() {
        return 100;
    }

    @Override
    public String toString() {
        return "Bilham[5 min to 2 h, 0.1 to 100 years, peaks over threshold, doubtful above 31.75 mm/h]";
    }
}
