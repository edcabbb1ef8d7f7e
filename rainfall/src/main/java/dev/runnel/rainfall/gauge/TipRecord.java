package dev.runnel.rainfall.gauge;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Rain in every step of a record of tips that has outages, and what became of the tips.
 *
 * <p>The depths of the known steps and the {@code depthInMissingMm} add up to the depth of all tips outside the outages.
 *
 * @param depth depth in each step, mm; NaN in steps that share time with an outage
 * @param outages outages in the record, those that overlap or touch as one
 * @param missing steps that are not known
 * @param depthInMissingMm rain of tips outside the outages that fell in steps which share time with one, mm; real, but not
 *     the whole of its step
 * @param aside tips in outages, set aside
 * @param asideMm their nominal depth, mm
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record TipRecord(
        RegularSeries depth, int outages, int missing, double depthInMissingMm, int aside, double asideMm) {
    /**
     * Checks that nothing is missing.
     *
     * @param depth depth in each step, mm; NaN in steps that share time with an outage
     * @param outages outages in the record, those that overlap or touch as one
     * @param missing steps that are not known
     * @param depthInMissingMm rain of tips outside the outages that fell in steps which share time with one, mm; real, but not the whole of its step
     * @param aside tips in outages, set aside
     * @param asideMm their nominal depth, mm
     */
    public TipRecord {
        Objects.requireNonNull(depth, "depth");
    }

    static TipRecord of(RegularSeries all, List<Interval> outages, int aside, double asideMm) {
        RegularSeries known = all.withMissing(outages.toArray(Interval[]::new));
        CompensatedSum lost = new CompensatedSum();
        int missing = 0;
        for (int i = 0; i < known.size(); i++) {
            if (Double.isNaN(known.value(i))) {
                missing++;
                lost.add(all.value(i));
            }
        }
        return new TipRecord(known, outages.size(), missing, lost.value(), aside, asideMm);
    }

    @Override
    public String toString() {
        return "TipRecord[" + depth.size() + " steps of " + Text.duration(depth.step()) + ", "
                + Text.significant(depth.sum(), 6) + " mm, " + outages + " outages, " + missing + " steps missing with "
                + Text.significant(depthInMissingMm, 4) + " mm, " + aside + " tips of "
                + Text.significant(asideMm, 4) + " mm set aside]";
    }
}
