package dev.runnel.hydraulics.evidence;

import java.util.ArrayList;
import java.util.List;

/**
 * Where the phases of single dry days usually lie and how far they scatter, for working days and days of rest apart: two weeks
 * hold few days of rest, so that their usual course is known badly.
 */
final class ClockUsual {
    /**
     * What the scatter of a working day and of a day of rest is held for, and least is, h, where the depth places it; chosen
     * here, as are all values of this class.
     */
    private static final double[] PRIOR = {0.25, 0.5};

    private static final double[] LEAST = {0.12, 0.3};

    /** The same where the flow does. */
    private static final double[] PRIOR_OF_FLOW = {0.15, 0.4};

    private static final double[] LEAST_OF_FLOW = {0.08, 0.25};

    /** Days as which the prior counts. */
    private static final double PRIOR_DAYS = 4;

    /** Days of rest as which a usual phase of 0 counts. */
    private static final double PRIOR_REST_DAYS = 1;

    /** Fewest working days whose median is a usual phase. */
    private static final int LEAST_DAYS = 3;

    private final double[] centre;
    private final double[] scatter;

    private ClockUsual(double[] centre, double[] scatter) {
        this.centre = centre;
        this.scatter = scatter;
    }

    static ClockUsual of(double[] centre, double[] scatter) {
        return new ClockUsual(centre, scatter);
    }

    /** Nothing known yet: the curve of the baseline itself. */
    static ClockUsual unknown() {
        return new ClockUsual(new double[] {0, 0}, PRIOR.clone());
    }

    /** Learns from the shifts of working days and of days of rest, by the depth or by the flow. */
    static ClockUsual learn(double[] work, double[] rest, boolean byFlow) {
        double[] centre = {
            work.length < LEAST_DAYS ? 0 : Medians.of(work),
            rest.length == 0 ? 0 : Medians.of(rest) * rest.length / (rest.length + PRIOR_REST_DAYS)
        };
        return new ClockUsual(
                centre, new double[] {scatter(work, centre[0], 0, byFlow), scatter(rest, centre[1], 1, byFlow)});
    }

    private static double scatter(double[] shifts, double centre, int kind, boolean byFlow) {
        double prior = (byFlow ? PRIOR_OF_FLOW : PRIOR)[kind];
        if (shifts.length < 2) {
            return prior;
        }
        double squares = 0;
        for (double shift : shifts) {
            squares += (shift - centre) * (shift - centre);
        }
        double robust = Medians.scatter(shifts);
        double found = (robust * robust + squares / shifts.length) / 2;
        double variance = (PRIOR_DAYS * prior * prior + shifts.length * found) / (PRIOR_DAYS + shifts.length);
        return Math.max((byFlow ? LEAST_OF_FLOW : LEAST)[kind], Math.sqrt(variance));
    }

    /** Usual shift of a day against the curve of its kind, h. */
    double centre(boolean rest) {
        return centre[rest ? 1 : 0];
    }

    double scatter(boolean rest) {
        return scatter[rest ? 1 : 0];
    }

    double[] centres() {
        return centre.clone();
    }

    double[] scatters() {
        return scatter.clone();
    }

    /** Gathers the shifts of days, by kind. */
    static final class Learner {
        private final List<Double> work = new ArrayList<>();
        private final List<Double> rest = new ArrayList<>();

        void add(boolean isRest, double shift) {
            (isRest ? rest : work).add(shift);
        }

        ClockUsual usual(boolean byFlow) {
            return learn(
                    work.stream().mapToDouble(Double::doubleValue).toArray(),
                    rest.stream().mapToDouble(Double::doubleValue).toArray(),
                    byFlow);
        }
    }
}
