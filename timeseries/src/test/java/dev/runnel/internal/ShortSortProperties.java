package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.SplittableRandom;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class ShortSortProperties {
    private final ShortSort sort = new ShortSort();

    /** Numbers of either sign, many of them equal, with 0 and -0 and what is beyond all numbers. */
    @Property(tries = 3000)
    void sortsAsTheLibraryDoes(
            @ForAll long seed,
            @ForAll @IntRange(max = 130) int size,
            @ForAll @IntRange(min = 1, max = 100) int different,
            @ForAll boolean positive) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] strange = {0, -0.0, Double.NaN, Double.POSITIVE_INFINITY, Double.MIN_VALUE, Double.MAX_VALUE};
        double[] values = new double[size];
        for (int i = 0; i < size; i++) {
            double value = random.nextInt(9) == 0
                    ? strange[random.nextInt(strange.length)]
                    : random.nextInt(different) / 7.0 - (positive ? 0 : 3);
            values[i] = positive ? Math.abs(value) : value;
        }
        int count = size == 0 ? 0 : random.nextInt(size + 1);
        double[] expected = values.clone();
        Arrays.sort(expected, 0, count);
        sort.sort(values, count);
        assertThat(values).containsExactly(expected);
    }
}
