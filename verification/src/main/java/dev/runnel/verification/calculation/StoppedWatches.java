package dev.runnel.verification.calculation;

import dev.runnel.hydraulics.watch.SiteReading;
import dev.runnel.hydraulics.watch.WatchNotice;
import dev.runnel.hydraulics.watch.WatchRule;
import dev.runnel.hydraulics.watch.WatchState;
import dev.runnel.timeseries.Machine;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Watches that are stopped at a constructed site, and go on from the text of what they knew. */
final class StoppedWatches {
    private static final Map<String, Stopped> STOPPED = KeptAnswers.map();
    private static final Map<String, Cut> STOPPED_OFTEN = KeptAnswers.map();
    private static final LastAnswer<GoneOn> GONE_ON = new LastAnswer<>();

    private StoppedWatches() {}

    /** Where a watch stands at an hour, and the readings that are still to come. */
    private record Stopped(String state, List<SiteReading> later) {
        static Stopped of(Inputs in) {
            double at = in.number("at");
            Machine<SiteReading, WatchNotice, WatchState> machine =
                    WatchedSites.rule(in).start();
            List<SiteReading> later = new ArrayList<>();
            for (SiteReading reading : SiteCalculations.record(in)) {
                if (SiteCalculations.hours(reading.time()) < at) {
                    machine.next(reading);
                } else {
                    later.add(reading);
                }
            }
            return new Stopped(machine.state().toText(), List.copyOf(later));
        }
    }

    /**
     * A watch that goes on from a state in which some numbers were put in the place of others: what it knows at an hour, and
     * what it tells until the end, each only where it is asked for.
     */
    static final class GoneOn {
        private final Machine<SiteReading, WatchNotice, WatchState> machine;
        private final Iterator<SiteReading> later;
        private final double until;
        private final List<WatchNotice> told = new ArrayList<>();
        private Optional<SiteReading> following;
        private Optional<StateParts> kept = Optional.empty();
        private boolean ended;

        GoneOn(Inputs in) {
            WatchRule rule = WatchedSites.rule(in);
            Stopped stopped =
                    STOPPED.computeIfAbsent(WatchedSites.key(in) + "|" + in.text("at"), key -> Stopped.of(in));
            String state = StateParts.put(stopped.state(), in.text("part"), in.text("put"));
            machine = rule.startFromText(state);
            later = stopped.later().iterator();
            until = in.has("until") ? in.number("until") : Double.NEGATIVE_INFINITY;
            following = first(later);
        }

        private static Optional<SiteReading> first(Iterator<SiteReading> readings) {
            return readings.hasNext() ? Optional.of(readings.next()) : Optional.empty();
        }

        private void goOn(double to) {
            while (following.isPresent()
                    && SiteCalculations.hours(following.orElseThrow().time()) < to) {
                told.addAll(machine.next(following.orElseThrow()));
                following = first(later);
            }
        }

        private void keep() {
            if (kept.isEmpty()) {
                goOn(until);
                kept = Optional.of(StateParts.of(machine.state().toText()));
            }
        }

        synchronized StateParts kept() {
            keep();
            return kept.orElseThrow();
        }

        synchronized List<WatchNotice> told() {
            if (!ended) {
                if (until > Double.NEGATIVE_INFINITY) {
                    keep();
                }
                goOn(Double.POSITIVE_INFINITY);
                told.addAll(machine.finish());
                ended = true;
            }
            return told;
        }
    }

    /** Once a row: each puts other numbers. */
    static GoneOn goneOn(Inputs in) {
        List<String> asked = Arrays.asList(
                WatchedSites.key(in),
                in.text("at"),
                in.text("part"),
                in.text("put"),
                in.has("until") ? in.text("until") : "");
        return GONE_ON.of(asked, () -> new GoneOn(in));
    }

    /** What a watch tells that is stopped again and again and goes on from the text of its state, and what it knows at the end. */
    record Cut(List<WatchNotice> told, StateParts state) {}

    /** From an hour on until another the watch is stopped after every so many readings. */
    static Cut cut(Inputs in) {
        String place = String.join("|", WatchedSites.key(in), in.text("every"), in.text("begin"), in.text("cease"));
        return STOPPED_OFTEN.computeIfAbsent(place, key -> {
            WatchRule rule = WatchedSites.rule(in);
            Machine<SiteReading, WatchNotice, WatchState> machine = rule.start();
            List<WatchNotice> told = new ArrayList<>();
            int count = 0;
            for (SiteReading reading : SiteCalculations.record(in)) {
                told.addAll(machine.next(reading));
                count++;
                double hour = SiteCalculations.hours(reading.time());
                if (count % in.integer("every") == 0 && hour >= in.number("begin") && hour < in.number("cease")) {
                    machine = rule.startFromText(machine.state().toText());
                }
            }
            StateParts state = StateParts.of(machine.state().toText());
            told.addAll(machine.finish());
            return new Cut(List.copyOf(told), state);
        });
    }
}
