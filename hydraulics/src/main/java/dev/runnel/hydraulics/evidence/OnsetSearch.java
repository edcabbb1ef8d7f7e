package dev.runnel.hydraulics.evidence;

import org.apache.commons.math3.distribution.FDistribution;

/** Least-squares fit of y = a + c max(0, x − t) with the bend t at each of the days in turn. */
final class OnsetSearch {
    private static final double CONFIDENCE = 0.95;

    /** Level, slope and bend. */
    private static final int PARAMETERS = 3;

    final int best;
    final int earliest;
    final int latest;

    /**
     * Of at least four days; the bend may be at any but the last two, so that two days at least lie behind it.
     *
     * @param days numbers of the days, rising
     * @param values one value a day
     */
    OnsetSearch(double[] days, double[] values) {
        int candidates = days.length - 2;
        double[] squares = new double[candidates];
        int least = 0;
        for (int i = 0; i < candidates; i++) {
            squares[i] = squaresWithBendAt(days[i], days, values);
            if (squares[i] < squares[least]) {
                least = i;
            }
        }
        int freedom = days.length - PARAMETERS;
        // The two-argument constructor would make a random generator that nobody uses.
        double f = new FDistribution(null, 1, freedom).inverseCumulativeProbability(CONFIDENCE);
        double limit = squares[least] * (1 + f / freedom);
        int from = least;
        int to = least;
        for (int i = 0; i < candidates; i++) {
            if (squares[i] <= limit) {
                from = Math.min(from, i);
                to = Math.max(to, i);
            }
        }
        best = least;
        earliest = from;
        latest = to;
    }

    private static double squaresWithBendAt(double bend, double[] days, double[] values) {
        int n = days.length;
        double meanHinge = 0;
        double meanValue = 0;
        for (int i = 0; i < n; i++) {
            meanHinge += Math.max(0, days[i] - bend) / n;
            meanValue += values[i] / n;
        }
        // The hinge less its mean sums to 0, so that the mean of the values would change no product.
        double hingeSquares = 0;
        double products = 0;
        for (int i = 0; i < n; i++) {
            double hinge = Math.max(0, days[i] - bend) - meanHinge;
            hingeSquares += hinge * hinge;
            products += hinge * values[i];
        }
        double slope = products / hingeSquares;
        double squares = 0;
        for (int i = 0; i < n; i++) {
            double residual = values[i] - meanValue - slope * (Math.max(0, days[i] - bend) - meanHinge);
            squares += residual * residual;
        }
        return squares;
    }
}
