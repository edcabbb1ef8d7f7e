package dev.runnel.verification.bite;

import java.util.function.DoubleBinaryOperator;

/** Every kind of constant, operator and comparison that may be changed, so that each shows in the answer. */
public final class Planted implements DoubleBinaryOperator {
    /** Made by reflection. */
    public Planted() {}

    @Override
    public double applyAsDouble(double a, double b) {
        double reals = (a + 3.5 - b * 7) / (b - -a);
        int whole = (int) a;
        int wholes = (whole + 40) * (whole - 2) - 300;
        long many = (long) b;
        long manys = many + wholes - many * wholes;
        double sign = 0;
        if (a < b) {
            sign += 10;
        }
        if (a <= b) {
            sign += 100;
        }
        if (a > b) {
            sign += 1_000;
        }
        if (a >= b) {
            sign += 10_000;
        }
        return reals + wholes + 1e-3 * manys + sign + (a == b ? 1 : 0);
    }
}
