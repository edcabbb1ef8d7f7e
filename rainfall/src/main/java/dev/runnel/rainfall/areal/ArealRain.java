package dev.runnel.rainfall.areal;

import dev.runnel.timeseries.RegularSeries;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Mean rain over an area.
 *
 * @param rain depth in each step, mm; NaN where no gauge was present
 * @param reweighted steps in which at least one gauge was missing
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record ArealRain(RegularSeries rain, int reweighted) {
    /**
     * Checks that nothing is missing.
     *
     * @param rain depth in each step, mm; NaN where no gauge was present
     * @param reweighted steps in which at least one gauge was missing
     */
    public ArealRain {
        Objects.requireNonNull(rain, "rain");
    }
}
