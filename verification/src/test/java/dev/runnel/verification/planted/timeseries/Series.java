package dev.runnel.verification.planted.timeseries;

import org.apiguardian.api.API;

/** Breaks no rule. */
@API(status = API.Status.STABLE, since = "0.1")
public final class Series {
    private Series() {}
}
