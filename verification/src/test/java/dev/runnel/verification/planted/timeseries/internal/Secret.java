package dev.runnel.verification.planted.timeseries.internal;

/** Private to its module. */
public final class Secret {
    private Secret() {}
}
