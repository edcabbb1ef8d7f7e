package dev.runnel.verification.planted.timeseries;

/** Public, and nobody knows for how long. */
public final class SeriesWithoutPromise {
    private SeriesWithoutPromise() {}
}
