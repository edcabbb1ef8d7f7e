package dev.runnel.timeseries;

import java.util.ArrayList;
import java.util.List;
import org.apiguardian.api.API;

/**
 * The immutable settings of a detector, from which any number of {@linkplain Machine machines} are started: a quality
 * check, an alarm, a change detector, a counter, a separation of events, a watch.
 *
 * <p>Every rule keeps three promises. The whole record gives the same results as one input after the other:
 * {@link #over} is the fold of {@link Machine#next} and {@link Machine#finish}. A machine that is started again from a
 * state goes on as if it had never stopped. And a rule has no clock and no memory of its own: the same rule and the same
 * inputs give the same results.
 *
 * @param <I> what goes in, one at a time
 * @param <O> what becomes known
 * @param <S> the state of its machines
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public interface Rule<I, O, S extends MachineState> {
    /**
     * Starts a machine at the beginning of a record.
     *
     * @return a new machine
     */
    Machine<I, O, S> start();

    /**
     * Starts a machine where another one of this rule stood.
     *
     * @param state state of a machine of the same rule
     * @return a new machine that goes on from there
     * @throws IllegalArgumentException if the state cannot be one of this rule
     */
    Machine<I, O, S> start(S state);

    /**
     * Reads a state from its text.
     *
     * @param text a text made by {@link MachineState#toText}
     * @return the state
     * @throws IllegalArgumentException if the text is not one of such a state, or its version is not known
     */
    S parseState(String text);

    /**
     * Starts a machine where another one of this rule stood, from the text of its state: {@code start(parseState(text))}, for
     * which a long state need be read only once.
     *
     * @param text a text made by {@link MachineState#toText}
     * @return a new machine that goes on from there
     * @throws IllegalArgumentException if the text is not one of a state of this rule, or its version is not known
     */
    default Machine<I, O, S> startFromText(String text) {
        return start(parseState(text));
    }

    /**
     * Returns what a whole record gives: the results of all inputs in their order, then what was still open at its end.
     *
     * @param inputs the inputs, in the order of time
     * @return the results
     * @throws IllegalArgumentException if an input is refused
     */
    default List<O> over(Iterable<? extends I> inputs) {
        Machine<I, O, S> machine = start();
        List<O> results = new ArrayList<>();
        for (I input : inputs) {
            results.addAll(machine.next(input));
        }
        results.addAll(machine.finish());
        return List.copyOf(results);
    }
}
