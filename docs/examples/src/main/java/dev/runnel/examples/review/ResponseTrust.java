package dev.runnel.examples.review;

import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.hydraulics.watch.FindingName;
import dev.runnel.hydraulics.watch.ReadingUse;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.Series;
import java.util.List;
import java.util.Set;

/**
 * What of a response can be believed, by what was read and by the findings of its time.
 *
 * @param doubtful share of its flow readings that a finding puts in doubt, in [0, 1]
 * @param unseen share of its time without a flow, in [0, 1]
 * @param isClockOff whether a finding says that rain and flow are on two clocks: then lags say nothing
 * @param isRainOff whether one says that the gauge catches another share of the rain: then the share of it that drains says nothing
 */
record ResponseTrust(double doubtful, double unseen, boolean isClockOff, boolean isRainOff) {
    private static final Set<FindingName> CLOCKS = Set.of(FindingName.CLOCK_OF_MONITOR, FindingName.CLOCK_OF_GAUGE);

    private static final Set<FindingName> GAUGES =
            Set.of(FindingName.SILENT_GAUGE, FindingName.GAUGE_CATCHES_LESS, FindingName.GAUGE_WRITES_MORE);

    static ResponseTrust of(Series flow, RegularSeries steps, Interval window, Doubts doubts) {
        RegularSeries within = steps.slice(window);
        double unseen = within.isEmpty() ? 1 : within.missing() / (double) within.size();
        if (doubts.readings().isEmpty()) {
            return new ResponseTrust(0, unseen, false, false);
        }
        List<Finding> findings = doubts.readings().get().findings(ReadingUse.STORM_RESPONSE, window);
        return new ResponseTrust(
                doubtful(flow.slice(window), doubts), unseen, anyOf(findings, CLOCKS), anyOf(findings, GAUGES));
    }

    private static double doubtful(Series flow, Doubts doubts) {
        int count = 0;
        for (boolean each : doubts.readings().orElseThrow().doubtful(ReadingUse.FLOW, flow)) {
            count += each ? 1 : 0;
        }
        return flow.isEmpty() ? 0 : (double) count / flow.size();
    }

    private static boolean anyOf(List<Finding> findings, Set<FindingName> names) {
        return findings.stream().anyMatch(finding -> names.contains(finding.name()));
    }

    /** Whether all of its figures are withheld: most of the flow is doubtful, or nobody saw it. */
    boolean isWithheld() {
        return doubtful > Doubts.MOST || isUnseen();
    }

    boolean isUnseen() {
        return unseen > Doubts.MOST;
    }

    /** Whether nothing speaks against any of its figures. */
    boolean isWhole() {
        return doubtful <= 0 && !isClockOff && !isRainOff;
    }
}
