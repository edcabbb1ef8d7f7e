package dev.runnel.rainfall.design;

import org.apiguardian.api.API;

/**
 * The share of the depth that has fallen after a share of the duration.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
@FunctionalInterface
public interface StormShape {
    /**
     * Returns the share of the depth.
     *
     * @param fraction share of the duration; in [0, 1]
     * @return share of the depth; 0 at 0, 1 at 1, never falling
     */
    double depthShare(double fraction);
}
