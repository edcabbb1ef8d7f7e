package dev.runnel.examples.follow;

import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.MachineState;
import dev.runnel.timeseries.Rule;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;

/**
 * A machine and its place in the state.
 *
 * @param <I> what goes in
 * @param <O> what becomes known
 */
final class Slot<I, O> {
    private final String key;
    private final String rule;
    private final Machine<I, O, ? extends MachineState> machine;

    private Slot(String key, String rule, Machine<I, O, ? extends MachineState> machine) {
        this.key = key;
        this.rule = rule;
        this.machine = machine;
    }

    /** Starts a machine where the state says; a rule that has changed since begins anew, and that is said. */
    static <I, O, S extends MachineState> Slot<I, O> of(
            String key, Rule<I, O, S> rule, Map<String, String> state, Consumer<String> say) {
        return of(key, rule.toString(), rule, state, say);
    }

    /** The same where a part of the rule may change without a new beginning: what must not stands in a text. */
    static <I, O, S extends MachineState> Slot<I, O> of(
            String key, String identity, Rule<I, O, S> rule, Map<String, String> state, Consumer<String> say) {
        String text = StateFile.sum(identity);
        String kept = state.getOrDefault(key, "");
        int blank = kept.indexOf(' ');
        if (blank < 0) {
            return new Slot<>(key, text, rule.start());
        }
        if (!kept.substring(0, blank).equals(text)) {
            say.accept(key + ": the rule has changed since the last start and begins anew: " + rule);
            return new Slot<>(key, text, rule.start());
        }
        return new Slot<>(key, text, rule.startFromText(kept.substring(blank + 1)));
    }

    List<O> next(I input) {
        return machine.next(input);
    }

    List<O> finish() {
        return machine.finish();
    }

    void save(Map<String, String> state) {
        state.put(key, rule + " " + machine.state().toText());
    }
}
