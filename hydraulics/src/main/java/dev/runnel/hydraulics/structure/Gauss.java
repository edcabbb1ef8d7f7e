package dev.runnel.hydraulics.structure;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;

/** Gauss-Legendre quadrature with one fixed rule: the same input gives the same bits. */
final class Gauss {
    private static final double[] NODES;
    private static final double[] WEIGHTS;

    static {
        var rule = new GaussIntegratorFactory().legendre(48);
        int count = rule.getNumberOfPoints();
        NODES = new double[count];
        WEIGHTS = new double[count];
        for (int i = 0; i < count; i++) {
            NODES[i] = rule.getPoint(i);
            WEIGHTS[i] = rule.getWeight(i);
        }
    }

    private Gauss() {}

    static double integrate(DoubleUnaryOperator f, double from, double to) {
        double middle = (from + to) / 2;
        double half = (to - from) / 2;
        double sum = 0;
        for (int i = 0; i < NODES.length; i++) {
            sum += WEIGHTS[i] * f.applyAsDouble(middle + half * NODES[i]);
        }
        return half * sum;
    }
}
