package dev.runnel.verification.planted.timeseries;

import org.apiguardian.api.API;

/** Can be made by anyone. */
@API(status = API.Status.STABLE, since = "0.1")
public final class SeriesWithConstructor {
    /** There should be a factory. */
    public SeriesWithConstructor() {}
}
