package dev.runnel.verification.calculation;

import java.nio.DoubleBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * The last answer that was computed: several columns of one row ask for parts of the same, one after the other. Of use only
 * where computing takes long. Thread-safe: each thread has its own, so that tables that run side by side do not drive out
 * each other's.
 */
final class LastAnswer<T> {
    private record Kept<T>(List<?> asked, T answer) {}

    private final ThreadLocal<Kept<T>> last = new ThreadLocal<>();

    /**
     * Returns the answer to what is asked.
     *
     * @param in inputs
     * @param words names of all inputs that are words
     * @param numbers names of all inputs that are numbers or samples
     * @param compute computes the answer, unless the last was asked the same
     */
    T of(Inputs in, List<String> words, List<String> numbers, Supplier<T> compute) {
        List<Object> asked = new ArrayList<>();
        for (String word : words) {
            asked.add(in.text(word));
        }
        for (String number : numbers) {
            // Samples by their values: as a text a long one is only counted.
            asked.add(in.has(number) ? DoubleBuffer.wrap(in.sample(number)) : "");
        }
        return of(asked, compute);
    }

    /**
     * Returns the answer to what is asked.
     *
     * @param asked all that the answer depends on
     * @param compute computes the answer, unless the last was asked the same
     */
    T of(List<?> asked, Supplier<T> compute) {
        @Nullable Kept<T> kept = last.get();
        if (kept == null || !kept.asked().equals(asked)) {
            kept = new Kept<>(asked, compute.get());
            last.set(kept);
        }
        return kept.answer();
    }
}
