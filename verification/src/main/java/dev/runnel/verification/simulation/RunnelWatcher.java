package dev.runnel.verification.simulation;

import dev.runnel.hydraulics.flow.Conduit;
import dev.runnel.hydraulics.flow.Gradient;
import dev.runnel.hydraulics.flow.Manning;
import dev.runnel.hydraulics.monitoring.PipeMonitor;
import dev.runnel.hydraulics.watch.BaselineRule;
import dev.runnel.hydraulics.watch.BaselineSearch;
import dev.runnel.hydraulics.watch.Finding;
import dev.runnel.hydraulics.watch.FindingName;
import dev.runnel.hydraulics.watch.SiteBaseline;
import dev.runnel.hydraulics.watch.SiteReading;
import dev.runnel.hydraulics.watch.WatchNotice;
import dev.runnel.hydraulics.watch.WatchRule;
import dev.runnel.hydraulics.watch.WatchState;
import dev.runnel.timeseries.Machine;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Runnel's own watch, used as somebody would who commissions a site: the baseline is learned by default as soon as there
 * is enough of the record, never with readings from later, then the readings go in one by one as they are delivered.
 */
final class RunnelWatcher implements Watcher {
    /** When learning is tried: with so many days, if it failed with fewer. */
    private static final int[] DAYS = {15, 18, 22, 28, 35, 45, 60, 90, 150};

    @Override
    public Heard watch(Site site, boolean levelOnly) {
        return watch(Feed.of(site, levelOnly));
    }

    /** Watches any site, invented or real. */
    Heard watch(Feed feed) {
        PipeMonitor monitor =
                PipeMonitor.of(Conduit.of(feed.section(), Gradient.of(feed.gradient()), Manning.of(0.013)));
        BaselineRule rule = BaselineRule.of(monitor).withZone(feed.zone()).withHolidays(feed.holidays());
        String why = "no readings";
        for (int days : DAYS) {
            int size = feed.within(days);
            BaselineSearch search = rule.learn(feed.record(size));
            if (search.baseline().isPresent()) {
                return streamed(feed, search.baseline().orElseThrow());
            }
            why = search.describe();
            if (size == feed.stamp().length) {
                break;
            }
        }
        return Heard.nothing(why);
    }

    private static Heard streamed(Feed feed, SiteBaseline baseline) {
        Machine<SiteReading, WatchNotice, WatchState> machine =
                WatchRule.of(baseline).start();
        Map<Integer, List<WatchNotice>> told = new LinkedHashMap<>();
        List<String> remarks = new ArrayList<>();
        int refused = 0;
        for (int i = 0; i < feed.stamp().length; i++) {
            SiteReading reading = new SiteReading(feed.stamp()[i], feed.depth()[i], feed.velocity()[i], feed.rain()[i]);
            try {
                collect(machine.next(reading), told, remarks);
            } catch (IllegalArgumentException e) {
                // A stamp that does not come after the last one.
                refused++;
            }
        }
        collect(machine.finish(), told, remarks);
        List<Said> said = new ArrayList<>();
        told.values().forEach(events -> said.add(said(events)));
        String note =
                Stream.concat(Stream.of(baseline.describe()), remarks.stream()).collect(Collectors.joining("\n"));
        return new Heard(said, true, refused, note);
    }

    private static void collect(List<WatchNotice> events, Map<Integer, List<WatchNotice>> told, List<String> remarks) {
        for (WatchNotice event : events) {
            if (event.kind() == WatchNotice.Kind.NOTED) {
                remarks.add(event.finding().describe());
                continue;
            }
            told.computeIfAbsent(event.finding().number(), number -> new ArrayList<>())
                    .add(event);
        }
    }

    private static Said said(List<WatchNotice> events) {
        WatchNotice first = events.get(0);
        Finding last = events.get(events.size() - 1).finding();
        return new Said(
                first.time(),
                last.since(),
                !last.isOpen(),
                events.stream()
                        .filter(event -> event.kind() == WatchNotice.Kind.RETURNED)
                        .map(event -> new Said.Again(event.time(), names(event.finding())))
                        .toList(),
                names(first.finding()),
                names(last),
                events.stream().anyMatch(event -> event.finding().isRecurring()),
                last.describe());
    }

    private static List<Called> names(Finding finding) {
        return finding.names().stream().map(RunnelWatcher::called).distinct().toList();
    }

    private static Called called(FindingName name) {
        return switch (name) {
            case HELD_UP -> Called.HELD_UP;
            case RELEASED -> Called.RELEASED;
            case MORE_WATER -> Called.MORE_WATER;
            case LESS_WATER -> Called.LESS_WATER;
            case DEPTH_STEP -> Called.DEPTH_STEP;
            case DEPTH_DRIFT, SEDIMENT -> Called.DEPTH_DRIFT;
            case VELOCITY_LOSS -> Called.VELOCITY_LOSS;
            case VELOCITY_GAIN -> Called.VELOCITY_GAIN;
            case VELOCITY_LOW_FOR_DEPTH -> Called.LOW_FOR_DEPTH;
            case VELOCITY_HIGH_FOR_DEPTH -> Called.HIGH_FOR_DEPTH;
            case LEVEL_UP -> Called.LEVEL_UP;
            case LEVEL_DOWN -> Called.LEVEL_DOWN;
            case VELOCITY_ZEROS, WEAK_ECHO -> Called.DROP_OUTS;
            case FALSE_ECHO -> Called.FALSE_ECHO;
            case FALSE_VELOCITY -> Called.FALSE_VELOCITY;
            case SIGN_FLIPS -> Called.SIGN_FLIPS;
            case REVERSED_SIGN -> Called.REVERSED_SIGN;
            case REVERSE_FLOW -> Called.REVERSE_FLOW;
            // The simulator has a name for each of the two; either is right for both.
            case FROZEN_DEPTH, FROZEN_LOGGER -> Called.FROZEN_DEPTH;
            case FROZEN_VELOCITY -> Called.FROZEN_VELOCITY;
            case CONTRADICTORY, OUT_OF_RANGE -> Called.CONTRADICTORY;
            case DEPTH_UNIT, VELOCITY_UNIT -> Called.UNIT;
            case EXCHANGED_COLUMNS -> Called.EXCHANGED_COLUMNS;
            case CLOCK_OF_MONITOR -> Called.CLOCK_OF_MONITOR;
            case CLOCK_OF_GAUGE -> Called.CLOCK_OF_GAUGE;
            case SILENT_GAUGE -> Called.SILENT_GAUGE;
            case GAUGE_CATCHES_LESS, GAUGE_WRITES_MORE -> Called.GAUGE_SHARE;
            case FALSE_STAMPS, TIDAL -> Called.REMARK;
            case BASELINE_DOUBTFUL -> Called.BASELINE_DOUBTFUL;
        };
    }
}
