package dev.runnel.examples.review;

import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Rain of a stepped record that fell nowhere on earth, such as that of a column of depths.
 *
 * @param others the rain without it, which is not known then
 * @param steps steps with such rain
 * @param mm what they hold, mm
 * @param first the first of them; empty if there is none
 */
record ImpossibleRain(RegularSeries others, int steps, double mm, Optional<Instant> first) {
    /**
     * Above the greatest rains known at a point, mm, are 491 h^0.452 of their duration h in hours: Galmarini, Steyn and Ainslie (2004),
     * The scaling law relating world point-precipitation records to duration, abstract; from memory.
     */
    private static final double WORLD_MM = 491;

    private static final double WORLD_EXPONENT = 0.452;

    private static final Duration DAY = Duration.ofDays(1);

    static ImpossibleRain in(RegularSeries rain) {
        double[] depths = rain.toValues();
        boolean[] impossible = new boolean[depths.length];
        double ofStep = ceiling(rain.step());
        double ofDay = ceiling(DAY);
        int steps = (int) (DAY.toNanos() / rain.step().toNanos());
        double day = 0;
        int marked = 0;
        for (int i = 0; i < depths.length; i++) {
            impossible[i] = depths[i] > ofStep;
            day += known(depths[i]) - (i >= steps ? known(depths[i - steps]) : 0);
            if (day > ofDay) {
                // Days overlap: what the one before has marked stays so.
                for (int k = Math.max(marked, i - steps + 1); k <= i; k++) {
                    impossible[k] |= depths[k] > 0;
                }
                marked = i + 1;
            }
        }
        return of(rain, depths, impossible);
    }

    private static double ceiling(Duration duration) {
        return WORLD_MM * Math.pow(duration.toNanos() / 3.6e12, WORLD_EXPONENT);
    }

    private static double known(double depth) {
        return Double.isNaN(depth) ? 0 : depth;
    }

    private static ImpossibleRain of(RegularSeries rain, double[] depths, boolean[] impossible) {
        int steps = 0;
        double mm = 0;
        List<Interval> runs = new ArrayList<>();
        for (int i = 0; i < depths.length; i++) {
            if (!impossible[i]) {
                continue;
            }
            steps++;
            mm += depths[i];
            if (i == 0 || !impossible[i - 1]) {
                int end = i;
                while (end + 1 < depths.length && impossible[end + 1]) {
                    end++;
                }
                runs.add(Interval.of(rain.time(i), rain.interval(end).end()));
            }
        }
        return steps == 0
                ? new ImpossibleRain(rain, 0, 0, Optional.empty())
                : new ImpossibleRain(
                        rain.withMissing(runs.toArray(Interval[]::new)),
                        steps,
                        mm,
                        Optional.of(runs.get(0).start()));
    }

    /** What is to be said beside the sum; empty if there is none. */
    String account() {
        return steps == 0
                ? ""
                : "; " + Show.count(steps, "step") + " with " + Show.rain(mm)
                        + " mm set aside: more than fell anywhere in a step or a day";
    }
}
