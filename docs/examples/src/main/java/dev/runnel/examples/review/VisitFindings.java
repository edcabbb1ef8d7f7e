package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.correction.Correction;
import dev.runnel.timeseries.correction.Corrections;
import dev.runnel.timeseries.correction.SiteVisit;
import dev.runnel.timeseries.correction.VisitComparison;
import dev.runnel.timeseries.correction.VisitDifference;
import java.time.Instant;
import java.util.List;

/**
 * What people found at a site beside what the monitor said, as corrected.
 *
 * @param visits the visits
 * @param comparison the tolerances
 * @param differences one for each figure read by hand
 * @param proposals corrections that follow; nobody has signed them
 */
record VisitFindings(
        List<SiteVisit> visits, VisitComparison comparison, List<VisitDifference> differences, Corrections proposals) {
    static VisitFindings of(SiteData data, FlowRecord record) {
        VisitComparison comparison = data.site().books().comparison();
        List<SiteVisit> visits = data.books().visits();
        List<VisitDifference> differences =
                comparison.differences(visits, record.level(), record.velocity(), record.flow());
        Instant end = visits.stream()
                .map(visit -> visit.time().plusSeconds(1))
                .reduce(data.record().end(), (a, b) -> a.isAfter(b) ? a : b);
        // The bed that the review reckons with needs no proposal.
        List<Correction> proposals = comparison.proposals(visits, differences, end).list().stream()
                .filter(each -> each.kind() != Correction.Kind.SEDIMENT
                        || data.books().monitors().stretches(each.interval()).stream()
                                .anyMatch(stretch -> stretch.monitor().bedAboveInvert() != each.value()))
                .toList();
        return new VisitFindings(visits, comparison, differences, Corrections.of(proposals));
    }

    /** Returns what belongs to a time. */
    VisitFindings within(Interval time) {
        return new VisitFindings(
                visits.stream().filter(visit -> time.contains(visit.time())).toList(),
                comparison,
                differences.stream()
                        .filter(each -> time.contains(each.visit().time()))
                        .toList(),
                Corrections.of(proposals.list().stream()
                        .filter(each -> each.interval().overlaps(time))
                        .toList()));
    }

    List<VisitDifference> of(SiteVisit visit) {
        return differences.stream().filter(each -> each.visit().equals(visit)).toList();
    }
}
