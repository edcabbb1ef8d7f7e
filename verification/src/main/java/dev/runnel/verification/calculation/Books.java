package dev.runnel.verification.calculation;

import dev.runnel.timeseries.Machine;
import dev.runnel.timeseries.MachineState;
import dev.runnel.timeseries.Rule;
import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * A whole record in one number: each answer times its place, counted from 1, summed. One wrong answer anywhere shows. The
 * input {@code way} says how the record is given: {@code arriving}, one by one, or {@code cut}, with a new machine from the
 * text of the state after every third; {@code whole} asks the form for records at once.
 */
final class Books {
    private static final int BETWEEN_CUTS = 3;

    private Books() {}

    /** Returns the sum of measures, each times its place. */
    static <T> double sum(List<T> answers, ToDoubleFunction<T> measure) {
        double sum = 0;
        for (int i = 0; i < answers.size(); i++) {
            sum += (i + 1) * measure.applyAsDouble(answers.get(i));
        }
        return sum;
    }

    /** Returns all that a machine answers, going on from its state's text where asked to. */
    static <I, O, S extends MachineState> List<O> answers(Rule<I, O, S> rule, List<? extends I> inputs, boolean isCut) {
        Machine<I, O, S> machine = rule.start();
        List<O> answers = new ArrayList<>();
        int given = 0;
        for (I input : inputs) {
            answers.addAll(machine.next(input));
            given++;
            if (isCut && given % BETWEEN_CUTS == 0) {
                machine = rule.start(rule.parseState(machine.state().toText()));
            }
        }
        answers.addAll(machine.finish());
        return answers;
    }
}
