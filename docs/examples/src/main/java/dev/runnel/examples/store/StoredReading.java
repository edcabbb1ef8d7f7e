package dev.runnel.examples.store;

import java.time.Instant;

/** A row of readings; NaN for what was not measured. */
record StoredReading(Instant time, double depth, double velocity) {}
