package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.hydraulics.watch.BaselineSearch;
import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.hydraulics.watch.FindingName;
import dev.runnel.hydraulics.watch.SiteBaseline;
import dev.runnel.hydraulics.watch.SiteRecord;
import dev.runnel.hydraulics.watch.WatchReport;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What is usual at the site, and what has changed since.
 *
 * @param search where it was learned, or why nowhere
 * @param report what the watch found; empty without a baseline
 */
record Watched(BaselineSearch search, Optional<WatchReport> report) {
    /** Takes the readings as they were read: the watch tells frozen and impossible ones itself. */
    static Watched of(SiteData data, FlowFindings flow, Optional<RegularSeries> rain) {
        Site site = data.site();
        Series depth = data.depth().lines().series();
        MonitorHistory monitors = data.books().monitors();
        SiteRecord plain = data.velocity().isEmpty()
                ? SiteRecord.ofDepth(depth)
                : SiteRecord.of(depth, flow.isInterpolated() ? reading(flow, site) : velocity(data));
        SiteRecord record = rain.map(plain::withRain).orElse(plain);
        BaselineSearch search = SiteRules.baseline(site, monitors).learn(record);
        return new Watched(
                search,
                search.baseline()
                        .map(baseline -> SiteRules.watch(site, baseline)
                                .withMonitors(monitors)
                                .watch(record)));
    }

    private static Series velocity(SiteData data) {
        return data.velocity().orElseThrow().lines().series();
    }

    /** Velocities taken between their readings, as the sensor would have given them. */
    private static Series reading(FlowFindings flow, Site site) {
        double factor = site.monitor().velocityFactor();
        return flow.record().velocity().map(value -> value / factor);
    }

    /** Keeps the findings that stood in a time; which were known by its end is for {@code found} to say. */
    Watched within(Interval time) {
        return new Watched(
                search,
                report.map(all -> new WatchReport(
                        all.baseline(),
                        all.findings().stream()
                                .filter(finding -> finding.overlaps(time, time.end()))
                                .toList(),
                        all.events())));
    }

    /** Returns the times in which the gauge may have been dead: from its last drop before it was missed to the next one. */
    List<Interval> deadGauge(Instant end) {
        return findings().stream()
                .filter(finding -> finding.name() == FindingName.SILENT_GAUGE)
                .map(finding -> Interval.of(
                        finding.sinceRange().start(), finding.closed().orElse(end)))
                .toList();
    }

    /** Returns what is remarked of times in which the gauge may have been dead, but is not sure enough for a finding. */
    List<Finding> suspectGauge() {
        return report.map(WatchReport::remarks).orElse(List.of()).stream()
                .filter(remark -> remark.name() == FindingName.SILENT_GAUGE)
                .toList();
    }

    List<Finding> findings() {
        return report.map(WatchReport::findings).orElse(List.of());
    }

    Optional<SiteBaseline> baseline() {
        return search.baseline();
    }
}
