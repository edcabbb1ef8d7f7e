package dev.runnel.examples.review;

import java.time.LocalDate;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * All that the review of one site found.
 *
 * @param data what was read
 * @param flow what depth and velocity say
 * @param rain what the gauge says, if there is one
 * @param dryWeather what is usual in dry weather
 * @param evidence days on which depth and velocity do not hang together as usual
 */
record SiteReview(
        SiteData data,
        FlowFindings flow,
        Optional<RainFindings> rain,
        EvidenceFindings evidence,
        DryWeather dryWeather) {
    static SiteReview of(SiteData data) {
        FlowFindings flow = FlowFindings.of(data);
        Optional<RainFindings> rain =
                data.rain().map(source -> RainFindings.of(data.site(), source.within(data.record()), data.ddf()));
        // Without a gauge any day may have been wet; medians bear a few wet hours.
        SortedSet<LocalDate> days = rain.map(found -> found.days().dates()).orElseGet(() -> allDays(data));
        EvidenceFindings evidence =
                EvidenceFindings.of(flow.record(), days, data.site().zone());
        DryWeather dryWeather = DryWeather.of(data, flow.record(), days, evidence);
        return new SiteReview(data, flow, rain, evidence, dryWeather);
    }

    private static SortedSet<LocalDate> allDays(SiteData data) {
        LocalDate first = LocalDate.ofInstant(data.record().start(), data.site().zone());
        LocalDate last = LocalDate.ofInstant(data.record().end(), data.site().zone());
        return first.datesUntil(last.plusDays(1)).collect(Collectors.toCollection(TreeSet::new));
    }

    Site site() {
        return data.site();
    }

    /** Tells whether the site names another one upstream; such sites come last. */
    boolean isDownstream() {
        return site().upstream().isPresent();
    }
}
