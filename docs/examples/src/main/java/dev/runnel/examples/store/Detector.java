package dev.runnel.examples.store;

import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.MachineState;
import dev.runnel.timeseries.Rule;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * A rule with a name in the database, and how rows become its inputs and what it tells becomes text.
 *
 * @param name its name in the database, which stays
 * @param rule the rule
 * @param input makes an input of a row
 * @param text makes the text of what was told
 */
record Detector<I, O, S extends MachineState>(
        String name, Rule<I, O, S> rule, Function<StoredReading, I> input, Function<O, String> text) {

    /** What a machine told, and what it knows now. */
    record Step(List<String> told, String state) {}

    /** Goes on from the text of a state over some rows. */
    Step step(Optional<String> state, List<StoredReading> rows) {
        Machine<I, O, S> machine = state.isEmpty() ? rule.start() : rule.start(rule.parseState(state.orElseThrow()));
        List<String> told = new ArrayList<>();
        for (StoredReading row : rows) {
            for (O each : machine.next(input.apply(row))) {
                told.add(text.apply(each));
            }
        }
        return new Step(told, machine.state().toText());
    }
}
