package dev.runnel.internal;

import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * Finds a value by its rank without sorting all of them. Source: Hoare (1961), Algorithm 65: Find, Communications of the ACM
 * 4(7), 321-322; the value to part by is the median of three.
 */
@API(status = API.Status.INTERNAL)
public final class Selection {
    /** So short a part is sorted. */
    private static final int SHORT = 40;

    private static final int BINS = 1 << 10;

    private Selection() {}

    /**
     * Moves values until the one of a rank stands at its place: none before it is larger, none behind it smaller.
     *
     * @param values values, none of them NaN; modified
     * @param rank place, from 0 to the length - 1
     * @return the value at that place
     */
    public static double part(double[] values, int rank) {
        int from = 0;
        int to = values.length - 1;
        // Each round halves the part on the average; where it does not, sorting bounds the time.
        int rounds = 3 * (Integer.SIZE - Integer.numberOfLeadingZeros(values.length));
        while (to - from > SHORT && rounds-- > 0) {
            double pivot = middle(values[from], values[(from + to) >>> 1], values[to]);
            int low = from;
            int high = to;
            while (low <= high) {
                while (values[low] < pivot) {
                    low++;
                }
                while (values[high] > pivot) {
                    high--;
                }
                if (low <= high) {
                    double moved = values[low];
                    values[low++] = values[high];
                    values[high--] = moved;
                }
            }
            if (rank <= high) {
                to = high;
            } else if (rank >= low) {
                from = low;
            } else {
                return values[rank];
            }
        }
        Arrays.sort(values, from, to + 1);
        return values[rank];
    }

    /**
     * Returns the value of some rank and the one that follows it, in a third of the time that parting all of many values
     * takes. One pass finds the range, the next counts the values in a thousand bins of equal width over it, the last takes out
     * those of the bin in which the rank falls; only these few are parted. The value that follows may be the first beyond them.
     *
     * @param values values, none of them NaN; not modified
     * @param rank counted from 0 by size, one less than the last rank at most
     * @return the value that sorting would put at that rank, and the one at the next
     */
    public static double[] pair(double[] values, int rank) {
        double lowest = values[0];
        double highest = values[0];
        for (double value : values) {
            // Nearly never true, which a processor foresees; for Math.min it would wait at each value.
            if (value < lowest) {
                lowest = value;
            } else if (value > highest) {
                highest = value;
            }
        }
        double scale = BINS / (highest - lowest);
        if (!(scale > 0 && scale < Double.POSITIVE_INFINITY)) {
            // One value throughout, or a range that no number holds.
            double[] parted = values.clone();
            return new double[] {part(parted, rank), least(parted, rank + 1)};
        }
        int[] counts = counts(values, lowest, scale);
        int bin = 0;
        int below = 0;
        while (below + counts[bin] <= rank) {
            below += counts[bin++];
        }
        double[] inside = new double[counts[bin]];
        int size = 0;
        for (double value : values) {
            if (bin(value, lowest, scale) == bin) {
                inside[size++] = value;
            }
        }
        int rankInside = rank - below;
        double found = part(inside, rankInside);
        double following =
                rankInside + 1 < size ? least(inside, rankInside + 1) : leastBeyond(values, lowest, scale, bin);
        return new double[] {found, following};
    }

    /** Never falls where the value rises: each step of its making rounds, and rounding keeps the order. */
    private static int bin(double value, double lowest, double scale) {
        return (int) ((value - lowest) * scale);
    }

    /** How many values are in each bin; the highest alone has the last one. */
    private static int[] counts(double[] values, double lowest, double scale) {
        int[] counts = new int[BINS + 1];
        for (double value : values) {
            counts[bin(value, lowest, scale)]++;
        }
        return counts;
    }

    private static double leastBeyond(double[] values, double lowest, double scale, int bin) {
        double least = Double.POSITIVE_INFINITY;
        for (double value : values) {
            if (bin(value, lowest, scale) > bin && value < least) {
                least = value;
            }
        }
        return least;
    }

    private static double middle(double a, double b, double c) {
        return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
    }

    /**
     * Returns the least value from a place on.
     *
     * @param values values, none of them NaN; not modified
     * @param from first place, less than the length
     * @return the least
     */
    public static double least(double[] values, int from) {
        double least = values[from];
        for (int i = from + 1; i < values.length; i++) {
            least = Math.min(least, values[i]);
        }
        return least;
    }
}
