package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/**
 * A Parshall flume, Q = K · hⁿ with h the head at the upstream gauge above the level floor of the converging part (m).
 * Immutable and thread-safe.
 *
 * <ul>
 *   <li>Throat W below 0.3 m: K and n from a table, for 0.025, 0.051, 0.076, 0.152, 0.229 and 0.25 m.
 *   <li>0.3 to 2.4 m: Q = 0.372 W (h/0.305)ⁿ, n = 1.569 W^0.026.
 *   <li>3.05 to 15.24 m: Q = (2.293 W + 0.474) h^1.6.
 * </ul>
 *
 * <p>Source: ISO 9826 (1992), Measurement of liquid flow in open channels - Parshall and SANIIRI flumes; the two formulas
 * from memory, within 0.09 % of the printed constants of the Chinese standard CJ/T 3008.3-1993, whose ranges of head are
 * the limits here. Uncertainty 5 % (ISO 9826 from memory: 3 to 5 %).
 *
 * <p>Valid for the standard shape only, and for free flow: the ratio of the downstream head in the throat to h must stay
 * below {@link #modularLimit()}. Drowned flow is refused.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class ParshallFlume implements HeadDischarge {
    private static final CoefficientTable SMALL = CoefficientTable.resource("parshall-small.csv");
    private static final String ISO_9826 = "ISO 9826, CJ/T 3008.3-1993";

    private final double throat;
    private final double constant;
    private final double exponent;
    private final double modularLimit;
    private final List<ApplicationLimit> limits;

    private ParshallFlume(
            double throat, double constant, double exponent, double least, double greatest, double modularLimit) {
        this.throat = throat;
        this.constant = constant;
        this.exponent = exponent;
        this.modularLimit = modularLimit;
        limits = List.of(ApplicationLimit.of("head h", "m", least, greatest, ISO_9826, h -> h));
    }

    /**
     * Returns the flume with a throat of the given width.
     *
     * @param throat throat width W, m; one of 0.025, 0.051, 0.076, 0.152, 0.229, 0.25, or in [0.3, 2.44], or in [3.04,
     *     15.25]
     * @return the flume
     * @throws IllegalArgumentException if no standard flume has that throat
     */
    public static ParshallFlume ofThroat(double throat) {
        for (double[] row : SMALL.rows()) {
            if (row[0] == throat) {
                return new ParshallFlume(throat, row[1], row[2], row[3], row[4], row[5]);
            }
        }
        if (throat >= 0.3 && throat <= 2.44) {
            double exponent = 1.569 * Math.pow(throat, 0.026);
            double least = throat < 0.6 ? 0.03 : throat < 0.75 ? 0.05 : throat < 1.8 ? 0.06 : 0.08;
            double constant = 0.372 * throat * Math.pow(0.305, -exponent);
            return new ParshallFlume(throat, constant, exponent, least, throat < 1 ? 0.75 : 0.80, 0.7);
        }
        if (throat >= 3.04 && throat <= 15.25) {
            double greatest = throat < 3.6 ? 1.07 : throat < 4.5 ? 1.37 : throat < 6 ? 1.67 : 1.83;
            return new ParshallFlume(throat, 2.293 * throat + 0.474, 1.6, 0.09, greatest, 0.8);
        }
        String sizes = Arrays.stream(SMALL.column(0)).mapToObj(Text::number).collect(Collectors.joining(", "));
        throw new IllegalArgumentException("throat must be one of " + sizes
                + ", or in [0.3, 2.44], or in [3.04, 15.25] m, was " + Text.number(throat));
    }

    @Override
    public double formula(double head) {
        return constant * Math.pow(head, exponent);
    }

    /**
     * Returns the discharge after checking that the flume is not drowned.
     *
     * @param head upstream head h, m; 0 or within the limits of application
     * @param downstreamHead head at the downstream gauge above the same datum, m; 0 or greater, at most
     *     {@code modularLimit() * head}
     * @return free discharge, m³/s
     * @throws IllegalArgumentException if a parameter is outside its range: a drowned flume is not covered
     */
    public double discharge(double head, double downstreamHead) {
        Require.nonNegative("downstreamHead", downstreamHead, "m");
        if (downstreamHead > modularLimit * head) {
            throw new IllegalArgumentException("downstreamHead must be at most " + Text.number(modularLimit)
                    + " of the head " + Text.number(head) + " m (beyond it the flume is drowned), was "
                    + Text.number(downstreamHead));
        }
        return discharge(head);
    }

    /**
     * Returns the greatest ratio of downstream to upstream head at which the discharge follows from the upstream head
     * alone.
     *
     * @return 0.5 to W = 0.076 m, 0.6 to 0.25 m, 0.7 to 2.44 m, 0.8 beyond (from memory)
     */
    public double modularLimit() {
        return modularLimit;
    }

    /**
     * Returns the constant K.
     *
     * @return K, m^(3−n)/s
     */
    public double constant() {
        return constant;
    }

    /**
     * Returns the exponent n.
     *
     * @return n, a pure number
     */
    public double exponent() {
        return exponent;
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    @Override
    public OptionalDouble coefficientUncertainty(double head) {
        return OptionalDouble.of(0.05);
    }

    private List<Object> parts() {
        return List.of(throat);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof ParshallFlume && parts().equals(((ParshallFlume) other).parts());
    }

    @Override
    public int hashCode() {
        return parts().hashCode();
    }

    @Override
    public String toString() {
        return "ParshallFlume[W = " + Text.number(throat) + " m, Q = " + Text.significant(constant, 5) + " h^"
                + Text.significant(exponent, 4) + "]";
    }
}
