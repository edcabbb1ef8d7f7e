package dev.runnel.hydraulics.flow;

import dev.runnel.internal.Require;

/**
 * What the laws of fully rough flow have in common: V = K R^p √S, whose K alone says how rough the wall is. Any velocity
 * above 0 fits some K.
 */
interface RoughFlow extends FittableResistance {
    /** Checks what a velocity is asked for, and returns √S. */
    static double rootOfGradient(double hydraulicRadius, double gradient) {
        Require.nonNegative("hydraulicRadius", hydraulicRadius, "m");
        Require.nonNegative("gradient", gradient, "m/m");
        return Math.sqrt(gradient);
    }

    /** Checks what a gradient is to be found for. */
    static void requireMoving(double velocity, double hydraulicRadius) {
        Require.nonNegative("velocity", velocity, "m/s");
        Require.positive("hydraulicRadius", hydraulicRadius, "m");
    }

    /** Checks what was gauged, and returns √S. */
    static double rootOfGauged(double velocity, double hydraulicRadius, double gradient) {
        Require.positive("velocity", velocity, "m/s");
        Require.positive("hydraulicRadius", hydraulicRadius, "m");
        Require.positive("gradient", gradient, "m/m");
        return Math.sqrt(gradient);
    }

    @Override
    default double fastest(double hydraulicRadius, double gradient, double gravity) {
        return Double.POSITIVE_INFINITY;
    }

    @Override
    default double slowest(double hydraulicRadius, double gradient, double gravity) {
        return 0;
    }
}
