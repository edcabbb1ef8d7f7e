package dev.runnel.examples.review;

import dev.runnel.hydraulics.evidence.DailyEvidence;
import dev.runnel.hydraulics.evidence.DriftEvidence;
import dev.runnel.hydraulics.evidence.DriftRule;
import dev.runnel.hydraulics.monitoring.FlowRecord;
import dev.runnel.timeseries.Statistics;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;

/**
 * Days on which depth and velocity do not hang together as they do on most days, and what that points to.
 *
 * @param days what the monitor saw on each dry day
 * @param departures spells of days that depart from the others
 */
record EvidenceFindings(List<DailyEvidence> days, List<Departure> departures) {
    /** Fewer days tell nothing of what is usual. */
    static final int FEWEST_DAYS = 5;

    /** Chosen here: measured velocity over the law's differs by that share from the median of all days. */
    private static final double RATIO_TOLERANCE = 0.15;

    /** Chosen here: depth and flow differ by less than that share from the usual. */
    private static final double UNCHANGED = 0.12;

    private static final double LEAST_COVERAGE = 0.75;
    private static final int MOST_DAYS_BETWEEN = 4;
    private static final int DAYS_BEFORE = 2;
    private static final int FEWEST_DRIFT_DAYS = 7;

    /** What a departure points to. A person has to look. */
    enum Pointer {
        /** The velocity fell and the depth did not: the velocity sensor. */
        VELOCITY_SENSOR,
        /** The depth rose at the same flow: something downstream holds the water up. */
        HELD_UP,
        /** Neither of the two. */
        OTHER
    }

    /**
     * A spell of days that depart from the others in the same way.
     *
     * @param pointer what it points to
     * @param days the days, in order
     * @param usualLevel median level of the other days, m
     * @param usualRatio median of measured over law velocity of all days
     * @param usualFlow median of the mean flows of the other days, m3/s
     * @param drift what the test for drift says of these days together with some days before them
     */
    record Departure(
            Pointer pointer,
            List<DailyEvidence> days,
            double usualLevel,
            double usualRatio,
            double usualFlow,
            Optional<DriftEvidence> drift) {
        DailyEvidence first() {
            return days.get(0);
        }

        DailyEvidence last() {
            return days.get(days.size() - 1);
        }

        /** Returns the day on which the velocity was farthest from the usual. */
        DailyEvidence worst() {
            return days.stream()
                    .max(java.util.Comparator.comparingDouble(day -> Math.abs(day.medianRatio() - usualRatio)))
                    .orElseThrow();
        }
    }

    static EvidenceFindings of(FlowRecord record, Set<LocalDate> dates, ZoneId zone) {
        List<DailyEvidence> days = DailyEvidence.of(record, dates, zone).stream()
                .filter(day -> day.coverage() >= LEAST_COVERAGE)
                .toList();
        List<Departure> departures = days.size() < FEWEST_DAYS ? List.of() : departures(days);
        return new EvidenceFindings(
                days,
                departures.stream()
                        .map(departure -> withDrift(departure, days, DriftRule.of(record.monitor())))
                        .toList());
    }

    /** The days of a departure alone do not show where it came from: some before them go into the test. */
    private static Departure withDrift(Departure departure, List<DailyEvidence> days, DriftRule rule) {
        int last = days.indexOf(departure.last());
        int first = Math.max(0, days.indexOf(departure.first()) - DAYS_BEFORE);
        int fewest = Math.max(0, last - FEWEST_DRIFT_DAYS + 1);
        DriftEvidence drift = rule.evidence(
                days, days.get(Math.min(first, fewest)).date(), departure.last().date());
        return new Departure(
                departure.pointer(),
                departure.days(),
                departure.usualLevel(),
                departure.usualRatio(),
                departure.usualFlow(),
                Optional.of(drift));
    }

    private static List<Departure> departures(List<DailyEvidence> days) {
        double usualRatio = median(days, DailyEvidence::medianRatio);
        List<DailyEvidence> usual =
                days.stream().filter(day -> isUsual(day, usualRatio)).toList();
        List<Departure> departures = new ArrayList<>();
        for (DailyEvidence day : days) {
            if (!isUsual(day, usualRatio)) {
                Departure alone = departure(day, usual, usualRatio);
                Optional<Departure> before = departures.stream()
                        .filter(other -> other.pointer() == alone.pointer())
                        .filter(other -> ChronoUnit.DAYS.between(other.last().date(), day.date()) <= MOST_DAYS_BETWEEN)
                        .findFirst();
                before.ifPresent(departures::remove);
                departures.add(before.map(other -> joined(other, alone)).orElse(alone));
            }
        }
        return departures;
    }

    private static boolean isUsual(DailyEvidence day, double usualRatio) {
        return Math.abs(day.medianRatio() - usualRatio) <= RATIO_TOLERANCE * usualRatio;
    }

    /** Compares a day with the usual days of its kind: depth and flow of a weekend are others than those of a weekday. */
    private static Departure departure(DailyEvidence day, List<DailyEvidence> usual, double usualRatio) {
        List<DailyEvidence> alike = usual.stream()
                .filter(other -> isWeekend(other.date()) == isWeekend(day.date()))
                .toList();
        List<DailyEvidence> compared = alike.isEmpty() ? usual : alike;
        double level = median(compared, DailyEvidence::medianLevel);
        double flow = median(compared, DailyEvidence::meanFlow);
        Pointer pointer = Pointer.OTHER;
        if (day.medianRatio() < usualRatio) {
            if (Math.abs(day.medianLevel() - level) <= UNCHANGED * level) {
                pointer = Pointer.VELOCITY_SENSOR;
            } else if (day.medianLevel() > level && Math.abs(day.meanFlow() - flow) <= UNCHANGED * flow) {
                pointer = Pointer.HELD_UP;
            }
        }
        return new Departure(pointer, List.of(day), level, usualRatio, flow, Optional.empty());
    }

    private static Departure joined(Departure before, Departure day) {
        List<DailyEvidence> days = new ArrayList<>(before.days());
        days.addAll(day.days());
        return new Departure(
                before.pointer(),
                List.copyOf(days),
                before.usualLevel(),
                before.usualRatio(),
                before.usualFlow(),
                Optional.empty());
    }

    /** Returns the days whose flow is not to be relied on. */
    Set<LocalDate> suspectVelocityDays() {
        return departures.stream()
                .filter(departure -> departure.pointer() == Pointer.VELOCITY_SENSOR)
                .flatMap(departure -> departure.days().stream())
                .map(DailyEvidence::date)
                .collect(Collectors.toSet());
    }

    private static boolean isWeekend(LocalDate date) {
        return date.getDayOfWeek() == DayOfWeek.SATURDAY || date.getDayOfWeek() == DayOfWeek.SUNDAY;
    }

    private static double median(List<DailyEvidence> days, ToDoubleFunction<DailyEvidence> value) {
        return Statistics.of(days.stream().mapToDouble(value).toArray()).median();
    }
}
