package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Manning's law with different n on the bed and on the wall up to given levels, compounded at each depth by a named
 * method. Immutable and thread-safe.
 *
 * <p>The bed is the level stretch at the lowest point (of a sediment bed, a box, a trapezoid). Levels count from the invert of
 * the clean section, whatever lies in it. With {@link Compounding#LOTTER} each part is given the hydraulic radius of the whole.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CompositeManning implements Resistance {
    private final Compounding method;
    /** Upper ends of the zones, the bed first with 0, the last +∞. */
    private final double[] tops;

    private final double[] n;

    private CompositeManning(Compounding method, double[] tops, double[] n) {
        this.method = Objects.requireNonNull(method, "method");
        this.tops = tops;
        this.n = n;
    }

    /**
     * Returns the law for a bed and walls.
     *
     * @param method how the two are compounded
     * @param bedN n of the bed, s/m^(1/3); greater than 0
     * @param wallN n of the walls, s/m^(1/3); greater than 0
     * @return the law
     * @throws IllegalArgumentException if an n is not greater than 0 and finite
     */
    public static CompositeManning ofBedAndWalls(Compounding method, double bedN, double wallN) {
        Manning.checkedN("bedN", bedN);
        Manning.checkedN("wallN", wallN);
        return new CompositeManning(method, new double[] {0, Double.POSITIVE_INFINITY}, new double[] {bedN, wallN});
    }

    /**
     * Returns a copy with another method.
     *
     * @param newMethod how the parts are compounded
     * @return the copy
     */
    public CompositeManning withMethod(Compounding newMethod) {
        Objects.requireNonNull(newMethod, "newMethod");
        return new CompositeManning(newMethod, tops, n);
    }

    /**
     * Returns a copy with another n on the walls above a level.
     *
     * @param levelAboveInvert level above the invert of the clean section above which it holds, m; greater than that of any
     *     change before
     * @param upperN n of the walls above, s/m^(1/3); greater than 0
     * @return the copy
     * @throws IllegalArgumentException if an argument is out of range
     */
    public CompositeManning above(double levelAboveInvert, double upperN) {
        Manning.checkedN("upperN", upperN);
        int last = tops.length - 1;
        if (!(levelAboveInvert > tops[last - 1] && levelAboveInvert < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("levelAboveInvert must be greater than " + Text.number(tops[last - 1])
                    + " m, was " + Text.number(levelAboveInvert));
        }
        double[] moreTops = Arrays.copyOf(tops, last + 2);
        double[] moreN = Arrays.copyOf(n, last + 2);
        moreTops[last] = levelAboveInvert;
        moreTops[last + 1] = Double.POSITIVE_INFINITY;
        moreN[last + 1] = upperN;
        return new CompositeManning(method, moreTops, moreN);
    }

    /**
     * Returns the n of the whole at a depth.
     *
     * @param section the section
     * @param depth depth above its invert, m; in [0, height]
     * @return n, s/m^(1/3); at depth 0 that of the bed if there is one, else of the lowest wall
     * @throws IllegalArgumentException if {@code depth} is outside or NaN
     */
    public double n(CrossSection section, double depth) {
        double whole = section.wettedPerimeter(depth);
        double bed = section.wettedPerimeter(Double.MIN_NORMAL);
        boolean hasBed = bed > 1e-100;
        if (whole == 0) {
            return hasBed ? n[0] : n[1];
        }
        double[] part = new double[n.length];
        part[0] = hasBed ? bed : 0;
        double below = part[0];
        for (int i = 1; i < n.length; i++) {
            double top = section.depthAboveBed(tops[i]);
            double reached = top <= 0 ? below : top < depth ? section.wettedPerimeter(top) : whole;
            part[i] = Math.max(reached - below, 0);
            below = Math.max(reached, below);
        }
        return method.n(n, part);
    }

    @Override
    public Manning at(CrossSection section, double depth) {
        return Manning.ofAny(n(section, depth));
    }

    @Override
    public double[] breakDepths(CrossSection section, double gradient, double gravity) {
        Objects.requireNonNull(section, "section");
        return Arrays.stream(tops)
                .map(section::depthAboveBed)
                .filter(level -> level > 0 && level < section.height())
                .toArray();
    }

    @Override
    public boolean equals(Object object) {
        if (!(object instanceof CompositeManning)) {
            return false;
        }
        CompositeManning other = (CompositeManning) object;
        return method == other.method && Arrays.equals(tops, other.tops) && Arrays.equals(n, other.n);
    }

    @Override
    public int hashCode() {
        return Objects.hash(method, Arrays.hashCode(tops), Arrays.hashCode(n));
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("CompositeManning[")
                .append(method)
                .append(", bed ")
                .append(Text.significant(n[0], 6));
        for (int i = 1; i < n.length; i++) {
            text.append(i == 1 ? ", wall " : ", above " + Text.significant(tops[i - 1], 6) + " m ")
                    .append(Text.significant(n[i], 6));
        }
        return text.append("]").toString();
    }
}
