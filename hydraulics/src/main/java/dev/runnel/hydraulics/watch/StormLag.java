package dev.runnel.hydraulics.watch;

/**
 * By how many hours the sewer follows the rain of one storm, and how far it rises for each millimetre: the lag at which the
 * rain, held back as a sewer holds it, and what stands above the usual dry day correlate best, refined by a parabola.
 */
final class StormLag {
    /** Lags that are tried, h; chosen here, as are all values of this class. */
    private static final int LEAST_LAG = -5;

    private static final int LARGEST_LAG = 6;

    /** How the rain is held back: an exponential of so many hours. */
    private static final double HELD_BACK = 1.5;

    /** A storm whose best correlation is lower says nothing. */
    private static final double LEAST_CORRELATION = 0.7;

    /** Rise of ln depth that makes a storm. */
    static final double LEAST_RISE = 0.15;

    /** Share of the hours that must have a depth. */
    private static final double LEAST_KNOWN = 0.8;

    private StormLag() {}

    /**
     * What a storm tells.
     *
     * @param lag hours, negative if the depth rises before the rain; NaN if the storm does not tell
     * @param correlation of rain and depth at that lag
     * @param slope rise of the excess for each millimetre held back, by least squares at the whole hour of the lag
     */
    record Fit(double lag, double correlation, double slope) {
        private static final Fit NONE = new Fit(Double.NaN, 0, Double.NaN);
    }

    /**
     * Returns the lag of a storm.
     *
     * @param rain rain by the hour, mm, with dry hours before and after
     * @param excess what stands above the usual dry day in the same hours, such as ln depth; NaN for missing
     * @param leastRise smallest range of the excess that makes a storm
     * @return the lag, and how well it fits
     */
    static Fit of(double[] rain, double[] excess, double leastRise) {
        int n = rain.length;
        double[] held = new double[n];
        double keep = Math.exp(-1 / HELD_BACK);
        for (int i = 0; i < n; i++) {
            held[i] = (i > 0 ? keep * held[i - 1] : 0) + rain[i];
        }
        double highest = Double.NEGATIVE_INFINITY;
        double lowest = Double.POSITIVE_INFINITY;
        int known = 0;
        for (double each : excess) {
            if (!Double.isNaN(each)) {
                known++;
                highest = Math.max(highest, each);
                lowest = Math.min(lowest, each);
            }
        }
        if (known < LEAST_KNOWN * n || !(highest - lowest > leastRise)) {
            return Fit.NONE;
        }
        double[] slopes = new double[LARGEST_LAG - LEAST_LAG + 1];
        double[] found = new double[LARGEST_LAG - LEAST_LAG + 1];
        int best = 0;
        for (int k = 0; k < found.length; k++) {
            Line line = Line.of(held, excess, LEAST_LAG + k);
            found[k] = line.correlation;
            slopes[k] = line.slope;
            best = found[k] > found[best] ? k : best;
        }
        if (best == 0 || best == found.length - 1 || !(found[best] > LEAST_CORRELATION)) {
            return Fit.NONE;
        }
        double bend = found[best - 1] - 2 * found[best] + found[best + 1];
        double between = bend < 0 ? (found[best - 1] - found[best + 1]) / (2 * bend) : 0;
        return new Fit(LEAST_LAG + best + between, found[best], slopes[best]);
    }

    /** Correlation and slope of the excess on the rain so many hours before. */
    private record Line(double correlation, double slope) {
        static Line of(double[] held, double[] excess, int lag) {
            double sx = 0;
            double sy = 0;
            double sxx = 0;
            double sxy = 0;
            double syy = 0;
            int n = 0;
            for (int i = 0; i < excess.length; i++) {
                int source = i - lag;
                if (!Double.isNaN(excess[i]) && source >= 0 && source < held.length) {
                    double x = held[source];
                    double y = excess[i];
                    sx += x;
                    sy += y;
                    sxx += x * x;
                    sxy += x * y;
                    syy += y * y;
                    n++;
                }
            }
            double xx = sxx - sx * sx / n;
            double yy = syy - sy * sy / n;
            double xy = sxy - sx * sy / n;
            return xx > 0 && yy > 0 ? new Line(xy / Math.sqrt(xx * yy), xy / xx) : new Line(0, 0);
        }
    }
}
