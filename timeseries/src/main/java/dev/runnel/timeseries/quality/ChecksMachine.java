package dev.runnel.timeseries.quality;

import dev.runnel.internal.MachineClock;
import dev.runnel.internal.Require;
import dev.runnel.internal.StateText;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.TextState;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/**
 * Checks one behind the other. A check may owe its verdict for a while; the readings it owes wait before it, each with
 * the flags of the checks that it has passed.
 */
final class ChecksMachine extends ReadingMachine<CheckedReading> {
    private static final String STATE = "quality-checks";

    private final List<Machine<Reading, QualityFlag, TextState>> machines = new ArrayList<>();
    private final List<Deque<CheckedReading>> waiting = new ArrayList<>();

    ChecksMachine(List<QualityCheck> checks) {
        super(new MachineClock());
        for (QualityCheck check : checks) {
            machines.add(check.start());
            waiting.add(new ArrayDeque<>());
        }
    }

    ChecksMachine(List<QualityCheck> checks, TextState state) {
        this(checks, StateText.parse(STATE, 1, state.toText()));
    }

    private ChecksMachine(List<QualityCheck> checks, StateText state) {
        super(MachineClock.from(state));
        List<String> states = state.list("checks");
        List<String> queues = state.list("waiting");
        Require.sameLength("state " + STATE + ": checks", checks.size(), states.size());
        Require.sameLength("state " + STATE + ": waiting", checks.size(), queues.size());
        for (int i = 0; i < checks.size(); i++) {
            QualityCheck check = checks.get(i);
            machines.add(check.start(check.parseState(states.get(i))));
            waiting.add(queue(StateText.parse("waiting", 1, queues.get(i))));
        }
    }

    @Override
    List<CheckedReading> take(Reading reading) {
        return feed(0, List.of(new CheckedReading(reading, List.of())));
    }

    @Override
    List<CheckedReading> end() {
        List<CheckedReading> known = new ArrayList<>();
        for (int i = 0; i < machines.size(); i++) {
            known.addAll(feed(i + 1, join(i, machines.get(i).finish())));
        }
        return known;
    }

    /** Gives readings to the check at a place and to those behind it; returns what came out at the end. */
    private List<CheckedReading> feed(int place, List<CheckedReading> readings) {
        List<CheckedReading> through = readings;
        for (int i = place; i < machines.size() && !through.isEmpty(); i++) {
            List<CheckedReading> next = new ArrayList<>();
            for (CheckedReading each : through) {
                waiting.get(i).add(each);
                next.addAll(join(i, machines.get(i).next(each.reading())));
            }
            through = next;
        }
        return through;
    }

    private List<CheckedReading> join(int place, List<QualityFlag> flags) {
        List<CheckedReading> joined = new ArrayList<>();
        for (QualityFlag flag : flags) {
            CheckedReading before = waiting.get(place).remove();
            Reading reading = before.reading();
            List<QualityFlag> all = new ArrayList<>(before.flags());
            all.add(flag);
            Quality quality = reading.quality().worst(flag.verdict().toQuality());
            joined.add(new CheckedReading(new Reading(reading.time(), reading.value(), quality), all));
        }
        return joined;
    }

    @Override
    StateText keep() {
        return StateText.of(STATE, 1)
                .with(
                        "checks",
                        machines.stream().map(each -> each.state().toText()).toList())
                .with("waiting", waiting.stream().map(ChecksMachine::text).toList());
    }

    private static String text(Deque<CheckedReading> queue) {
        List<String> readings = queue.stream().map(ChecksMachine::text).toList();
        return StateText.of("waiting", 1).with("readings", readings).toString();
    }

    private static String text(CheckedReading checked) {
        Reading reading = checked.reading();
        return StateText.of("reading", 1)
                .with("time", EpochNanos.of(reading.time()))
                .with("value", reading.value())
                .with("quality", reading.quality().name())
                .with(
                        "verdicts",
                        checked.flags().stream()
                                .map(each -> each.verdict().name())
                                .toList())
                .with(
                        "reasons",
                        checked.flags().stream().map(QualityFlag::reason).toList())
                .toString();
    }

    private static Deque<CheckedReading> queue(StateText text) {
        return new ArrayDeque<>(text.list("readings", ChecksMachine::reading));
    }

    private static CheckedReading reading(String text) {
        StateText state = StateText.parse("reading", 1, text);
        Reading reading = new Reading(
                EpochNanos.toInstant(state.count("time")),
                state.number("value"),
                state.constant("quality", Quality.class));
        List<String> verdicts = state.list("verdicts");
        List<String> reasons = state.list("reasons");
        Require.sameLength("state " + STATE + ": reasons", verdicts.size(), reasons.size());
        List<QualityFlag> flags = new ArrayList<>();
        for (int i = 0; i < verdicts.size(); i++) {
            flags.add(new QualityFlag(reading.time(), Verdict.valueOf(verdicts.get(i)), reasons.get(i)));
        }
        return new CheckedReading(reading, flags);
    }
}
