package dev.runnel.hydraulics.structure;

import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A limit of application that was broken, with the value that broke it.
 *
 * @param limit the limit
 * @param value value of the limited quantity, in the unit of the limit
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record LimitBreach(ApplicationLimit limit, double value) {
    /**
     * Checks that nothing is missing.
     *
     * @param limit the limit
     * @param value value of the limited quantity, in the unit of the limit
     */
    public LimitBreach {
        Objects.requireNonNull(limit, "limit");
    }

    @Override
    public String toString() {
        return limit.refusal(value);
    }
}
