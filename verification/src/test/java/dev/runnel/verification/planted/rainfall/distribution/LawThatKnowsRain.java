package dev.runnel.verification.planted.rainfall.distribution;

import dev.runnel.verification.planted.rainfall.Rain;
import org.jspecify.annotations.Nullable;

/** A distribution that knows rain. */
final class LawThatKnowsRain {
    @Nullable
    Rain rain;
}
