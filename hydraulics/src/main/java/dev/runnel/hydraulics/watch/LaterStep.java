package dev.runnel.hydraulics.watch;

import java.util.Optional;

/**
 * Whether depth and velocity of the dry hours part in a stretch, seen from some days after it: of a sensor that was moved on one
 * of its last days the stretch itself holds too little, and a law that was learned from both states may fit both.
 */
final class LaterStep {
    /** Days after a stretch that are looked at as far as they are known; chosen here. */
    static final int DAYS_AFTER = 7;

    /** Dry hours of a day that make a median, and that tell how velocity goes with depth within it; chosen here. */
    private static final int LEAST_HOURS = 6;

    /** Least change that counts; the same as of the velocity at the same depth. */
    private static final double LIMIT = 0.12;

    private LaterStep() {}

    /**
     * Looks for a step.
     *
     * @param of the hours of the stretch and of the days after it
     * @return the step and its hour, wherever it lies
     */
    static Optional<StabilityTest.Failure> of(StretchHours of) {
        double slope = slopeWithinDays(of);
        double[] parted = of.nan();
        for (int i = 0; i < of.size; i++) {
            if (of.dry[i]) {
                parted[i] = of.lnVelocity[i] - slope * of.lnDepth[i];
            }
        }
        StabilityTest byDepth = new StabilityTest("velocity at the same depth", of.hours, parted, LEAST_HOURS, LIMIT);
        double[] depths = of.residuals(of.curve(of.lnDepth, of.dry), of.lnDepth, of.dry);
        return byDepth.step()
                .or(() -> new StabilityTest("depth", of.hours, depths, LEAST_HOURS, LIMIT)
                        .step()
                        .filter(failure -> BaselineFit.against(failure, byDepth)));
    }

    /** How ln v goes with ln y within the dry hours of single days, which what steps from one day to another does not move. */
    private static double slopeWithinDays(StretchHours of) {
        double products = 0;
        double squares = 0;
        for (int from = 0; from < of.size; ) {
            long day = Math.floorDiv(of.hours[from], 24L);
            int to = from;
            int count = 0;
            double x = 0;
            double y = 0;
            while (to < of.size && Math.floorDiv(of.hours[to], 24L) == day) {
                if (isKnown(of, to)) {
                    count++;
                    x += of.lnDepth[to];
                    y += of.lnVelocity[to];
                }
                to++;
            }
            for (int i = from; count >= LEAST_HOURS && i < to; i++) {
                if (isKnown(of, i)) {
                    double apart = of.lnDepth[i] - x / count;
                    products += apart * (of.lnVelocity[i] - y / count);
                    squares += apart * apart;
                }
            }
            from = to;
        }
        return squares > 0
                ? Math.min(UsualVelocity.LARGEST_SLOPE, Math.max(UsualVelocity.LEAST_SLOPE, products / squares))
                : 0;
    }

    private static boolean isKnown(StretchHours of, int i) {
        return of.dry[i] && !Double.isNaN(of.lnDepth[i] + of.lnVelocity[i]);
    }
}
