package dev.runnel.examples.review;

import dev.runnel.hydraulics.watch.DoubtfulReadings;
import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.hydraulics.watch.FindingName;
import dev.runnel.hydraulics.watch.ReadingUse;
import dev.runnel.internal.SeriesArrays;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * What the findings of the watch mean for the days of a site: on some the flow is in doubt, some tell of another state of the
 * sewer whose figures stand by themselves.
 *
 * @param findings the findings
 * @param readings which readings they put in doubt
 * @param ends when depths, and when depths or velocities, stood at the end of a range: more was there than was read
 * @param end end of the record
 * @param zone clock of the days
 */
record Doubts(List<Finding> findings, Optional<DoubtfulReadings> readings, Ends ends, Instant end, ZoneId zone) {
    /** Chosen here: a day counts as doubtful, or as one of another state, if a quarter of it is. */
    static final double SHARE_OF_DAY = 0.25;

    /** Chosen here: a figure of which more rests on doubtful readings is withheld. */
    static final double MOST = 0.5;

    /** Times at the end of a range, in order. */
    record Ends(List<Interval> ofDepth, List<Interval> ofFlow) {}

    static Doubts of(Watched watched, SiteData data) {
        Instant end = data.record().end();
        List<Interval> depth = data.depth().atTheEnd();
        List<Interval> both = new ArrayList<>(depth);
        data.velocity().ifPresent(velocity -> both.addAll(velocity.atTheEnd()));
        return new Doubts(
                watched.findings(),
                watched.report().map(report -> DoubtfulReadings.of(report, end)),
                new Ends(depth, Interval.joined(both)),
                end,
                data.site().zone());
    }

    /** Whether readings of such a finding give a doubtful flow. */
    boolean isFlowDoubtful(Finding finding) {
        return isDoubtful(ReadingUse.FLOW, finding);
    }

    /** Whether depth and velocity tell of another state of the sewer, whose days are another dry weather. */
    private static boolean isOtherState(Finding finding) {
        return switch (finding.name()) {
            case HELD_UP, RELEASED, MORE_WATER, LESS_WATER, LEVEL_UP, LEVEL_DOWN, REVERSE_FLOW -> true;
            default -> false;
        };
    }

