package dev.runnel.verification.oracle;

import org.apache.commons.math3.analysis.UnivariateFunction;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.optim.MaxEval;
import org.apache.commons.math3.optim.nonlinear.scalar.GoalType;
import org.apache.commons.math3.optim.univariate.BrentOptimizer;
import org.apache.commons.math3.optim.univariate.SearchInterval;
import org.apache.commons.math3.optim.univariate.UnivariateObjectiveFunction;

/** A circular conduit recomputed: Manning if {@code n} is above 0, else Colebrook-White. SI units. */
record PeerConduit(double diameter, double gradient, double n, double roughness, double viscosity, double gravity) {
    private static final double LEAST_TURBULENT = 4000;
    private static final int MOST = 500;

    double area(double depth) {
        double angle = angle(depth);
        return diameter * diameter / 8 * (angle - Math.sin(angle));
    }

    double discharge(double depth) {
        double area = area(depth);
        double radius = area / (diameter * angle(depth) / 2);
        return area * velocity(radius);
    }

    /** Whether the law of this peer holds: Colebrook and White's is one of turbulent flow, Re above 4000. */
    boolean isLawful(double depth) {
        double radius = area(depth) / (diameter * angle(depth) / 2);
        return n > 0 || 4 * radius * velocity(radius) / viscosity > LEAST_TURBULENT;
    }

    private double velocity(double radius) {
        if (n > 0) {
            return Math.pow(radius, 2.0 / 3) * Math.sqrt(gradient) / n;
        }
        double size = 4 * radius;
        double root = Math.sqrt(2 * gravity * size * gradient);
        return -2 * root * Math.log10(roughness / (3.7 * size) + 2.51 * viscosity / (size * root));
    }

    /** Depth of the greatest discharge; the maximum is flat, so it is good to half the digits only. */
    double depthOfMaximum() {
        return new BrentOptimizer(1e-11, 1e-14)
                .optimize(
                        new MaxEval(MOST),
                        new UnivariateObjectiveFunction(this::discharge),
                        GoalType.MAXIMIZE,
                        new SearchInterval(0.5 * diameter, diameter))
                .getPoint();
    }

    double normalDepth(double discharge, double from, double to) {
        return root(depth -> discharge(depth) / discharge - 1, from, to);
    }

    double criticalDepth(double discharge) {
        return root(
                depth -> {
                    double area = area(depth);
                    double width = diameter * Math.sin(angle(depth) / 2);
                    return Math.log(discharge * discharge * width / (gravity * area * area * area));
                },
                1e-3 * diameter,
                0.9999 * diameter);
    }

    /** The Darcy friction factor of Colebrook and White. */
    static double frictionFactor(double reynolds, double relativeRoughness) {
        double inverseRoot = root(x -> x + 2 * Math.log10(relativeRoughness / 3.7 + 2.51 * x / reynolds), 1, 30);
        return 1 / (inverseRoot * inverseRoot);
    }

    private double angle(double depth) {
        return 2 * Math.acos(1 - 2 * depth / diameter);
    }

    private static double root(UnivariateFunction function, double from, double to) {
        return new BrentSolver(1e-15, 1e-16, 1e-16).solve(MOST, function, from, to);
    }
}
