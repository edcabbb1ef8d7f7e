package dev.runnel.hydraulics.watch;

import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * How far a quantity stands from what is usual, in the last days of a finding. Immutable and thread-safe.
 *
 * @param quantity what is compared
 * @param change relative change of its median, for example -0.31 for 31 % less
 * @param scatter what is allowed for as scatter of the site, as a relative change: {@link SiteBaseline#scatter(Quantity)}, which is
 *     more than a quiet site shows
 * @param hours number of hours behind it
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Moved(Quantity quantity, double change, double scatter, int hours) {
    /**
     * Checks that the quantity is there.
     *
     * @param quantity what is compared
     * @param change relative change
     * @param scatter scatter allowed for, relative
     * @param hours number of hours
     */
    public Moved {
        Objects.requireNonNull(quantity, "quantity");
    }

    @Override
    public String toString() {
        long percent = Math.round(100 * change);
        return quantity + " " + (percent > 0 ? "+" : "") + percent + " % (scatter allowed for "
                + Text.fixed(100 * scatter, 0) + " %, " + hours + " h)";
    }
}
