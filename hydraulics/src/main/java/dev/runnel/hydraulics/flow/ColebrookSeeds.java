package dev.runnel.hydraulics.flow;

import dev.runnel.hydraulics.internal.Coefficients;

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
 * each r the number of the {@linkplain CircleNodes node} is c₀ + c₁ μ + c₂ μ² + c₃ λ π (1 − π) through those of four walls:
 * within 5 thousandths of the depth, and 1e-4 in the upper half.
 */
final class ColebrookSeeds {
    /** Of each cell c₀ to c₃, the middle and half of its width, Q/Qfull. */
    private static final double[] ROWS = Coefficients.read(ColebrookSeeds.class, "colebrook-seeds.doubles");

    private static final int ROW = 6;

    private ColebrookSeeds() {}

    /** Where the row of a cell begins. */
    static int row(int cell) {
        return cell * ROW;
    }

    static double middle(int at) {
        return ROWS[at + 4];
    }

    static double half(int at) {
        return ROWS[at + 5];
    }

    /** The number of the depth of the middle of a cell, NaN where one of the four walls does not carry so much. */
    static double number(int at, double lambda, double smooth) {
        double mu = Math.fma(0.5 * smooth, lambda, lambda);
        double mixed = lambda * Math.fma(-smooth, smooth, smooth);
        return Math.fma(Math.fma(ROWS[at + 2], mu, ROWS[at + 1]), mu, Math.fma(ROWS[at + 3], mixed, ROWS[at]));
    }
}
