package dev.runnel.rainfall.gauge;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;

class TellingDepthsProperties {
    private static final double[] DEPTHS = {Double.NaN, 0, 0, 0.4, 1, 1, 2, 3.5};

    /** Each median as it is defined: of the depths one by one, sorted anew. */
    @Property
    void isTheMedianOfTheOthersThatTellSomething(
            @ForAll @IntRange(min = 2, max = 9) int gauges,
            @ForAll @IntRange(min = 0, max = 3) int aside,
            @ForAll long seed) {
        Random random = new Random(seed);
        int periods = 5;
        double[][] depths = new double[gauges][periods];
        for (double[] each : depths) {
            for (int i = 0; i < periods; i++) {
                each[i] = DEPTHS[random.nextInt(DEPTHS.length)];
            }
        }
        boolean[] isAside = new boolean[gauges];
        TellingDepths telling = TellingDepths.of(depths, periods, depth -> depth >= 1);
        for (int i = 0; i < Math.min(aside, gauges - 1); i++) {
            isAside[i] = true;
            telling = telling.without(i);
        }
        int needed = 1 + random.nextInt(3);
        for (int at = 0; at < gauges; at++) {
            int gauge = at;
            double[] expected = IntStream.range(0, periods)
                    .mapToDouble(period -> median(depths, isAside, gauge, period, needed))
                    .toArray();
            assertThat(telling.mediansOfOthers(gauge, !isAside[gauge], needed)).isEqualTo(expected);
        }
    }

    private static double median(double[][] depths, boolean[] isAside, int gauge, int period, int needed) {
        double[] all = IntStream.range(0, depths.length)
                .mapToDouble(i -> depths[i][period])
                .filter(depth -> !Double.isNaN(depth))
                .toArray();
        boolean isWet =
                2 * IntStream.range(0, all.length).filter(i -> all[i] >= 1).count() > all.length;
        double[] sorted = IntStream.range(0, depths.length)
                .filter(i -> i != gauge && !isAside[i])
                .mapToDouble(i -> depths[i][period])
                .filter(depth -> depth > 0 || depth == 0 && !isWet)
                .sorted()
                .toArray();
        int half = sorted.length / 2;
        if (sorted.length < needed) {
            return Double.NaN;
        }
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
