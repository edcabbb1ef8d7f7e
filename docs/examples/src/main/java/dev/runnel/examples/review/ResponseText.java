package dev.runnel.examples.review;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.response.ResponseDoubt;
import dev.runnel.rainfall.response.ResponseMeasure;
import dev.runnel.rainfall.response.ResponseTrend;
import dev.runnel.rainfall.response.StormResponse;
import java.time.Duration;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** How the flow answered the storms, storm by storm, and whether that has changed. */
final class ResponseText {
    /** Chance that a site without a change is told of one, shared by all that is tested there; common practice. */
    private static final double CHANCE = 0.05;

    private static final int MOST_RESPONSES = 12;
    private static final double SECONDS_IN_DAY = 86_400;
    private static final double DAYS_IN_YEAR = 365.25;

    private ResponseText() {}

    static void of(Page page, SiteReview review) {
        review.responses().ifPresent(found -> {
            page.section("response");
            List<List<String>> rows = new ArrayList<>();
            rows.add(List.of("storm", "mm", "volume m3", "of rain", "peak l/s", "lag min", "recession h", "doubts"));
            Dates dates = review.data().dates();
            Map<String, String> letters = new LinkedHashMap<>();
            int from = Math.max(0, found.responses().all().size() - MOST_RESPONSES);
            for (int i = from; i < found.responses().all().size(); i++) {
                rows.add(response(found, i, dates, letters));
            }
            page.table("lrrrrrrl", rows);
            page.say("lag: from the centre of the rain to the centre of the flow above dry weather");
            if (!letters.isEmpty()) {
                page.say(letters.entrySet().stream()
                        .map(each -> each.getValue() + ": " + each.getKey())
                        .collect(Collectors.joining("; ")));
            }
            if (from > 0) {
                page.say("the last " + MOST_RESPONSES + " are shown, responses.csv holds all");
            }
            if (!found.hasArea()) {
                page.say("no share of the rain: \"contributing area = ...\" in " + SiteFile.NAME + " is not there");
            }
            page.say(trends(found.trends(), found.span()));
        });
    }

    /** What the tests say of each measure; the more are asked, the less chance each is given. */
    static String trends(List<ResponseTrend> trends, Duration span) {
        return trends.isEmpty()
                ? "too few storms against which nothing speaks to tell of a change"
                : trends.stream()
                        .map(each -> trend(each, span, CHANCE / trends.size()))
                        .collect(Collectors.joining("; "));
    }

    /** What a few weeks show is not carried on over a year. */
    private static String trend(ResponseTrend trend, Duration span, double largestP) {
        boolean isClear = trend.test().pValue() < largestP;
        double years = span.toSeconds() / SECONDS_IN_DAY / DAYS_IN_YEAR;
        return trend.measure() + " from storm to storm: "
                + (isClear
                        ? Text.significant(trend.perYear() * years, 2) + " "
                                + trend.measure().unit() + " from the first to the last, p "
                                + Text.significant(trend.test().pValue(), 2)
                        : "no change told")
                + " by " + trend.test().count() + " storms";
    }

    /** A letter for each doubt, which a line below the table explains. */
    private static List<String> response(ResponseFindings found, int index, Dates dates, Map<String, String> letters) {
        StormResponse each = found.responses().all().get(index);
        List<String> doubts = new ArrayList<>();
        each.doubts().forEach(doubt -> doubts.add(letter(letters, doubt.toString())));
        ResponseTrust trust = found.trust().get(index);
        if (trust.doubtful() > 0) {
            doubts.add(letter(letters, "readings that a finding puts in doubt") + "=" + Show.percent(trust.doubtful()));
        }
        if (trust.isClockOff()) {
            doubts.add(letter(letters, "a finding tells of another clock: no lag"));
        }
        if (trust.isRainOff()) {
            doubts.add(letter(letters, "a finding puts the rain in doubt: no share of it"));
        }
        String marks = String.join("" + Page.BOUND, doubts);
        if (found.isWithheld(index)) {
            return List.of(
                    dates.time(each.storm().start()),
                    Show.rain(each.depthMm()),
                    trust.isUnseen() ? "not seen" : "withheld",
                    "-",
                    "-",
                    "-",
                    "-",
                    marks);
        }
        return List.of(
                dates.time(each.storm().start()),
                Show.rain(each.depthMm()),
                Show.significant(each.runoff().flowM3()),
                found.hasArea() && !trust.isRainOff() && each.runoff().percent().isPresent()
                        ? Show.percent(each.runoff().percent().getAsDouble() / 100)
                        : "-",
                each.peakM3PerS().isPresent() ? Show.flowValue(each.peakM3PerS().getAsDouble()) : "-",
                each.lagToCentre()
                        .filter(lag -> !trust.isClockOff() && ResponseMeasure.LAG_TO_CENTRE.isSound(each))
                        .map(lag -> "" + lag.toMinutes())
                        .orElse("-"),
                each.recession()
                        .filter(fall -> !each.doubts().contains(ResponseDoubt.NO_RECESSION))
                        .map(fall -> Show.hoursValue(fall.constant()))
                        .orElse("-"),
                marks);
    }

    private static String letter(Map<String, String> letters, String doubt) {
        return letters.computeIfAbsent(doubt, key -> String.valueOf((char) ('a' + letters.size())));
    }
}
