package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
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

    /** Mornings and evenings of two kinds of days. */
    static final int HALVES = 4;

    private final double[] centre;
    private final double[] scatter;

    /** Where the mornings and the evenings by themselves usually lie: mornings of working days and of days of rest, evenings alike. */
    private final double[] halves;

    private ClockUsual(double[] centre, double[] scatter, double[] halves) {
        this.centre = centre;
        this.scatter = scatter;
        this.halves = halves;
    }

    static ClockUsual of(double[] centre, double[] scatter, double[] halves) {
        return new ClockUsual(centre, scatter, halves);
    }

    /** Where most dry days were days of rest the usual working day was drawn from them: without one of its own none can be judged. */
    private static final double UNJUDGED = 24;

    /** Nothing known yet: the curve of the baseline itself. */
    static ClockUsual unknown() {
        return new ClockUsual(new double[] {0, 0}, PRIOR.clone(), new double[HALVES]);
    }

    static ClockUsual read(StateText text, String key) {
        double[] centre = text.numbers(key + "Centre", 2);
        double[] scatter = text.numbers(key + "Scatter", 2);
        return of(centre, scatter, text.numbers(key + "Halves", HALVES));
    }

    void write(StateText text, String key) {
        text.with(key + "Centre", centre).with(key + "Scatter", scatter).with(key + "Halves", halves);
    }

    /** Learns from the shifts of working days and of days of rest, and of their halves, by the depth or by the flow. */
    private static ClockUsual learn(double[][] days, double[][] halves, boolean byFlow) {
        boolean fromRest = days[0].length < LEAST_DAYS && days[0].length < days[1].length;
        double work = fromRest && days[0].length > 0 ? Medians.of(days[0]) : ofWork(days[0], 0);
        double[] centre = {work, ofRest(days[1], 0)};
        double[] halfCentres = new double[halves.length];
        for (int i = 0; i < halves.length; i++) {
            double[] known = Medians.known(halves[i]);
            halfCentres[i] = i % 2 == 0 ? ofWork(known, centre[0]) : ofRest(known, centre[1]);
        }
        return new ClockUsual(
                centre,
                new double[] {
                    fromRest ? ofFew(days[0].length, byFlow) : scatter(days[0], centre[0], 0, byFlow),
                    scatter(days[1], centre[1], 1, byFlow)
                },
                halfCentres);
    }

    private static double ofWork(double[] shifts, double unknown) {
        return shifts.length < LEAST_DAYS ? unknown : Medians.of(shifts);
    }

    private static double ofRest(double[] shifts, double unknown) {
        double weight = shifts.length / (shifts.length + PRIOR_REST_DAYS);
        return shifts.length == 0 ? unknown : weight * Medians.of(shifts) + (1 - weight) * unknown;
    }

    /** One or two working days place the others no better than days of rest do. */
    private static double ofFew(int days, boolean byFlow) {
        return days == 0 ? UNJUDGED : (byFlow ? PRIOR_OF_FLOW : PRIOR)[1];
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

    /** Usual shift of the morning of a day by itself, or of its evening, h. */
    double half(boolean evening, boolean rest) {
        return halves[(evening ? 2 : 0) + (rest ? 1 : 0)];
    }

    /** Gathers the shifts of days and of their halves, by kind. */
    static final class Learner {
        private final List<List<Double>> days = List.of(new ArrayList<>(), new ArrayList<>());

        /** Mornings of working days and of days of rest, evenings alike. */
        private final List<List<Double>> halves =
                List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>());

        void add(boolean isRest, double shift, double morning, double evening) {
            int kind = isRest ? 1 : 0;
            days.get(kind).add(shift);
            halves.get(kind).add(morning);
            halves.get(2 + kind).add(evening);
        }

        ClockUsual usual(boolean byFlow) {
            return learn(arrays(days), arrays(halves), byFlow);
        }

        private static double[][] arrays(List<List<Double>> lists) {
            return lists.stream()
                    .map(each -> each.stream().mapToDouble(Double::doubleValue).toArray())
                    .toArray(double[][]::new);
        }
    }
}
