package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import net.jqwik.api.Example;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class SelectionProperties {
    /** Few different values make long runs of equal ones. */
    @Property(tries = 3000)
    void findsWhatSortingPutsThere(
            @ForAll long seed,
            @ForAll @IntRange(min = 1, max = 700) int size,
            @ForAll @IntRange(min = 1) int different) {
        Random random = new Random(seed);
        double[] values =
                random.doubles(size).map(x -> Math.floor(x * different) - 3).toArray();
        isFound(values, random.nextInt(size));
    }

    /** Orders that are hard on a search that parts by a middle of three. */
    @Example
    void hardOrdersToo() {
        int size = 20_000;
        double[] organ = new double[size];
        double[] saw = new double[size];
        double[] killer = new double[size];
        for (int i = 0; i < size; i++) {
            organ[i] = Math.min(i, size - i);
            saw[i] = i % 3;
            // The order of Musser (1997) against the middle of first, middle and last value.
            int half = size / 2;
            killer[i] = i < half ? (i % 2 == 0 ? i + 1 : half + i) : 2 * (i - half + 1);
        }
        double[] infinite = {Double.NEGATIVE_INFINITY, 1, Double.POSITIVE_INFINITY, 0};
        for (double[] values : new double[][] {organ, saw, killer, infinite}) {
            isFound(values, 0);
            isFound(values, values.length / 3);
            isFound(values, values.length - 1);
        }
    }

    /** Values close together and one far off, equal ones, and ranges that no width divides. */
    @Property(tries = 3000)
    void findsTwoThatFollowEachOther(
            @ForAll long seed,
            @ForAll @IntRange(min = 2, max = 5000) int size,
            @ForAll @IntRange(min = 1) int different,
            @ForAll @IntRange(max = 3) int kind) {
        Random random = new Random(seed);
        double[] values =
                random.doubles(size).map(x -> Math.floor(x * different) / 7 - 3).toArray();
        values[random.nextInt(size)] = switch (kind) {
            case 0 -> 1e300;
            case 1 -> Double.MAX_VALUE;
            case 2 -> -5e-320;
            default -> 0.1;
        };
        if (kind == 1) {
            values[random.nextInt(size)] = -Double.MAX_VALUE;
        }
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double[] before = values.clone();
        int rank = random.nextInt(size - 1);
        assertThat(Selection.pair(values, rank)).containsExactly(sorted[rank], sorted[rank + 1]);
        assertThat(values).containsExactly(before);
    }

    private static void isFound(double[] values, int rank) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        double[] parted = values.clone();
        assertThat(Selection.part(parted, rank)).isEqualTo(sorted[rank]);
        assertThat(Arrays.stream(parted).limit(rank).max().orElse(sorted[rank])).isLessThanOrEqualTo(sorted[rank]);
        if (rank + 1 < values.length) {
            assertThat(Selection.least(parted, rank + 1)).isEqualTo(sorted[rank + 1]);
        }
        Arrays.sort(parted);
        assertThat(parted).isEqualTo(sorted);
    }
}
