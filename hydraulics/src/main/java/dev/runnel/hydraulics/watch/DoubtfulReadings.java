package dev.runnel.hydraulics.watch;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Series;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.apiguardian.api.API;

/**
 * Which readings of a site are in doubt, by the findings of the watch. Immutable and thread-safe.
 *
 * <p>A finding puts in doubt what one of its names says of a sensor: a depth that drifts puts depth and flow in doubt, a
 * velocity sensor that fouls velocity and flow. Water that is held up is read truly: depth, velocity and flow stay good.
 * Where two names stand beside each other, the worse one counts. A finding counts from its beginning, not from when it was
 * found, until it closed; one that came back in its stretches, not between them.
 *
 * <p>What this is not: proof that the other readings are good. The watch finds what its baseline can judge.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DoubtfulReadings {
    /** Share of a day in a silence from which on nobody can be sure that it was dry; chosen here. */
    private static final double SHARE_OF_DAY = 0.25;

    private final List<Finding> findings;
    private final List<Interval> silences;
    private final Instant end;

    private DoubtfulReadings(List<Finding> findings, List<Interval> silences, Instant end) {
        this.findings = findings;
        this.silences = silences;
        this.end = end;
    }

    /**
     * Returns the doubts of a report.
     *
     * @param report what the watch found
     * @param end end of the record; findings that are open last until then
     * @return the doubts
     */
    public static DoubtfulReadings of(WatchReport report, Instant end) {
        Objects.requireNonNull(end, "end");
        List<Interval> silences = Stream.concat(report.findings().stream(), report.remarks().stream())
                .filter(finding -> finding.name() == FindingName.SILENT_GAUGE)
                .filter(finding ->
                        finding.sinceRange().start().isBefore(finding.closed().orElse(end)))
                // The rain that was not written came up to some hours before the first rise that tells of it.
                .map(finding -> Interval.of(
                        finding.sinceRange().start(), finding.closed().orElse(end)))
                .toList();
        return new DoubtfulReadings(report.findings(), Interval.joined(silences), end);
    }

    private static Set<ReadingUse> doubted(Finding finding) {
        return doubted(finding.names());
    }

    /** What readings are no longer good for while a finding of these names stands. */
    static Set<ReadingUse> doubted(List<FindingName> names) {
        Set<ReadingUse> uses = EnumSet.noneOf(ReadingUse.class);
        for (FindingName name : names) {
            switch (name) {
                case DEPTH_STEP,
                        DEPTH_DRIFT,
                        SEDIMENT,
                        FALSE_ECHO,
                        FROZEN_DEPTH,
                        OUT_OF_RANGE,
                        DEPTH_UNIT,
                        LEVEL_UP,
                        LEVEL_DOWN ->
                    uses.addAll(EnumSet.of(ReadingUse.DEPTH, ReadingUse.FLOW, ReadingUse.STORM_RESPONSE));
                case VELOCITY_LOSS,
                        VELOCITY_GAIN,
                        VELOCITY_ZEROS,
                        WEAK_ECHO,
                        FALSE_VELOCITY,
                        SIGN_FLIPS,
                        REVERSED_SIGN,
                        FROZEN_VELOCITY,
                        VELOCITY_UNIT ->
                    uses.addAll(EnumSet.of(ReadingUse.VELOCITY, ReadingUse.FLOW, ReadingUse.STORM_RESPONSE));
                case VELOCITY_LOW_FOR_DEPTH, VELOCITY_HIGH_FOR_DEPTH, CONTRADICTORY, FROZEN_LOGGER, EXCHANGED_COLUMNS ->
                    uses.addAll(EnumSet.allOf(ReadingUse.class));
                case CLOCK_OF_MONITOR, CLOCK_OF_GAUGE, SILENT_GAUGE, GAUGE_CATCHES_LESS, GAUGE_WRITES_MORE ->
                    uses.add(ReadingUse.STORM_RESPONSE);
                case HELD_UP,
                        RELEASED,
                        MORE_WATER,
                        LESS_WATER,
                        REVERSE_FLOW,
                        TIDAL,
                        FALSE_STAMPS,
                        BASELINE_DOUBTFUL -> {
                    // Read truly, as far as anyone can tell; readings with a false stamp were left out.
                }
            }
        }
        return uses;
    }

    /**
     * Returns the findings that put a use of the readings in doubt at some time of an interval.
     *
     * @param use what the readings are used for
     * @param interval the interval
     * @return the findings, by number
     */
    public List<Finding> findings(ReadingUse use, Interval interval) {
        return findings.stream()
                .filter(finding -> doubted(finding).contains(use) && finding.overlaps(interval, end))
                .toList();
    }

    /**
     * Returns whether a use of a reading is in doubt.
     *
     * @param use what the reading is used for
     * @param time time of the reading
     * @return whether a finding says so
     */
    public boolean isDoubtful(ReadingUse use, Instant time) {
        return findings.stream().anyMatch(finding -> doubted(finding).contains(use) && finding.contains(time, end));
    }

    /**
     * Returns which readings of a series are in doubt.
     *
     * @param use what the readings are used for
     * @param series the readings
     * @return whether each is in doubt; a new array
     */
    public boolean[] doubtful(ReadingUse use, Series series) {
        boolean[] doubtful = new boolean[series.size()];
        for (Finding finding : findings) {
            if (doubted(finding).contains(use)) {
                for (Interval interval : finding.intervals(end)) {
                    Arrays.fill(
                            doubtful,
                            series.firstIndexAtOrAfter(interval.start()),
                            series.firstIndexAtOrAfter(interval.end()),
                            true);
                }
            }
        }
        return doubtful;
    }

    /**
     * Returns the times in which the rain gauge was perhaps dead, by a finding or by a remark that is not sure enough for one: what
     * seems dry in them may have been wet. They put no reading of the sewer in doubt.
     *
     * @return the times, in order; joined where they overlap
     */
    public List<Interval> silences() {
        return silences;
    }

    /**
     * Returns the share of some dates taken for dry that may have been wet, since the rain gauge was perhaps dead in a quarter of
     * the day or more.
     *
     * @param dryDates dates that are taken for dry
     * @param zone zone in which the dates are meant
     * @return the share, in [0, 1]; 0 without dates
     */
    public double suspectShare(Collection<LocalDate> dryDates, ZoneId zone) {
        return dryDates.stream()
                .map(date -> Interval.of(
                        date.atStartOfDay(zone).toInstant(),
                        date.plusDays(1).atStartOfDay(zone).toInstant()))
                .mapToInt(day ->
                        silences.stream().mapToDouble(day::shareCoveredBy).sum() >= SHARE_OF_DAY ? 1 : 0)
                .average()
                .orElse(0);
    }

    /**
     * Returns where the record should be cut, so that no figure is averaged over two states of the site: where changes of
     * what the site does began and ended. What single readings show (a frozen sensor, drop-outs) and clocks cut nothing.
     *
     * @return instants in order, each once
     */
    public List<Instant> cuts() {
        TreeSet<Instant> cuts = new TreeSet<>();
        for (Finding finding : findings) {
            switch (finding.name()) {
                case VELOCITY_ZEROS,
                        WEAK_ECHO,
                        FALSE_ECHO,
                        FALSE_VELOCITY,
                        SIGN_FLIPS,
                        REVERSE_FLOW,
                        FROZEN_DEPTH,
                        FROZEN_VELOCITY,
                        FROZEN_LOGGER,
                        CONTRADICTORY,
                        OUT_OF_RANGE,
                        DEPTH_UNIT,
                        VELOCITY_UNIT,
                        EXCHANGED_COLUMNS,
                        CLOCK_OF_MONITOR,
                        CLOCK_OF_GAUGE,
                        SILENT_GAUGE,
                        GAUGE_CATCHES_LESS,
                        GAUGE_WRITES_MORE,
                        BASELINE_DOUBTFUL -> {
                    // The site itself did not change.
                }
                default -> {
                    for (FindingStretch stretch : finding.stretches()) {
                        cuts.add(stretch.from());
                        stretch.to().ifPresent(cuts::add);
                    }
                }
            }
        }
        return List.copyOf(new ArrayList<>(cuts));
    }

    @Override
    public String toString() {
        return "DoubtfulReadings[" + findings.size() + " findings, " + cuts().size() + " cuts]";
    }
}
