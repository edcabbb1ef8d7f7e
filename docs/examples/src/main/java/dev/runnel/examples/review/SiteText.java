package dev.runnel.examples.review;

import dev.runnel.hydraulics.flow.ColebrookWhite;
import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.FlowState;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.flow.Resistance;
import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.watch.BaselineSearch;
import dev.runnel.hydraulics.watch.Quantity;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.Interval;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What the site is and what its pipe can carry. */
final class SiteText {
    private static final int MOST_REFUSED = 3;

    private SiteText() {}

    static void record(Page page, SiteReview review) {
        Interval record = review.data().record();
        ZoneId zone = review.site().zone();
        page.section("record")
                .say(Show.timeWithYear(record.start(), zone) + " to " + Show.timeWithYear(record.end(), zone) + ", "
                        + Show.duration(record.duration()) + " at "
                        + Show.duration(review.data().depth().interval())
                        + "; times in " + zone);
    }

    /** Where what is usual was learned, and what could not be tested. */
    static void usual(Page page, SiteReview review) {
        review.watched().baseline().ifPresent(baseline -> {
            Dates dates = review.data().dates();
            page.section("usual")
                    .say("learned from "
                            + dates.time(baseline.interval().start()) + " to "
                            + dates.time(baseline.interval().end())
                            + (review.site().usual().baseline().isPresent()
                                    ? ", as the site file says"
                                    : ", the first stretch that passed the tests of stability")
                            + ": " + Show.count(baseline.dryHours(), "dry hour"));
            page.say("not told within days: lasting changes of less than "
                    + Stream.of(Quantity.values())
                            .filter(baseline::watches)
                            .map(quantity -> Show.percent(baseline.scatter(quantity)) + " in the " + quantity)
                            .collect(Collectors.joining(", "))
                    + ", which are allowed for as scatter"
                    + (baseline.watches(Quantity.VELOCITY_AT_DEPTH)
                            ? "; smaller ones of the " + Quantity.VELOCITY_AT_DEPTH + " after three weeks"
                            : ""));
            refused(page, review);
            baseline.notes().forEach(note -> page.say("note: " + note));
            baseline.notTested().forEach(missing -> page.say("not tested: " + missing));
        });
    }

    /** What was not learned from, and why: a day on which something changed stands in it. */
    private static void refused(Page page, SiteReview review) {
        List<BaselineSearch.Refused> refused = review.watched().search().refused();
        refused.stream()
                .limit(MOST_REFUSED)
                .forEach(each -> page.say("not learned from "
                        + review.data().dates().time(each.interval().start()) + " to "
                        + review.data().dates().time(each.interval().end()) + ": "
                        + String.join("; ", each.reasons())));
        if (refused.size() > MOST_REFUSED) {
            page.say("nor from " + (refused.size() - MOST_REFUSED) + " more for like reasons");
        }
    }

    static void pipe(Page page, SiteReview review) {
        PipeMonitor monitor = review.site().monitor();
        Conduit conduit = monitor.withoutSediment().conduit();
        StringBuilder pipe = new StringBuilder(review.site().shape())
                .append(", gradient 1:")
                .append(Text.significant(1 / conduit.gradient().value(), 4))
                .append(", ")
                .append(law(conduit.resistance()))
                .append("; sensor ")
                .append(
                        monitor.sensorOffset() == 0
                                ? "at the invert"
                                : Show.mm(monitor.sensorOffset()) + " above the invert");
        if (monitor.bedAboveInvert() > 0) {
            pipe.append(", sediment ").append(Show.mm(monitor.bedAboveInvert()));
        }
        if (review.data().velocity().isPresent()) {
            pipe.append(", velocity factor ").append(Text.fixed(monitor.velocityFactor(), 2));
        }
        page.section("pipe").say(pipe.toString());
        settings(page, review, conduit.fullBore().discharge());
        FlowState full = conduit.fullBore();
        FlowState most = conduit.maximum();
        page.section("capacity")
                .say("clean pipe, uniform flow: full bore " + Show.flow(full.discharge()) + " at "
                        + Show.velocity(full.velocity()) + "; at most " + Show.flow(most.discharge()) + " at "
                        + Show.mm(most.depth()) + regime(review.peaks().median(), conduit));
    }

    /** What the books say of other times, and what the pipe could carry then. */
    private static void settings(Page page, SiteReview review, double usual) {
        List<MonitorHistory.Stretch> stretches =
                review.data().books().monitors().stretches(review.data().record());
        Dates dates = review.data().dates();
        if (stretches.size() == 1
                && stretches.get(0).monitor().equals(review.site().monitor())) {
            return;
        }
        for (MonitorHistory.Stretch each : stretches) {
            PipeMonitor monitor = each.monitor();
            double fullBore = monitor.conduit().fullBore().discharge();
            page.say(dates.time(each.interval().start()) + " to "
                    + dates.time(each.interval().end()) + ": "
                    + (monitor.bedAboveInvert() == 0 ? "no sediment" : "sediment " + Show.mm(monitor.bedAboveInvert()))
                    + ", sensor at " + Show.mm(monitor.sensorOffset()) + ", "
                    + law(monitor.conduit().resistance()) + ": full bore " + Show.flow(fullBore) + ", "
                    + Show.percent(fullBore / usual) + " of that of the clean pipe");
        }
    }

    /** Whether uniform flow is shooting or streaming at the depth most often seen, and nearly full. */
    private static String regime(double usual, Conduit conduit) {
        double height = conduit.section().height();
        if (!(usual > 0 && usual < 0.8 * height)) {
            return "";
        }
        return "; " + froude(conduit, usual) + " at the median depth, " + froude(conduit, 0.8 * height)
                + " at 80 % full";
    }

    private static String froude(Conduit conduit, double depth) {
        double froude = conduit.at(depth).froudeNumber();
        return (froude > 1 ? "supercritical" : "subcritical") + " (Fr " + Text.fixed(froude, 2) + ")";
    }

    static String law(Resistance resistance) {
        if (resistance instanceof ColebrookWhite colebrookWhite) {
            return "Colebrook-White ks " + Text.number(colebrookWhite.roughness() * 1000) + " mm";
        }
        return resistance instanceof Manning manning ? "Manning n " + Text.number(manning.n()) : resistance.toString();
    }
}
