package dev.runnel.hydraulics.watch;

import java.util.Arrays;

/**
 * Shares of the velocities of a stretch that are 0, far below their hour, stray or of the wrong sign, and of the depths that stand alone, and
 * the limits they set.
 */
final class EchoShares {
    /** Scatter of the velocities of an hour below which the echo is steady; chosen here. */
    private static final double STEADY_ECHO = 0.05;

    /** Share of bad velocities that a sound sensor may have beyond its usual one; chosen here. */
    private static final double LEAST_EXCESS = 0.1;

    /** The same of depths that stand alone: a sound sensor has next to none; chosen here. */
    private static final double LEAST_LONE = 0.05;

    /** The same of velocities far above those before, of which a sound sensor has few. */
    private static final double LEAST_STRAY = 0.04;

    /** Readings of 24 hours from which shares of them say something; chosen here. */
    private static final int LEAST_READINGS = 12;

    final boolean narrow;
    final double zeroShare;
    final double zeroLimit;
    final double echoLimit;
    final double flipLimit;
    final double loneLimit;
    final double strayLimit;

    EchoShares(StretchHours stretch, boolean pumped) {
        int size = stretch.size;
        double[] scatters = stretch.nan();
        for (int i = 0; i < size; i++) {
            scatters[i] = stretch.hour(i).velocityScatter;
        }
        narrow = Medians.of(scatters) < STEADY_ECHO;
        double[] zeros = new double[size];
        double[] lows = new double[size];
        double[] flips = new double[size];
        double[] lones = new double[size];
        double[] strays = new double[size];
        int used = 0;
        int depths = 0;
        int velocities = 0;
        long looked = 0;
        long zero = 0;
        for (int at = 0; at < size; ) {
            long day = Math.floorDiv(stretch.hours[at], 24L);
            int n = 0;
            int z = 0;
            int low = 0;
            int flip = 0;
            int compared = 0;
            int lone = 0;
            int held = 0;
            int stray = 0;
            for (; at < size && Math.floorDiv(stretch.hours[at], 24L) == day; at++) {
                SiteHour each = stretch.hour(at);
                n += each.looked;
                z += each.zeros;
                low += narrow ? each.lowNarrow : each.lowWide;
                flip += each.flips;
                compared += each.compared;
                lone += each.lone;
                held += each.held;
                stray += each.strayHigh;
            }
            looked += n;
            zero += z;
            if (n >= LEAST_READINGS) {
                zeros[used] = (double) z / n;
                lows[used] = (double) low / n;
                flips[used++] = (double) flip / n;
            }
            if (compared >= LEAST_READINGS) {
                lones[depths++] = (double) lone / compared;
            }
            if (held >= LEAST_READINGS) {
                strays[velocities++] = (double) stray / held;
            }
        }
        zeroShare = looked == 0 ? 0 : (double) zero / looked;
        // Behind pumps water stands and starts again, more often in one month than in another.
        double excess = pumped ? 2 * LEAST_EXCESS : LEAST_EXCESS;
        zeroLimit = limit(Arrays.copyOf(zeros, used), excess);
        echoLimit = limit(Arrays.copyOf(lows, used), excess);
        flipLimit = limit(Arrays.copyOf(flips, used), LEAST_EXCESS);
        loneLimit = limit(Arrays.copyOf(lones, depths), LEAST_LONE);
        strayLimit = limit(Arrays.copyOf(strays, velocities), LEAST_STRAY);
    }

    private static double limit(double[] shares, double excess) {
        if (shares.length < 2) {
            return 2 * excess;
        }
        double usual = Arrays.stream(shares).average().orElseThrow();
        // Where water stops and goes by itself, such as behind pumps, it does so twice as often in one season as in
        // another.
        return usual + Math.max(excess, 1.5 * usual) + 4 * Math.sqrt(Medians.variance(shares));
    }
}
