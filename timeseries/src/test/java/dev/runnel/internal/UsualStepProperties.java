package dev.runnel.internal;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.stream.LongStream;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;

class UsualStepProperties {
    @Property
    void isTheMiddleOfTheSortedSteps(@ForAll("steps") List<Long> steps) {
        long[] times = times(steps);
        long[] sorted = steps.stream().mapToLong(Long::longValue).sorted().toArray();
        int half = sorted.length / 2;
        double middle = sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2.0;

        assertThat(UsualStep.upperMedian(times)).isEqualTo(sorted[half]);
        assertThat(UsualStep.median(times)).isEqualTo(middle);
    }

    /** Few different steps, so that often one of them is half of all, just more or just less. */
    @Provide
    Arbitrary<List<Long>> steps() {
        return Arbitraries.longs().between(1, 4).list().ofMinSize(1).ofMaxSize(30);
    }

    private static long[] times(List<Long> steps) {
        long[] times = LongStream.concat(LongStream.of(-10), steps.stream().mapToLong(Long::longValue))
                .toArray();
        Arrays.parallelPrefix(times, Long::sum);
        return times;
    }
}
