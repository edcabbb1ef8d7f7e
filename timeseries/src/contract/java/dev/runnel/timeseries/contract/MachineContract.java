package dev.runnel.timeseries.contract;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.MachineState;
import dev.runnel.timeseries.Rule;
import java.util.ArrayList;
import java.util.List;

/** Checks that the machines of a rule keep what {@link Rule}, {@link Machine} and {@link MachineState} promise. */
public final class MachineContract {
    private MachineContract() {}

    /**
     * Runs a record through the machines of a rule in every way that must give the same: as a whole, one by one, with a
     * restart through the text of the state before every input and at the end, with refused inputs in between; and ends
     * it twice.
     *
     * @param rule the rule
     * @param inputs the record, in the order of time; each input strictly after the one before
     * @return what the record gives, for further assertions
     */
    public static <I, O, S extends MachineState> List<O> holds(Rule<I, O, S> rule, List<? extends I> inputs) {
        List<O> whole = rule.over(inputs);
        // Read at a prompt or in a debugger: words, not the address of an object.
        assertThat(rule + " " + rule.start()).as("in words").doesNotContainPattern("\\w@[0-9a-f]+");
        assertThat(oneByOne(rule, inputs)).as("one by one").isEqualTo(whole);
        assertThat(restarted(rule, inputs)).as("restarted before every input").isEqualTo(whole);
        refusesWhatGoesBack(rule, inputs);
        assertThat(rule.over(inputs)).as("a second time").isEqualTo(whole);
        return whole;
    }

    private static <I, O, S extends MachineState> List<O> oneByOne(Rule<I, O, S> rule, List<? extends I> inputs) {
        Machine<I, O, S> machine = rule.start();
        List<O> results = new ArrayList<>();
        for (I input : inputs) {
            results.addAll(machine.next(input));
        }
        results.addAll(machine.finish());
        assertEnded(machine, inputs);
        return results;
    }

    private static <I, O, S extends MachineState> List<O> restarted(Rule<I, O, S> rule, List<? extends I> inputs) {
        Machine<I, O, S> machine = throughText(rule, rule.start());
        List<O> results = new ArrayList<>();
        for (I input : inputs) {
            results.addAll(machine.next(input));
            machine = throughText(rule, machine);
        }
        results.addAll(machine.finish());
        return results;
    }

    /** Makes a machine anew from the text of another one's state, as after a power cut. */
    private static <I, O, S extends MachineState> Machine<I, O, S> throughText(
            Rule<I, O, S> rule, Machine<I, O, S> machine) {
        S state = machine.state();
        String text = state.toText();
        assertThat(text).as("state text").matches("[\\x20-\\x7e]+");
        S parsed = rule.parseState(text);
        assertThat(parsed).as("state read back").isEqualTo(state).hasSameHashCodeAs(state);
        assertThat(parsed.toText()).isEqualTo(text);
        Machine<I, O, S> next = rule.start(parsed);
        assertThat(next.state()).as("state of the machine started from it").isEqualTo(state);
        return next;
    }

    private static <I, O, S extends MachineState> void refusesWhatGoesBack(
            Rule<I, O, S> rule, List<? extends I> inputs) {
        Machine<I, O, S> machine = rule.start();
        for (int i = 0; i < inputs.size(); i++) {
            S before = machine.state();
            String text = before.toText();
            machine.next(inputs.get(i));
            // A state that was handed out is the machine's no longer.
            assertThat(before.toText()).isEqualTo(text);
            S state = machine.state();
            for (I old : List.of(inputs.get(i), inputs.get(0))) {
                assertThatExceptionOfType(IllegalArgumentException.class)
                        .as("an input that does not come after the last")
                        .isThrownBy(() -> machine.next(old))
                        .withMessageContaining("after");
                assertThat(machine.state()).as("state after a refusal").isEqualTo(state);
            }
        }
    }

    private static <I, O, S extends MachineState> void assertEnded(Machine<I, O, S> machine, List<? extends I> inputs) {
        assertThatExceptionOfType(IllegalStateException.class)
                .as("finish a second time")
                .isThrownBy(machine::finish)
                .withMessage("the record must not have ended, but finish() was called before");
        assertThatExceptionOfType(IllegalStateException.class)
                .as("state after finish")
                .isThrownBy(machine::state);
        if (!inputs.isEmpty()) {
            assertThatExceptionOfType(IllegalStateException.class)
                    .as("next after finish")
                    .isThrownBy(() -> machine.next(inputs.get(inputs.size() - 1)));
        }
    }
}
