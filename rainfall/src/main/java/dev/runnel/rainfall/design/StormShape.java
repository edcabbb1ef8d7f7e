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

    /**
     * Returns the shape through given points, with straight lines between them. Units do not matter: the last time stands for
     * the whole duration and the last depth for the whole depth, so that hours, percent or mm will do.
     *
     * @param times times since the start; from 0, rising, at least two
     * @param depths depths fallen by then; from 0, never falling, the last above 0
     * @return the shape
     * @throws IllegalArgumentException if an argument is out of range
     */
    static StormShape through(double[] times, double[] depths) {
        return PointShape.of(times, depths);
    }
}
