package dev.runnel.verification.simulation;

import java.util.Locale;

/** Who makes a site. */
enum Make {
    /** Smooth shapes of the day, showers, linear reservoirs, normal scatter: {@link SmoothNature}. */
    FIRST,
    /** A stock of ragged days, a cascade of rain, unit hydrographs, heavy tails: {@link RoughNature}. */
    SECOND,
    /** Single households and batches of industry, clusters of rain cells, a weir downstream: {@link HouseholdNature}. */
    THIRD;

    Nature nature(long seed, double wetClimate) {
        return switch (this) {
            case FIRST -> new SmoothNature(seed, wetClimate);
            case SECOND -> new RoughNature(seed, wetClimate);
            case THIRD -> new HouseholdNature(seed, wetClimate);
        };
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
