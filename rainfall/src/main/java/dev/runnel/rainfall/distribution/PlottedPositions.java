package dev.runnel.rainfall.distribution;

import java.util.stream.IntStream;

/**
 * The plotting positions of samples of one size, for members of one family that are compared with many such samples: what
 * takes most of the time of a quantile, the variate of a position, is the same for all of them.
 */
final class PlottedPositions {
    private final double[] probabilities;
    private final double[] variates;

    private PlottedPositions(double[] probabilities, double[] variates) {
        this.probabilities = probabilities;
        this.variates = variates;
    }

    /** Of a family that one of its members stands for. */
    static PlottedPositions of(Distribution member, PlottingPosition position, int size) {
        double[] probabilities = IntStream.rangeClosed(1, size)
                .mapToDouble(rank -> position.nonExceedance(rank, size))
                .toArray();
        double[] variates = member instanceof ShapedDistribution shaped
                ? IntStream.range(0, size)
                        .mapToDouble(i -> shaped.variate(probabilities[i]))
                        .toArray()
                : new double[0];
        return new PlottedPositions(probabilities, variates);
    }

    /** Returns the quantiles of a member at the positions: to the bit those of {@link Distribution#quantile}. */
    double[] quantiles(Distribution member) {
        double[] quantiles = new double[probabilities.length];
        for (int i = 0; i < quantiles.length; i++) {
            quantiles[i] = member instanceof ShapedDistribution shaped
                    ? shaped.quantileOfVariate(variates[i])
                    : member.quantile(probabilities[i]);
        }
        return quantiles;
    }
}
