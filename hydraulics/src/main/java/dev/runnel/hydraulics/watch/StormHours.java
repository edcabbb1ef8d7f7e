package dev.runnel.hydraulics.watch;

import dev.runnel.internal.StateText;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Gathers the hours of storms, and hands over each that is over with the dry hours about it. */
final class StormHours {
    /** Rain of an hour up to which it is not rain, mm; chosen here, as are all values of this class. */
    private static final double DROP = 0.05;

    /** Hours without rain that end a storm, and dry hours taken with it. */
    private static final int GAP = 5;

    private static final int BEFORE = 5;

    /** Smallest rain of a storm, mm, and longest storm, h. */
    private static final double LEAST_RAIN = 2;

    private static final int LONGEST = 60;

    private final double leastRise;
    private final List<double[]> hours = new ArrayList<>();
    private long last = Long.MIN_VALUE;
    private double sum;
    private int dry;

    /**
     * Gathers storms of one answer.
     *
     * @param leastRise smallest rise of the answer that makes a storm, in its unit
     */
    StormHours(double leastRise) {
        this.leastRise = leastRise;
    }

    /**
     * Takes an hour.
     *
     * @param answer of the sewer above its usual dry day, in any unit; NaN for missing
     * @return the storm that ends with it, if one does, as it fits its rain; empty too where it does not tell
     */
    Optional<StormLag.Fit> add(long hour, double rain, double answer) {
        if (Double.isNaN(rain) || last != Long.MIN_VALUE && hour - last > 1) {
            hours.clear();
            sum = 0;
            dry = 0;
        }
        last = hour;
        if (Double.isNaN(rain)) {
            return Optional.empty();
        }
        hours.add(new double[] {rain, answer});
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
            fit = Optional.of(StormLag.of(column(0), column(1), leastRise)).filter(found -> !Double.isNaN(found.lag()));
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
        double[] answer = text.numbers("stormExcess", rain.length);
        for (int i = 0; i < rain.length; i++) {
            hours.add(new double[] {rain[i], answer[i]});
        }
        last = text.count("stormLast");
        sum = text.number("stormSum");
        dry = text.index("stormDry");
    }
}
