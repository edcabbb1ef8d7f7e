package dev.runnel.hydraulics.uncertainty;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import org.apiguardian.api.API;

/**
 * A volume and its uncertainty, the random and the common part kept apart: random errors of readings fall with their count, an
 * error common to all of them (a datum, a factor, a section) does not.
 *
 * <p>V = Δt Σ Q. Random: u = u_r Δt √(Σ Q² · m), with u_r the relative standard uncertainty of one reading and m the count of readings
 * that err together. Common: u = u_c V. Both are independent of each other (JCGM 100, 5.1.2).
 *
 * @param volume V, m³
 * @param random standard uncertainty from the random errors, m³
 * @param common standard uncertainty from the common error, m³
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record VolumeUncertainty(double volume, double random, double common) {
    /**
     * The errors of the flows.
     *
     * @param random relative standard uncertainty of one reading, u_r
     * @param common relative standard uncertainty common to all readings, u_c
     * @param memorySeconds time over which random errors stick together, s
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record FlowErrors(double random, double common, double memorySeconds) {
        /**
         * Checks the parts.
         *
         * @param random u_r; in [0, 5]
         * @param common u_c; in [0, 5]
         * @param memorySeconds time, s; 0 or greater, finite
         * @throws IllegalArgumentException if a part is outside its range
         */
        public FlowErrors {
            Require.inRange("random", random, 0, 5, "");
            Require.inRange("common", common, 0, 5, "");
            Require.nonNegative("memorySeconds", memorySeconds, "s");
        }

        /**
         * Returns random errors that are new with each reading.
         *
         * @param relative relative standard uncertainty of one reading; in [0, 5]
         * @return the errors, with no common part
         * @throws IllegalArgumentException if {@code relative} is outside its range
         */
        public static FlowErrors ofRandom(double relative) {
            return new FlowErrors(relative, 0, 0);
        }

        /**
         * Returns a copy with a common error.
         *
         * @param relative relative standard uncertainty common to all readings; in [0, 5]
         * @return the copy
         * @throws IllegalArgumentException if {@code relative} is outside its range
         */
        public FlowErrors withCommon(double relative) {
            return new FlowErrors(random, relative, memorySeconds);
        }

        /**
         * Returns a copy whose random errors stick together for a time: a rag that hangs for an hour is one error, not sixty.
         *
         * @param seconds time, s; 0 or greater, finite
         * @return the copy
         * @throws IllegalArgumentException if {@code seconds} is outside its range
         */
        public FlowErrors withMemory(double seconds) {
            return new FlowErrors(random, common, seconds);
        }
    }

    /**
     * Returns the volume of a record of flows at equal steps.
     *
     * @param flows flows, m³/s; finite, at least one; a gap is for the caller to fill or to leave out
     * @param stepSeconds step, s; greater than 0, finite
     * @param errors the errors of the flows
     * @return volume and uncertainty
     * @throws IllegalArgumentException if a parameter is outside its range; the message names the index
     */
    public static VolumeUncertainty of(double[] flows, double stepSeconds, FlowErrors errors) {
        Require.atLeast("count of flows", flows.length, 1);
        Require.positive("stepSeconds", stepSeconds, "s");
        CompensatedSum sums = new CompensatedSum();
        CompensatedSum squares = new CompensatedSum();
        for (int i = 0; i < flows.length; i++) {
            Require.inRange("flows[" + i + "]", flows[i], -1e9, 1e9, "m3/s");
            sums.add(flows[i]);
            squares.add(flows[i] * flows[i]);
        }
        double sum = sums.value();
        double together = Math.max(1, Math.min(flows.length, errors.memorySeconds() / stepSeconds));
        return new VolumeUncertainty(
                sum * stepSeconds,
                errors.random() * stepSeconds * Math.sqrt(squares.value() * together),
                errors.common() * Math.abs(sum) * stepSeconds);
    }

    /**
     * Returns this volume and another of the same instrument: random parts add as squares, common parts as they are.
     *
     * @param other the other, such as the next day
     * @return the sum
     */
    public VolumeUncertainty plus(VolumeUncertainty other) {
        return new VolumeUncertainty(volume + other.volume, Math.hypot(random, other.random), common + other.common);
    }

    /**
     * Returns the standard uncertainty of the volume.
     *
     * @return √(random² + common²), m³
     */
    public double standard() {
        return Math.hypot(random, common);
    }

    @Override
    public String toString() {
        return "VolumeUncertainty[" + Text.significant(volume, 5) + " m3 ± " + Text.significant(standard(), 2)
                + " (standard): random " + Text.significant(random, 2) + ", common " + Text.significant(common, 2)
                + "]";
    }
}
