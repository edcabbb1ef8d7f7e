package dev.runnel.hydraulics.rating;

import dev.runnel.hydraulics.internal.Bulk;
import dev.runnel.internal.Require;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.List;
import java.util.Objects;
import org.apache.commons.math3.distribution.TDistribution;
import org.apiguardian.api.API;

/**
 * A rating curve fitted to gaugings: discharge from stage by a power law with offset, Q = C (h − a)^b, in one segment or in
 * several that join without a step. Immutable and thread-safe; made by {@link RatingFit}.
 *
 * <p>h is the stage on the gauge's own datum (m), a the stage of no flow (m). The fit is least squares of ln Q, as in ISO
 * 18320 and ISO 1100-2 (from memory): errors count in percent. Bands come from Student's t and the linear theory of the
 * fitted parameters, the offset included where it was fitted: confidence for the curve itself, prediction for the next
 * gauging.
 *
 * <p>Beyond the gauged stages {@link #discharge(double)} refuses and {@link #extrapolated(double)} answers. What it is not: a
 * law of physics above the highest gauging, nor valid after the control has moved.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class RatingCurve {
    private final RatingModel model;
    private final double lowestStage;
    private final double highestStage;
    private final double standardError;
    private final int degreesOfFreedom;
    private final double[] residuals;

    RatingCurve(
            RatingModel model,
            double lowestStage,
            double highestStage,
            double standardError,
            int degreesOfFreedom,
            double[] residuals) {
        this.model = model;
        this.lowestStage = lowestStage;
        this.highestStage = highestStage;
        this.standardError = standardError;
        this.degreesOfFreedom = degreesOfFreedom;
        this.residuals = residuals;
    }

    /**
     * Returns the discharge at a gauged stage.
     *
     * @param stage stage h, m; between the lowest and the highest gauging
     * @return discharge, m³/s
     * @throws IllegalArgumentException if {@code stage} is outside the gauged range or NaN
     */
    public double discharge(double stage) {
        return model.discharge(Require.inRange("stage", stage, lowestStage, highestStage, "m"));
    }

    /**
     * Returns the discharge at any stage, gauged or not; 0 at and below the offset of the lowest segment.
     *
     * @param stage stage h, m; finite
     * @return discharge, m³/s
     * @throws IllegalArgumentException if {@code stage} is not finite
     */
    public double extrapolated(double stage) {
        return model.discharge(Require.finite("stage", stage, "m"));
    }

    /**
     * Tells whether a stage lies between the lowest and the highest gauging.
     *
     * @param stage stage h, m
     * @return true if it does; false for NaN
     */
    public boolean isGauged(double stage) {
        return stage >= lowestStage && stage <= highestStage;
    }

    /**
     * Returns the stage of a discharge within the gauged range.
     *
     * @param discharge discharge, m³/s; between those of the lowest and the highest gauged stage
     * @return stage, m; within 1e-12 relative of its height above the offset
     * @throws IllegalArgumentException if {@code discharge} is outside or NaN
     */
    public double stage(double discharge) {
        Require.inRange("discharge", discharge, model.discharge(lowestStage), model.discharge(highestStage), "m3/s");
        return Roots.between(h -> model.discharge(h) - discharge, lowestStage, highestStage);
    }

    /**
     * Writes the discharge for each stage, bit for bit as {@link #discharge(double)}.
     *
     * @param stage stages, m; NaN for missing; not modified
     * @param discharge results, m³/s; same length, overwritten
     * @throws IllegalArgumentException if the lengths differ or a stage is outside the gauged range; names the index
     */
    public void discharge(double[] stage, double[] discharge) {
        Objects.requireNonNull(stage, "stage");
        Objects.requireNonNull(discharge, "discharge");
        Bulk.apply("stage", stage, "discharge", discharge, this::discharge);
    }

    /**
     * Returns the discharges of many stages, gauged or not, for a loop over a record. A stage outside the gaugings is answered as by
     * {@link #extrapolated(double)} and flagged; a missing one (NaN) or one that is infinite gives NaN and is flagged.
     *
     * @param stage stages, m; not modified
     * @param discharge discharges, m³/s; same length, overwritten
     * @param outside true where the stage is not gauged or missing; same length, overwritten
     * @return count of flagged entries
     * @throws IllegalArgumentException if the lengths differ
     */
    public int evaluate(double[] stage, double[] discharge, boolean[] outside) {
        Require.sameLength("discharge", stage.length, discharge.length);
        Require.sameLength("outside", stage.length, outside.length);
        int flagged = 0;
        for (int i = 0; i < stage.length; i++) {
            discharge[i] = Double.isFinite(stage[i]) ? model.discharge(stage[i]) : Double.NaN;
            outside[i] = !isGauged(stage[i]);
            flagged += outside[i] ? 1 : 0;
        }
        return flagged;
    }

    /**
     * Returns the relative standard uncertainty of a rated discharge: that of the curve, s √(leverage), and that of the stage, b
     * u_h/(h − a), as independent.
     *
     * @param stage stage h, m; in the gauged range
     * @param stageUncertainty standard uncertainty of the stage u_h, m; 0 or greater, finite
     * @return u(Q)/Q, 0.05 for 5 %
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public double relativeUncertainty(double stage, double stageUncertainty) {
        Require.inRange("stage", stage, lowestStage, highestStage, "m");
        Require.nonNegative("stageUncertainty", stageUncertainty, "m");
        double ofStage = model.exponent(stage) * stageUncertainty / (stage - model.offset(stage));
        return Math.hypot(standardError * Math.sqrt(model.leverage(stage)), ofStage);
    }

    /**
     * Returns the information criterion of Schwarz, by which curves of different counts of segments compare: the lower the better.
     *
     * @return n ln(Σ residual²/n) + p ln n, residuals weighted as they were fitted
     */
    public double informationCriterion() {
        int n = residuals.length;
        double squares = Math.max(standardError * standardError * degreesOfFreedom, Double.MIN_NORMAL);
        return n * Math.log(squares / n) + (n - degreesOfFreedom) * Math.log(n);
    }

    /**
     * Returns the band that holds the true curve at a stage with a given confidence.
     *
     * @param stage stage h, m; in the gauged range
     * @param confidence probability, such as 0.95; greater than 0, less than 1
     * @return the band
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public RatingBand confidence(double stage, double confidence) {
        return band(stage, confidence, 0);
    }

    /**
     * Returns the band that holds the next gauging at a stage with a given confidence.
     *
     * @param stage stage h, m; in the gauged range
     * @param confidence probability, such as 0.95; greater than 0, less than 1
     * @return the band
     * @throws IllegalArgumentException if a parameter is outside its range
     */
    public RatingBand prediction(double stage, double confidence) {
        return band(stage, confidence, 1);
    }

    private RatingBand band(double stage, double confidence, double ofOne) {
        double discharge = discharge(stage);
        if (!(confidence > 0 && confidence < 1)) {
            throw new IllegalArgumentException(
                    "confidence must be greater than 0 and less than 1, was " + Text.number(confidence));
        }
        double t = new TDistribution(null, degreesOfFreedom).inverseCumulativeProbability((1 + confidence) / 2);
        double half = t * standardError * Math.sqrt(ofOne + model.leverage(stage));
        return new RatingBand(stage, discharge * Math.exp(-half), discharge, discharge * Math.exp(half));
    }

    /**
     * Returns the standard error of the fit in ln Q: 0.05 means that two gaugings out of three lie within 5 %.
     *
     * @return √(Σ residual²/degrees of freedom)
     */
    public double standardError() {
        return standardError;
    }

    /**
     * Returns the count of gaugings less the count of fitted parameters.
     *
     * @return degrees of freedom, 1 or more
     */
    public int degreesOfFreedom() {
        return degreesOfFreedom;
    }

    /**
     * Returns what the fit leaves of each gauging, ln(Q gauged/Q curve), in the order in which they were given.
     *
     * @return residuals; a new array
     */
    public double[] residuals() {
        return residuals.clone();
    }

    /**
     * Returns the segments, lowest first.
     *
     * @return segments, unmodifiable
     */
    public List<RatingSegment> segments() {
        return model.segments();
    }

    /**
     * Returns the lowest gauged stage.
     *
     * @return stage, m
     */
    public double lowestStage() {
        return lowestStage;
    }

    /**
     * Returns the highest gauged stage.
     *
     * @return stage, m
     */
    public double highestStage() {
        return highestStage;
    }

    /**
     * Returns the curve as a rating table.
     *
     * @param fromStage first stage, m; in the gauged range
     * @param toStage last stage, m; in the gauged range, above {@code fromStage}
     * @param step step of stage, m; greater than 0, finite; the last row is {@code toStage} even if the last step is short
     * @return the table
     * @throws IllegalArgumentException if a parameter is outside its range or the table would have more than 1,000,000
     *     rows
     */
    public RatingTable table(double fromStage, double toStage, double step) {
        return RatingTable.of(this::discharge, fromStage, toStage, step);
    }

    @Override
    public String toString() {
        StringBuilder text = new StringBuilder("RatingCurve[");
        model.segments().forEach(segment -> text.append(segment).append("; "));
        return text.append("standard error ")
                .append(Text.significant(100 * standardError, 3))
                .append(" %, ")
                .append(residuals.length)
                .append(" gaugings]")
                .toString();
    }
}
