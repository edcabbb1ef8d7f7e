package dev.runnel.hydraulics.uncertainty;

import dev.runnel.internal.Text;
import java.util.List;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.NonPositiveDefiniteMatrixException;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RectangularCholeskyDecomposition;
import org.apache.commons.math3.random.RandomGenerator;
import org.apache.commons.math3.random.Well19937c;

/** Values of the inputs, drawn again and again; correlated ones together from a normal distribution of several variables. */
final class Draws {
    private static final double SMALL = 1e-12;

    private final List<UncertainInput> inputs;
    private final RandomGenerator random;
    private final boolean[] correlated;
    private final boolean anyCorrelated;
    private final RealMatrix root;

    Draws(List<UncertainInput> inputs, double[][] correlation, long seed) {
        this.inputs = inputs;
        random = new Well19937c(seed);
        int n = inputs.size();
        correlated = new boolean[n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < n; k++) {
                correlated[i] |= i != k && correlation[i][k] != 0;
            }
            if (correlated[i] && !inputs.get(i).isNormal()) {
                throw new IllegalArgumentException(
                        "a correlated input must be normal to be drawn, was " + inputs.get(i));
            }
        }
        boolean any = false;
        for (boolean each : correlated) {
            any |= each;
        }
        anyCorrelated = any;
        try {
            root = new RectangularCholeskyDecomposition(MatrixUtils.createRealMatrix(correlation), SMALL)
                    .getRootMatrix();
        } catch (NonPositiveDefiniteMatrixException e) {
            throw new IllegalArgumentException(
                    "correlations must not contradict each other among "
                            + Text.quoted(inputs.stream()
                                    .map(UncertainInput::name)
                                    .toList()
                                    .toString()),
                    e);
        }
    }

    double[] next() {
        double[] values = new double[inputs.size()];
        double[] normals = new double[anyCorrelated ? root.getColumnDimension() : 0];
        for (int k = 0; k < normals.length; k++) {
            normals[k] = random.nextGaussian();
        }
        for (int i = 0; i < values.length; i++) {
            UncertainInput input = inputs.get(i);
            if (correlated[i]) {
                double sum = 0;
                for (int k = 0; k < normals.length; k++) {
                    sum += root.getEntry(i, k) * normals[k];
                }
                values[i] = input.estimate() + input.standardUncertainty() * sum;
            } else {
                values[i] = input.draw(random);
            }
        }
        return values;
    }
}
