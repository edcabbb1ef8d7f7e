package dev.runnel.verification.calculation;

import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.function.Supplier;

/**
 * The last answers that were computed: several columns of one row ask for parts of the same, one after the other. Of use only
 * where computing takes long. Thread-safe; some are kept for each processor, so that tables that run side by side do not drive
 * out each other's. Nothing of it hangs on a thread, which may outlive the class.
 */
final class LastAnswer<T> {
    private record Kept<T>(List<?> asked, T answer) {}

    private static final int KEPT = 4 * Runtime.getRuntime().availableProcessors();

    /** The latest first. */
    private final Deque<Kept<T>> last = new ConcurrentLinkedDeque<>();

    LastAnswer() {
        KeptAnswers.droppedBy(last::clear);
    }

    /**
     * Returns the answer to what is asked.
     *
     * @param in inputs
     * @param names names of all inputs that the answer depends on; those that were left out count as such
     * @param compute computes the answer, unless one of the last was asked the same
     */
    T of(Inputs in, List<String> names, Supplier<T> compute) {
        // As they were given: to read the numbers of a long text again for each column would take longer than most
        // answers.
        List<Object> asked = new ArrayList<>();
        for (String name : names) {
            asked.add(in.has(name) ? in.given(name) : "");
        }
        return of(asked, compute);
    }

    /**
     * Returns the answer to what is asked.
     *
     * @param asked all that the answer depends on
     * @param compute computes the answer, unless one of the last was asked the same
     */
    T of(List<?> asked, Supplier<T> compute) {
        for (Kept<T> kept : last) {
            if (kept.asked().equals(asked)) {
                return kept.answer();
            }
        }
        T answer = compute.get();
        last.addFirst(new Kept<>(asked, answer));
        while (last.size() > KEPT) {
            last.pollLast();
        }
        return answer;
    }
}
