package dev.runnel.verification.planted.rainfall;

import org.jspecify.annotations.Nullable;
import org.locationtech.jts.geom.Coordinate;

/** Rain that needs the optional library, past the class made for it. */
final class RainThatKnowsGeometry {
    @Nullable
    Coordinate place;
}
