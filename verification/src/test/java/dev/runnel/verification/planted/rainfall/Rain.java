package dev.runnel.verification.planted.rainfall;

import org.apiguardian.api.API;

/** Its package is not @NullMarked. */
@API(status = API.Status.STABLE, since = "0.1")
public final class Rain {
    private Rain() {}
}
