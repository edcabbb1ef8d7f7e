package dev.runnel.verification.calculation;

import java.nio.DoubleBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * The last answer that was computed: several columns of one row ask for parts of the same, one after the other. Of use only
 * where computing takes long. Thread-safe; tables that run side by side at worst compute anew.
 */
final class LastAnswer<T> {
    private record Kept<T>(List<Object> asked, T answer) {}

    private volatile @Nullable Kept<T> last;

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
        Kept<T> kept = last;
        if (kept == null || !kept.asked().equals(asked)) {
            kept = new Kept<>(asked, compute.get());
            last = kept;
        }
        return kept.answer();
    }
}
