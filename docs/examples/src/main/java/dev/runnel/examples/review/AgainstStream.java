package dev.runnel.examples.review;

import dev.runnel.internal.SeriesArrays;
import dev.runnel.timeseries.Series;

/**
 * How much of the flow ran against the stream as it was read, from the first day on: the watch tells only what is more than usual. Such
 * readings enter every figure with their sign.
 *
 * @param readings share of the readings with a flow that are below 0
 * @param volume share of what flowed, either way, that they carry
 */
record AgainstStream(double readings, double volume) {
    /** Chosen here: less is noise about 0, or signs that a sensor loses now and then. */
    private static final double LEAST = 0.02;

    static AgainstStream of(Series flow) {
        double[] flows = SeriesArrays.keeper().usableValues(flow);
        int count = 0;
        int below = 0;
        double all = 0;
        double back = 0;
        for (double each : flows) {
            if (!Double.isNaN(each)) {
                count++;
                all += Math.abs(each);
                if (each < 0) {
                    below++;
                    back -= each;
                }
            }
        }
        return new AgainstStream(count > 0 ? below / (double) count : 0, all > 0 ? back / all : 0);
    }

    boolean matters() {
        return readings > LEAST && volume > LEAST;
    }

    /** What must be known of every figure of the flow. */
    String mark() {
        return matters()
                ? "; " + Show.percent(readings) + " of the flows were read against the stream and enter with their sign"
                : "";
    }
}
