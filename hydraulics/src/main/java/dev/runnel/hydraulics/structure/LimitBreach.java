package dev.runnel.hydraulics.structure;

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
    @Override
    public String toString() {
        return limit.refusal(value);
    }
}
