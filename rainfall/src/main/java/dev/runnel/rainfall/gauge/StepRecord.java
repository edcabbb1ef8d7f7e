package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.RegularSeries;
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
    @Override
    public String toString() {
        return "StepRecord[" + depth.size() + " steps of " + depth.step() + ", "
                + Text.significant(depth.sum(), 6) + " mm, " + missing + " missing, " + filledDry
                + " filled as dry, " + aside + " readings with " + Text.significant(asideMm, 4) + " mm set aside]";
    }
}
