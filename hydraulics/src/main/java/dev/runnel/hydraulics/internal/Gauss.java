package dev.runnel.hydraulics.internal;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.integration.gauss.GaussIntegratorFactory;
import org.apiguardian.api.API;

/** Gauss-Legendre quadrature with one fixed rule: the same input gives the same bits. */
@API(status = API.Status.INTERNAL)
public final class Gauss {
    /** Measured from the near end, in halves of the range. */
    private static final double[] NODES;

    private static final double[] WEIGHTS;

    static {
        var rule = new GaussIntegratorFactory().legendre(48);
        int count = rule.getNumberOfPoints();
        NODES = new double[count];
        WEIGHTS = new double[count];
        for (int i = 0; i < count; i++) {
            NODES[i] = 1 + rule.getPoint(i);
            WEIGHTS[i] = rule.getWeight(i);
        }
    }

    private Gauss() {}

    /**
     * Returns the integral of a smooth function by 48 points.
     *
     * @param f the function
     * @param from one end
     * @param to the other end
     * @return the integral
     */
    public static double integrate(DoubleUnaryOperator f, double from, double to) {
        double half = (to - from) / 2;
        double sum = 0;
        for (int i = 0; i < NODES.length; i++) {
            sum += WEIGHTS[i] * f.applyAsDouble(from + half * NODES[i]);
        }
        return half * sum;
    }
}
