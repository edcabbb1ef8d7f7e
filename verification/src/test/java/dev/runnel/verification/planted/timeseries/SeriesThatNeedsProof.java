package dev.runnel.verification.planted.timeseries;

import dev.runnel.verification.planted.verification.Proof;
import org.jspecify.annotations.Nullable;

/** A series that needs its own proof. */
final class SeriesThatNeedsProof {
    @Nullable
    Proof proof;
}
