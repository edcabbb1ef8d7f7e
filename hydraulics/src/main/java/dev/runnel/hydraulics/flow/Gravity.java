package dev.runnel.hydraulics.flow;

import org.apiguardian.api.API;

/**
 * The acceleration of free fall.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Gravity {
    /**
     * Standard acceleration of free fall, 9.80665 m/s² exactly (3rd General Conference on Weights and Measures, 1901).
     * The value used unless {@link Conduit#withGravity(double)} says otherwise.
     */
    public static final double STANDARD = 9.80665;

    private Gravity() {}
}
