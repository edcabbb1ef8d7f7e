package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Table;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.stream.Collectors;
import org.apiguardian.api.API;

/**
 * A local loss of head, h = K V²/(2g): an entrance, a bend, a manhole. Immutable and thread-safe. Which V the coefficient
 * goes with is part of it: {@link #referenceVelocity()}. Put into a chain of reaches with
 * {@link Reach#withLoss(LocalLoss)}, which refuses a coefficient on the downstream velocity.
 *
 * <p>Published coefficients are data with their source, mostly for full pipes; in part-full manholes they are rough.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class LocalLoss {
    /**
     * Which velocity a coefficient goes with.
     *
     * @since 0.1
     */
    @API(status = API.Status.STABLE, since = "0.1")
    public enum ReferenceVelocity {
        /** That before the place of loss, as for an enlargement. */
        UPSTREAM,
        /** That behind the place of loss, as for an entrance, a contraction or a manhole. */
        DOWNSTREAM,
        /** The mean velocity of a section that is the same before and behind, as for a bend. */
        MEAN;

        @Override
        public String toString() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    private final String item;
    private final String condition;
    private final double coefficient;
    private final ReferenceVelocity velocity;
    private final String source;

    private LocalLoss(String item, String condition, double coefficient, ReferenceVelocity velocity, String source) {
        this.item = item;
        this.condition = condition;
        this.coefficient = coefficient;
        this.velocity = velocity;
        this.source = source;
    }

    /**
     * Returns a loss with a coefficient of one's own, on the mean velocity: section the same before and behind.
     *
     * @param coefficient K; 0 or greater
     * @return the loss
     * @throws IllegalArgumentException if {@code coefficient} is negative or not finite
     */
    public static LocalLoss of(double coefficient) {
        return new LocalLoss(
                "own", "", Require.nonNegative("coefficient", coefficient, ""), ReferenceVelocity.MEAN, "own");
    }

    /**
     * Returns the loss of a sudden enlargement by the balance of Borda and Carnot, K = (1 − A₁/A₂)² on the upstream velocity.
     *
     * @param upstreamArea area before, m²; greater than 0
     * @param downstreamArea area behind, m²; at least {@code upstreamArea}
     * @return the loss
     * @throws IllegalArgumentException if an area is out of range
     */
    public static LocalLoss enlargement(double upstreamArea, double downstreamArea) {
        Require.positive("upstreamArea", upstreamArea, "m2");
        if (!(downstreamArea >= upstreamArea)) {
            throw new IllegalArgumentException("downstreamArea must be at least upstreamArea, "
                    + Text.number(upstreamArea) + " m2, was " + Text.number(downstreamArea));
        }
        double part = 1 - upstreamArea / downstreamArea;
        return new LocalLoss(
                "sudden enlargement",
                "",
                part * part,
                ReferenceVelocity.UPSTREAM,
                "Borda and Carnot, momentum balance");
    }

    /**
     * Returns the published coefficients this library knows.
     *
     * @return the losses, each with its source
     */
    public static List<LocalLoss> published() {
        Table table = Table.read(LocalLoss.class, "local-losses.csv");
        double[] k = table.numbers("k");
        List<LocalLoss> losses = new ArrayList<>();
        for (int i = 0; i < k.length; i++) {
            losses.add(new LocalLoss(
                    table.texts("item").get(i),
                    table.texts("condition").get(i),
                    k[i],
                    ReferenceVelocity.valueOf(table.texts("velocity").get(i).toUpperCase(Locale.ROOT)),
                    table.texts("source").get(i)));
        }
        return List.copyOf(losses);
    }

    /**
     * Returns the published coefficients whose item or condition holds a text.
     *
     * @param text for example {@code "manhole"}; case counts
     * @return the losses; empty if none does
     */
    public static List<LocalLoss> published(String text) {
        Objects.requireNonNull(text, "text");
        return published().stream()
                .filter(loss -> loss.item.contains(text) || loss.condition.contains(text))
                .collect(Collectors.toUnmodifiableList());
    }

    /**
     * Returns what loses head.
     *
     * @return for example {@code manhole}
     */
    public String item() {
        return item;
    }

    /**
     * Returns its form.
     *
     * @return for example {@code straight run}
     */
    public String condition() {
        return condition;
    }

    /**
     * Returns the coefficient.
     *
     * @return K
     */
    public double coefficient() {
        return coefficient;
    }

    /**
     * Returns which velocity the coefficient goes with.
     *
     * @return upstream, downstream or mean
     */
    public ReferenceVelocity referenceVelocity() {
        return velocity;
    }

    /**
     * Returns where the coefficient is published.
     *
     * @return the source, or {@code from memory}
     */
    public String source() {
        return source;
    }

    /**
     * Returns the loss of head under standard gravity.
     *
     * @param meanVelocity velocity V, m/s; mean over the section that {@link #referenceVelocity()} names
     * @return head, m
     * @throws IllegalArgumentException if {@code meanVelocity} is not finite
     */
    public double head(double meanVelocity) {
        Require.finite("meanVelocity", meanVelocity, "m/s");
        return coefficient * meanVelocity * meanVelocity / (2 * Gravity.STANDARD);
    }

    @Override
    public String toString() {
        return "LocalLoss[" + item + (condition.isEmpty() ? "" : ", " + condition) + ": K = "
                + Text.significant(coefficient, 6) + " on the " + velocity + " velocity, " + source + "]";
    }
}
