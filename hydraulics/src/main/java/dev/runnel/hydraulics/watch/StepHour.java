package dev.runnel.hydraulics.watch;

/** The hour of a step that is known by its block of three: least squares of two levels over the hours about it. */
final class StepHour {
    /** Hours before and after the block in which the hour is looked for: a day on both sides; chosen here. */
    private static final int BEFORE = 24;

    private static final int AFTER = BEFORE + ChangeSeries.BLOCK_HOURS;

    /** Fewest known hours in which a step is looked for; chosen here. */
    private static final int LEAST_HOURS = 8;

    /** The bounds of a step's hour: squares worse by 4 of their own variance, about 95 % of one figure (2² of a normal law). */
    private static final double SPREAD = 4;

    /** Hours follow each other, and days of rest come between: of four, one counts; chosen here. */
    private static final double INDEPENDENT = 0.25;

    private StepHour() {}

    /** Gives a finding the hour of its step, if there are hours enough about the block of its onset. */
    static void find(ChangeSeries series, int quantity, long onset, Track open) {
        Ring hours = series.hours;
        long middle = onset * ChangeSeries.BLOCK_HOURS;
        int from = hours.from(middle - BEFORE);
        if (hours.size() == 0 || hours.number(0) > middle - ChangeSeries.BLOCK_HOURS) {
            return;
        }
        int to = hours.from(middle + AFTER);
        double[] known = new double[hours.size()];
        long[] numbers = new long[hours.size()];
        int count = 0;
        for (int i = from; i < to; i++) {
            if (!Double.isNaN(hours.value(i, quantity))) {
                known[count] = hours.value(i, quantity);
                numbers[count++] = hours.number(i);
            }
        }
        if (count < LEAST_HOURS) {
            return;
        }
        // The step came no later than the last hour before it was told, whatever came after.
        int candidates = 0;
        while (candidates < count && numbers[candidates] * SiteHour.NANOS < open.found) {
            candidates++;
        }
        if (candidates < 2) {
            return;
        }
        double[] fit = new double[candidates];
        int best = 1;
        for (int k = 1; k < candidates; k++) {
            fit[k] = squares(known, 0, k) + squares(known, k, count);
            best = fit[k] < fit[best] ? k : best;
        }
        double limit = fit[best] * (1 + SPREAD / (INDEPENDENT * count));
        int earliest = best;
        int latest = best;
        while (earliest > 1 && fit[earliest - 1] <= limit) {
            earliest--;
        }
        while (latest < candidates - 1 && fit[latest + 1] <= limit) {
            latest++;
        }
        open.since = numbers[best] * SiteHour.NANOS;
        // The change may lie within the hour before, whose median it did not move.
        open.earliest = numbers[earliest - 1] * SiteHour.NANOS;
        open.latest = (numbers[latest] + 1) * SiteHour.NANOS;
    }

    private static double squares(double[] values, int from, int to) {
        double mean = 0;
        for (int i = from; i < to; i++) {
            mean += values[i] / (to - from);
        }
        double sum = 0;
        for (int i = from; i < to; i++) {
            double away = values[i] - mean;
            sum += away * away;
        }
        return sum;
    }
}
