package dev.runnel.examples.review;

import dev.runnel.hydraulics.evidence.DoubtfulReadings;
import dev.runnel.hydraulics.evidence.Finding;
import dev.runnel.hydraulics.evidence.ReadingUse;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Optional;

/**
 * What the findings of the watch mean for the days of a site: on some the flow is in doubt, some tell of another state of the
 * sewer whose figures stand by themselves.
 *
 * @param findings the findings
 * @param readings which readings they put in doubt
 * @param end end of the record
 * @param zone clock of the days
 */
record Doubts(List<Finding> findings, Optional<DoubtfulReadings> readings, Instant end, ZoneId zone) {
    /** Chosen here: a day counts as doubtful, or as one of another state, if a quarter of it is. */
    static final double SHARE_OF_DAY = 0.25;

    static Doubts of(Watched watched, Instant end, ZoneId zone) {
        return new Doubts(
                watched.findings(), watched.report().map(report -> DoubtfulReadings.of(report, end)), end, zone);
    }

    /** Whether readings of such a finding give a doubtful flow. */
    boolean isFlowDoubtful(Finding finding) {
        return readings.map(doubt ->
                        doubt.findings(ReadingUse.FLOW, finding.interval(end)).contains(finding))
                .orElse(false);
    }

    /** Whether depth and velocity tell of another state of the sewer, whose days are another dry weather. */
    private static boolean isOtherState(Finding finding) {
        return switch (finding.name()) {
            case HELD_UP, RELEASED, MORE_WATER, LESS_WATER, LEVEL_UP, LEVEL_DOWN, REVERSE_FLOW -> true;
            default -> false;
        };
    }

    /** Returns the finding that makes the flow of a day doubtful, the first if there are several. */
    Optional<Finding> doubtOf(LocalDate day) {
        return findings.stream()
                .filter(this::isFlowDoubtful)
                .filter(finding -> share(finding, day) >= SHARE_OF_DAY)
                .findFirst();
    }

    /** Returns the finding of another state that a day belongs to. */
    Optional<Finding> stateOf(LocalDate day) {
        return findings.stream()
                .filter(Doubts::isOtherState)
                .filter(finding -> share(finding, day) >= SHARE_OF_DAY)
                .findFirst();
    }

    /** Returns the share of the flow of a day, of either direction, that rests on doubtful readings; 0 if none flowed. */
    double shareOfFlow(Series flow, LocalDate day) {
        if (readings.isEmpty()) {
            return 0;
        }
        Series within = flow.slice(Interval.of(
                day.atStartOfDay(zone).toInstant(),
                day.plusDays(1).atStartOfDay(zone).toInstant()));
        boolean[] doubtful = readings.get().doubtful(ReadingUse.FLOW, within);
        double all = 0;
        double doubted = 0;
        for (int i = 0; i < doubtful.length; i++) {
            if (within.quality(i).isUsable()) {
                all += Math.abs(within.value(i));
                doubted += doubtful[i] ? Math.abs(within.value(i)) : 0;
            }
        }
        return all > 0 ? doubted / all : 0;
    }

    /** Returns the share of a day that a finding covers. */
    double share(Finding finding, LocalDate day) {
        Instant from = day.atStartOfDay(zone).toInstant();
        Instant to = day.plusDays(1).atStartOfDay(zone).toInstant();
        return Interval.of(from, to).shareCoveredBy(finding.interval(end));
    }
}
