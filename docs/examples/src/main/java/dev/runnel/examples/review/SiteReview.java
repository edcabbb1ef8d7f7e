package dev.runnel.examples.review;

import dev.runnel.hydraulics.evidence.DailyEvidence;
import dev.runnel.timeseries.Interval;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * All that the review of one site found.
 *
 * @param data what was read
 * @param flow what depth and velocity say
 * @param rain what the gauge says, if there is one that ever wrote rain
 * @param muteGauge the gauge that wrote none in the whole record, of which nothing shows that it was at work; its zeros tell no
 *     dry days, but others may be held against them
 * @param loggerOff times in which neither the monitor nor the gauge wrote anything, so that the rain is not known
 * @param watched what is usual at the site, and what has changed since
 * @param doubts what the findings mean for the figures
 * @param peaks the highest levels, and which of them is in doubt
 * @param dryDays what depth and velocity say of each dry day
 * @param dryWeather what is usual in dry weather
 * @param spillReturn spills with their volumes and the annual return, if there is an overflow
 * @param responses how the flow answered each storm, where that can be told
 * @param visits what people found at the site
 */
record SiteReview(
        SiteData data,
        FlowFindings flow,
        Optional<RainFindings> rain,
        Optional<RainFindings> muteGauge,
        List<Interval> loggerOff,
        Watched watched,
        Doubts doubts,
        LevelPeaks peaks,
        List<DailyEvidence> dryDays,
        DryWeather dryWeather,
        Optional<SpillReturn> spillReturn,
        Optional<ResponseFindings> responses,
        VisitFindings visits) {
    static SiteReview of(SiteData data) {
        return of(data, Period.WHOLE);
    }

    /** Reviews the days of a period; what is usual, and what has changed, is known from the whole record. */
    static SiteReview of(SiteData all, Period period) {
        FlowFindings allFlow = FlowFindings.of(all);
        Optional<RainSource.Rain> gauge = all.rain().map(source -> source.within(all.record()));
        Optional<RainSource.Rain> allRain = gauge.filter(found -> !found.isMute());
        Watched allWatched = Watched.of(all, allFlow, allRain.map(RainSource.Rain::depth));
        List<Interval> dead = allWatched.deadGauge(all.record().end());
        VisitFindings visits = VisitFindings.of(all, allFlow.record());
        SiteData data = all.within(period);
        FlowFindings flow = period.isWhole() ? allFlow : FlowFindings.of(data);
        List<Interval> off =
                allRain.map(found -> LoggerOff.of(all, found.depth())).orElse(List.of());
        Optional<RainFindings> rain =
                allRain.map(found -> found.notKnownIn(dead).notKnownIn(off)).map(found -> rain(data, period, found));
        // Without a gauge any day may have been wet; medians bear a few wet hours.
        SortedSet<LocalDate> days = rain.map(found -> found.days().dates()).orElseGet(() -> allDays(data));
        Watched watched = period.isWhole() ? allWatched : allWatched.within(data.record());
        Doubts doubts = Doubts.of(watched, data);
        DryWeather dryWeather = DryWeather.of(data, flow, days, doubts);
        return new SiteReview(
                data,
                flow,
                rain,
                gauge.filter(RainSource.Rain::isMute).map(found -> rain(data, period, found)),
                off.stream().filter(time -> time.overlaps(data.record())).toList(),
                watched,
                doubts,
                LevelPeaks.of(flow, doubts, data.longestGap()),
                DailyEvidence.of(flow.record(), days, data.site().zone()),
                dryWeather,
                SpillReturn.of(data, flow, doubts),
                ResponseFindings.of(data, flow, rain, dryWeather, doubts),
                period.isWhole() ? visits : visits.within(data.record()));
    }

    private static RainFindings rain(SiteData data, Period period, RainSource.Rain found) {
        return RainFindings.of(
                data.site(), period.isWhole() ? found : found.within(data.record()), data.ddf(), data.band());
    }

    private static SortedSet<LocalDate> allDays(SiteData data) {
        LocalDate first = LocalDate.ofInstant(data.record().start(), data.site().zone());
        LocalDate last = LocalDate.ofInstant(data.record().end(), data.site().zone());
        return first.datesUntil(last.plusDays(1)).collect(Collectors.toCollection(TreeSet::new));
    }

    Site site() {
        return data.site();
    }
}
