package dev.runnel.timeseries.contract;

import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.MachineState;
import dev.runnel.timeseries.Rule;
import java.util.ArrayList;
import java.util.List;

/**
 * A rule with a record that makes its machine work.
 *
 * @param rule the rule
 * @param inputs the record, in the order of time
 */
public record SampleRecord<I, O, S extends MachineState>(Rule<I, O, S> rule, List<I> inputs) {
    /** What the machine gives from an input on, going on from a state, to the end of the record. */
    List<String> resultsFrom(int index, String state) {
        Machine<I, O, S> machine = rule.start(rule.parseState(state));
        List<String> results = new ArrayList<>();
        for (I input : inputs.subList(index, inputs.size())) {
            machine.next(input).forEach(each -> results.add(each.toString()));
        }
        machine.finish().forEach(each -> results.add(each.toString()));
        return results;
    }

    /** The state after so many inputs. */
    String stateAfter(int count) {
        Machine<I, O, S> machine = rule.start();
        inputs.subList(0, count).forEach(machine::next);
        return machine.state().toText();
    }
}
