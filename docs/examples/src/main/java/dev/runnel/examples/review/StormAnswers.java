package dev.runnel.examples.review;

import dev.runnel.examples.pages.LineFigure;
import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.response.ResponseDoubt;
import dev.runnel.rainfall.response.ResponseRule;
import dev.runnel.rainfall.response.StormResponse;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Resample;
import dev.runnel.timeseries.baseline.DiurnalProfile;
import java.time.Duration;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** How much flow above dry weather each storm brought, against its rain. */
final class StormAnswers {
    /** Chosen here: fine enough for a lag of a sewer, coarse enough for a year. */
    private static final Duration STEP = Duration.ofMinutes(10);

    /** Volumes are shown in m3 and not as a share of the rain: a site file has no area. */
    private static final ResponseRule RULE = ResponseRule.ofArea(1);

    private final List<StormResponse> all;
    private final int outside;

    private StormAnswers(List<StormResponse> all, int outside) {
        this.all = all;
        this.outside = outside;
    }

    /** None without rain, flow and a usual dry day. */
    static Optional<StormAnswers> of(SiteReview review) {
        Optional<DiurnalProfile> dry = review.dryWeather().usual().profile();
        if (review.rain().isEmpty() || review.data().velocity().isEmpty() || dry.isEmpty()) {
            return Optional.empty();
        }
        List<RainfallEvent> storms = review.rain().get().storms().stream()
                .map(RainFindings.Storm::event)
                .toList();
        RegularSeries flow = Resample.mean(STEP).apply(review.flow().record().flow());
        if (storms.isEmpty() || flow.isEmpty()) {
            return Optional.empty();
        }
        double[] usual = new double[flow.size()];
        for (int i = 0; i < usual.length; i++) {
            usual[i] = dry.get().expected(flow.time(i).plus(STEP.dividedBy(2)));
        }
        RegularSeries rain = review.rain().get().rain();
        RegularSeries coarse =
                rain.step().compareTo(STEP) < 0 ? Resample.sum(STEP).apply(rain) : rain;
        var found = RULE.responses(storms, coarse, flow, RegularSeries.of(flow.start(), STEP, usual));
        return found.all().isEmpty() ? Optional.empty() : Optional.of(new StormAnswers(found.all(), found.outside()));
    }

    /** Those that touch the volume: a share of the rain is not told here, nor a recession. */
    private static Set<ResponseDoubt> doubts(StormResponse response) {
        Set<ResponseDoubt> doubts = EnumSet.noneOf(ResponseDoubt.class);
        doubts.addAll(response.doubts());
        doubts.removeAll(Set.of(ResponseDoubt.MORE_THAN_RAIN, ResponseDoubt.NO_RECESSION, ResponseDoubt.PEAK_AT_LIMIT));
        return doubts;
    }

    String drawing() {
        return LineFigure.of(
                "Rain and response",
                "rain of the storm, mm",
                "volume above dry weather, m3",
                List.of(points("nothing speaks against it", true), points("doubtful", false)));
    }

    /** Empty circles are the fourth style of the figure. */
    private LineFigure.Line points(String name, boolean sound) {
        List<StormResponse> some =
                all.stream().filter(each -> doubts(each).isEmpty() == sound).toList();
        return new LineFigure.Line(
                some.size() + " " + name,
                some.stream().mapToDouble(StormResponse::depthMm).toArray(),
                some.stream()
                        .mapToDouble(each -> Math.max(0, each.runoff().flowM3()))
                        .toArray(),
                true);
    }

    String caption() {
        String doubts = all.stream()
                .flatMap(each -> doubts(each).stream())
                .map(Object::toString)
                .distinct()
                .sorted()
                .reduce((a, b) -> a + "; " + b)
                .map(text -> " Doubts: " + text + ".")
                .orElse("");
        return "Flow above the usual dry day from the begin of a storm until it was back, 10 min steps; a point left of and above"
                + " the others is a storm that brought more." + doubts
                + (outside > 0 ? " " + Show.count(outside, "storm") + " outside of the record." : "");
    }
}
