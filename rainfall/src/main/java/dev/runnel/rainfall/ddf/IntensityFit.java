package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Moments;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.time.Duration;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.stream.DoubleStream;
import org.apache.commons.math3.exception.MathIllegalArgumentException;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresOptimizer;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.QRDecomposition;
import org.apache.commons.math3.util.MathArrays;
import org.apiguardian.api.API;

/**
 * An {@link IntensityFormula} fitted to depths of several durations, with how well it fits.
 *
 * <p>Bernard: least squares of ln i over ln t. Talbot: least squares of 1/i over t. Sherman and Kimijima: least squares of
 * ln i by Levenberg and Marquardt's method from several starts, ended by Gauss's steps, to about ten digits where the fit is well posed. Results differ with what is squared; this is a choice, not
 * a law.
 *
 * @param formula the formula, over the durations it was fitted to
 * @param rmsPercent root mean square of the relative differences of intensity, %, taken as ln i
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record IntensityFit(IntensityFormula formula, double rmsPercent) {
    /**
     * Checks that nothing is missing.
     *
     * @param formula the formula, over the durations it was fitted to
     * @param rmsPercent root mean square of the relative differences of intensity, %, taken as ln i
     */
    public IntensityFit {
        Objects.requireNonNull(formula, "formula");
    }

    /** Rise of 1/i over the durations, by its value at none, below which the intensity does not fall but for rounding. */
    private static final double CONSTANT = 1e-12;

    /** Of Gauss's steps at the end; chosen here: each gains a digit or more, and there are 16. */
    private static final int MOST_STEPS = 50;

    /** A step from which it is no longer the end of a search; chosen here. */
    private static final double LARGEST_STEP = 1e-3;

    /**
     * Fits a formula.
     *
     * @param form the form
     * @param durations durations, rising; one more than the form has coefficients, or more
     * @param depthsMm depth in each, mm; greater than 0
     * @return the formula and its fit
     * @throws IllegalArgumentException if the lists do not agree, are too short or not in order, or no formula of that
     *     form follows them
     */
    public static IntensityFit of(IntensityFormula.Form form, List<Duration> durations, double... depthsMm) {
        Require.sameLength("depthsMm", durations.size(), depthsMm.length);
        boolean two = form == IntensityFormula.Form.BERNARD || form == IntensityFormula.Form.TALBOT;
        Require.atLeast("durations", durations.size(), two ? 3 : 4);
        double[] t = new double[depthsMm.length];
        double[] logI = new double[depthsMm.length];
        for (int i = 0; i < t.length; i++) {
            DdfTableChecks.checkDuration(durations, i);
            t[i] = IntensityFormula.minutes(durations.get(i));
            logI[i] = Math.log(60 * Require.positive("depthsMm at index " + i, depthsMm[i], "mm") / t[i]);
        }
        double[] different = Arrays.stream(depthsMm).distinct().toArray();
        double[] abn = different.length == 1 ? constantDepth(different[0]) : fitted(form, t, logI);
        return judged(form, abn, durations, logI);
    }

    /** i = a/t, which every form holds: found by squares it would tip to falling depths by a rounding. */
    private static double[] constantDepth(double depthMm) {
        return new double[] {60 * depthMm, 0, 1};
    }

    private static double[] fitted(IntensityFormula.Form form, double[] t, double[] logI) {
        return switch (form) {
            case BERNARD -> bernard(t, logI);
            case TALBOT -> talbot(t, logI);
            case SHERMAN, KIMIJIMA -> iterated(form, t, logI);
        };
    }

    private static IntensityFit judged(
            IntensityFormula.Form form, double[] abn, List<Duration> durations, double[] logI) {
        Duration from = durations.get(0);
        Duration to = durations.get(durations.size() - 1);
        IntensityFormula formula = switch (form) {
            case BERNARD -> IntensityFormula.bernard(abn[0], abn[2], from, to);
            case TALBOT -> IntensityFormula.talbot(abn[0], abn[1], from, to);
            case SHERMAN -> IntensityFormula.sherman(abn[0], abn[1], abn[2], from, to);
            case KIMIJIMA -> IntensityFormula.kimijima(abn[0], abn[1], abn[2], from, to);
        };
        double squares = 0;
        for (int i = 0; i < logI.length; i++) {
            double difference = Math.log(formula.intensityMmPerHour(durations.get(i))) - logI[i];
            squares += difference * difference;
        }
        return new IntensityFit(formula, 100 * Math.sqrt(squares / logI.length));
    }

    private static double[] bernard(double[] t, double[] logI) {
        double[] line = line(Arrays.stream(t).map(Math::log).toArray(), logI);
        return new double[] {Math.exp(line[0]), 0, -line[1]};
    }

    private static double[] talbot(double[] t, double[] logI) {
        double[] line = line(t, Arrays.stream(logI).map(log -> Math.exp(-log)).toArray());
        if (!(line[1] * t[t.length - 1] > CONSTANT * Math.abs(line[0]))) {
            throw noneFollows(IntensityFormula.Form.TALBOT);
        }
        return new double[] {1 / line[1], line[0] / line[1], 1};
    }

    /** Intercept and slope of the least-squares line. */
    private static double[] line(double[] x, double[] y) {
        double meanX = Moments.mean(x);
        double meanY = Moments.mean(y);
        double xy = 0;
        double xx = 0;
        for (int i = 0; i < x.length; i++) {
            xy += (x[i] - meanX) * (y[i] - meanY);
            xx += (x[i] - meanX) * (x[i] - meanX);
        }
        return new double[] {meanY - xy / xx * meanX, xy / xx};
    }

    private static double[] iterated(IntensityFormula.Form form, double[] t, double[] logI) {
        double[] line = line(Arrays.stream(t).map(Math::log).toArray(), logI);
        LeastSquaresOptimizer.Optimum best = DoubleStream.of(1, 5, 10)
                .mapToObj(b -> attempt(form, t, logI, new double[] {line[0], b, -line[1]}))
                .flatMap(List::stream)
                .min(Comparator.comparingDouble(LeastSquaresOptimizer.Optimum::getCost))
                .orElseThrow(() -> noneFollows(form));
        double[] point = polished(form, t, logI, best.getPoint().toArray());
        return new double[] {Math.exp(point[0]), point[1], point[2]};
    }

    /**
     * Gauss's steps from where the sum of squares no longer tells: it is flat about its least, so that a change of its last digit
     * moves the coefficients in their eighth. The steps come from the residuals themselves and tell to the last digits.
     */
    private static double[] polished(IntensityFormula.Form form, double[] t, double[] logI, double[] start) {
        double[] point = start;
        double before = LARGEST_STEP;
        for (int i = 0; i < MOST_STEPS; i++) {
            double[] step = step(form, t, logI, point);
            double size = MathArrays.safeNorm(step);
            // Steps that do not shrink are rounding, or those of a sum without a least nearby.
            if (!(size < before)) {
                return point;
            }
            before = size;
            point = MathArrays.ebeAdd(point, step);
        }
        return point;
    }

    private static double[] step(IntensityFormula.Form form, double[] t, double[] logI, double[] point) {
        try {
            double[] residuals = MathArrays.ebeSubtract(logI, model(form, t, point));
            return new QRDecomposition(new Array2DRowRealMatrix(jacobian(form, t, point), false))
                    .getSolver()
                    .solve(new ArrayRealVector(residuals, false))
                    .toArray();
        } catch (MathIllegalArgumentException | MathIllegalStateException e) {
            return new double[] {Double.NaN, Double.NaN, Double.NaN};
        }
    }

    private static IllegalArgumentException noneFollows(IntensityFormula.Form form) {
        return new IllegalArgumentException(
                "depthsMm must be those of a falling intensity, no " + form + " formula follows them");
    }

    private static List<LeastSquaresOptimizer.Optimum> attempt(
            IntensityFormula.Form form, double[] t, double[] logI, double[] start) {
        try {
            return List.of(new LevenbergMarquardtOptimizer()
                    .withCostRelativeTolerance(1e-15)
                    .withParameterRelativeTolerance(1e-14)
                    .withOrthoTolerance(1e-15)
                    .optimize(new LeastSquaresBuilder()
                            .start(start)
                            .target(logI)
                            .model(p -> model(form, t, p), p -> jacobian(form, t, p))
                            .maxEvaluations(20_000)
                            .maxIterations(20_000)
                            .build()));
        } catch (MathIllegalArgumentException | MathIllegalStateException e) {
            return List.of();
        }
    }

    /** ln i for p = (ln a, b, n). */
    private static double[] model(IntensityFormula.Form form, double[] t, double[] p) {
        return Arrays.stream(t).map(each -> p[0] - reduction(form, each, p)).toArray();
    }

    private static double reduction(IntensityFormula.Form form, double t, double[] p) {
        return form == IntensityFormula.Form.SHERMAN ? p[2] * Math.log(t + p[1]) : Math.log(Math.pow(t, p[2]) + p[1]);
    }

    private static double[][] jacobian(IntensityFormula.Form form, double[] t, double[] p) {
        double[][] rows = new double[t.length][];
        for (int i = 0; i < t.length; i++) {
            if (form == IntensityFormula.Form.SHERMAN) {
                rows[i] = new double[] {1, -p[2] / (t[i] + p[1]), -Math.log(t[i] + p[1])};
            } else {
                double power = Math.pow(t[i], p[2]);
                rows[i] = new double[] {1, -1 / (power + p[1]), -power * Math.log(t[i]) / (power + p[1])};
            }
        }
        return rows;
    }

    @Override
    public String toString() {
        return "IntensityFit[" + formula + ", rms " + Text.significant(rmsPercent, 3) + " %]";
    }
}
