package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.FullnessTime;
import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import java.time.Duration;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.Collectors;

/** Flow, fullness, alarms and spills. */
final class FlowText {
    private FlowText() {}

    static void dryWeather(Page page, SiteReview review) {}

    static void fullness(Page page, SiteReview review) {
        String shares = review.flow().fullness().stream()
                .map(time -> Show.percent(time.fullness()) + " for " + Show.duration(time.above()) + " ("
                        + Show.percent(time.share()) + ")")
                .collect(Collectors.joining(", "));
        FullnessTime first = review.flow().fullness().get(0);
        page.section("fullness")
                .say("above " + shares + " of the " + Show.percent(first.coverage()) + " of the time that is covered");
        ZoneId zone = review.site().zone();
        List<SurchargePeriod> periods = review.flow().surcharges();
        page.section("surcharge");
        if (periods.isEmpty()) {
            page.say("none");
            return;
        }
        Duration total = periods.stream().map(SurchargePeriod::duration).reduce(Duration.ZERO, Duration::plus);
        page.say(Show.count(periods.size(), "period") + ", " + Show.duration(total) + " together");
        for (SurchargePeriod period : periods) {
            page.say(Show.time(period.interval().start(), zone) + " for " + Show.duration(period.duration()) + ", "
                    + Show.mm(period.peakAbove()) + " above the soffit at "
                    + Show.time(period.peakTime(), zone)
                    + (period.isComplete() ? "" : ", the record hides its start or end"));
        }
    }

    static void alarms(Page page, SiteReview review) {}

    static void overflow(Page page, SiteReview review) {}
}
