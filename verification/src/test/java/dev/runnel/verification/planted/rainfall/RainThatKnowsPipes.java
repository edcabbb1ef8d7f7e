package dev.runnel.verification.planted.rainfall;

import dev.runnel.verification.planted.hydraulics.section.Pipe;
import org.jspecify.annotations.Nullable;

/** Rain that knows a pipe. */
final class RainThatKnowsPipes {
    @Nullable
    Pipe pipe;
}
