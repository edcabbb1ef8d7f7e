package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Text;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Manning's law with an n that depends on the fullness, for closed sections. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class VariableManning implements Resistance {
    private final double fullN;
    private final RoughnessByDepth curve;

    private VariableManning(double fullN, RoughnessByDepth curve) {
        this.fullN = fullN;
        this.curve = Objects.requireNonNull(curve, "curve");
    }

    /**
     * Returns the law.
     *
     * @param fullN n of the full section, s/m^(1/3); greater than 0
     * @param curve n over n full for each fullness
     * @return the law
     * @throws IllegalArgumentException if {@code fullN} is not greater than 0 and finite
     */
    public static VariableManning of(double fullN, RoughnessByDepth curve) {
        return new VariableManning(Manning.checkedN("fullN", fullN), curve);
    }

    /**
     * Returns n at a fullness.
     *
     * @param fullness depth over height; in [0, 1]
     * @return n, s/m^(1/3)
     * @throws IllegalArgumentException if {@code fullness} is outside or NaN
     */
    public double n(double fullness) {
        return fullN * curve.ratio(fullness);
    }

    @Override
    public Manning at(CrossSection section, double depth) {
        return Manning.ofAny(n(Math.min(Math.max(depth / closedHeight(section), 0), 1)));
    }

    @Override
    public double[] breakDepths(CrossSection section, double gradient, double gravity) {
        Objects.requireNonNull(section, "section");
        return curve.corners(closedHeight(section));
    }

    private static double closedHeight(CrossSection section) {
        if (Double.isInfinite(section.height())) {
            throw new IllegalArgumentException("a roughness by fullness needs a section with a soffit, was " + section);
        }
        return section.height();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof VariableManning
                && Double.compare(fullN, ((VariableManning) other).fullN) == 0
                && curve.equals(((VariableManning) other).curve);
    }

    @Override
    public int hashCode() {
        return 31 * Double.hashCode(fullN) + curve.hashCode();
    }

    @Override
    public String toString() {
        return "VariableManning[n full = " + Text.significant(fullN, 6) + ", " + curve + "]";
    }
}
