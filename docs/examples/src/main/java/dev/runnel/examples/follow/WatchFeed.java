package dev.runnel.examples.follow;

import dev.runnel.examples.review.Site;
import dev.runnel.examples.review.SiteRules;
import dev.runnel.hydraulics.monitoring.MonitorHistory;
import dev.runnel.hydraulics.watch.BaselineSearch;
import dev.runnel.hydraulics.watch.SiteBaseline;
import dev.runnel.hydraulics.watch.SiteReading;
import dev.runnel.hydraulics.watch.SiteRecord;
import dev.runnel.hydraulics.watch.WatchNotice;
import dev.runnel.hydraulics.watch.WatchRule;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.Interval;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Gives the readings of a site to the watch: first they are kept in a file until what is usual can be learned from them,
 * then the watch gets them all.
 */
final class WatchFeed {
    private static final String STATE = "watch-feed";
    private static final String WATCH = "/watch";
    private static final List<String> LEARNING = List.of("time_utc", "depth_m", "velocity_m_per_s", "rain_mm");

    /** Days before which no stretch of the default length is full. */
    private static final int FIRST_TRY = 14;

    /** Chosen here: after two months without a baseline it is tried once a week only. */
    private static final int DAILY_TRIES = 60;

    private static final int LATER_TRIES = 7;

    private final Site site;
    private final MonitorHistory monitors;
    private final String id;
    private final OutputFiles outputs;
    private final Consumer<String> print;
    private final String findings;
    private final String book;
    private final List<SiteReading> kept = new ArrayList<>();
    private Optional<SiteBaseline> baseline = Optional.empty();
    private Optional<Slot<SiteReading, WatchNotice>> watch = Optional.empty();
    private boolean isGivenUp;
    private LocalDate firstDay = LocalDate.MAX;
    private LocalDate lastTry = LocalDate.MIN;

    WatchFeed(
            Site site,
            MonitorHistory monitors,
            OutputFiles outputs,
            Map<String, String> state,
            Consumer<String> print) {
        this.site = site;
        this.monitors = monitors;
        this.id = site.id();
        this.outputs = outputs;
        this.print = print;
        this.findings = id + "/findings.csv";
        this.book = id + "/learning.csv";
        String stored = state.get(id + "/feed");
        if (stored != null) {
            StateText text = StateText.parse(STATE, 1, stored);
            isGivenUp = text.flag("givenup");
            firstDay = LocalDate.ofEpochDay(text.count("first"));
            lastTry = LocalDate.ofEpochDay(text.count("try"));
            if (text.has("baseline")) {
                baseline = Optional.of(SiteBaseline.parse(site.monitor(), text.text("baseline")));
                watch = Optional.of(slot(baseline.get(), state));
            } else if (!isGivenUp) {
                outputs.lines(book).stream().skip(1).map(WatchFeed::reading).forEach(kept::add);
            }
        }
    }

    private static SiteReading reading(String line) {
        String[] cells = line.split(",", -1);
        return new SiteReading(
                Instant.parse(cells[0]),
                Double.parseDouble(cells[1]),
                Double.parseDouble(cells[2]),
                Double.parseDouble(cells[3]));
    }

    void save(Map<String, String> state) {
        StateText text = StateText.of(STATE, 1)
                .with("givenup", isGivenUp)
                .with("first", clamped(firstDay))
                .with("try", clamped(lastTry));
        state.put(
                id + "/feed",
                baseline.map(found -> text.with("baseline", found.toText()))
                        .orElse(text)
                        .toString());
        watch.ifPresent(slot -> slot.save(state));
    }

    private static long clamped(LocalDate day) {
        return Math.max(-1_000_000, Math.min(1_000_000, day.toEpochDay()));
    }

    /** Settings that get another date do not end what the watch knows. */
    private Slot<SiteReading, WatchNotice> slot(SiteBaseline found, Map<String, String> state) {
        WatchRule rule = SiteRules.watch(site, found);
        return Slot.of(id + WATCH, rule.toString(), rule.withMonitors(monitors), state, print);
    }

    void next(SiteReading reading) {
        if (watch.isPresent()) {
            watch.get().next(reading).forEach(this::tell);
            return;
        }
        if (isGivenUp) {
            return;
        }
        tryToLearn(reading.time());
        if (watch.isPresent()) {
            watch.get().next(reading).forEach(this::tell);
            return;
        }
        kept.add(reading);
        outputs.add(book, LEARNING, List.of(reading.time(), reading.depth(), reading.velocity(), reading.rain()));
    }

    /** Tries once a day, before its first reading, so that it does not matter how the files were read. */
    private void tryToLearn(Instant now) {
        LocalDate day = LocalDate.ofInstant(now, site.zone());
        if (kept.isEmpty()) {
            firstDay = day;
        }
        if (!day.isAfter(lastTry) || kept.isEmpty()) {
            return;
        }
        Optional<Interval> chosen = site.usual().baseline();
        long days = ChronoUnit.DAYS.between(firstDay, day);
        boolean isTime = chosen.isPresent()
                ? !now.isBefore(chosen.get().end())
                : days > FIRST_TRY && (days <= DAILY_TRIES || days % LATER_TRIES == 0);
        if (!isTime) {
            return;
        }
        lastTry = day;
        BaselineSearch search = SiteRules.baseline(site, monitors).learn(SiteRecord.ofReadings(kept));
        search.baseline().ifPresentOrElse(found -> begin(found, now), () -> {
            if (chosen.isPresent()) {
                isGivenUp = true;
                kept.clear();
                outputs.add(findings, Words.FINDING, Words.learned(now, "not learned", search.describe()));
                print.accept(now + "  " + site.name()
                        + "  nothing is watched: the baseline in the site file failed its tests");
            }
        });
    }

    private void begin(SiteBaseline found, Instant now) {
        baseline = Optional.of(found);
        outputs.add(findings, Words.FINDING, Words.learned(now, "learned", "from " + found.interval()));
        print.accept(now + "  " + site.name() + "  what is usual was learned from " + found.interval());
        Slot<SiteReading, WatchNotice> started = slot(found, Map.of());
        kept.forEach(reading -> started.next(reading).forEach(this::tell));
        kept.clear();
        watch = Optional.of(started);
    }

    private void tell(WatchNotice notice) {
        outputs.add(findings, Words.FINDING, Words.row(notice));
        print.accept(Words.line(site.name(), notice));
    }

    void finish() {
        watch.ifPresent(slot -> slot.finish().forEach(this::tell));
    }

    /** Longest time for which a reading waits for what belongs to it, by the clock of the readings. */
    static Duration patience() {
        return Duration.ofHours(6);
    }
}
