package dev.runnel.hydraulics.evidence;

/**
 * Step or ramp, and since when: least squares of a series that is 0 before an onset, against a step and against ramps of
 * some lengths that then hold; the information criterion of Schwarz (1978) with one figure more for the ramp.
 */
final class ShapeFit {
    private static final int[] LENGTHS = {3, 6, 12, 24, 48, 80, 120, 180, 240};

    /** Blocks follow each other, and a level wanders: of three, one counts. */
    private static final double INDEPENDENT = 0.3;

    /** 95 % point of chi-squared with one degree of freedom. */
    private static final double CHI_SQUARED_95 = 3.841458820694124;

    /** Difference of the criterion that is called plain. */
    private static final double PLAIN = 2;

    final ChangeShape shape;

    /** Index of the first value of the change, and the range of it. */
    final int onset;

    final int earliest;
    final int latest;

    private ShapeFit(ChangeShape shape, int onset, int earliest, int latest) {
        this.shape = shape;
        this.onset = onset;
        this.earliest = earliest;
        this.latest = latest;
    }

    /**
     * Fits values about 0 before the change, NaN for missing ones.
     *
     * @param lastOnset largest index at which the change may begin: it was told of then
     */
    static ShapeFit of(double[] values, int lastOnset) {
        int n = values.length;
        int most = Math.max(0, Math.min(n - 1, lastOnset));
        double[] stepFit = new double[n];
        double[] rampFit = new double[n];
        double total = 0;
        int count = 0;
        for (double x : values) {
            if (!Double.isNaN(x)) {
                total += x * x;
                count++;
            }
        }
        int step = 0;
        int ramp = 0;
        for (int k = 0; k < n; k++) {
            stepFit[k] = total - gain(values, k, 0);
            rampFit[k] = total;
            for (int length : LENGTHS) {
                if (length <= n - k) {
                    rampFit[k] = Math.min(rampFit[k], total - gain(values, k, length));
                }
            }
            rampFit[k] = Math.min(rampFit[k], total - gain(values, k, n - k));
            step = k <= most && stepFit[k] < stepFit[step] ? k : step;
            ramp = k <= most && rampFit[k] < rampFit[ramp] ? k : ramp;
        }
        double effective = Math.max(2, INDEPENDENT * count);
        double floor = 1e-12 + total * 1e-9;
        double criterion =
                effective * Math.log((stepFit[step] + floor) / (rampFit[ramp] + floor)) - Math.log(effective);
        boolean isRamp = criterion > 0;
        ChangeShape shape =
                Math.abs(criterion) < PLAIN ? ChangeShape.UNCERTAIN : isRamp ? ChangeShape.RAMP : ChangeShape.STEP;
        double[] fit = isRamp ? rampFit : stepFit;
        int best = isRamp ? ramp : step;
        double limit = (fit[best] + floor) * (1 + CHI_SQUARED_95 / effective);
        int earliest = best;
        int latest = best;
        while (earliest > 0 && fit[earliest - 1] <= limit) {
            earliest--;
        }
        while (latest < most && fit[latest + 1] <= limit) {
            latest++;
        }
        return new ShapeFit(shape, best, earliest, latest);
    }

    /** By how much a step (length 0) or a ramp from k lessens the sum of squares. */
    private static double gain(double[] values, int k, int length) {
        double product = 0;
        double square = 0;
        for (int t = k; t < values.length; t++) {
            if (!Double.isNaN(values[t])) {
                double f = t - k < length ? (t - k + 0.5) / length : 1;
                product += f * values[t];
                square += f * f;
            }
        }
        return square > 0 ? product * product / square : 0;
    }
}
