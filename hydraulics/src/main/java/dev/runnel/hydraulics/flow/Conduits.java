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
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Supplier;
import java.util.function.ToDoubleFunction;
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

    private final double fullness;

    private Conduits(double fullness) {
        this.fullness = fullness;
    }

    /**
     * Returns the circular conduits at a filling.
     *
     * @param fullness depth over diameter; greater than 0, at most 1
     * @return the conduits
     * @throws IllegalArgumentException if {@code fullness} is out of range
     */
    public static Conduits atFullness(double fullness) {
        if (!(fullness > 0 && fullness <= 1)) {
            throw new IllegalArgumentException(
                    "fullness must be greater than 0 and at most 1, was " + Text.number(fullness));
        }
        return new Conduits(fullness);
    }

    /**
     * Returns the conduit that carries a discharge at this filling: the theoretical diameter, before the next one on offer
     * is taken.
     *
     * @param discharge discharge to carry, m³/s; greater than 0
     * @param gradient the fall; greater than 0
     * @param resistance the law of resistance
     * @return the conduit; its discharge at that filling is the wanted one within 1e-12 relative
     * @throws IllegalArgumentException if an argument is out of range
     * @throws NoSolutionException if no diameter from 1e-6 to 50 m carries so much or so little
     */
    public Conduit carrying(double discharge, Gradient gradient, Resistance resistance) {
        Require.positive("discharge", discharge, "m3/s");
        return found(
                gradient,
                resistance,
                conduit -> conduit.discharge(depth(conduit)) / discharge,
                () -> " carries a discharge of " + Text.number(discharge) + " m3/s");
    }

    /**
     * Returns the conduit whose uniform flow at this filling has a stated mean velocity, V = V(R, S).
     *
     * @param velocity mean velocity V, m/s; greater than 0
     * @param gradient the fall; greater than 0
     * @param resistance the law of resistance
     * @return the conduit; its velocity at that filling is the wanted one within 1e-12 relative
     * @throws IllegalArgumentException if an argument is out of range
     * @throws NoSolutionException if no diameter from 1e-6 to 50 m has that velocity
     */
    public Conduit flowingAt(double velocity, Gradient gradient, Resistance resistance) {
        Require.positive("velocity", velocity, "m/s");
        return found(
                gradient,
                resistance,
                conduit -> conduit.velocity(depth(conduit)) / velocity,
                () -> " has a velocity of " + Text.number(velocity) + " m/s");
    }

    /** Returns the conduit of which a measure that rises with the diameter is 1. */
    private Conduit found(
            Gradient gradient, Resistance resistance, ToDoubleFunction<Conduit> measure, Supplier<String> what) {
        DoubleFunction<Conduit> conduit =
                logDiameter -> Conduit.of(CircularSection.ofDiameter(Math.exp(logDiameter)), gradient, resistance);
        DoubleUnaryOperator excess = logDiameter -> Math.log(measure.applyAsDouble(conduit.apply(logDiameter)));
        // Within the sizes that sections take, whatever the exponential rounds to.
        double low = Math.log(LEAST) + 1e-12;
        double high = Math.log(LARGEST) - 1e-12;
        if (excess.applyAsDouble(low) > 0 || excess.applyAsDouble(high) < 0) {
            throw new NoSolutionException("no diameter from " + Text.number(LEAST) + " to " + Text.number(LARGEST)
                    + " m" + what.get() + " at " + Text.number(fullness) + " of its height");
        }
        return conduit.apply(Roots.between(excess, low, high));
    }

    private double depth(Conduit conduit) {
        return fullness * ((ClosedSection) conduit.section()).height();
    }

    /**
     * Returns the circle in which a discharge has a stated mean velocity at this filling, by continuity alone, Q = V A.
     * No gradient is asked for: the one that drives it is {@link Conduit#gradientFor}.
     *
     * @param discharge discharge Q, m³/s; greater than 0
     * @param velocity mean velocity V, m/s; greater than 0
     * @return the section
     * @throws IllegalArgumentException if an argument is out of range
     * @throws NoSolutionException if the diameter is outside 1e-6 to 50 m
     */
    public CircularSection sectionOfDischargeAndVelocity(double discharge, double velocity) {
        Require.positive("discharge", discharge, "m3/s");
        Require.positive("velocity", velocity, "m/s");
        double diameter =
                Math.sqrt(discharge / velocity / CircularSection.ofDiameter(1).area(fullness));
        if (!(diameter >= LEAST && diameter <= LARGEST)) {
            throw new NoSolutionException("a discharge of " + Text.number(discharge) + " m3/s at "
                    + Text.number(velocity) + " m/s asks for a diameter of " + Text.number(diameter)
                    + " m, outside " + Text.number(LEAST) + " to " + Text.number(LARGEST) + " m");
        }
        return CircularSection.ofDiameter(diameter);
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

    @Override
    public String toString() {
        return "Conduits[" + Text.significant(fullness, 6) + " full]";
    }
}
