package dev.runnel.rainfall.distribution;

import dev.runnel.internal.Text;
import org.apache.commons.math3.exception.MathIllegalArgumentException;
import org.apache.commons.math3.exception.MathIllegalStateException;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.util.Pair;

/**
 * Parameters of the kappa distribution from four L-moments, both shapes at once. Source: Hosking and Wallis (1997), Regional
 * Frequency Analysis, appendix A.10.
 */
final class KappaFit {
    private static final double KAPPA_ACCURACY = 1e-11;
    private static final double DIFFERENCE = 1e-6;
    private static final double[][] KAPPA_STARTS = {{0.05, 0.1}, {-0.1, -0.5}, {0.2, 0.9}, {0.3, -1}, {-0.3, 0.3}};

    /** Tolerance of the optimiser, near the rounding, and bound of its steps; chosen here. */
    private static final double TOLERANCE = 1e-15;

    private static final int MOST_STEPS = 1000;

    private KappaFit() {}

    static Kappa of(LMoments m) {
        m.tau3OfShape();
        double highest = (5 * m.tau3() * m.tau3() + 1) / 6;
        if (!(m.tau4() < highest)) {
            throw new NoFitException("tau4 must be below (5 tau3^2 + 1)/6 = " + Text.significant(highest, 6)
                    + " for a kappa distribution, was " + Text.number(m.tau4()));
        }
        for (double[] start : KAPPA_STARTS) {
            double[] shapes = kappaShapes(m, start);
            if (shapes.length == 2) {
                double[] standard = KappaMoments.standard(shapes[0], shapes[1]);
                double scale = m.lambda2() / standard[1];
                return Kappa.of(m.lambda1() - scale * standard[0], scale, shapes[0], shapes[1]);
            }
        }
        throw new NoFitException("tau3 and tau4 must be those of a kappa distribution, were " + Text.number(m.tau3())
                + " and " + Text.number(m.tau4()));
    }

    /** Returns k and h, or an empty array if this start led nowhere. */
    private static double[] kappaShapes(LMoments m, double[] start) {
        try {
            double[] found = new LevenbergMarquardtOptimizer()
                    .withCostRelativeTolerance(TOLERANCE)
                    .withParameterRelativeTolerance(TOLERANCE)
                    .withOrthoTolerance(TOLERANCE)
                    .optimize(new LeastSquaresBuilder()
                            .start(start)
                            .target(new double[] {m.tau3(), m.tau4()})
                            .model(point -> new Pair<>(
                                    new ArrayRealVector(ratios(point.getEntry(0), point.getEntry(1))),
                                    slopes(point.getEntry(0), point.getEntry(1))))
                            .lazyEvaluation(false)
                            .maxEvaluations(MOST_STEPS)
                            .maxIterations(MOST_STEPS)
                            .build())
                    .getPoint()
                    .toArray();
            double[] reached = ratios(found[0], found[1]);
            boolean met = KappaMoments.exist(found[0], found[1])
                    && Math.abs(reached[0] - m.tau3()) < KAPPA_ACCURACY
                    && Math.abs(reached[1] - m.tau4()) < KAPPA_ACCURACY;
            return met ? found : new double[0];
        } catch (MathIllegalArgumentException | MathIllegalStateException e) {
            return new double[0];
        }
    }

    /** Returns &tau;<sub>3</sub> and &tau;<sub>4</sub>; 1 and 1, far from any sample, where they do not exist. */
    private static double[] ratios(double k, double h) {
        if (!KappaMoments.exist(k, h)) {
            return new double[] {1, 1};
        }
        double[] standard = KappaMoments.standard(k, h);
        return new double[] {standard[2], standard[3]};
    }

    private static RealMatrix slopes(double k, double h) {
        double[] here = ratios(k, h);
        double width = DIFFERENCE;
        double[] alongK = ratios(k + width, h);
        double[] alongH = ratios(k, h + width);
        return MatrixUtils.createRealMatrix(new double[][] {
            {(alongK[0] - here[0]) / width, (alongH[0] - here[0]) / width},
            {(alongK[1] - here[1]) / width, (alongH[1] - here[1]) / width}
        });
    }
}
