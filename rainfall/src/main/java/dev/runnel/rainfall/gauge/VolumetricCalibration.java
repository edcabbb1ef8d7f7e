package dev.runnel.rainfall.gauge;

import dev.runnel.internal.Moments;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A test of a gauge with measured water, and the calibration it gives. Immutable and thread-safe.
 *
 * <p>Each run pours a volume V at a steady rate and counts tips n over a time t, so that I = 36000 V/(A t) fell and
 * I<sub>r</sub> = 3600 n d/t was recorded. <b>Static</b>: slow runs give the depth that one tip really stands for.
 * <b>Dynamic</b>: runs at several rates give the lost time, as intercept of the straight line of Δt = t/n over 1/I, or a
 * curve of I over I<sub>r</sub>, by least squares of the relative error (Î − I)/I. What a calibration leaves of a depth is a
 * share of it, and gauges are judged by their relative error (WMO, from memory); least squares of I itself would let
 * the fastest run decide and the slow ones, in which most rain falls, be out by any share.
 *
 * <p>A fitted curve has the depth of a tip in the slowest run as its {@linkplain CalibrationCurve#withStaticFactor static
 * calibration}.
 *
 * <p>What this is not: a field check. Take the funnel's area at its rim from a measurement, not from the type plate.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class VolumetricCalibration {
    private final double funnelCm2;
    private final List<Run> runs;

    private VolumetricCalibration(double funnelCm2, List<Run> runs) {
        this.funnelCm2 = funnelCm2;
        this.runs = runs;
    }

    /**
     * One run.
     *
     * @param volumeMl water that tipped the bucket V, mL
     * @param tips tips counted n
     * @param seconds time between the first of them and the last, plus one gap, t, s
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Run(double volumeMl, int tips, double seconds) {
        /**
         * Checks the arguments.
         *
         * @param volumeMl volume, mL; greater than 0
         * @param tips tips; 1 or more
         * @param seconds time, s; greater than 0
         * @throws IllegalArgumentException if an argument is out of range
         */
        public Run {
            Require.positive("volumeMl", volumeMl, "mL");
            Require.atLeast("tips", tips, 1);
            Require.positive("seconds", seconds, "s");
        }
    }

    /**
     * How well a calibration fits the runs.
     *
     * @param calibration the calibration
     * @param tipMm depth of one tip that goes with it, mm
     * @param rSquared share of the variance of the fitted quantity that is explained; at most 1
     * @param worstPercent greatest difference of corrected from true intensity, % of the true one
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record Fit(Calibration calibration, double tipMm, double rSquared, double worstPercent) {
        /**
         * Checks that nothing is missing.
         *
         * @param calibration the calibration
         * @param tipMm depth of one tip that goes with it, mm
         * @param rSquared share of the variance of the fitted quantity that is explained; at most 1
         * @param worstPercent greatest difference of corrected from true intensity, % of the true one
         */
        public Fit {
            Objects.requireNonNull(calibration, "calibration");
        }

        /**
         * Returns the gauge that the test was made of.
         *
         * @return a gauge with this depth of a tip and this calibration
         */
        public TippingBucket bucket() {
            return TippingBucket.ofTip(tipMm).withCalibration(calibration);
        }

        @Override
        public String toString() {
            return "Fit[" + calibration + " with " + Text.significant(tipMm, 6) + " mm a tip, R2 "
                    + Text.significant(rSquared, 6) + ", worst " + Text.significant(worstPercent, 3) + " %]";
        }
    }

    /**
     * What one tip stands for, and how well the runs agree on it.
     *
     * @param tipMm depth of one tip from all runs together, mm
     * @param standardDeviationMm standard deviation of the runs' own depths of a tip (divisor n - 1), mm
     * @param standardErrorMm that over √n, mm
     * @param worstPercent greatest difference of a run's own depth of a tip from it, % of it
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record StaticFit(double tipMm, double standardDeviationMm, double standardErrorMm, double worstPercent) {
        @Override
        public String toString() {
            return "StaticFit[" + Text.significant(tipMm, 6) + " mm a tip, standard error "
                    + Text.significant(standardErrorMm, 3) + " mm, worst " + Text.significant(worstPercent, 3) + " %]";
        }
    }

    /**
     * Returns a test without runs.
     *
     * @param funnelCm2 area of the funnel at its rim A, cm²; 20 to 10 000 (common practice)
     * @return the test
     * @throws IllegalArgumentException if it is out of range
     */
    public static VolumetricCalibration ofFunnel(double funnelCm2) {
        return new VolumetricCalibration(GaugeRanges.funnel("funnelCm2", funnelCm2), List.of());
    }

    /**
     * Returns the same test with one more run.
     *
     * @param volumeMl water that tipped the bucket, mL; greater than 0
     * @param tips tips counted; 1 or more
     * @param seconds time they took, s; greater than 0
     * @return the test
     * @throws IllegalArgumentException if an argument is out of range, or a tip stands for no depth in 0.01 to 5 mm
     */
    public VolumetricCalibration withRun(double volumeMl, int tips, double seconds) {
        List<Run> more = new ArrayList<>(runs);
        Run run = new Run(volumeMl, tips, seconds);
        GaugeRanges.tip("10 volumeMl / (funnelCm2 tips)", depthOfTip(run));
        more.add(run);
        return new VolumetricCalibration(funnelCm2, List.copyOf(more));
    }

    private double depthOfTip(Run run) {
        return 10 * run.volumeMl() / (funnelCm2 * run.tips());
    }

    /**
     * Returns the runs.
     *
     * @return runs in the order they were added
     */
    public List<Run> runs() {
        return runs;
    }

    /**
     * Returns the intensity that a run stands for, 36000 V/(A t).
     *
     * @param run the run
     * @return true intensity, mm/h
     */
    public double trueMmPerHour(Run run) {
        return 36_000 * run.volumeMl() / (funnelCm2 * run.seconds());
    }

    /**
     * Returns the depth that one tip stands for, from the water and the tips of all runs together, without regard to
     * their rate: the static calibration if the runs are slow.
     *
     * @return 10 ΣV/(A Σn), mm
     * @throws IllegalArgumentException if there is no run
     */
    public double tipMm() {
        Require.atLeast("runs", runs.size(), 1);
        double volume = runs.stream().mapToDouble(Run::volumeMl).sum();
        double tips = runs.stream().mapToDouble(Run::tips).sum();
        return 10 * volume / (funnelCm2 * tips);
    }

    /**
     * Returns the static calibration with its goodness of fit: {@link #tipMm} and how the runs scatter about it. A scatter far
     * above the rounding of volume and count tells of runs at different rates, or of a bucket that does not settle.
     *
     * @return depth of a tip with its scatter
     * @throws IllegalArgumentException if there are fewer than two runs
     */
    public StaticFit fitStatic() {
        Require.atLeast("runs", runs.size(), 2);
        double tip = tipMm();
        double[] each = runs.stream().mapToDouble(this::depthOfTip).toArray();
        double deviation = Moments.deviation(each);
        double worst =
                Arrays.stream(each).map(d -> 100 * Math.abs(d / tip - 1)).max().orElseThrow();
        return new StaticFit(tip, deviation, deviation / Math.sqrt(each.length), worst);
    }

    /**
     * Fits the lost time: Δt = 3600 d/I + τ, both d and τ by least squares.
     *
     * @return lost time with the depth of a tip that goes with it
     * @throws IllegalArgumentException if there are fewer than three runs, all have one rate, or the line gives a lost
     *     time outside 0 to 5 s or a tip outside 0.01 to 5 mm
     */
    public Fit fitLostTime() {
        Require.atLeast("runs", runs.size(), 3);
        double[] inverse = new double[runs.size()];
        double[] gap = new double[runs.size()];
        for (int i = 0; i < gap.length; i++) {
            inverse[i] = 1 / trueMmPerHour(runs.get(i));
            gap[i] = runs.get(i).seconds() / runs.get(i).tips();
        }
        double[] line = LeastSquares.polynomial(inverse, gap, 1);
        double tip = GaugeRanges.tip("fitted tipMm", line[1] / 3600);
        LostTime lost = LostTime.ofSeconds(GaugeRanges.lostTime("fitted lost time", line[0]));
        return new Fit(lost, tip, LeastSquares.rSquared(inverse, gap, x -> line[0] + line[1] * x), worst(lost, tip));
    }

    /**
     * Fits I = a + b I<sub>r</sub> by least squares of the relative error.
     *
     * @param tipMm depth of one tip with which recorded intensity is computed, mm; 0.01 to 5
     * @return curve over the range of the runs
     * @throws IllegalArgumentException if there are fewer than three runs, all have one rate, or the line is not above 0 over them:
     *     then another form is called for
     */
    public Fit fitLinear(double tipMm) {
        double[] line = fitPolynomial(tipMm, 1);
        return fit(CalibrationCurve.linear(line[0], line[1], lowest(tipMm), highest(tipMm)), tipMm);
    }

    /**
     * Fits I = a + b I<sub>r</sub> + c I<sub>r</sub>² by least squares of the relative error.
     *
     * @param tipMm depth of one tip with which recorded intensity is computed, mm; 0.01 to 5
     * @return curve over the range of the runs
     * @throws IllegalArgumentException if there are fewer than four runs, fewer than three rates, or the curve is not above 0
     *     over them
     */
    public Fit fitQuadratic(double tipMm) {
        double[] curve = fitPolynomial(tipMm, 2);
        return fit(CalibrationCurve.quadratic(curve[0], curve[1], curve[2], lowest(tipMm), highest(tipMm)), tipMm);
    }

    /**
     * Fits I = a I<sub>r</sub><sup>b</sup> by least squares of ln I, which is the relative error as long as that is small.
     *
     * @param tipMm depth of one tip with which recorded intensity is computed, mm; 0.01 to 5
     * @return curve over the range of the runs
     * @throws IllegalArgumentException if there are fewer than three runs or all have one rate
     */
    public Fit fitPower(double tipMm) {
        Require.atLeast("runs", runs.size(), 3);
        double[] x = Arrays.stream(recorded(tipMm)).map(Math::log).toArray();
        double[] y = Arrays.stream(truth()).map(Math::log).toArray();
        double[] line = LeastSquares.polynomial(x, y, 1);
        return fit(CalibrationCurve.power(Math.exp(line[0]), line[1], lowest(tipMm), highest(tipMm)), tipMm);
    }

    private double[] fitPolynomial(double tipMm, int degree) {
        Require.atLeast("runs", runs.size(), degree + 2);
        return LeastSquares.relativePolynomial(recorded(tipMm), truth(), degree);
    }

    private Fit fit(CalibrationCurve fitted, double tipMm) {
        Run slowest = Collections.min(runs, Comparator.comparingDouble(this::trueMmPerHour));
        CalibrationCurve curve = fitted.withStaticFactor(depthOfTip(slowest) / tipMm);
        double rSquared = LeastSquares.rSquared(recorded(tipMm), truth(), x -> x * curve.factor(x, tipMm));
        return new Fit(curve, tipMm, rSquared, worst(curve, tipMm));
    }

    private double worst(Calibration calibration, double tipMm) {
        double worst = 0;
        double[] recorded = recorded(tipMm);
        double[] truth = truth();
        for (int i = 0; i < truth.length; i++) {
            worst = Math.max(
                    worst, 100 * Math.abs(recorded[i] * calibration.factor(recorded[i], tipMm) / truth[i] - 1));
        }
        return worst;
    }

    private double[] recorded(double tipMm) {
        GaugeRanges.tip("tipMm", tipMm);
        return runs.stream()
                .mapToDouble(run -> 3600 * run.tips() * tipMm / run.seconds())
                .toArray();
    }

    private double[] truth() {
        return runs.stream().mapToDouble(this::trueMmPerHour).toArray();
    }

    private double lowest(double tipMm) {
        return Arrays.stream(recorded(tipMm)).min().orElseThrow();
    }

    private double highest(double tipMm) {
        return Arrays.stream(recorded(tipMm)).max().orElseThrow();
    }

    @Override
    public String toString() {
        return "VolumetricCalibration[" + runs.size() + " runs, funnel " + Text.significant(funnelCm2, 6) + " cm2]";
    }
}
