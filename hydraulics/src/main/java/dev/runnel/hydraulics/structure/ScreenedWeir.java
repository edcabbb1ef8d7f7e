package dev.runnel.hydraulics.structure;

import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.Objects;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * A storm-overflow weir behind a bar screen: the head in front of the screen is what the weir needs plus what the screen
 * costs. Immutable and thread-safe.
 *
 * <p>h = h_w + ζ V²/2g with h the level in front of the screen above the crest (m), h_w the head on the weir for the same
 * discharge, ζ the loss factor of the {@linkplain BarScreen screen} with its blinded share, V = Q/(W (h + p)) the velocity
 * of approach, W the width of the screen and p the height of the crest above the floor in front of it (m). All of the
 * discharge passes the screen. The relation is ours, put together from the two laws; sources there.
 *
 * <p>Limits: those of the weir, at the head h_w that remains on it.
 *
 * <p>What it is not: a screen that is itself overtopped, or one that lies flat on the crest.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class ScreenedWeir extends OfParts implements HeadDischarge {
    private final HeadDischarge weir;
    private final BarScreen screen;
    private final ApproachChannel channel;
    private final double lossFactor;
    private final List<ApplicationLimit> limits;

    private ScreenedWeir(HeadDischarge weir, BarScreen screen, ApproachChannel channel) {
        super(weir, screen, channel);
        this.weir = weir;
        this.screen = screen;
        this.channel = channel;
        lossFactor = screen.lossFactor();
        limits = weir.limits().stream()
                .map(limit -> ApplicationLimit.of(
                        limit.quantity(),
                        limit.unit(),
                        limit.from(),
                        limit.to(),
                        limit.source(),
                        head -> limit.value(weirHead(head))))
                .toList();
    }

    /**
     * Returns a weir behind a screen.
     *
     * @param weir the weir
     * @param screen the screen, clean or blinded
     * @param channel the channel in front of the screen: its width is that of the screen W, its crest height that of the weir
     *     above the floor in front of the screen p, greater than 0
     * @return the structure
     * @throws IllegalArgumentException if the crest is level with the floor
     */
    public static ScreenedWeir of(HeadDischarge weir, BarScreen screen, ApproachChannel channel) {
        channel.raisedCrest();
        return new ScreenedWeir(
                Objects.requireNonNull(weir, "weir"), Objects.requireNonNull(screen, "screen"), channel);
    }

    /**
     * Returns a copy with a blinded screen.
     *
     * @param newBlindedFraction blinded share of the gaps, in [0, 1)
     * @return the copy
     * @throws IllegalArgumentException if {@code newBlindedFraction} is not
     */
    public ScreenedWeir withBlindedFraction(double newBlindedFraction) {
        return new ScreenedWeir(weir, screen.withBlindedFraction(newBlindedFraction), channel);
    }

    @Override
    public double formula(double head) {
        return weir.formula(weirHead(head));
    }

    /**
     * Returns the head that is left on the weir.
     *
     * @param head level in front of the screen above the crest, m; greater than 0
     * @return head on the weir, m
     */
    public double weirHead(double head) {
        Require.positive("head", head, "m");
        double scale = lossFactor * channel.velocityHeadScale(head);
        return Roots.between(
                h -> {
                    double discharge = h == 0 ? 0 : weir.formula(h);
                    return h + scale * discharge * discharge - head;
                },
                0,
                head);
    }

    /**
     * Returns the blinded share from the levels on both sides of the screen, the weir serving as the gauge of the flow.
     *
     * @param headInFront level in front of the screen above the crest, m; at least {@code headBehind}, finite
     * @param headBehind level behind the screen above the crest, m; greater than 0, within the limits of the weir
     * @return the blinded fraction beside the loss of the clean screen
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public Blinding blinding(double headInFront, double headBehind) {
        Require.positive("headBehind", headBehind, "m");
        if (!(headInFront >= headBehind && headInFront < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("headInFront must be at least headBehind " + Text.number(headBehind)
                    + " m and finite, was " + Text.number(headInFront));
        }
        double velocity = weir.discharge(headBehind) / channel.area(headInFront);
        return screen.blinding(headInFront - headBehind, velocity);
    }

    @Override
    public double highestHead() {
        return weir.highestHead();
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    /**
     * Returns the uncertainty of the weir alone; the loss of the screen has none that is published.
     *
     * @param head level in front of the screen above the crest, m; greater than 0
     * @return that of the weir at its own head
     */
    @Override
    public OptionalDouble coefficientUncertainty(double head) {
        return weir.coefficientUncertainty(weirHead(head));
    }

    @Override
    public String toString() {
        return "ScreenedWeir[" + weir + " behind " + screen + ", " + channel.dimensions() + "]";
    }
}
