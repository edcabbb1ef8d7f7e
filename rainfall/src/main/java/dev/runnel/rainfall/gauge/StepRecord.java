package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.RegularSeries;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Rain in every step of a record that came at a fixed step, and what became of its readings.
 *
 * @param depth depth in each step, mm; NaN where the record does not say
 * @param missing steps of which the record says nothing
 * @param filledDry steps without a reading that were taken as dry
 * @param aside readings that were set aside, wholly or in part, since their time fits no step or shares one with a missing
 *     reading
 * @param asideMm their rain that is in no step, mm
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record StepRecord(RegularSeries depth, int missing, int filledDry, int aside, double asideMm) {
    /**
     * Checks that the counts can be those of the record.
     *
     * @param depth depth in each step, mm
     * @param missing steps of which the record says nothing
     * @param filledDry steps without a reading that were taken as dry; 0 or more
     * @param aside readings that were set aside; 0 or more
     * @param asideMm their rain that is in no step, mm; 0 or greater
     * @throws IllegalArgumentException if a depth or a count is negative, or the missing steps are not those of the series
     */
    public StepRecord {
        Objects.requireNonNull(depth, "depth");
        Rain.requireNonNegative("depth", depth, "mm");
        if (missing != depth.missing()) {
            throw new IllegalArgumentException(
                    "missing must be the steps missing in depth, " + depth.missing() + ", was " + missing);
        }
        Require.atLeast("filledDry", filledDry, 0);
        Require.atLeast("aside", aside, 0);
        Require.nonNegative("asideMm", asideMm, "mm");
    }

    @Override
    public String toString() {
        return "StepRecord[" + depth.size() + " steps of " + Text.duration(depth.step()) + ", "
                + Text.significant(depth.sum(), 6) + " mm, " + missing + " missing, " + filledDry
                + " filled as dry, " + aside + " readings with " + Text.significant(asideMm, 4) + " mm set aside]";
    }
}
