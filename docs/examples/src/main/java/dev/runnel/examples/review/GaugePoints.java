package dev.runnel.examples.review;

import dev.runnel.rainfall.gauge.RainGrain;
import dev.runnel.rainfall.gauge.TipChecks;
import dev.runnel.rainfall.gauge.TipFlag;
import dev.runnel.rainfall.gauge.TipReview;
import dev.runnel.rainfall.gauge.Tips;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What needs a person's eye at the gauge itself: silence, and rain that may be none. */
final class GaugePoints {
    /** Chosen here: a few bounces and even gaps happen by chance. */
    private static final int FEWEST_TIPS = 10;

    private static final double MANY_DOUBLE = 0.05;

    /** Sound gauges have up to 2 % by chance. */
    private static final double MANY_PAIRED = 0.1;
    /** Chosen here: an even downpour makes rows of some tips, a drip or a test run makes long ones and many. */
    private static final double MANY_EVEN = 0.25;

    private static final int LONG_ROW = 30;
    private final SiteReview review;
    private final Dates dates;
    private final List<String> points = new ArrayList<>();

    private GaugePoints(SiteReview review) {
        this.review = review;
        this.dates = review.data().dates();
    }

    static List<String> of(SiteReview review) {
        GaugePoints gauge = new GaugePoints(review);
        gauge.silence();
        gauge.suspectSilence();
        gauge.loggerOff();
        gauge.longDryTime();
        gauge.tipsThatAreNoRain();
        gauge.stepsThatAreNoRain();
        return gauge.points;
    }

    private void silence() {
        review.muteGauge()
                .ifPresent(rain -> points.add("The gauge wrote no rain in the whole record of "
                        + Show.duration(rain.rain().interval().duration())
                        + ": a drought looks the same, but nothing shows that it was at work. The site is reviewed as one"
                        + " without a gauge: dry days are not known."));
        review.rain()
                .ifPresent(rain -> rain.silent()
                        .forEach(silent -> points.add("The gauge wrote nothing for "
                                + Show.duration(silent.duration()) + " from " + dates.time(silent.start()) + " to "
                                + dates.time(silent.end())
                                + ", more than twice as long as between any two signs of rain: was it dead? The rain of this time is taken as"
                                + " not known, and its days as neither wet nor dry.")));
    }

    /** What the watch is not sure enough of for a finding, where a figure rests on it. */
    private void suspectSilence() {
        if (review.dryWeather().suspectShare() > 0) {
            review.watched()
                    .suspectGauge()
                    .forEach(remark -> points.add("The gauge wrote nothing from "
                            + dates.time(remark.sinceRange().start()) + " to "
                            + dates.time(remark.closed()
                                    .orElse(review.data().record().end())) + ": " + remark.detail()
                            + ". Not sure enough for a finding: its days count as dry, and the dry weather flow says how much of it"
                            + " rests on them."));
        }
    }

    private void loggerOff() {
        review.loggerOff()
                .forEach(off -> points.add("Neither the monitor nor the gauge wrote anything for "
                        + Show.duration(off.duration()) + " from " + dates.time(off.start()) + " to "
                        + dates.time(off.end())
                        + ": a dry time, or a logger that was off. The rain of this time is taken as not known, and its days as neither"
                        + " wet nor dry."));
    }

    /** What the watch told or remarked need not be said again. */
    private void longDryTime() {
        review.rain()
                .flatMap(rain -> LongDryTime.of(rain.rain()))
                .filter(LongDryTime::isVeryLong)
                .filter(dry -> review.watched().suspectGauge().stream()
                        .noneMatch(remark -> remark.overlaps(
                                dry.time(), review.data().record().end())))
                .ifPresent(dry -> points.add("The gauge wrote no drop for "
                        + Show.duration(dry.time().duration()) + " from "
                        + dates.time(dry.time().start()) + " to "
                        + dates.time(dry.time().end()) + "; the next longest time without rain is "
                        + Show.duration(dry.next())
                        + ". A drought, or was it dead? Rain, storms and dry days rest on it; a gauge nearby tells."));
    }

    /** A switch that bounces, work at the gauge, a funnel that drips: such tips look like rain. */
    private void tipsThatAreNoRain() {
        Optional<TipSource> source = review.data()
                .rain()
                .flatMap(rain -> rain instanceof TipSource tips ? Optional.of(tips) : Optional.empty());
        if (source.isEmpty()) {
            return;
        }
        Tips tips = source.get().tips();
        double tipMm = source.get().bucket().tipMm();
        TipReview found = TipChecks.of(source.get().bucket()).review(tips);
        int twice = found.count(TipFlag.DOUBLE);
        int even = found.count(TipFlag.EVENLY_SPACED);
        double share = Math.max(1, tips.size());
        if (twice > FEWEST_TIPS && twice / share > MANY_DOUBLE) {
            points.add("The gauge: " + twice + " of " + tips.size()
                    + " tips follow the one before faster than rain can, at "
                    + "more than 500 mm/h, the first on "
                    + dates.time(found.flagged(TipFlag.DOUBLE).toInstants().get(0)) + ": " + Show.rain(twice * tipMm)
                    + " mm that may be no rain. They stay in use.");
        }
        int paired = found.count(TipFlag.PAIRED);
        if (paired > FEWEST_TIPS && paired / share > MANY_PAIRED) {
            points.add("The gauge: " + paired + " of " + tips.size()
                    + " tips follow the one before within seconds, far sooner than those around, the first on "
                    + dates.time(found.flagged(TipFlag.PAIRED).toInstants().get(0))
                    + ": does the switch bounce, or was the file written twice with other stamps? "
                    + Show.rain(paired * tipMm) + " mm that may be no rain. They stay in use.");
        }
        if (even / share > MANY_EVEN && longestRow(found) >= LONG_ROW) {
            points.add("The gauge: " + even + " of " + tips.size() + " tips come at even gaps, the first on "
                    + dates.time(
                            found.flagged(TipFlag.EVENLY_SPACED).toInstants().get(0))
                    + ": does a blocked funnel drip, or a test run? " + Show.rain(even * tipMm)
                    + " mm that may be no rain. They stay in use.");
        }
    }

    private static int longestRow(TipReview found) {
        int longest = 0;
        int row = 0;
        for (int i = 0; i < found.tips().size(); i++) {
            row = found.flags(i).contains(TipFlag.EVENLY_SPACED) ? row + 1 : 0;
            longest = Math.max(longest, row);
        }
        return longest;
    }

    /** Another column, or another unit. */
    private void stepsThatAreNoRain() {
        review.rain().or(review::muteGauge).flatMap(RainFindings::impossible).ifPresent(impossible -> {
            impossible
                    .first()
                    .ifPresent(
                            first -> points.add(
                                    "The gauge: " + Show.count(impossible.steps(), "step")
                                            + " with " + Show.rain(impossible.depthMm())
                                            + " mm hold more rain than fell anywhere in a step or a day, the first on "
                                            + dates.time(first)
                                            + ". They are set aside, and the rain of their times is not known: is the column the rain, and its unit right?"));
            RainGrain.of(impossible.others())
                    .flatMap(grain ->
                            GrainText.doubt(grain, review.site().rain().bucket().tipMm(), dates))
                    .ifPresent(points::add);
        });
    }
}
