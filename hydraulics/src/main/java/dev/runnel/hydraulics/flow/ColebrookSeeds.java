package dev.runnel.hydraulics.flow;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.util.Arrays;
import org.apache.commons.math3.analysis.polynomials.PolynomialFunctionLagrangeForm;

/**
 * Where in a circle a part r of the full-bore discharge stands by the law of Colebrook and White, nearly, for every pipe.
 * With a' and ρ' the area and the hydraulic radius over those of the full bore, λ = 1/L of the full bore (the logarithm of
 * {@link CircleColebrook}) and π the part of the smooth wall in what that logarithm is of, the law is
 *
 * <pre>
 * r = a' √ρ' (1 + λ ln((1 − π)/ρ' + π/ρ'^(3/2)))
 * </pre>
 *
 * <p>in which all pipes of sewers differ little: μ = λ (1 + π/2) tells most, and λ π (1 − π) nearly all of the rest. So for
 * each r the depth is a polynomial of both, through the depths of four walls, solved once: within 5 thousandths of itself,
 * and 1e-4 in the upper half.
 */
final class ColebrookSeeds {
    /** λ and π of the walls that are solved, which span those of sewers; chosen here. */
    private static final double[][] WALLS = {{-0.12, 0}, {-0.16, 0}, {-0.22, 0}, {-0.12, 0.5}};

    /** μ is counted from here. */
    private static final double MIDDLE = -0.15;

    private static final int TERMS = 4;

    /** Behind them the middle of the cell and half of its width, Q/Qfull. */
    private static final int LINE = TERMS + 2;

    /** Cells that are computed at once, a part of their number. */
    private static final int TOGETHER = 16;

    private static final VarHandle DEPTH = MethodHandles.arrayElementVarHandle(double[].class);

    private final double[] terms;

    ColebrookSeeds(int cells) {
        terms = new double[cells * LINE];
    }

    /** Where the line of a cell begins, which is there from now on. */
    int line(int cell) {
        int at = cell * LINE;
        if ((double) DEPTH.getAcquire(terms, at) == 0) {
            computeAround(cell);
        }
        return at;
    }

    /** Many at once, so that this is rare: a compiler that saw it often would put it into every question. */
    private void computeAround(int cell) {
        int first = cell - cell % TOGETHER;
        for (int each = first; each < first + TOGETHER; each++) {
            compute(each * LINE, ColebrookCells.start(each), ColebrookCells.start(each + 1));
        }
    }

    double middle(int at) {
        return terms[at + TERMS];
    }

    double half(int at) {
        return terms[at + TERMS + 1];
    }

    /** The number of the depth of the middle of a cell, NaN where one of the four walls does not carry so much. */
    double number(int at, double lambda, double smooth) {
        double mu = Math.fma(0.5 * smooth, lambda, lambda - MIDDLE);
        double mixed = lambda * Math.fma(-smooth, smooth, smooth);
        return Math.fma(Math.fma(terms[at + 2], mu, terms[at + 1]), mu, Math.fma(terms[at + 3], mixed, terms[at]));
    }

    /** From the larger discharge to the smaller. */
    private void compute(int at, double from, double to) {
        double part = (from + to) / 2;
        terms[at + TERMS] = part;
        terms[at + TERMS + 1] = from - part;
        double[] x = new double[WALLS.length];
        double[] mu = new double[WALLS.length];
        for (int i = 0; i < WALLS.length; i++) {
            double lambda = WALLS[i][0];
            double smooth = WALLS[i][1];
            double inner = Math.exp(1 / lambda);
            double full = CircleColebrook.FULL_AREA / (-2 * lambda);
            x[i] = NodeSearch.number((1 - smooth) * inner / 4, smooth * inner / 8, part * full);
            mu[i] = lambda * (1 + smooth / 2) - MIDDLE;
        }
        // Three rough walls make the parabola of μ, what the fourth one misses it by the last term.
        int last = WALLS.length - 1;
        var parabola = new PolynomialFunctionLagrangeForm(Arrays.copyOf(mu, last), Arrays.copyOf(x, last));
        double[] c = parabola.getCoefficients();
        double smooth = WALLS[last][1];
        terms[at + 1] = c[1];
        terms[at + 2] = c[2];
        terms[at + 3] = (x[last] - parabola.value(mu[last])) / (WALLS[last][0] * smooth * (1 - smooth));
        // Last, so that whoever sees it sees the others.
        DEPTH.setRelease(terms, at, c[0]);
    }
}
