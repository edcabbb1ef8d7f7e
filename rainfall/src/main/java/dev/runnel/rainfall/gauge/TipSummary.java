package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * What a gauge makes of a record of tips, in numbers.
 *
 * @param tips number of tips
 * @param coincident tips at the very instant of the tip before
 * @param belowCalibration tips slower than the range of the calibration: harmless, nothing is lost there; the first tip
 *     of a record, which has no intensity, is not counted
 * @param aboveCalibration tips faster than the range of the calibration, whose factor is that of its upper limit
 * @param nominalMm number of tips times the depth of a tip, mm
 * @param depthMm depth after calibration, mm
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record TipSummary(
        int tips, int coincident, int belowCalibration, int aboveCalibration, double nominalMm, double depthMm) {
    /**
     * Returns the number of tips outside the range of the calibration.
     *
     * @return those below and those above
     */
    public int beyondCalibration() {
        return belowCalibration + aboveCalibration;
    }

    /**
     * Returns the depth that the calibration added.
     *
     * @return depth after calibration minus nominal depth, mm; negative if it took some away
     */
    public double addedMm() {
        return depthMm - nominalMm;
    }

    @Override
    public String toString() {
        return "TipSummary[" + tips + " tips, " + Text.significant(depthMm, 6) + " mm of which "
                + Text.significant(addedMm(), 4) + " mm by calibration, " + coincident + " coincident, "
                + belowCalibration + " below and " + aboveCalibration + " above the calibration]";
    }
}
