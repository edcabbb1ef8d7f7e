package dev.runnel.flink;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Events as telemetry brings them: each site's out of order, some far too late, some twice; and what should come of it. */
final class Feed {
    final Map<String, List<SiteEvent>> arrived = new LinkedHashMap<>();

    private Feed() {}

    /**
     * Makes a feed.
     *
     * @param bound each event comes up to this much later than it was taken
     * @param late share of events that come up to ten bounds later, and of events that come twice
     */
    static Feed of(int sites, int days, Duration bound, double late, long seed) {
        Random random = new Random(seed);
        Feed feed = new Feed();
        InventedSites invented = AllRules.SITES;
        for (int site = 0; site < sites; site++) {
            record Coming(SiteEvent event, long at) {}
            List<Coming> coming = new ArrayList<>();
            for (int number = 0; number < days * 86400 / invented.step(); number++) {
                SiteEvent event = invented.event(site, number);
                long delay = bound.isZero() ? 0 : (long) (random.nextDouble() * bound.toNanos());
                if (random.nextDouble() < late) {
                    delay *= 10;
                }
                coming.add(new Coming(event, event.epochNanos() + delay));
                if (random.nextDouble() < late) {
                    coming.add(new Coming(event, event.epochNanos() + delay + bound.toNanos()));
                }
            }
            coming.sort(Comparator.comparingLong(Coming::at));
            feed.arrived.put(
                    InventedSites.name(site), coming.stream().map(Coming::event).toList());
        }
        return feed;
    }

    /** Some files, each with some sites, mixed. */
    Path write(Path folder, int files) throws IOException {
        Files.createDirectories(folder);
        List<List<String>> lines = new ArrayList<>();
        for (int i = 0; i < files; i++) {
            lines.add(new ArrayList<>());
        }
        int longest = arrived.values().stream().mapToInt(List::size).max().orElseThrow();
        for (int k = 0; k < longest; k++) {
            int site = 0;
            for (List<SiteEvent> events : arrived.values()) {
                if (k < events.size()) {
                    lines.get(site % files).add(events.get(k).toLine());
                }
                site++;
            }
        }
        for (int i = 0; i < files; i++) {
            Files.write(folder.resolve("part-" + i + ".csv"), lines.get(i));
        }
        return folder;
    }

    /** One file for each day and all sites, so that a site's readings lie in many. */
    Path writeByDay(Path folder) throws IOException {
        Files.createDirectories(folder);
        Map<Long, List<String>> days = new LinkedHashMap<>();
        arrived.values()
                .forEach(events -> events.forEach(event -> days.computeIfAbsent(
                                event.epochNanos() / 86_400_000_000_000L, day -> new ArrayList<>())
                        .add(event.toLine())));
        for (Map.Entry<Long, List<String>> day : days.entrySet()) {
            Files.write(folder.resolve("day-" + day.getKey() + ".csv"), day.getValue());
        }
        return folder;
    }

    /**
     * The events of a site that are in time, sorted. In the words of the promise: an event is late if one that was taken no
     * earlier came before it and had waited out the bound when it came.
     */
    static List<SiteEvent> inTime(List<SiteEvent> arrived, Duration bound) {
        List<SiteEvent> taken = new ArrayList<>();
        long newest = Long.MIN_VALUE;
        for (SiteEvent event : arrived) {
            long free = newest == Long.MIN_VALUE ? newest : newest - bound.toNanos();
            boolean late = false;
            for (int i = taken.size() - 1; i >= 0 && !late; i--) {
                long other = taken.get(i).epochNanos();
                late = other == event.epochNanos() || other > event.epochNanos() && other <= free;
            }
            if (!late) {
                taken.add(event);
                newest = Math.max(newest, event.epochNanos());
            }
        }
        taken.sort(Comparator.comparingLong(SiteEvent::epochNanos));
        return taken;
    }

    /** All that the plain loop tells, sorted. */
    List<String> expected(AllRules rules, Duration bound) {
        List<String> told = new ArrayList<>();
        arrived.forEach((site, events) -> told.addAll(rules.alone(site, inTime(events, bound))));
        told.sort(null);
        return told;
    }

    long refused(Duration bound) {
        return arrived.values().stream()
                .mapToLong(events -> events.size() - inTime(events, bound).size())
                .sum();
    }
}
