package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CircularSection;
import dev.runnel.hydraulics.section.ClosedSection;
import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/**
 * Choices among conduits.
 *
 * <p>A help for analysis, not a design: a design adds allowances, least sizes and least gradients of the local code.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class Conduits {
    /** Largest diameter looked for, m; chosen here: that of the largest section there is. */
    private static final double LARGEST = 50;

    private static final double LEAST = 1e-6;

    private Conduits() {}

    /**
     * Returns the circular conduit that carries a discharge at a stated filling: the theoretical diameter, before the next
     * one on offer is taken.
     *
     * @param discharge discharge to carry, m³/s; greater than 0
     * @param fullness depth over diameter; greater than 0, at most 1
     * @param gradient the fall; greater than 0
     * @param resistance the law of resistance
     * @return the conduit; its discharge at that filling is the wanted one within 1e-12 relative
     * @throws IllegalArgumentException if an argument is out of range
     * @throws NoSolutionException if no diameter from 1e-6 to 50 m carries so much or so little
     */
    public static Conduit ofFilling(double discharge, double fullness, Gradient gradient, Resistance resistance) {
        Require.positive("discharge", discharge, "m3/s");
        checkFullness(fullness);
        DoubleUnaryOperator excess = logDiameter -> {
            double diameter = Math.min(Math.exp(logDiameter), LARGEST);
            Conduit conduit = Conduit.of(CircularSection.ofDiameter(diameter), gradient, resistance);
            return Math.log(conduit.discharge(fullness * diameter) / discharge);
        };
        double low = Math.log(LEAST) + 1e-12;
        double high = Math.log(LARGEST);
        if (excess.applyAsDouble(low) > 0 || excess.applyAsDouble(high) < 0) {
            throw new NoSolutionException("no diameter from " + Text.number(LEAST) + " to " + Text.number(LARGEST)
                    + " m carries a discharge of " + Text.number(discharge) + " m3/s at " + Text.number(fullness)
                    + " of its height");
        }
        double diameter = Math.min(Math.exp(Roots.between(excess, low, high)), LARGEST);
        return Conduit.of(CircularSection.ofDiameter(diameter), gradient, resistance);
    }

    /**
     * Returns the circular conduit whose uniform flow at a stated filling has a stated mean velocity, V = V(R, S).
     *
     * @param velocity mean velocity V, m/s; greater than 0
     * @param fullness depth over diameter; greater than 0, at most 1
     * @param gradient the fall; greater than 0
     * @param resistance the law of resistance
     * @return the conduit; its velocity at that filling is the wanted one within 1e-12 relative
     * @throws IllegalArgumentException if an argument is out of range
     * @throws NoSolutionException if no diameter from 1e-6 to 50 m has that velocity
     */
    public static Conduit ofVelocity(double velocity, double fullness, Gradient gradient, Resistance resistance) {
        Require.positive("velocity", velocity, "m/s");
        checkFullness(fullness);
        DoubleUnaryOperator excess = logDiameter -> {
            double diameter = Math.min(Math.exp(logDiameter), LARGEST);
            Conduit conduit = Conduit.of(CircularSection.ofDiameter(diameter), gradient, resistance);
            return Math.log(conduit.velocity(fullness * diameter) / velocity);
        };
        double low = Math.log(LEAST) + 1e-12;
        double high = Math.log(LARGEST);
        if (excess.applyAsDouble(low) > 0 || excess.applyAsDouble(high) < 0) {
            throw new NoSolutionException("no diameter from " + Text.number(LEAST) + " to " + Text.number(LARGEST)
                    + " m has a velocity of " + Text.number(velocity) + " m/s at " + Text.number(fullness)
                    + " of its height");
        }
        double diameter = Math.min(Math.exp(Roots.between(excess, low, high)), LARGEST);
        return Conduit.of(CircularSection.ofDiameter(diameter), gradient, resistance);
    }

    /**
     * Returns the circle in which a discharge has a stated mean velocity at a stated filling, by continuity alone, Q = V A.
     * No gradient is asked for: the one that drives it is {@link Conduit#gradientFor}.
     *
     * @param discharge discharge Q, m³/s; greater than 0
     * @param velocity mean velocity V, m/s; greater than 0
     * @param fullness depth over diameter; greater than 0, at most 1
     * @return the section
     * @throws IllegalArgumentException if an argument is out of range
     * @throws NoSolutionException if the diameter is outside 1e-6 to 50 m
     */
    public static CircularSection sectionFor(double discharge, double velocity, double fullness) {
        Require.positive("discharge", discharge, "m3/s");
        Require.positive("velocity", velocity, "m/s");
        checkFullness(fullness);
        double diameter =
                Math.sqrt(discharge / velocity / CircularSection.ofDiameter(1).area(fullness));
        if (!(diameter >= LEAST && diameter <= LARGEST)) {
            throw new NoSolutionException("a discharge of " + Text.number(discharge) + " m3/s at "
                    + Text.number(velocity) + " m/s asks for a diameter of " + Text.number(diameter)
                    + " m, outside " + Text.number(LEAST) + " to " + Text.number(LARGEST) + " m");
        }
        return CircularSection.ofDiameter(diameter);
    }

    private static void checkFullness(double fullness) {
        if (!(fullness > 0 && fullness <= 1)) {
            throw new IllegalArgumentException(
                    "fullness must be greater than 0 and at most 1, was " + Text.number(fullness));
        }
    }

    /**
     * Returns the circular conduit of the smallest diameter in a list that carries a discharge running full.
     *
     * @param diameters diameters on offer, m; in any order; each greater than 0
     * @param gradient the fall; greater than 0
     * @param resistance the law of resistance
     * @param discharge discharge to carry, m³/s; 0 or greater
     * @return the conduit; empty if none is large enough
     * @throws IllegalArgumentException if the list is empty or an argument is out of range
     */
    public static Optional<Conduit> smallest(
            Collection<Double> diameters, Gradient gradient, Resistance resistance, double discharge) {
        return smallestOf(
                diameters.stream().map(CircularSection::ofDiameter).collect(Collectors.toList()),
                gradient,
                resistance,
                discharge);
    }

    /**
     * Returns the conduit of the smallest full area in a list of sections that carries a discharge running full.
     *
     * @param sections sections on offer, in any order
     * @param gradient the fall; greater than 0
     * @param resistance the law of resistance
     * @param discharge discharge to carry, m³/s; 0 or greater
     * @return the conduit; empty if none is large enough
     * @throws IllegalArgumentException if the list is empty or an argument is out of range
     */
    public static Optional<Conduit> smallestOf(
            Collection<? extends ClosedSection> sections, Gradient gradient, Resistance resistance, double discharge) {
        Require.nonNegative("discharge", discharge, "m3/s");
        if (sections.isEmpty()) {
            throw new IllegalArgumentException(
                    "sections must not be empty, for a discharge of " + Text.number(discharge) + " m3/s");
        }
        List<ClosedSection> bySize = sections.stream()
                .sorted(Comparator.comparingDouble(ClosedSection::fullArea))
                .collect(Collectors.toList());
        return bySize.stream()
                .map(section -> Conduit.of(section, gradient, resistance))
                .filter(conduit -> conduit.fullBore().discharge() >= discharge)
                .findFirst();
    }
}