    /** Whether what a finding tells stands for days with readings of its own: the state before it may as well have been the wrong one. */
    static boolean isLasting(Finding finding) {
        return switch (finding.name()) {
            case DEPTH_STEP,
                    DEPTH_DRIFT,
                    SEDIMENT,
                    HELD_UP,
                    RELEASED,
                    MORE_WATER,
                    LESS_WATER,
                    VELOCITY_LOSS,
                    VELOCITY_GAIN,
                    VELOCITY_LOW_FOR_DEPTH,
                    VELOCITY_HIGH_FOR_DEPTH,
                    LEVEL_UP,
                    LEVEL_DOWN -> true;
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

    /** Returns the share of the flow of a day that rests on doubtful readings; 0 if none flowed. */
    double shareOfFlow(Series flow, LocalDate day) {
        Interval hours = hours(day);
        // Most days are asked for in vain.
        boolean asked = ends.ofFlow.stream().anyMatch(hours::overlaps)
                || readings.isPresent()
                        && !readings.get().findings(ReadingUse.FLOW, hours).isEmpty();
        return asked ? shareOfFlow(flow.slice(hours)) : 0;
    }

    /** Returns the share of a flow, of either direction, that rests on doubtful readings; 0 if none flowed. */
    double shareOfFlow(Series flow) {
        boolean[] doubtful =
                readings.map(found -> found.doubtful(ReadingUse.FLOW, flow)).orElseGet(() -> new boolean[flow.size()]);
        for (Interval time : ends.ofFlow) {
            Arrays.fill(doubtful, flow.firstIndexAtOrAfter(time.start()), flow.firstIndexAtOrAfter(time.end()), true);
        }
        double[] usable = SeriesArrays.keeper().usableValues(flow);
        double all = 0;
        double doubted = 0;
        for (int i = 0; i < usable.length; i++) {
            double magnitude = Double.isNaN(usable[i]) ? 0 : Math.abs(usable[i]);
            all += magnitude;
            doubted += doubtful[i] ? magnitude : 0;
        }
        return all > 0 ? doubted / all : 0;
    }

    /**
     * Returns a flow, or a level, without the values that are in doubt. A level that is up or down without a cause that the
     * watch could name is another state of the sewer as far as anyone can tell, so it stays.
     */
    Series withoutDoubtful(boolean isFlow, Series series) {
        List<Interval> times = new ArrayList<>(isFlow ? ends.ofFlow : ends.ofDepth);
        doubting(isFlow).forEach(finding -> times.addAll(finding.intervals(end)));
        return without(series, times);
    }

    /** The same, but with what one finding puts in doubt: as it was read. */
    Series withoutDoubtful(boolean isFlow, Series series, Finding kept) {
        List<Interval> times = new ArrayList<>(isFlow ? ends.ofFlow : ends.ofDepth);
        doubting(isFlow).stream()
                .filter(finding -> !finding.equals(kept))
                .forEach(finding -> times.addAll(finding.intervals(end)));
        return without(series, times);
    }

    /** Returns a series without the time of any finding: what then is left is the site as it usually is. */
    Series withoutFindings(Series series) {
        return without(
                series,
                findings.stream()
                        .flatMap(finding -> finding.intervals(end).stream())
                        .toList());
    }

    /**
     * Returns a level without the values that are in doubt, and without those of the time in which that may have begun: for figures
     * that one reading decides.
     */
    Series surelySound(Series level) {
        return without(
                level,
                doubting(false).stream()
                        .flatMap(finding -> withBeginning(finding).stream())
                        .toList());
    }

    /**
     * Returns the finding that puts a figure which one reading decides in doubt, the first if there are several: the time in
     * which it may have begun counts.
     *
     * @param isFlow whether the figure is a flow; a depth otherwise
     */
    Optional<Finding> doubtOf(boolean isFlow, Instant time) {
        return doubting(isFlow).stream()
                .filter(finding -> withBeginning(finding).stream().anyMatch(stood -> stood.contains(time)))
                .findFirst();
    }

    private List<Interval> withBeginning(Finding finding) {
        List<Interval> stood = new ArrayList<>(finding.intervals(end));
        stood.add(finding.sinceRange());
        return stood;
    }

    private static Series without(Series series, List<Interval> times) {
        if (series.isEmpty() || times.isEmpty()) {
            return series;
        }
        double[] values = series.toValues();
        byte[] qualities = series.toQualityCodes();
        for (Interval time : times) {
            int to = series.firstIndexAtOrAfter(time.end());
            for (int i = series.firstIndexAtOrAfter(time.start()); i < to; i++) {
                values[i] = Double.NaN;
                qualities[i] = Quality.MISSING.toCode();
            }
        }
        return (Series) SeriesArrays.keeper().withReadings(series, values, qualities);
    }

    private List<Finding> doubting(boolean isFlow) {
        return findings.stream()
                .filter(finding -> isFlow
                        ? isFlowDoubtful(finding)
                        : !isOtherState(finding) && isDoubtful(ReadingUse.DEPTH, finding))
                .toList();
    }

    /** Tells whether a finding puts the depths of its time in doubt. */
    boolean isDepthDoubtful(Finding finding) {
        return doubting(false).contains(finding);
    }

    private boolean isDoubtful(ReadingUse use, Finding finding) {
        return readings.map(doubt -> doubt.findings(use, finding.interval(end)).contains(finding))
                .orElse(false);
    }

    /** Returns the finding that leaves most of a day without sound readings. */
    Optional<Finding> mostDoubtOf(boolean isFlow, LocalDate day) {
        return doubting(isFlow).stream()
                .filter(finding -> share(finding, day) > 0)
                .max(Comparator.comparingDouble(finding -> share(finding, day)));
    }

    /** Returns the share of some times in which the depth is in doubt. */
    double shareOfDepth(List<Interval> times) {
        double all = 0;
        double doubted = 0;
        for (Interval time : times) {
            double hours = time.hours();
            all += hours;
            doubted += hours
                    * doubting(false).stream()
                            .mapToDouble(finding -> share(finding, time))
                            .max()
                            .orElse(0);
        }
        return all > 0 ? doubted / all : 0;
    }

    /** Returns the share of a day that a finding covers. */
    double share(Finding finding, LocalDate day) {
        return share(finding, hours(day));
    }

    private double share(Finding finding, Interval time) {
        return finding.intervals(end).stream().mapToDouble(time::shareCoveredBy).sum();
    }

    private Interval hours(LocalDate day) {
        return hours(day, zone);
    }

    static Interval hours(LocalDate day, ZoneId zone) {
        return Interval.of(
                day.atStartOfDay(zone).toInstant(),
                day.plusDays(1).atStartOfDay(zone).toInstant());
    }

    /** Returns the findings by which the gauge catches another share of the rain than before. */
    List<Finding> ofGauge() {
        return findings.stream()
                .filter(finding -> finding.name() == FindingName.GAUGE_CATCHES_LESS
                        || finding.name() == FindingName.GAUGE_WRITES_MORE)
                .toList();
    }

    /** Returns the share of some dry days of which nobody can be sure that they were dry; 0 without days. */
    double suspectShare(Collection<LocalDate> days) {
        return readings.map(found -> found.suspectShare(days, zone)).orElse(0.0);
    }
}
