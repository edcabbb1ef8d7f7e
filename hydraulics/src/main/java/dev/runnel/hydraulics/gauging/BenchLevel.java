package dev.runnel.hydraulics.gauging;

import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * What a bench check found at one level.
 *
 * @param reference reference value, in the unit of the check
 * @param readings count of readings
 * @param bias mean reading less reference
 * @param repeatability standard deviation of the readings; 0 for one reading
 * @param expandedUncertainty uncertainty of the bias at about 95 %
 * @param verdict whether the bias lies within the tolerance
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record BenchLevel(
        double reference,
        int readings,
        double bias,
        double repeatability,
        double expandedUncertainty,
        ToleranceVerdict verdict) {
    /**
     * Checks that nothing is missing.
     *
     * @param reference reference value, in the unit of the check
     * @param readings count of readings
     * @param bias mean reading less reference
     * @param repeatability standard deviation of the readings; 0 for one reading
     * @param expandedUncertainty uncertainty of the bias at about 95 %
     * @param verdict whether the bias lies within the tolerance
     */
    public BenchLevel {
        Objects.requireNonNull(verdict, "verdict");
    }

    @Override
    public String toString() {
        return "BenchLevel[" + Text.significant(reference, 6) + ": bias " + Text.significant(bias, 3) + " ± "
                + Text.significant(expandedUncertainty, 2) + ", " + verdict + "]";
    }
}
