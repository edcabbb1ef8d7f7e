package dev.runnel.rainfall.gauge;

/**
 * Intensities at the start and the end of every filling, over the mean intensity in it, by the rule of Steffen (1990),
 * equation 11: twice the lesser of the two mean intensities that meet, or the slope of the parabola through them if that is
 * less. 0 where no other filling adjoins.
 */
record SmoothSlopes(double[] atStart, double[] atEnd) {
    static final SmoothSlopes NONE = new SmoothSlopes(new double[0], new double[0]);

    static SmoothSlopes of(Fillings fillings) {
        double[] atStart = new double[fillings.size()];
        double[] atEnd = new double[fillings.size()];
        for (int i = 1; i < fillings.size(); i++) {
            double lengthBefore = (double) (fillings.to()[i - 1] - fillings.from()[i - 1]);
            double length = (double) (fillings.to()[i] - fillings.from()[i]);
            if (fillings.from()[i] == fillings.to()[i - 1] && fillings.to()[i - 1] > fillings.from()[i - 1]) {
                double rateBefore = fillings.depths()[i - 1] / lengthBefore;
                double rate = fillings.depths()[i] / length;
                double parabola = (rateBefore * length + rate * lengthBefore) / (length + lengthBefore);
                double slope = Math.min(2 * Math.min(rateBefore, rate), parabola);
                atEnd[i - 1] = slope / rateBefore;
                atStart[i] = slope / rate;
            }
        }
        return new SmoothSlopes(atStart, atEnd);
    }

    /** Share of a filling up to a share s of its time: Hermite's cubic from 0 to 1. */
    static double share(double s, double atStart, double atEnd) {
        return s * ((1 - s) * (1 - s) * atStart + s * (3 - 2 * s) + s * (s - 1) * atEnd);
    }
}
