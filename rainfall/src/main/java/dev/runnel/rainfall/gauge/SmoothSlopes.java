package dev.runnel.rainfall.gauge;

/**
 * Intensities at the start and the end of every tip's time, over the mean intensity in it, by the rule of Steffen (1990),
 * equation 11: twice the lesser of the two mean intensities that meet, or the slope of the parabola through them if that is
 * less. 0 where no other tip adjoins.
 */
record SmoothSlopes(double[] atStart, double[] atEnd) {
    static SmoothSlopes of(long[] from, Tips tips, double[] depths) {
        int size = tips.size();
        double[] atStart = new double[size];
        double[] atEnd = new double[size];
        int before = -1;
        for (int i = 0; i < size; i++) {
            double length = tips.epochNanos(i) - from[i];
            if (length == 0) {
                continue;
            }
            if (before >= 0 && from[i] == tips.epochNanos(before)) {
                double lengthBefore = tips.epochNanos(before) - from[before];
                double rateBefore = depths[before] / lengthBefore;
                double rate = depths[i] / length;
                double parabola = (rateBefore * length + rate * lengthBefore) / (length + lengthBefore);
                double slope = Math.min(2 * Math.min(rateBefore, rate), parabola);
                atEnd[before] = slope / rateBefore;
                atStart[i] = slope / rate;
            }
            before = i;
        }
        return new SmoothSlopes(atStart, atEnd);
    }

    /** Share of the tip up to a share s of its time: Hermite's cubic from 0 to 1. */
    static double share(double s, double atStart, double atEnd) {
        return s * ((1 - s) * (1 - s) * atStart + s * (3 - 2 * s) + s * (s - 1) * atEnd);
    }
}
