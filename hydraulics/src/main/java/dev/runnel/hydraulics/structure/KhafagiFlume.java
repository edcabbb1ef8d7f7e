package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.internal.Sizes;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.OptionalDouble;
import org.apiguardian.api.API;

/**
 * A Khafagi venturi flume: rectangular, with a level floor, side walls curved in to two fifths of the channel width and no
 * straight throat. Immutable and thread-safe.
 *
 * <p>Q = 1.744 b h^1.5 + 0.091 h^2.5, with b the throat width (m) and h the head upstream above the floor (m). Source: A.
 * Khafagi (1942), Der Venturikanal, Mitteilungen der Versuchsanstalt für Wasserbau, ETH Zürich 1; the formula from memory. Ten
 * printed capacities of an instrument manual, throats 0.16 to 0.64 m, lie 0.09 to 0.16 % below it; for the smallest size,
 * throat 0.048 m, the manual prints 4 to 6 % more, and that size is left out.
 *
 * <p>Limits, those of the printed capacities: throat 0.12 to 0.64 m, h/b ≤ 3. Modular to a downstream level of 80 % of the head (common practice); no law is known
 * for the drowned flume.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class KhafagiFlume extends OfParts implements HeadDischarge {
    private static final String SOURCE = "printed capacities";

    private final double throat;
    private final List<ApplicationLimit> limits;

    private KhafagiFlume(double throat) {
        super(throat);
        this.throat = throat;
        limits = List.of(
                ApplicationLimit.of("throat b", "m", 0.12, 0.64, SOURCE, h -> throat),
                ApplicationLimit.atMost("h/b", "", 3, SOURCE, h -> h / throat));
    }

    /**
     * Returns a flume.
     *
     * @param throat throat width b, m; in [1e-6, 1e6]
     * @return the flume
     * @throws IllegalArgumentException if {@code throat} is outside its range
     */
    public static KhafagiFlume ofThroat(double throat) {
        return new KhafagiFlume(Sizes.length("throat", throat));
    }

    @Override
    public double formula(double head) {
        double root = Math.sqrt(head);
        return (1.744 * throat + 0.091 * head) * head * root;
    }

    @Override
    public OptionalDouble modularLimit(double head) {
        return OptionalDouble.of(0.8);
    }

    @Override
    public List<ApplicationLimit> limits() {
        return limits;
    }

    @Override
    public String toString() {
        return "KhafagiFlume[b = " + Text.significant(throat, 6) + " m]";
    }
}
