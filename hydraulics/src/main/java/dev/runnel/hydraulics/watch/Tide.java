package dev.runnel.hydraulics.watch;

/** Whether depths follow the moon: the principal lunar constituent M2 in the residuals of dry hours. */
final class Tide {
    /** Period of M2, hours (12.4206012 h; common knowledge of tidal practice). */
    private static final double PERIOD = 12.4206012;

    /** Smallest amplitude of ln depth that is a tide; chosen here. */
    private static final double LEAST_AMPLITUDE = 0.05;

    /** Smallest share of the variance that the constituent explains in a tidal site; chosen here. */
    private static final double LEAST_SHARE = 0.15;

    /** Three days, so that M2 and the course of the day begin to part; chosen here. */
    private static final int LEAST_HOURS = 72;

    private Tide() {}

    static boolean isTidal(long[] hours, double[] residuals) {
        double cc = 0;
        double ss = 0;
        double cs = 0;
        double cx = 0;
        double sx = 0;
        double sum = 0;
        int count = 0;
        for (double x : residuals) {
            if (!Double.isNaN(x)) {
                sum += x;
                count++;
            }
        }
        if (count < LEAST_HOURS) {
            return false;
        }
        double mean = sum / count;
        double total = 0;
        for (int i = 0; i < residuals.length; i++) {
            if (!Double.isNaN(residuals[i])) {
                double angle = 2 * Math.PI * Math.floorMod(hours[i], 1_000_000L) / PERIOD;
                double c = Math.cos(angle);
                double s = Math.sin(angle);
                double x = residuals[i] - mean;
                cc += c * c;
                ss += s * s;
                cs += c * s;
                cx += c * x;
                sx += s * x;
                total += x * x;
            }
        }
        double determinant = cc * ss - cs * cs;
        if (!(determinant > 0) || total == 0) {
            return false;
        }
        double a = (cx * ss - sx * cs) / determinant;
        double b = (sx * cc - cx * cs) / determinant;
        return Math.hypot(a, b) > LEAST_AMPLITUDE && (a * cx + b * sx) / total > LEAST_SHARE;
    }
}
