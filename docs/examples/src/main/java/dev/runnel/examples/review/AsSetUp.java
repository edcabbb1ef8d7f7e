package dev.runnel.examples.review;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.timeseries.Statistics;
import dev.runnel.timeseries.correction.VisitDifference;
import java.util.List;
import java.util.Optional;

/**
 * What the figures of a site take for granted: that depth offset, velocity factor and sensors were right when they were set up. What
 * was wrong from the first day on is no change and no finding; the law of the pipe and readings by hand are the only witnesses.
 *
 * @param overLaw median of the measured velocity over that of the law on usual dry days
 * @param least the least of it that roughness and gradient explain
 * @param most the most
 * @param byHand readings by hand that the record could be held against
 * @param beyond those of them beyond tolerance
 */
record AsSetUp(double overLaw, double least, double most, long byHand, long beyond) {
    /**
     * Manning's n of the smoothest and of the roughest sewers in use: plastic, common practice; clay and concrete with joints,
     * manholes and slime, V. T. Chow 1959, Open-Channel Hydraulics, table 5-6 (from memory).
     */
    private static final double SMOOTH = 0.009;

    private static final double ROUGH = 0.017;

    /** How far the gradient of a reach may be from that of the drawings, as a share: chosen here. */
    private static final double GRADIENT = 0.3;

    /** Returns nothing where there is no velocity, or no usual dry day with one. */
    static Optional<AsSetUp> of(SiteReview review) {
        double ratio = review.dryWeather().states().usualOverLaw();
        if (Double.isNaN(ratio)) {
            return Optional.empty();
        }
        double[] levels = review.dryDays().stream()
                .filter(day -> review.dryWeather().usual().days().contains(day.date()))
                .mapToDouble(day -> day.medianLevel())
                .filter(level -> level > 0)
                .toArray();
        PipeMonitor monitor = review.site().monitor();
        double level = levels.length == 0 ? Double.NaN : Statistics.of(levels).median();
        if (!(level > monitor.bedAboveInvert() && level < monitor.soffit())) {
            return Optional.empty();
        }
        Conduit conduit = monitor.conduit();
        double stated = conduit.velocity(level);
        double own = conduit.resistance() instanceof Manning manning ? manning.n() : ROUGH;
        List<VisitDifference> compared = review.visits().differences().stream()
                .filter(VisitDifference::isCompared)
                .toList();
        return Optional.of(new AsSetUp(
                ratio,
                other(conduit, Math.max(ROUGH, own), 1 - GRADIENT, level) / stated,
                other(conduit, Math.min(SMOOTH, own), 1 + GRADIENT, level) / stated,
                compared.size(),
                compared.stream().filter(VisitDifference::isBeyond).count()));
    }

    private static double other(Conduit conduit, double n, double share, double level) {
        return conduit.withResistance(Manning.of(n))
                .withGradient(Gradient.of(share * conduit.gradient().value()))
                .velocity(level);
    }

    /** Whether roughness and gradient do not explain how far the water is from the law. */
    boolean isUnexplained() {
        return overLaw < least || overLaw > most;
    }

    private String hand() {
        if (byHand == 0) {
            return "no reading by hand confirms it";
        }
        String all = Show.count(byHand, "reading") + " by hand";
        return beyond == 0
                ? all + (byHand == 1 ? " is" : " are") + " within tolerance"
                : beyond + " of " + all + " beyond tolerance";
    }

    /** What must be known of the figure, beside it. */
    String note() {
        return "velocity " + Show.percent(overLaw) + " of the law's"
                + (isUnexplained() ? ", farther off than roughness and gradient explain" : "") + "; " + hand();
    }

    /** The same as a sentence or two. */
    String text() {
        return "as set up: a sensor that was wrong from the first day on shows no change, and no finding tells of it. On usual dry"
                + " days the velocity is " + Show.percent(overLaw) + " of the law's; " + Show.percent(least) + " to "
                + Show.percent(most) + " can be roughness and gradient"
                + (isUnexplained() ? ", this is more: a sensor, an obstruction, a bed or another pipe than stated" : "")
                + "; " + hand()
                + (isUnexplained()
                        ? ". To ask: depth and velocity by hand, and the offset written down when the sensor was mounted"
                        : "");
    }
}
