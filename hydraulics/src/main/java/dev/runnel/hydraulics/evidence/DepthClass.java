package dev.runnel.hydraulics.evidence;

import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The velocities measured in one class of levels, beside the velocity of the law of resistance. Immutable and
 * thread-safe.
 *
 * @param from lowest level of the class, m
 * @param to level at which the next class begins, m
 * @param medianLevel median level of its readings, m
 * @param velocity median and scatter of the measured mean velocities, m/s
 * @param lawVelocity velocity of uniform flow at the median level, m/s
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record DepthClass(double from, double to, double medianLevel, MedianAndSpread velocity, double lawVelocity) {
    /**
     * Checks that the velocity is there.
     *
     * @param from lowest level of the class, m
     * @param to level at which the next class begins, m
     * @param medianLevel median level of its readings, m
     * @param velocity median and scatter of the measured mean velocities, m/s
     * @param lawVelocity velocity of uniform flow at the median level, m/s
     */
    public DepthClass {
        Objects.requireNonNull(velocity, "velocity");
    }

    /**
     * Returns the median measured velocity over that of the law.
     *
     * @return ratio; 1 if they agree
     */
    public double ratio() {
        return velocity.median() / lawVelocity;
    }

    @Override
    public String toString() {
        return "DepthClass[" + Text.fixed(from, 3) + " to " + Text.fixed(to, 3) + " m, " + velocity.count()
                + " readings, velocity " + Text.fixed(velocity.median(), 3) + " m/s, law " + Text.fixed(lawVelocity, 3)
                + " m/s, ratio " + Text.fixed(ratio(), 3) + "]";
    }
}
