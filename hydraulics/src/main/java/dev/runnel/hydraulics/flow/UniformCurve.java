package dev.runnel.hydraulics.flow;

/** Discharge over depth of one conduit in a form that needs no search; one maximum, below the soffit. */
interface UniformCurve {
    /** Discharge at a depth in [0, height], m³/s. */
    double discharge(double depth);

    /** The lowest depth of a discharge of 0 or greater, m; NaN if there is none. */
    double lowestDepth(double discharge);

    /** All depths of a discharge, ascending, m. */
    double[] depths(double discharge);

    /** Depth of the largest discharge, m. */
    double depthOfMostDischarge();

    /** Depth of the largest velocity, m. */
    double depthOfMostVelocity();
}
