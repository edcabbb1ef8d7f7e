package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Gathers the hours of storms and tells the lag of depth behind rain of each that is over. */
final class StormLags {
    /** Rain of an hour up to which it is not rain, mm; chosen here, as are all values of this class. */
    private static final double DROP = 0.05;

    /** Hours without rain that end a storm, and dry hours taken with it. */
    private static final int GAP = 5;

    private static final int BEFORE = 5;

    /** Smallest rain of a storm, mm, and longest storm, h. */
    private static final double LEAST_RAIN = 2;

    private static final int LONGEST = 60;

    private final List<double[]> hours = new ArrayList<>();
    private long last = Long.MIN_VALUE;
    private double sum;
    private int dry;

    /** Takes an hour; returns the lag of the storm that ends with it, if one does. */
    Optional<StormLag.Fit> add(long hour, double rain, double excess) {
        if (Double.isNaN(rain) || last != Long.MIN_VALUE && hour - last > 1) {
            hours.clear();
            sum = 0;
            dry = 0;
        }
        last = hour;
        if (Double.isNaN(rain)) {
            return Optional.empty();
        }
        hours.add(new double[] {rain, excess});
        if (rain > DROP) {
            sum += rain;
            dry = 0;
            return Optional.empty();
        }
        dry++;
        if (hours.size() > 4 * LONGEST) {
            hours.clear();
            sum = 0;
        }
        if (sum == 0) {
            while (hours.size() > BEFORE) {
                hours.remove(0);
            }
            return Optional.empty();
        }
        if (dry < GAP) {
            return Optional.empty();
        }
        Optional<StormLag.Fit> fit = Optional.empty();
        if (sum >= LEAST_RAIN && hours.size() >= BEFORE + GAP && hours.size() <= LONGEST) {
            fit = Optional.of(StormLag.of(column(0), column(1))).filter(found -> !Double.isNaN(found.lag()));
        }
        sum = 0;
        while (hours.size() > BEFORE) {
            hours.remove(0);
        }
        return fit;
    }

    private double[] column(int index) {
        return hours.stream().mapToDouble(each -> each[index]).toArray();
    }

    void write(StateText text) {
        text.with("stormRain", column(0))
                .with("stormExcess", column(1))
                .with("stormLast", last)
                .with("stormSum", sum)
                .with("stormDry", dry);
    }

    void read(StateText text) {
        double[] rain = text.numbers("stormRain");
        double[] excess = text.numbers("stormExcess", rain.length);
        for (int i = 0; i < rain.length; i++) {
            hours.add(new double[] {rain[i], excess[i]});
        }
        last = text.count("stormLast");
        sum = text.number("stormSum");
        dry = text.index("stormDry");
    }
}
