package dev.runnel.examples.review;

import dev.runnel.hydraulics.evidence.Finding;
import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.baseline.DayClass;
import dev.runnel.timeseries.baseline.DiurnalProfile;
import dev.runnel.timeseries.baseline.ProfileRule;
import dev.runnel.timeseries.baseline.ProfileSlot;
import dev.runnel.timeseries.quality.GoodDay;
import dev.runnel.timeseries.quality.GoodDays;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.SortedSet;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * What is usual in dry weather: of the flow, or of the level where there is no velocity. Days of another state of the sewer
 * make a dry weather of their own; days whose flow is doubtful make none.
 *
 * @param isFlow true for flow, false for level
 * @param usual the days that no finding touches
 * @param others the days of each finding that tells of another state
 * @param doubtful dry days left out, and the finding that makes them doubtful
 */
record DryWeather(boolean isFlow, Spell usual, List<Spell> others, SortedMap<LocalDate, Finding> doubtful) {
    /** Fewer days make no profile. */
    static final int FEWEST_DAYS = 3;

    /** Chosen here: a day with readings for less of it tells nothing of a day. */
    private static final double LEAST_OF_DAY = 0.75;

    private static final Duration SLOT = Duration.ofMinutes(15);

    /** The slot with the largest mean, and what lies around it. */
    record Peak(ProfileSlot slot, double lower, double upper) {}

    /**
     * Days that belong together.
     *
     * @param finding what parts them from the usual days; empty for those
     * @param days the dry days with readings
     * @param profile the profile; empty if there are too few days
     */
    record Spell(Optional<Finding> finding, SortedSet<LocalDate> days, Optional<DiurnalProfile> profile) {
        List<DayClass> classes() {
            return profile.map(found -> found.rule().split().classes()).orElse(List.of());
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
    }

    static DryWeather of(SiteData data, FlowRecord record, SortedSet<LocalDate> dates, Doubts doubts) {
        boolean isFlow = data.velocity().isPresent();
        Series series = isFlow ? record.flow() : record.level();
        SortedSet<LocalDate> usual = new TreeSet<>();
        Map<Finding, SortedSet<LocalDate>> others = new LinkedHashMap<>();
        SortedMap<LocalDate, Finding> doubtful = new TreeMap<>();
        Set<LocalDate> told = GoodDays.in(data.site().zone()).of(series).stream()
                .filter(day -> day.share() >= LEAST_OF_DAY)
                .map(GoodDay::date)
                .collect(Collectors.toSet());
        for (LocalDate day : dates) {
            if (!told.contains(day)) {
                continue;
            }
            Optional<Finding> doubt = isFlow ? doubts.doubtOf(day) : Optional.empty();
            Optional<Finding> state = doubts.stateOf(day);
            if (doubt.isPresent()) {
                doubtful.put(day, doubt.get());
            } else if (state.isPresent()) {
                others.computeIfAbsent(state.get(), finding -> new TreeSet<>()).add(day);
            } else {
                usual.add(day);
            }
        }
        List<Spell> spells = new ArrayList<>();
        others.forEach(
                (finding, days) -> spells.add(new Spell(Optional.of(finding), days, profile(data, series, days))));
        return new DryWeather(
                isFlow,
                new Spell(Optional.empty(), usual, profile(data, series, usual)),
                List.copyOf(spells),
                doubtful);
    }

    private static Optional<DiurnalProfile> profile(SiteData data, Series series, SortedSet<LocalDate> days) {
        ProfileRule rule = ProfileRule.standard()
                .withSlot(data.depth().interval().compareTo(SLOT) <= 0 ? SLOT : Duration.ofHours(1))
                .withMinimumDays(FEWEST_DAYS);
        return DiurnalProfile.finest(series, days, data.site().zone(), rule);
    }
}
