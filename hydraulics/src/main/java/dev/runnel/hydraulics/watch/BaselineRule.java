package dev.runnel.hydraulics.watch;

import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.apiguardian.api.API;

/**
 * Learns what is normal at a site from an interval that a person chose, or from the first stretch that passes the tests of
 * stability. Immutable and thread-safe.
 *
 * <p>A stretch is 14 days, longer (up to 42) until it holds 100 dry hours. It is refused if readings are missing for more
 * than half of it, if a sensor was frozen or the velocity often 0, or if daily medians show a step or a trend that is larger
 * than the site's own scatter: of the velocity at the same depth where it is measured, of the dry depth where it is not. The
 * search begins at the first reading and goes on by days; of a stretch with a step the days before it are taken if they are eight
 * or more and the step does not look like the end of a fault, else it goes on behind the step. Whatever passes is never used on
 * itself: the {@link WatchRule watch} does not judge the days it learned from. Where velocity is watched, a stretch that passes is
 * looked at once more together with the seven days after it, as far as they are known: if velocity and depth part within it as if the
 * depth sensor were moved, the days before that are taken.
 *
 * <p>What this is not: a test that the monitor was installed well. A fault that was there from the first day, and does not
 * change, passes.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class BaselineRule {
    static final int LEAST_DAYS = 5;
    static final int LARGEST_DAYS = 366;

    /** Length of a stretch to learn from, two whole weeks; chosen here. */
    private static final int USUAL_DAYS = 14;

    /** How far back a stretch is searched; chosen here. */
    private static final int LONGEST_SEARCH_DAYS = 42;

    /** Days before a step from which on they are learned from: of fewer no trend can be told; chosen here. */
    private static final int LEAST_DAYS_BEFORE_STEP = 8;

    /** Days after a stretch that are looked at, as far as they are known, for a shift of the depth within it; chosen here. */
    private static final int DAYS_AFTER = 7;

    /** Bound of the work of a search; chosen here. */
    private static final int MOST_TRIES = 200;

    /** While learning, longer runs of equal readings are taken for a frozen sensor. */
    private static final long LEARNING_DEPTH_RUN = Duration.ofHours(24).toNanos();

    private static final long LEARNING_VELOCITY_RUN = Duration.ofHours(10).toNanos();

    private final PipeMonitor monitor;
    private final MonitorHistory monitors;
    private final ZoneId zone;
    private final Set<DayOfWeek> restDays;
    private final Set<LocalDate> holidays;
    private final Optional<Interval> interval;
    private final int days;

    private BaselineRule(
            PipeMonitor monitor,
            MonitorHistory monitors,
            ZoneId zone,
            Set<DayOfWeek> restDays,
            Set<LocalDate> holidays,
            Optional<Interval> interval,
            int days) {
        this.monitor = monitor;
        this.monitors = monitors;
        this.zone = zone;
        this.restDays = restDays;
        this.holidays = holidays;
        this.interval = interval;
        this.days = days;
    }

    /**
     * Returns the rule that searches a stretch of 14 days, with days by UTC and Saturday and Sunday as days of rest.
     *
     * @param monitor the monitor that reads the site
     * @return the rule
     */
    public static BaselineRule of(PipeMonitor monitor) {
        Objects.requireNonNull(monitor, "monitor");
        return new BaselineRule(
                monitor,
                MonitorHistory.of(monitor),
                ZoneOffset.UTC,
                Set.of(DayOfWeek.SATURDAY, DayOfWeek.SUNDAY),
                Set.of(),
                Optional.empty(),
                USUAL_DAYS);
    }

    /**
     * Returns this rule with settings of the monitor that change with time: each level and each flow is that of the sensor
     * and the bed of its date.
     *
     * @param monitors the settings by date, in the clean section of the monitor
     * @return the rule
     * @throws IllegalArgumentException if they are of another clean section
     */
    public BaselineRule withMonitors(MonitorHistory monitors) {
        return new BaselineRule(
                monitor, WatchRule.sameSection(monitor, monitors), zone, restDays, holidays, interval, days);
    }

    /**
     * Returns this rule with the civil days of a zone, which people's habits follow.
     *
     * @param zone zone of the site
     * @return the rule
     */
    public BaselineRule withZone(ZoneId zone) {
        return new BaselineRule(
                monitor, monitors, Objects.requireNonNull(zone, "zone"), restDays, holidays, interval, days);
    }

    /**
     * Returns this rule with other days of rest, which have a course of the day of their own.
     *
     * @param restDays days of the week
     * @return the rule
     */
    public BaselineRule withRestDays(Set<DayOfWeek> restDays) {
        Objects.requireNonNull(restDays, "restDays");
        return new BaselineRule(monitor, monitors, zone, Set.copyOf(restDays), holidays, interval, days);
    }

    /**
     * Returns this rule with holidays, which count as days of rest.
     *
     * @param holidays civil dates
     * @return the rule
     */
    public BaselineRule withHolidays(Set<LocalDate> holidays) {
        Objects.requireNonNull(holidays, "holidays");
        return new BaselineRule(monitor, monitors, zone, restDays, Set.copyOf(holidays), interval, days);
    }

    /**
     * Returns this rule with an interval that someone chose. It must pass the same tests.
     *
     * @param interval the interval; from 5 to 366 days
     * @return the rule
     * @throws IllegalArgumentException if it is shorter or longer
     */
    public BaselineRule withInterval(Interval interval) {
        double length = interval.hours() / 24;
        if (!(length >= LEAST_DAYS && length <= LARGEST_DAYS)) {
            throw new IllegalArgumentException(
                    "interval must be 5 to 366 days, was " + Text.fixed(length, 2) + " days");
        }
        return new BaselineRule(monitor, monitors, zone, restDays, holidays, Optional.of(interval), days);
    }

    /**
     * Returns this rule with another least length of a stretch it searches.
     *
     * @param days days; from 5 to 42
     * @return the rule, without a chosen interval
     * @throws IllegalArgumentException if there are fewer or more
     */
    public BaselineRule withDays(int days) {
        Require.inRange("days", days, LEAST_DAYS, LONGEST_SEARCH_DAYS, "");
        return new BaselineRule(monitor, monitors, zone, restDays, holidays, Optional.empty(), days);
    }

    /**
     * Learns from a record.
     *
     * @param record the readings of the site
     * @return the baseline, or why there is none
     */
    public BaselineSearch learn(SiteRecord record) {
        if (interval.isPresent()) {
            // A week before, so that wet hours are known from the first one on.
            Interval chosen = interval.orElseThrow();
            Gathering hours = new Gathering(
                    record,
                    record.firstAtOrAfter(chosen.start().minus(Duration.ofDays(7))),
                    record.firstAtOrAfter(chosen.end()));
            Trial trial = trial(hours, chosen);
            return new BaselineSearch(trial.baseline, trial.refused(), Optional.empty());
        }
        return search(record);
    }

    /** The hours of a record, gathered as far as they are asked for: most searches end with the first weeks. */
    private final class Gathering {
        private final SiteRecord record;
        private final LearningHours hours = new LearningHours();
        private final HourGatherer gatherer =
                new HourGatherer(monitors, LEARNING_DEPTH_RUN, LEARNING_VELOCITY_RUN, hours);
        private final int to;
        private int next;

        Gathering(SiteRecord record, int from, int to) {
            this.record = record;
            this.next = from;
            this.to = to;
        }

        LearningHours until(Instant end) {
            long limit = EpochNanos.of(end);
            while (next < to && record.time(next) < limit) {
                gatherer.add(record.time(next), record.depth(next), record.velocity(next), record.rain(next));
                next++;
            }
            if (next >= to || record.time(next) >= limit) {
                gatherer.end();
            }
            return hours;
        }
    }

    private BaselineSearch search(SiteRecord record) {
        List<BaselineSearch.Refused> refused = new ArrayList<>();
        if (record.size() == 0) {
            return new BaselineSearch(
                    Optional.empty(),
                    List.of(new BaselineSearch.Refused(
                            Interval.of(Instant.EPOCH, Instant.EPOCH), List.of("there are no readings"))),
                    Optional.empty());
        }
        Gathering hours = new Gathering(record, 0, record.size());
        long start = Math.floorDiv(record.time(0), SiteHour.NANOS);
        long end = Math.floorDiv(record.time(record.size() - 1), SiteHour.NANOS) + 1;
        for (int attempt = 0; attempt < MOST_TRIES; attempt++) {
            long hoursWanted = days * 24L;
            Trial trial = trial(hours, stretch(start, start + hoursWanted));
            while (trial.lacksDryHours && hoursWanted < LONGEST_SEARCH_DAYS * 24L && start + hoursWanted + 24 <= end) {
                hoursWanted += 24;
                trial = trial(hours, stretch(start, start + hoursWanted));
            }
            if (trial.baseline.isPresent()) {
                return beforeShift(hours, trial, refused);
            }
            refused.addAll(trial.refused());
            if (trial.step >= start + LEAST_DAYS_BEFORE_STEP * 24L && !trial.fit.faultCameFirst()) {
                // What came first counts as usual, not what it became.
                Trial before = trial(hours, stretch(start, trial.step), BaselineFit.LEAST_DRY_HOURS_BEFORE_STEP);
                if (before.baseline.isPresent()) {
                    return new BaselineSearch(before.baseline, refused, Optional.empty());
                }
            }
            start = Math.max(start + 24, trial.step);
            if (start + days * 24L > end) {
                break;
            }
        }
        return new BaselineSearch(Optional.empty(), refused, Optional.empty());
    }

    /** Of a stretch that passes the days before a shift of the depth, if the days after it show one and those can be learned from. */
    private BaselineSearch beforeShift(Gathering hours, Trial passed, List<BaselineSearch.Refused> refused) {
        Optional<DepthShift.Found> shift = shift(hours, passed);
        if (shift.isEmpty()) {
            return new BaselineSearch(passed.baseline, refused, Optional.empty());
        }
        DepthShift.Found found = shift.orElseThrow();
        long start = Math.floorDiv(passed.fit.stretch().start().getEpochSecond(), 3600L);
        boolean isLearned =
                found.hour() < Math.floorDiv(passed.fit.stretch().end().getEpochSecond(), 3600L);
        if (isLearned && found.hour() >= start + LEAST_DAYS_BEFORE_STEP * 24L) {
            Trial before = trial(hours, stretch(start, found.hour()), BaselineFit.LEAST_DRY_HOURS_BEFORE_STEP);
            if (before.baseline.isPresent()) {
                BaselineSearch.Shift told = found.told(false);
                refused.add(new BaselineSearch.Refused(passed.fit.stretch(), List.of(told.toString())));
                return new BaselineSearch(before.baseline, refused, Optional.of(told));
            }
        }
        return new BaselineSearch(passed.baseline, refused, Optional.of(found.told(isLearned)));
    }

    private Optional<DepthShift.Found> shift(Gathering hours, Trial passed) {
        SiteBaseline baseline = passed.baseline.orElseThrow();
        if (!baseline.watches(Quantity.VELOCITY_AT_DEPTH) || baseline.isTidal()) {
            return Optional.empty();
        }
        Interval stretch = passed.fit.stretch();
        Interval longer = Interval.of(stretch.start(), stretch.end().plus(Duration.ofDays(DAYS_AFTER)));
        return DepthShift.of(
                new StretchHours(hours.until(longer.end()), longer, new LocalHours(zone, restDays, holidays)));
    }

    private static Interval stretch(long fromHour, long toHour) {
        return Interval.of(Instant.ofEpochSecond(fromHour * 3600), Instant.ofEpochSecond(toHour * 3600));
    }

    private Trial trial(Gathering hours, Interval stretch) {
        return trial(hours, stretch, BaselineFit.LEAST_DRY_HOURS);
    }

    private Trial trial(Gathering hours, Interval stretch, int leastDryHours) {
        return new Trial(new BaselineFit(
                monitor, monitors, hours.until(stretch.end()), stretch, leastDryHours, zone, restDays, holidays));
    }

    /** What one stretch gave. */
    private static final class Trial {
        private final BaselineFit fit;
        private final Optional<SiteBaseline> baseline;
        private final boolean lacksDryHours;
        private final long step;

        Trial(BaselineFit fit) {
            this.fit = fit;
            this.baseline = fit.baseline();
            this.lacksDryHours = fit.lacksDryHours();
            this.step = fit.step();
        }

        List<BaselineSearch.Refused> refused() {
            return baseline.isPresent() ? List.of() : List.of(new BaselineSearch.Refused(fit.stretch(), fit.reasons()));
        }
    }

    @Override
    public String toString() {
        return "BaselineRule["
                + interval.map(Interval::toString).orElse("first stable stretch of " + days + " days") + ", zone "
                + zone + "]";
    }
}
