package dev.runnel.timeseries.quality;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Series;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A factor by which a whole record seems to be off: as it is most readings lie outside the range of the site, times the
 * factor they lie inside. A depth in mm read as m, a velocity in ft/s read as m/s. Immutable and thread-safe.
 *
 * <p>What this is not: a correction. Ask whoever wrote the file.
 *
 * @param factor by which the readings would have to be multiplied
 * @param reading what was written and what was read, for example {@code mm taken for m}
 * @param insideAsIs share of usable readings inside the range as they are, in [0, 1]
 * @param insideThen share inside once multiplied, in [0, 1]
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record UnitSuspicion(double factor, String reading, double insideAsIs, double insideThen) {
    /**
     * Checks that nothing is missing.
     *
     * @param factor by which the readings would have to be multiplied
     * @param reading reading
     * @param insideAsIs share of usable readings inside the range as they are, in [0, 1]
     * @param insideThen share inside once multiplied, in [0, 1]
     */
    public UnitSuspicion {
        Objects.requireNonNull(reading, "reading");
    }

    /** Chosen here: a range that a tenth of all readings leaves is no range of the site. */
    private static final double MOST = 0.9;

    private record Slip(double factor, String reading) {}

    private static final List<Slip> SLIPS = List.of(
            new Slip(0.001, "mm taken for m, or l/s for m3/s"),
            new Slip(0.01, "cm taken for m"),
            new Slip(0.0254, "in taken for m"),
            new Slip(0.3048, "ft taken for m, or ft/s for m/s"),
            new Slip(1000, "m taken for mm, or m3/s for l/s"),
            new Slip(100, "m taken for cm"),
            new Slip(1 / 0.0254, "m taken for in"),
            new Slip(1 / 0.3048, "m taken for ft, or m/s for ft/s"),
            new Slip(25.4, "in taken for mm"),
            new Slip(1 / 25.4, "mm taken for in"),
            new Slip(1.0 / 3600, "m3/h taken for m3/s"),
            new Slip(1.0 / 86_400, "m3/d taken for m3/s"));

    /**
     * Looks for factors by which a record seems to be off.
     *
     * @param series the readings
     * @param lowest lowest usual value of the site, in the unit that the readings should have
     * @param highest highest usual value; greater than the lowest
     * @return the factors that bring at least nine of ten usable readings into the range, best first; empty if at least
     *     nine of ten lie inside as they are, or there is no usable reading
     * @throws IllegalArgumentException if a limit is not finite or the range is empty
     */
    public static List<UnitSuspicion> of(Series series, double lowest, double highest) {
        Require.finite("lowest", lowest, "");
        Require.finite("highest", highest, "");
        if (!(highest > lowest)) {
            throw new IllegalArgumentException(
                    "highest must be greater than lowest, " + Text.number(lowest) + ", was " + Text.number(highest));
        }
        double[] values = series.toUsableValues();
        double asIs = inside(values, 1, lowest, highest);
        List<UnitSuspicion> found = new ArrayList<>();
        if (!(asIs < MOST)) {
            return found;
        }
        for (Slip slip : SLIPS) {
            double then = inside(values, slip.factor, lowest, highest);
            if (then >= MOST) {
                found.add(new UnitSuspicion(slip.factor, slip.reading, asIs, then));
            }
        }
        found.sort((a, b) -> Double.compare(b.insideThen, a.insideThen));
        return List.copyOf(found);
    }

    /** The share of the values inside; NaN if there is none. */
    private static double inside(double[] values, double factor, double lowest, double highest) {
        int known = 0;
        int inside = 0;
        for (double value : values) {
            if (!Double.isNaN(value)) {
                known++;
                inside += value * factor >= lowest && value * factor <= highest ? 1 : 0;
            }
        }
        return (double) inside / known;
    }

    @Override
    public String toString() {
        return "UnitSuspicion[" + reading + ": times " + Text.significant(factor, 4) + " "
                + Text.significant(100 * insideThen, 3) + " % lie in the range, as they are "
                + Text.significant(100 * insideAsIs, 3) + " %]";
    }
}
