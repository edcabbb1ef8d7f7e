package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.SpillVolume;
import dev.runnel.hydraulics.monitoring.SurchargePeriod;
import dev.runnel.hydraulics.watch.ReadingUse;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.balance.Discharge;
import dev.runnel.timeseries.balance.Discharges;
import dev.runnel.timeseries.balance.OverflowReturn;
import dev.runnel.timeseries.balance.SpillCount;
import dev.runnel.timeseries.quality.QualityReport;
import dev.runnel.timeseries.quality.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The spills of an overflow with their volumes, and the lines of the annual return.
 *
 * @param spills each spill
 * @param returns a line for each calendar year, and for each bathing season if the site file names one
 */
record SpillReturn(List<Spill> spills, List<OverflowReturn> returns) {
    /**
     * A spill.
     *
     * @param period how high and how long the water stood above the crest
     * @param discharge when it counts, with its volume; uncertain if the level that tells of it is
     * @param volume what went over the weir, if the site file tells of one
     * @param raised the same with the level higher by two standard uncertainties, if they are stated
     * @param lowered the same with the level lower
     */
    record Spill(
            SurchargePeriod period,
            Discharge discharge,
            Optional<SpillVolume> volume,
            Optional<SpillVolume> raised,
            Optional<SpillVolume> lowered) {}

    /** Returns the spills; empty if the site has no overflow. */
    static Optional<SpillReturn> of(SiteData data, FlowFindings flow, Doubts doubts) {
        return flow.spills().map(found -> {
            Series level = flow.record().level();
            List<Interval> counted = Discharges.widened(
                    found.periods().stream().map(SurchargePeriod::interval).toList(),
                    data.depth().interval());
            List<Spill> spills = new ArrayList<>();
            for (int i = 0; i < counted.size(); i++) {
                spills.add(spill(data, level, found.periods().get(i), counted.get(i), doubts));
            }
            return new SpillReturn(List.copyOf(spills), returns(data, level, spills));
        });
    }

    private static Spill spill(SiteData data, Series level, SurchargePeriod period, Interval counted, Doubts doubts) {
        double crest = data.site().crestLevel().orElseThrow();
        double twice = data.site()
                .checks()
                .uncertainty()
                .map(found -> 2 * found.depth())
                .orElse(0.0);
        Optional<Site.OverflowWeir> weir = data.site().weir();
        Optional<SpillVolume> volume = weir.map(found -> volume(found, crest, level, counted, data.longestGap()));
        boolean isDoubtful = doubts.readings()
                .map(found -> found.isDoubtful(ReadingUse.DEPTH, period.peakTime()))
                .orElse(false);
        Discharge discharge = Discharge.of(counted);
        discharge = volume.map(SpillVolume::volume).map(discharge::withVolume).orElse(discharge);
        boolean isCertain = period.peakAbove() > twice && !isDoubtful && !isUnsure(data, level, crest, period);
        Optional<Site.OverflowWeir> stated = weir.filter(found -> twice > 0);
        return new Spill(
                period,
                isCertain ? discharge : discharge.asUncertain(),
                volume,
                stated.map(found -> volume(found, crest - twice, level, counted, data.longestGap())),
                stated.map(found -> volume(found, crest + twice, level, counted, data.longestGap())));
    }

    /**
     * A level that stood above the crest only in readings that a test calls unusual, or in one alone that no test could judge, may be
     * an echo of something else.
     */
    private static boolean isUnsure(SiteData data, Series level, double crest, SurchargePeriod period) {
        int from = level.firstIndexAtOrAfter(period.interval().start());
        for (int i = from;
                i < level.size() && !level.time(i).isAfter(period.interval().end());
                i++) {
            if (level.value(i) > crest
                    && level.quality(i).isUsable()
                    && level.quality(i) != Quality.POOR
                    && (period.readings() > 1 || isJudged(data.depth().quality(), level.time(i)))) {
                return false;
            }
        }
        return true;
    }

    /** Whether a test of readings beside each other could say anything of one; the range says nothing of echoes. */
    private static boolean isJudged(QualityReport report, Instant time) {
        int at = report.series().firstIndexAtOrAfter(time);
        return report.flags().stream()
                .filter(flags -> !flags.check().equals("range"))
                .anyMatch(flags -> flags.verdict(at) != Verdict.NOT_EVALUATED);
    }

    private static SpillVolume volume(
            Site.OverflowWeir weir, double crest, Series level, Interval counted, Duration gap) {
        return SpillVolume.of(weir.law(), crest, weir.lowestHead(), level, counted, gap);
    }

    private static List<OverflowReturn> returns(SiteData data, Series level, List<Spill> spills) {
        Site site = data.site();
        List<Discharge> discharges = spills.stream().map(Spill::discharge).toList();
        List<Interval> observed = observed(level, data.longestGap());
        int first = LocalDate.ofInstant(data.record().start(), site.zone()).getYear();
        int last = LocalDate.ofInstant(data.record().end().minusNanos(1), site.zone())
                .getYear();
        SpillCount rule = SpillCount.twelveTwentyFour();
        List<OverflowReturn> returns = new ArrayList<>();
        for (int year = first; year <= last; year++) {
            returns.add(OverflowReturn.ofYear(site.name(), year, site.zone(), rule, discharges, observed));
            if (site.bathingSeason().isPresent()) {
                Site.Season season = site.bathingSeason().get();
                returns.add(OverflowReturn.ofSeason(
                        site.name(), year, season.first(), season.last(), site.zone(), rule, discharges, observed));
            }
        }
        return List.copyOf(returns);
    }

    /** When a spill could be seen: between usable readings that follow each other. */
    private static List<Interval> observed(Series level, Duration gap) {
        List<Interval> observed = new ArrayList<>();
        Instant from = Instant.MIN;
        Instant to = Instant.MIN;
        for (int i = 0; i < level.size(); i++) {
            if (!level.quality(i).isUsable()) {
                continue;
            }
            Instant time = level.time(i);
            if (from.equals(Instant.MIN) || Duration.between(to, time).compareTo(gap) > 0) {
                if (to.isAfter(from)) {
                    observed.add(Interval.of(from, to));
                }
                from = time;
            }
            to = time;
        }
        if (to.isAfter(from)) {
            observed.add(Interval.of(from, to));
        }
        return observed;
    }

    /** Volume of all spills of which it is known, m3. */
    double volume() {
        return sum(spills.stream().flatMap(spill -> spill.volume().stream()).toList());
    }

    /** The same with the level higher by two standard uncertainties. */
    double raised() {
        return sum(spills.stream().flatMap(spill -> spill.raised().stream()).toList());
    }

    /** The same with the level lower. */
    double lowered() {
        return sum(spills.stream().flatMap(spill -> spill.lowered().stream()).toList());
    }

    /** The part of the volume that went over at heads at which the law is not to be trusted. */
    double below() {
        return spills.stream()
                .flatMap(spill -> spill.volume().stream())
                .mapToDouble(SpillVolume::below)
                .filter(Double::isFinite)
                .sum();
    }

    private static double sum(List<SpillVolume> volumes) {
        return volumes.stream()
                .mapToDouble(SpillVolume::volume)
                .filter(Double::isFinite)
                .sum();
    }

    /** How many spills may have been none. */
    long uncertain() {
        return spills.stream().filter(spill -> !spill.discharge().isCertain()).count();
    }

    /** How many have a volume that is not known, though there is a weir. */
    long withoutVolume() {
        return spills.stream()
                .filter(spill -> spill.volume()
                        .map(found -> Double.isNaN(found.volume()))
                        .orElse(false))
                .count();
    }
}
