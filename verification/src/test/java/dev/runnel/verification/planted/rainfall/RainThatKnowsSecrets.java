package dev.runnel.verification.planted.rainfall;

import dev.runnel.verification.planted.timeseries.internal.Secret;
import org.jspecify.annotations.Nullable;

/** Rain that reaches into another module. */
final class RainThatKnowsSecrets {
    @Nullable
    Secret secret;
}
