package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.internal.StateText;
import java.util.Arrays;
import java.util.Optional;

/**
 * Whether a stretch to learn from has its columns of depth and velocity exchanged from the first day on. Nothing is usual yet, so the
 * drawings must tell: as they are written the readings belong to no uniform flow, exchanged they do, and the velocity then rises with
 * the depth as in a sewer. What is held up from downstream is deep and slow as well; but a depth is read more finely than a velocity,
 * and where the columns are exchanged the depth column is the rougher one from reading to reading.
 *
 * @param hours hours with a depth and a velocity
 * @param exchanged hours of them that are like uniform flow when exchanged
 * @param written hours that are as they are written
 */
record ExchangedFit(int hours, int exchanged, int written) {
    // All limits are chosen here.

    /** Velocity over that of uniform flow, or the other way, up to which both may belong together. */
    private static final double APART = 2;

    private static final double MOST = 0.9;
    private static final double FEW = 0.05;

    /** Hours that tell which column is rougher, at the least. */
    private static final int LEAST_HOURS = 48;

    /** Exponents of the velocity over the depth in a sewer that nothing holds up: about 2/3 where it is wide. */
    private static final double LEAST_EXPONENT = 0.35;

    private static final double LARGEST_EXPONENT = 1.1;

    /** Whether a reading of a depth and a velocity may belong to uniform flow by gradient and roughness as given. */
    static boolean fits(PipeMonitor monitor, double depth, double velocity) {
        double level = Math.min(depth + monitor.sensorOffset(), monitor.soffit());
        double uniform = level > 0 ? monitor.uniformVelocity(level) : 0;
        double read = monitor.velocityFactor() * velocity;
        return uniform > 0 && read <= APART * uniform && read * APART >= uniform;
    }

    /** The counts of a stretch whose columns are exchanged; empty if nothing says so. */
    static Optional<ExchangedFit> of(PipeMonitor monitor, StretchHours of) {
        double[] lnDepth = new double[of.both];
        double[] lnVelocity = new double[of.both];
        double[] apart = of.nan();
        int hours = 0;
        int exchanged = 0;
        int written = 0;
        for (int i = 0; i < of.size; i++) {
            if (!of.hour(i).hasBoth()) {
                continue;
            }
            apart[i] = of.hour(i).depthRoughness - of.hour(i).velocityRoughness;
            double depth = Math.exp(of.lnDepth[i]) - monitor.sensorOffset();
            double velocity = Math.exp(of.lnVelocity[i]);
            exchanged += fits(monitor, velocity, depth) ? 1 : 0;
            written += fits(monitor, depth, velocity) ? 1 : 0;
            if (depth > 0) {
                lnDepth[hours] = Math.log(velocity);
                lnVelocity[hours++] = Math.log(depth);
            }
        }
        boolean rougher = Medians.known(apart).length >= LEAST_HOURS && Medians.of(apart) > 0;
        if (hours < UsualVelocity.leastHours() || exchanged < MOST * of.both || written > FEW * of.both || !rougher) {
            return Optional.empty();
        }
        double exponent = UsualVelocity.learn(Arrays.copyOf(lnDepth, hours), Arrays.copyOf(lnVelocity, hours))
                .exponent();
        return exponent >= LEAST_EXPONENT && exponent <= LARGEST_EXPONENT
                ? Optional.of(new ExchangedFit(of.both, exchanged, written))
                : Optional.empty();
    }

    String words() {
        return "the columns of depth and velocity may be exchanged: " + exchanged + " of " + hours
                + " hours fit uniform flow by gradient and roughness as given when exchanged, " + written
                + " as they are written, and from reading to reading the depths are rougher than the velocities; nothing is judged against this baseline";
    }

    long[] counts() {
        return new long[] {hours, exchanged, written};
    }

    void write(StateText text) {
        text.with("exchangedColumns", counts());
    }

    static Optional<ExchangedFit> read(StateText text) {
        if (!text.has("exchangedColumns")) {
            return Optional.empty();
        }
        long[] counts = text.counts("exchangedColumns", 3);
        return Optional.of(new ExchangedFit((int) counts[0], (int) counts[1], (int) counts[2]));
    }
}
