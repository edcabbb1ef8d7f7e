package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Table;
import dev.runnel.internal.Interpolation;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * How Manning's n of a part-full sewer compares with that of the full one: a factor for each fullness, straight between
 * the points and constant outside them. Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RoughnessByDepth {
    private final String name;
    private final double[] fullness;
    private final double[] ratio;

    private RoughnessByDepth(String name, double[] fullness, double[] ratio) {
        this.name = name;
        this.fullness = fullness;
        this.ratio = ratio;
    }

    /**
     * Returns a curve of one's own.
     *
     * @param fullness depth over height, rising; in [0, 1]; not modified
     * @param ratio n over n full at each; greater than 0; same length; not modified
     * @return the curve
     * @throws IllegalArgumentException if there are no points or they are not as said; names the index
     */
    public static RoughnessByDepth of(double[] fullness, double[] ratio) {
        return of("own curve", fullness, ratio);
    }

    /**
     * Returns the curve of the chart of hydraulic elements in ASCE and WPCF, Design and Construction of Sanitary and Storm
     * Sewers, 1970 (after Camp), read off the chart to 0.003 between 0.12 and 0.95 full. At a quarter full n is 28 %
     * larger than full. For circular sewers.
     *
     * @return the curve
     */
    public static RoughnessByDepth asce1970() {
        Table table = Table.read(RoughnessByDepth.class, "n-by-depth-asce-wpcf-1970.csv");
        return of("ASCE and WPCF 1970", table.numbers("fullness"), table.numbers("ratio"));
    }

    private static RoughnessByDepth of(String name, double[] fullness, double[] ratio) {
        Require.sameLength("ratio", fullness.length, ratio.length);
        Require.atLeast("number of points", fullness.length, 1);
        for (int i = 0; i < fullness.length; i++) {
            Require.inRange("fullness[" + i + "]", fullness[i], 0, 1, "");
            Require.positive("ratio[" + i + "]", ratio[i], "");
            if (i > 0 && !(fullness[i] > fullness[i - 1])) {
                throw new IllegalArgumentException("fullness[" + i + "] must be greater than fullness[" + (i - 1)
                        + "] = " + Text.number(fullness[i - 1]) + ", was " + Text.number(fullness[i]));
            }
        }
        return new RoughnessByDepth(name, fullness.clone(), ratio.clone());
    }

    /**
     * Returns the factor at a fullness.
     *
     * @param fullness depth over height; in [0, 1]
     * @return n over n full
     * @throws IllegalArgumentException if {@code fullness} is outside or NaN
     */
    public double ratio(double fullness) {
        Require.inRange("fullness", fullness, 0, 1, "");
        return Interpolation.held(this.fullness, ratio, fullness);
    }

    /** Depths where the curve has corners, in a section of a height. */
    double[] corners(double height) {
        return Arrays.stream(fullness).map(part -> part * height).toArray();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RoughnessByDepth
                && Arrays.equals(fullness, ((RoughnessByDepth) other).fullness)
                && Arrays.equals(ratio, ((RoughnessByDepth) other).ratio);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(fullness) + Arrays.hashCode(ratio);
    }

    @Override
    public String toString() {
        return "RoughnessByDepth[" + name + ", " + fullness.length + " points]";
    }
}
