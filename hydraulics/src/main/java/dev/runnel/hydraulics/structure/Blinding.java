package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * How blinded a screen is, got back from a measured loss.
 *
 * @param fraction share of the gaps that is blinded, in [0, 1); 0 also where the measured loss is below the clean one
 * @param headLoss the measured loss, m
 * @param cleanHeadLoss loss of the clean screen at the same velocity, m
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Blinding(double fraction, double headLoss, double cleanHeadLoss) {
    /**
     * Tells whether the measured loss is below that of the clean screen, so that the fraction says nothing: a level, a
     * datum or the velocity is off, or the loss is smaller than its own measuring error.
     *
     * @return true if it is
     */
    public boolean isBelowClean() {
        return headLoss < cleanHeadLoss;
    }

    @Override
    public String toString() {
        return "Blinding[fraction " + Text.significant(fraction, 3) + ", loss " + Text.significant(headLoss, 3)
                + " m, clean " + Text.significant(cleanHeadLoss, 3) + " m" + (isBelowClean() ? ", BELOW CLEAN]" : "]");
    }
}
