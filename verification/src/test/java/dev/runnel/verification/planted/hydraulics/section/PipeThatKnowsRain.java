package dev.runnel.verification.planted.hydraulics.section;

import dev.runnel.verification.planted.rainfall.Rain;
import org.jspecify.annotations.Nullable;

/** A pipe that knows rain. */
final class PipeThatKnowsRain {
    @Nullable
    Rain rain;
}
