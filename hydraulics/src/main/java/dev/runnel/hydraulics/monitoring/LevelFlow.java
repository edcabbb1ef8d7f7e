package dev.runnel.hydraulics.monitoring;

import dev.runnel.hydraulics.rating.RatingCurve;
import dev.runnel.hydraulics.structure.HeadDischarge;
import dev.runnel.hydraulics.structure.TailwaterDischarge;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * The flow of a logger that reads a level alone, in front of a weir or flume or at a rated gauge. Immutable and thread-safe; no
 * reading stops a record.
 *
 * <ul>
 *   <li>a level at or below the crest gives 0 and keeps its quality
 *   <li>a level outside the limits of application, or outside the gaugings of a rating curve, is answered and marked poor
 *   <li>a level above all that the relation can take, and a missing one, give a missing flow
 * </ul>
 *
 * <p>What it is not: a sign that the level belongs to the flow. Backwater, ragging and a wrong datum look the same here.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class LevelFlow {
    private static final double FARTHEST = 1e4;

    private final Relation relation;
    private final String text;
    private final double crest;

    /** Head below which a flow of 0 is no surprise. */
    private final double dryBelow;

    /** Answers many heads, marks and counts. */
    @FunctionalInterface
    private interface Relation {
        int evaluate(double[] head, double[] discharge, boolean[] outside);
    }

    private LevelFlow(Relation relation, String text, double crest, double dryBelow) {
        this.relation = relation;
        this.text = text;
        this.crest = crest;
        this.dryBelow = dryBelow;
    }

    /**
     * Returns the flow over a structure.
     *
     * @param structure the weir, flume or other structure
     * @param crestLevel level of its crest on the logger's datum, m; in [-10000, 10000]
     * @return the conversion
     * @throws IllegalArgumentException if {@code crestLevel} is outside its range
     */
    public static LevelFlow of(HeadDischarge structure, double crestLevel) {
        Objects.requireNonNull(structure, "structure");
        return new LevelFlow(
                structure::evaluate,
                structure.toString(),
                Require.inRange("crestLevel", crestLevel, -FARTHEST, FARTHEST, "m"),
                0);
    }

    /**
     * Returns the flow past a rated gauge, levels on the datum of its gaugings.
     *
     * @param curve the rating curve
     * @return the conversion
     */
    public static LevelFlow of(RatingCurve curve) {
        Objects.requireNonNull(curve, "curve");
        return new LevelFlow(curve::evaluate, curve.toString(), 0, Double.NEGATIVE_INFINITY);
    }

    /**
     * A record of flows.
     *
     * @param flow flows, m³/s, at the times of the levels
     * @param outside count of levels that were answered outside the limits, and marked poor
     * @param missing count of flows that are missing
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Rated(Series flow, int outside, int missing) {
        /**
         * Checks that nothing is missing.
         *
         * @param flow flows, m³/s, at the times of the levels
         * @param outside count of levels that were answered outside the limits, and marked poor
         * @param missing count of flows that are missing
         */
        public Rated {
            Objects.requireNonNull(flow, "flow");
        }

        @Override
        public String toString() {
            return "Rated[" + flow.size() + " flows, " + outside + " outside the limits, " + missing + " missing]";
        }
    }

    /**
     * Returns the flows of a record of levels.
     *
     * @param level levels on the logger's datum, m
     * @return flows, and what was outside or missing
     */
    public Rated flow(Series level) {
        double[] head = level.toValues();
        for (int i = 0; i < head.length; i++) {
            head[i] -= crest;
        }
        double[] discharge = new double[head.length];
        boolean[] outside = new boolean[head.length];
        relation.evaluate(head, discharge, outside);
        return rated(level, level.toQualityCodes(), head, discharge, outside, dryBelow);
    }

    /**
     * Returns the flows of two records of levels, in front of and behind a structure that may be drowned.
     *
     * @param structure the structure, with its law for a tailwater
     * @param crestLevel level of its crest on the datum of both loggers, m; in [-10000, 10000]
     * @param level levels in front, m
     * @param tailwater levels behind, m; at the same times
     * @return flows, and what was outside or missing
     * @throws IllegalArgumentException if {@code crestLevel} is outside its range or the times differ
     */
    public static Rated drowned(TailwaterDischarge structure, double crestLevel, Series level, Series tailwater) {
        Objects.requireNonNull(tailwater, "tailwater");
        Require.inRange("crestLevel", crestLevel, -FARTHEST, FARTHEST, "m");
        if (!level.hasTimesOf(tailwater)) {
            throw new IllegalArgumentException("tailwater must have the times of level; align the two records first");
        }
        double[] head = level.toValues();
        double[] behind = tailwater.toValues();
        byte[] quality = level.toQualityCodes();
        byte[] other = tailwater.toQualityCodes();
        for (int i = 0; i < head.length; i++) {
            head[i] -= crestLevel;
            behind[i] -= crestLevel;
            quality[i] = worse(quality[i], other[i]);
        }
        double[] discharge = new double[head.length];
        boolean[] outside = new boolean[head.length];
        structure.evaluate(head, behind, discharge, new boolean[head.length], outside);
        return rated(level, quality, head, discharge, outside, 0);
    }

    private static Rated rated(
            Series clock, byte[] quality, double[] head, double[] discharge, boolean[] outside, double dryBelow) {
        int beyond = 0;
        int missing = 0;
        for (int i = 0; i < head.length; i++) {
            if (Double.isNaN(discharge[i])) {
                quality[i] = Quality.MISSING.toCode();
                missing++;
            } else if (outside[i] && head[i] >= dryBelow) {
                quality[i] = worse(quality[i], Quality.POOR.toCode());
                beyond++;
            }
        }
        return new Rated(clock.withReadings(discharge, quality), beyond, missing);
    }

    private static byte worse(byte one, byte other) {
        return Quality.ofCode(one).worst(Quality.ofCode(other)).toCode();
    }

    @Override
    public String toString() {
        return "LevelFlow[" + text + ", crest at " + Text.significant(crest, 6) + " m]";
    }
}
