package dev.runnel.internal;

import java.util.Arrays;
import org.apiguardian.api.API;

/** The usual time from one reading to the next. */
@API(status = API.Status.INTERNAL)
public final class UsualStep {
    /** Instead of a step, which is longer than nothing. */
    private static final long NONE = 0;

    private UsualStep() {}

    /**
     * Returns the median of the steps between instants: of an even count the later of the middle two.
     *
     * @param times strictly increasing, ns; at least two; not modified
     * @return the step, ns
     */
    public static long upperMedian(long[] times) {
        long usual = ofMostSteps(times);
        if (usual != NONE) {
            return usual;
        }
        long[] steps = new long[times.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = times[i + 1] - times[i];
        }
        Arrays.sort(steps);
        return steps[steps.length / 2];
    }

    /**
     * Returns the median of the steps between instants: of an even count the mean of the middle two.
     *
     * @param times strictly increasing, ns; at least two; not modified
     * @return the step, ns
     */
    public static double median(long[] times) {
        long usual = ofMostSteps(times);
        if (usual != NONE) {
            return usual;
        }
        double[] steps = new double[times.length - 1];
        for (int i = 0; i < steps.length; i++) {
            steps[i] = times[i + 1] - times[i];
        }
        Arrays.sort(steps);
        return Interpolation.ranked(steps, 0.5 * (steps.length - 1));
    }

    /**
     * What more than half of the steps are is their median without sorting them, and nearly every logger keeps to its step.
     * Of all steps only one that cancels out fewer others than there are of it can be that many.
     */
    private static long ofMostSteps(long[] times) {
        long candidate = NONE;
        int lead = 0;
        for (int i = 1; i < times.length; i++) {
            long step = times[i] - times[i - 1];
            if (step == candidate) {
                lead++;
            } else if (lead == 0) {
                candidate = step;
                lead = 1;
            } else {
                lead--;
            }
        }
        int count = 0;
        for (int i = 1; i < times.length; i++) {
            count += times[i] - times[i - 1] == candidate ? 1 : 0;
        }
        return count > (times.length - 1) / 2 ? candidate : NONE;
    }
}
