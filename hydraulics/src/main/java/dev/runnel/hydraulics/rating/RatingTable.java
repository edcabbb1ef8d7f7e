package dev.runnel.hydraulics.rating;

import dev.runnel.internal.Interpolation;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.Arrays;
import java.util.Objects;
import java.util.function.DoubleUnaryOperator;
import org.apiguardian.api.API;

/**
 * Discharge by stage or head in rows, for export to a logger or a telemetry system, with straight lines between the rows.
 * Immutable and thread-safe.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RatingTable {
    private static final double MOST_ROWS = 1e6;

    private final double[] stages;
    private final double[] discharges;

    private RatingTable(double[] stages, double[] discharges) {
        this.stages = stages;
        this.discharges = discharges;
    }

    /**
     * Returns the table of a relation.
     *
     * @param relation discharge (m³/s) by stage or head (m), for example {@code weir::discharge}
     * @param from first stage, m; finite
     * @param to last stage, m; above {@code from}, finite
     * @param step step of stage, m; greater than 0, finite; the last row is {@code to} even if the last step is short
     * @return the table
     * @throws IllegalArgumentException if a parameter is outside its range, the table would have more than 1,000,000 rows, or
     *     the relation refuses a stage
     */
    public static RatingTable of(DoubleUnaryOperator relation, double from, double to, double step) {
        Objects.requireNonNull(relation, "relation");
        Require.finite("from", from, "m");
        Require.positive("step", step, "m");
        if (!(to > from && to < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException(
                    "to must be above from " + Text.number(from) + " m and finite, was " + Text.number(to));
        }
        double steps = Math.ceil((to - from) / step * (1 - 1e-12));
        if (!(steps < MOST_ROWS)) {
            throw new IllegalArgumentException("step must be greater than " + Text.number((to - from) / MOST_ROWS)
                    + " m for at most 1000000 rows, was " + Text.number(step));
        }
        int count = (int) steps;
        double[] stages = new double[count + 1];
        for (int i = 0; i < count; i++) {
            stages[i] = from + i * step;
        }
        stages[count] = to;
        double[] discharges = Arrays.stream(stages).map(relation).toArray();
        return new RatingTable(stages, discharges);
    }

    /**
     * Returns the stages.
     *
     * @return stages, m, ascending; a new array
     */
    public double[] stages() {
        return stages.clone();
    }

    /**
     * Returns the discharges.
     *
     * @return discharges, m³/s; a new array
     */
    public double[] discharges() {
        return discharges.clone();
    }

    /**
     * Returns the discharge by a straight line between the rows around a stage.
     *
     * @param stage stage, m; within the table
     * @return discharge, m³/s
     * @throws IllegalArgumentException if {@code stage} is outside the table or NaN
     */
    public double discharge(double stage) {
        Require.inRange("stage", stage, stages[0], stages[stages.length - 1], "m");
        return Interpolation.held(stages, discharges, stage);
    }

    /**
     * Returns the table as text: a line with the names {@code stage_m,discharge_m3_per_s}, then one line a row.
     *
     * @param stageDecimals decimals of the stage, 0 to 9
     * @param dischargeDigits significant digits of the discharge, 1 to 17
     * @return comma-separated text, lines ended by a line feed
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public String toCsv(int stageDecimals, int dischargeDigits) {
        Require.inRange("stageDecimals", stageDecimals, 0, 9, "");
        Require.inRange("dischargeDigits", dischargeDigits, 1, 17, "");
        StringBuilder text = new StringBuilder("stage_m,discharge_m3_per_s\n");
        for (int i = 0; i < stages.length; i++) {
            text.append(Text.fixed(stages[i], stageDecimals))
                    .append(',')
                    .append(Text.significant(discharges[i], dischargeDigits))
                    .append('\n');
        }
        return text.toString();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof RatingTable that
                && Arrays.equals(stages, that.stages)
                && Arrays.equals(discharges, that.discharges);
    }

    @Override
    public int hashCode() {
        return 31 * Arrays.hashCode(stages) + Arrays.hashCode(discharges);
    }

    @Override
    public String toString() {
        return "RatingTable[" + stages.length + " rows, stage " + Text.significant(stages[0], 6) + " to "
                + Text.significant(stages[stages.length - 1], 6) + " m]";
    }
}
