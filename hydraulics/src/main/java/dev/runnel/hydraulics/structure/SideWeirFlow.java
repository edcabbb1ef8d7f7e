package dev.runnel.hydraulics.structure;

import dev.runnel.hydraulics.flow.NoSolutionException;
import dev.runnel.hydraulics.internal.Gauss;
import dev.runnel.hydraulics.section.CrossSection;
import dev.runnel.internal.Roots;
import dev.runnel.internal.Text;
import java.util.function.DoubleUnaryOperator;

/**
 * Flow of constant energy along a side weir, in the parameter t = √((E − y)/(y − s)). With y − s = (E − s)/(1 + t²) De
 * Marchi's equation becomes dx/dt = √(2g)/(C (E − s)) · (A − 2 T (E − y)), C = Cd ⅔ √(2g), positive (t grows upstream) while
 * the flow is subcritical.
 */
record SideWeirFlow(CrossSection section, double sill, double coefficient, double energy) {
    /** Nowhere near any real weir: the depth is then within 1e-12 of the sill. */
    private static final double FARTHEST = 1e6;

    double parameter(double depth) {
        return Math.sqrt((energy - depth) / (depth - sill));
    }

    double depth(double t) {
        return sill + (energy - sill) / (1 + t * t);
    }

    double discharge(double t) {
        double velocityHead = (energy - sill) * (t * t / (1 + t * t));
        return section.area(depth(t)) * Math.sqrt(2 * GravityFactors.G * velocityHead);
    }

    /** Returns dx/dt: positive for subcritical, negative for supercritical flow. */
    double rate(double t) {
        double depth = depth(t);
        double velocityHead = (energy - sill) * (t * t / (1 + t * t));
        return 1.5
                / (coefficient * (energy - sill))
                * (section.area(depth) - 2 * section.topWidth(depth) * velocityHead);
    }

    /** Returns the integral of dx/dt, in ln(1 + t): the integrand changes on a scale of 1 near t = 0, of t further out. */
    double distance(double from, double to) {
        return Gauss.integrate(log -> rate(Math.expm1(log)) * Math.exp(log), Math.log1p(from), Math.log1p(to));
    }

    /** Returns the parameter where subcritical flow from t turns critical, or the farthest one if it never does. */
    double criticalParameter(double from) {
        double high = Roots.doubled(t -> t < FARTHEST ? -rate(t) : t, 1 + from);
        return rate(high) > 0 ? high : Roots.between(this::rate, from, high);
    }

    /** Returns the parameter reached after a length, going to greater t. */
    double travel(double from, double length, String where) {
        if (rate(from) <= 0) {
            DoubleUnaryOperator excess = t -> -distance(from, t) - length;
            return Roots.between(excess, from, Roots.doubled(excess, 1 + from));
        }
        double critical = criticalParameter(from);
        double farthest = distance(from, critical);
        if (farthest < length) {
            throw new NoSolutionException("the weir is " + Text.number(length) + " m long and its flow turns critical "
                    + Text.significant(farthest, 6) + " m " + where);
        }
        return Roots.between(t -> distance(from, t) - length, from, critical);
    }
}
