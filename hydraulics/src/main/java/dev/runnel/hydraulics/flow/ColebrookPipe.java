package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.section.CircularSection;

/**
 * What the law of Colebrook and White needs of a circular pipe, see {@link CircleColebrook}. An object without a life of its
 * own: who asks a pipe once makes one, reads its numbers and forgets it, so that the compiler never puts it into memory. That
 * is why it is not null where the law is not for it, but says so.
 */
final class ColebrookPipe {
    /** Of a wall four tenths as rough as 4R = D when full. */
    private static final double MOST_ALPHA = 0.4 / 14.8;

    /** a √ρ (−L) over β when full, with twice the least Reynolds' number: √ρ ρ is 1/8 there. */
    private static final double LEAST_FULL =
            8 * CircleColebrook.FULL_AREA * DarcyFriction.TURBULENT_LIMIT / (2.51 * ColebrookRoot.TO_LOGARITHM);

    /** D, m. */
    final double diameter;

    /** α = ks/(14.8 D). */
    final double alpha;

    /** β = 2.51 ν/(4 D √(8 g S D)). */
    final double beta;

    /** a √ρ (−L) over Q, s/m³. */
    final double perUnit;

    /** 1/L of the full bore within 3e-9, L = ln(4α + 8β). */
    final double lambda;

    /** Part of the smooth wall in what that logarithm is of. */
    final double smooth;

    /** a √ρ (−L) of the full bore, as closely. */
    final double full;

    /** The same times what is more than the crest carries, see {@link ColebrookCells}. */
    final double beyondCrest;

    private ColebrookPipe(double diameter, double alpha, double beta, double perUnit) {
        this.diameter = diameter;
        this.alpha = alpha;
        this.beta = beta;
        this.perUnit = perUnit;
        // For the choice of a cell a rough logarithm is good enough.
        double inner = Math.fma(8, beta, 4 * alpha);
        double log = ColebrookRoot.roughLogarithm(inner);
        this.lambda = 1 / log;
        this.smooth = 8 * beta / inner;
        this.full = -log * (CircleColebrook.FULL_AREA / 2);
        this.beyondCrest = -log * (ColebrookCells.BEYOND_CREST * CircleColebrook.FULL_AREA / 2);
    }

    static ColebrookPipe of(CircularSection section, ColebrookWhite law, double gradient, double gravity) {
        double diameter = section.diameter();
        // Divisions do not wait for the root, which takes as long as each of them, and meet it last: 1/√s is √s/s.
        double square = 8 * gravity * (gradient * diameter);
        double root = Math.sqrt(square);
        double perDiameter = 1 / diameter;
        double perRoot = perDiameter / square;
        return ofNumbers(
                diameter,
                law.roughness() * (1 / 14.8) * perDiameter,
                2.51 / 4 * law.viscosity() * perRoot * root,
                1 / ColebrookRoot.TO_LOGARITHM * perDiameter * perRoot * root);
    }

    static ColebrookPipe ofNumbers(double diameter, double alpha, double beta, double perUnit) {
        return new ColebrookPipe(diameter, alpha, beta, perUnit);
    }

    /** Whether Reynolds' number is twice the least when full, so that all depths near the crest are well inside. */
    boolean isTurbulent() {
        return perUnit > 1e-200 && perUnit < 1e200 && beta > 1e-200 && alpha <= MOST_ALPHA && full >= LEAST_FULL * beta;
    }

    /** The lowest depth of a discharge, the same that {@link CircleColebrook} finds; NaN or 0 where no cell tells it. */
    double depthOnce(double discharge) {
        return isTurbulent() ? diameter * ColebrookCells.depthOnce(this, discharge * perUnit) : Double.NaN;
    }
}
