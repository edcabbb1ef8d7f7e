package dev.runnel.verification.planted.hydraulics.section;

import dev.runnel.verification.planted.timeseries.Series;
import org.jspecify.annotations.Nullable;

/** Physics that knows readings in time. */
final class PipeThatKnowsTime {
    @Nullable
    Series series;
}
