package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Table;
import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/**
 * A rule by which a sewer is taken to clean itself: a least velocity or a least mean boundary shear stress. Immutable and
 * thread-safe.
 *
 * <p>Published rules are data with their source; the caller names one, this library prefers none. They stem from different
 * pipes, sediments and flows (read {@link #flow()}), and meeting one is no proof that nothing settles.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CleansingCriterion {
    private static final double STEEPEST = 1;

    /** What a rule is about. */
    public enum Quantity {
        /** Mean velocity, m/s. */
        VELOCITY("m/s"),
        /** Mean boundary shear stress, Pa. */
        SHEAR_STRESS("Pa");

        private final String unit;

        Quantity(String unit) {
            this.unit = unit;
        }
    }

    private final String name;
    private final Quantity quantity;
    private final double minimum;
    private final String flow;
    private final String source;

    private CleansingCriterion(String name, Quantity quantity, double minimum, String flow, String source) {
        this.name = name;
        this.quantity = quantity;
        this.minimum = minimum;
        this.flow = flow;
        this.source = source;
    }

    /**
     * Returns a rule of one's own for the velocity.
     *
     * @param minimum least mean velocity, m/s; greater than 0
     * @return the rule
     * @throws IllegalArgumentException if {@code minimum} is not greater than 0 and finite
     */
    public static CleansingCriterion velocity(double minimum) {
        Require.positive("minimum", minimum, "m/s");
        return new CleansingCriterion("own", Quantity.VELOCITY, minimum, "any", "own");
    }

    /**
     * Returns a rule of one's own for the boundary shear stress.
     *
     * @param minimum least mean boundary shear stress, Pa; greater than 0
     * @return the rule
     * @throws IllegalArgumentException if {@code minimum} is not greater than 0 and finite
     */
    public static CleansingCriterion shearStress(double minimum) {
        Require.positive("minimum", minimum, "Pa");
        return new CleansingCriterion("own", Quantity.SHEAR_STRESS, minimum, "any", "own");
    }

    /**
     * Returns the published rules this library knows.
     *
     * @return the rules, each with its source
     */
    public static List<CleansingCriterion> published() {
        Table table = Table.read(CleansingCriterion.class, "self-cleansing.csv");
        double[] minimum = table.numbers("minimum");
        List<CleansingCriterion> rules = new ArrayList<>();
        for (int i = 0; i < minimum.length; i++) {
            boolean isVelocity = table.texts("quantity").get(i).equals("velocity");
            rules.add(new CleansingCriterion(
                    table.texts("name").get(i),
                    isVelocity ? Quantity.VELOCITY : Quantity.SHEAR_STRESS,
                    minimum[i],
                    table.texts("flow").get(i),
                    table.texts("source").get(i) + " ("
                            + table.texts("provenance").get(i) + ")"));
        }
        return List.copyOf(rules);
    }

    /**
     * Returns a published rule.
     *
     * @param name its name in {@link #published()}
     * @return the rule
     * @throws IllegalArgumentException if there is none of that name; lists the names
     */
    public static CleansingCriterion published(String name) {
        List<CleansingCriterion> rules = published();
        return rules.stream()
                .filter(rule -> rule.name.equals(name))
                .findFirst()
                .orElseThrow(() -> new IllegalArgumentException("name must be one of "
                        + rules.stream().map(CleansingCriterion::name).collect(Collectors.toList()) + ", was " + name));
    }

    /**
     * Returns the name.
     *
     * @return the name
     */
    public String name() {
        return name;
    }

    /**
     * Returns what the rule is about.
     *
     * @return velocity or shear stress
     */
    public Quantity quantity() {
        return quantity;
    }

    /**
     * Returns the least value.
     *
     * @return m/s or Pa
     */
    public double minimum() {
        return minimum;
    }

    /**
     * Returns the flow the rule is meant for.
     *
     * @return for example "dry-weather peak"
     */
    public String flow() {
        return flow;
    }

    /**
     * Returns where the rule is published, and how it came to be known here.
     *
     * @return document, place, provenance
     */
    public String source() {
        return source;
    }

    /**
     * Returns what the rule looks at.
     *
     * @param state uniform flow
     * @return its velocity, m/s, or shear stress, Pa
     */
    public double valueOf(FlowState state) {
        return quantity == Quantity.VELOCITY ? state.velocity() : state.shearStress();
    }

    /**
     * Tells whether a flow meets the rule.
     *
     * @param state uniform flow
     * @return true if its velocity or shear stress is at least the minimum
     */
    public boolean isMetBy(FlowState state) {
        return valueOf(state) >= minimum;
    }

    /**
     * Returns the smallest discharge whose uniform flow meets the rule.
     *
     * @param conduit the conduit
     * @return discharge, m³/s
     * @throws NoSolutionException if no depth meets it
     */
    public double minimumDischarge(Conduit conduit) {
        Objects.requireNonNull(conduit, "conduit");
        double depth =
                new ConduitCurves(conduit).of(y -> valueOf(conduit.at(y))).lowestDepthFor(minimum);
        if (Double.isNaN(depth)) {
            throw new NoSolutionException("no depth meets " + this + " in " + conduit);
        }
        return conduit.discharge(depth);
    }

    /**
     * Returns the flattest gradient at which a discharge meets the rule in uniform flow. Where the discharge needs a
     * steeper one to pass at all, that one.
     *
     * @param conduit section and resistance; its gradient plays no part
     * @param discharge discharge, m³/s; greater than 0
     * @return the gradient
     * @throws IllegalArgumentException if {@code discharge} is not greater than 0 and finite
     * @throws NoSolutionException if no gradient up to 1 meets it
     */
    public Gradient minimumGradient(Conduit conduit, double discharge) {
        Require.positive("discharge", discharge, "m3/s");
        if (!(excess(conduit, discharge, STEEPEST) >= 0)) {
            throw new NoSolutionException("no gradient up to 1 meets " + this + " with " + Text.number(discharge)
                    + " m3/s in " + conduit.section());
        }
        return Gradient.ofAny(Roots.overDecades(gradient -> excess(conduit, discharge, gradient), STEEPEST));
    }

    /** Logarithm of value over minimum at a gradient; far below 0 where the discharge does not pass. */
    private double excess(Conduit conduit, double discharge, double gradient) {
        Conduit laid = conduit.withGradient(Gradient.ofAny(gradient));
        double[] depths = laid.normalDepths(discharge);
        return depths.length == 0 ? -100 : Math.log(valueOf(laid.at(depths[0])) / minimum);
    }

    @Override
    public String toString() {
        return "CleansingCriterion[" + name + ": " + quantity + " at least " + Text.significant(minimum, 6) + " "
                + quantity.unit + ", flow: " + flow + ", " + source + "]";
    }
}
