package dev.runnel.examples.review;

import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.baseline.DayClass;
import dev.runnel.timeseries.baseline.DiurnalProfile;
import dev.runnel.timeseries.baseline.ProfileRule;
import dev.runnel.timeseries.baseline.ProfileSlot;
import dev.runnel.timeseries.baseline.WeekSplit;
import dev.runnel.timeseries.quality.Verdict;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;

/**
 * What is usual in dry weather: of the flow, or of the level where there is no velocity.
 *
 * @param days the days it rests on
 * @param leftOut dry days left out because their velocity is suspect
 * @param isFlow true for flow, false for level
 * @param profile the profile; empty if there are too few days
 */
record DryWeather(
        SortedSet<LocalDate> days, SortedSet<LocalDate> leftOut, boolean isFlow, Optional<DiurnalProfile> profile) {
    /** Fewer days make no profile. */
    static final int FEWEST_DAYS = 3;

    private static final int FEWEST_WEEKEND_DAYS = 2;
    private static final Duration SLOT = Duration.ofMinutes(15);

    /** The slot with the largest mean, and what lies around it. */
    record Peak(ProfileSlot slot, double lower, double upper) {}

    static DryWeather of(SiteData data, FlowRecord record, SortedSet<LocalDate> dates, EvidenceFindings evidence) {
        SortedSet<LocalDate> leftOut = new TreeSet<>(dates);
        leftOut.retainAll(suspectDays(data, evidence));
        SortedSet<LocalDate> days = new TreeSet<>(dates);
        days.removeAll(leftOut);
        boolean isFlow = data.velocity().isPresent();
        Series series = isFlow ? record.flow() : record.level();
        days.removeIf(day -> !hasReadings(series, day, data));
        return new DryWeather(days, leftOut, isFlow, profile(data, series, days));
    }

    /** Days on which the velocity departed from the usual, or failed a test. */
    private static Set<LocalDate> suspectDays(SiteData data, EvidenceFindings evidence) {
        Set<LocalDate> days = new HashSet<>(evidence.suspectVelocityDays());
        data.velocity()
                .ifPresent(velocity -> velocity.quality().flags().stream()
                        .flatMap(test -> test.raised().stream())
                        .filter(flag -> flag.verdict() == Verdict.FAIL)
                        .forEach(flag -> days.add(
                                LocalDate.ofInstant(flag.time(), data.site().zone()))));
        return days;
    }

    private static boolean hasReadings(Series series, LocalDate day, SiteData data) {
        int first =
                series.firstIndexAtOrAfter(day.atStartOfDay(data.site().zone()).toInstant());
        Instant end = day.plusDays(1).atStartOfDay(data.site().zone()).toInstant();
        return first < series.size() && series.time(first).isBefore(end);
    }

    private static Optional<DiurnalProfile> profile(SiteData data, Series series, SortedSet<LocalDate> days) {
        long weekend = days.stream()
                .filter(day -> WeekSplit.WEEKEND.classOf(day.getDayOfWeek()) == DayClass.WEEKEND)
                .count();
        if (days.size() < FEWEST_DAYS) {
            return Optional.empty();
        }
        ProfileRule rule = ProfileRule.standard()
                .withSlot(data.depth().interval().compareTo(SLOT) <= 0 ? SLOT : Duration.ofHours(1));
        Optional<DiurnalProfile> split = weekend < FEWEST_WEEKEND_DAYS || days.size() - weekend < FEWEST_DAYS
                ? Optional.empty()
                : profile(data, series, days, rule.withMinimumDays(FEWEST_WEEKEND_DAYS));
        return split.filter(profile -> profile.emptySlots() == 0)
                .or(() -> profile(
                        data, series, days, rule.withSplit(WeekSplit.NONE).withMinimumDays(FEWEST_DAYS)));
    }

    private static Optional<DiurnalProfile> profile(
            SiteData data, Series series, SortedSet<LocalDate> days, ProfileRule rule) {
        try {
            return Optional.of(DiurnalProfile.from(series, days, data.site().zone(), rule));
        } catch (IllegalArgumentException e) {
            // Dates enough, but too few of them with usable readings.
            return Optional.empty();
        }
    }

    /** Returns the peak of a class of days with its band from the 10 % to the 90 % quantile. */
    Optional<Peak> peak(DayClass dayClass) {
        return profile.flatMap(found -> found.slots(dayClass).stream()
                .filter(slot -> !Double.isNaN(slot.mean()))
                .max(Comparator.comparingDouble(ProfileSlot::mean))
                .map(slot -> {
                    Instant time = instant(dayClass, slot);
                    return new Peak(slot, found.quantile(time, 0.1), found.quantile(time, 0.9));
                }));
    }

    /** Returns an instant in a slot on one of the days of a class. */
    Instant instant(DayClass dayClass, ProfileSlot slot) {
        DiurnalProfile found = profile.orElseThrow();
        LocalDate day = days.stream()
                .filter(date -> found.rule().classOf(date) == dayClass)
                .findFirst()
                .orElseThrow();
        return day.atTime(slot.start()).atZone(found.zone()).toInstant();
    }

    List<DayClass> classes() {
        return profile.map(found -> found.rule().split().classes()).orElse(List.of());
    }
}
