package dev.runnel.examples.review;

import dev.runnel.hydraulics.watch.Finding;
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
import java.util.stream.Stream;

/**
 * What is usual in dry weather: of the flow, or of the level where there is no velocity. Days of another state of the sewer
 * make a dry weather of their own; doubtful readings make none, nor does a day of which they leave too little.
 *
 * @param isFlow true for flow, false for level
 * @param usual the days that no finding touches
 * @param others the days of each finding that tells of another state
 * @param together the usual days and those of other states as one; empty without others, with too few days, or if most usual
 *     days are suspect
 * @param doubtful dry days left out, since too little of them is beyond doubt, and the finding that leaves most of them out
 * @param doubtfulShare share of the readings of the usual and the doubtful days that is in doubt, and left out
 * @param suspectShare share of the usual days in which the gauge was perhaps dead, so that wet ones may be among them
 * @param unlike what parts the usual days where they are not alike
 * @param unlikeNights what parts their nights where only these are not alike
 * @param against flows beyond doubt, of any weather, that were read against the stream
 * @param states every state of the record side by side
 */
record DryWeather(
        boolean isFlow,
        Spell usual,
        List<Spell> others,
        Optional<Together> together,
        SortedMap<LocalDate, Finding> doubtful,
        double doubtfulShare,
        double suspectShare,
        Optional<UnlikeDays> unlike,
        Optional<UnlikeDays> unlikeNights,
        AgainstStream against,
        DryStates states) {
    /** Fewer days make no profile. */
    static final int FEWEST_DAYS = 3;

    /** Chosen here: a day with readings for less of it tells nothing of a day. */
    private static final double LEAST_OF_DAY = 0.75;

    /** Chosen here: days of which less was seen are not held against each other. */
    private static final double WHOLE_DAY = 0.95;

    private static final Duration SLOT = Duration.ofMinutes(15);

    /**
     * What the dry weather is made of.
     *
     * @param usual the days that no finding touches
     * @param others the days of each finding that tells of another state
     * @param doubtful days left out, and the finding that leaves most of them out
     * @param unlike what parts the usual days where they are not alike
     * @param sound flow or level without what is in doubt
     * @param all the same with it
     */
    record Parts(
            SortedSet<LocalDate> usual,
            Map<Finding, SortedSet<LocalDate>> others,
            SortedMap<LocalDate, Finding> doubtful,
            Optional<UnlikeDays> unlike,
            Series sound,
            Series all) {}

    /** The slot with the largest mean, and what lies around it. */
    record Peak(ProfileSlot slot, double lower, double upper) {}

    /**
     * All days beyond doubt as one: what passed in dry weather, whatever the sewer was like.
     *
     * @param days how many
     * @param mean mean flow, m3/s, or level, m
     */
    record Together(int days, double mean) {}

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

    /** Returns what the figure of usual days rests on; empty where too little does, or most of it on a gauge that may be dead. */
    Optional<DiurnalProfile> figure() {
        return usual.profile().filter(found -> found.emptySlots() == 0).filter(found -> !isMostlySuspect());
    }

    boolean isMostlySuspect() {
        return suspectShare > Doubts.MOST;
    }

    /** What is to be known of the figure of usual days; empty where the gauge was beyond doubt. */
    String suspect() {
        return suspectShare > 0
                ? "; " + Show.percent(suspectShare)
                        + " of the usual days lie in times in which the sewer rose as after rain and the gauge wrote nothing:"
                        + " wet days may be among them"
                : "";
    }

    /** A figure with its unit. */
    String show(double mean) {
        return isFlow ? Show.flow(mean) : Show.mm(mean);
    }

    static DryWeather of(SiteData data, FlowFindings flow, SortedSet<LocalDate> dates, Doubts doubts) {
        boolean isFlow = data.velocity().isPresent();
        Series all = isFlow ? flow.record().flow() : flow.record().level();
        Series series = doubts.withoutDoubtful(isFlow, all);
        SortedSet<LocalDate> usual = new TreeSet<>();
        Map<Finding, SortedSet<LocalDate>> others = new LinkedHashMap<>();
        SortedMap<LocalDate, Finding> doubtful = new TreeMap<>();
        Map<LocalDate, Double> before = shares(flow.days());
        Map<LocalDate, Double> after = series.equals(all)
                ? before
                : shares(GoodDays.in(data.site().zone()).of(series));
        double read = 0;
        double sound = 0;
        for (LocalDate day : dates) {
            double seen = before.getOrDefault(day, 0.0);
            double left = after.getOrDefault(day, 0.0);
            if (seen < LEAST_OF_DAY) {
                continue;
            }
            Optional<Finding> doubt = left < LEAST_OF_DAY ? doubts.mostDoubtOf(isFlow, day) : Optional.empty();
            Optional<Finding> state = doubts.stateOf(day);
            if (doubt.isPresent()) {
                doubtful.put(day, doubt.get());
            } else if (state.isPresent()) {
                others.computeIfAbsent(state.get(), finding -> new TreeSet<>()).add(day);
                continue;
            } else {
                usual.add(day);
            }
            read += seen;
            sound += left;
        }
        double suspect = doubts.suspectShare(usual);
        // A day without its nights has another mean, and is no other day.
        SortedSet<LocalDate> whole = usual.stream()
                .filter(day -> after.getOrDefault(day, 0.0) >= WHOLE_DAY)
                .collect(Collectors.toCollection(TreeSet::new));
        Optional<UnlikeDays> unlike = UnlikeDays.of(series, whole, data.site().zone());
        List<Spell> spells = new ArrayList<>();
        others.forEach(
                (finding, days) -> spells.add(new Spell(Optional.of(finding), days, profile(data, series, days))));
        return new DryWeather(
                isFlow,
                new Spell(Optional.empty(), usual, profile(data, series, usual)),
                List.copyOf(spells),
                suspect > Doubts.MOST ? Optional.empty() : together(data, series, usual, others),
                doubtful,
                read > 0 ? 1 - sound / read : 0,
                suspect,
                unlike,
                unlike.isPresent()
                        ? Optional.empty()
                        : UnlikeDays.ofNights(series, usual, data.site().zone()),
                AgainstStream.of(isFlow ? series : Series.empty()),
                DryStates.of(data, flow, doubts, new Parts(usual, others, doubtful, unlike, series, all)));
    }

    private static Optional<Together> together(
            SiteData data, Series series, SortedSet<LocalDate> usual, Map<Finding, SortedSet<LocalDate>> others) {
        if (others.isEmpty()) {
            return Optional.empty();
        }
        SortedSet<LocalDate> all = Stream.concat(Stream.of(usual), others.values().stream())
                .flatMap(Set::stream)
                .collect(Collectors.toCollection(TreeSet::new));
        return profile(data, series, all)
                .filter(found -> found.emptySlots() == 0)
                .map(found -> new Together(all.size(), found.mean()));
    }

    /** The share of each day with usable readings. */
    private static Map<LocalDate, Double> shares(List<GoodDay> days) {
        return days.stream().collect(Collectors.toMap(GoodDay::date, GoodDay::share));
    }

    static Optional<DiurnalProfile> profile(SiteData data, Series series, SortedSet<LocalDate> days) {
        ProfileRule rule = ProfileRule.standard()
                .withSlot(data.depth().interval().compareTo(SLOT) <= 0 ? SLOT : Duration.ofHours(1))
                .withMinimumDays(FEWEST_DAYS);
        return DiurnalProfile.finest(series, days, data.site().zone(), rule);
    }
}
