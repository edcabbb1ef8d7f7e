package dev.runnel.verification.planted.timeseries;

import dev.runnel.verification.planted.hydraulics.section.Pipe;
import org.jspecify.annotations.Nullable;

/** A series that knows a pipe. */
final class SeriesThatKnowsPipes {
    @Nullable
    Pipe pipe;
}
