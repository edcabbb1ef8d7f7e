package dev.runnel.examples.review;

import dev.runnel.rainfall.event.RainfallEvent;
import dev.runnel.rainfall.gauge.RainUnits;
import dev.runnel.rainfall.response.ResponseMeasure;
import dev.runnel.rainfall.response.ResponseRule;
import dev.runnel.rainfall.response.ResponseTrend;
import dev.runnel.rainfall.response.StormResponse;
import dev.runnel.rainfall.response.StormResponses;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Resample;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.baseline.DiurnalProfile;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How the flow answered each storm, and how that changed over the record.
 *
 * @param responses the response to each storm
 * @param trust what of each response can be believed
 * @param hasArea whether the site file tells what area drains here; without it there is no share of the rain
 * @param trends of the measures that enough sound storms tell of
 */
record ResponseFindings(
        StormResponses responses, List<ResponseTrust> trust, boolean hasArea, List<ResponseTrend> trends) {
    /** Chosen here: fewer sound storms tell of no change. */
    private static final int FEWEST_STORMS = 8;

    /** Without an area no share of the rain is told; large enough that no flow seems more than the rain. */
    private static final double ANY_AREA = 1e9;

    private static final Duration STEP = Duration.ofMinutes(10);

    /**
     * Of the lags the one between the centres: a sewer that answers alike keeps it in a storm of any shape, while the peak
     * follows the hardest burst, which may come hours before the centre of a long storm.
     */
    private static final List<ResponseMeasure> WATCHED = List.of(
            ResponseMeasure.VOLUME,
            ResponseMeasure.RUNOFF_PERCENT,
            ResponseMeasure.LAG_TO_CENTRE,
            ResponseMeasure.RECESSION);

    /** Returns the responses; empty without rain, without flow, or where nothing tells what the flow of dry weather is. */
    static Optional<ResponseFindings> of(
            SiteData data, FlowFindings flow, Optional<RainFindings> rain, DryWeather dry, Doubts doubts) {
        Optional<DiurnalProfile> usual = dry.figure();
        if (rain.isEmpty()
                || usual.isEmpty()
                || !dry.isFlow()
                || rain.get().storms().isEmpty()) {
            return Optional.empty();
        }
        RegularSeries depths = rain.get().rain();
        Duration step =
                data.depth().interval().compareTo(STEP) > 0 ? data.depth().interval() : STEP;
        RegularSeries steps = RainUnits.inSteps(depths, step).depth();
        Series usable = flow.record().flow();
        RegularSeries flows =
                Resample.mean(step).withMaximumGap(data.longestGap()).apply(usable, steps.interval());
        RegularSeries dryFlow = RegularSeries.filled(flows.start(), step, flows.size(), values -> {
            for (int i = 0; i < values.length; i++) {
                values[i] = usual.get().expected(flows.time(i));
            }
        });
        List<RainfallEvent> storms =
                rain.get().storms().stream().map(RainFindings.Storm::event).toList();
        StormResponses found =
                ResponseRule.ofArea(data.site().area().orElse(ANY_AREA)).responses(storms, steps, flows, dryFlow);
        boolean hasArea = data.site().area().isPresent();
        List<ResponseTrust> trust = found.all().stream()
                .map(each -> ResponseTrust.of(usable, flows, each.runoff().window(), doubts))
                .toList();
        List<StormResponse> sure = new ArrayList<>();
        for (int i = 0; i < trust.size(); i++) {
            if (trust.get(i).isWhole()) {
                sure.add(found.all().get(i));
            }
        }
        StormResponses sound = new StormResponses(sure, 0);
        return Optional.of(new ResponseFindings(
                found,
                trust,
                hasArea,
                WATCHED.stream()
                        .filter(measure -> hasArea || measure != ResponseMeasure.RUNOFF_PERCENT)
                        .filter(measure -> sound.series(measure).size() >= FEWEST_STORMS)
                        .map(sound::trend)
                        .toList()));
    }

    /** The time from the first storm to the last. */
    Duration span() {
        List<StormResponse> all = responses.all();
        return all.isEmpty()
                ? Duration.ZERO
                : Duration.between(
                        all.get(0).runoff().window().start(),
                        all.get(all.size() - 1).runoff().window().start());
    }

    /** Tells whether the figures of a response are withheld. */
    boolean isWithheld(int index) {
        return trust.get(index).isWithheld();
    }
}
