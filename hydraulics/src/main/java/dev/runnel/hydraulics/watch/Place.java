package dev.runnel.hydraulics.watch;

/**
 * Where a site stands in the plane of depth and velocity: both are known or neither is.
 *
 * @param depth ln depth over usual, or as it stands
 * @param velocity ln velocity, the same
 */
record Place(double depth, double velocity) {
    static final Place UNKNOWN = new Place(Double.NaN, Double.NaN);

    boolean isKnown() {
        return !Double.isNaN(depth);
    }

    /** The way here from another place. */
    Place from(double otherDepth, double otherVelocity) {
        return new Place(depth - otherDepth, velocity - otherVelocity);
    }
}
