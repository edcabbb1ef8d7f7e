package dev.runnel.rainfall.event;

import dev.runnel.internal.CompensatedSum;
import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.Arrays;
import org.apiguardian.api.API;

/**
 * How the depth of an event is laid out over its duration. Immutable and thread-safe.
 *
 * <p>The event is cut into four quarters of its duration; the one with the greatest share of the depth names its
 * quartile, as in Huff (1967), Time distribution of rainfall in heavy storms, Water Resources Research 3(4), 1007-1019.
 * Rain is taken as steady within a step.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class StormProfile {
    /** Shares of equal quarters differ by less; chosen here. */
    private static final double ROUNDING = 1e-12;

    private final double[] cumulative;
    private final Duration step;
    private final int peakStep;

    private StormProfile(double[] cumulative, Duration step, int peakStep) {
        this.cumulative = cumulative;
        this.step = step;
        this.peakStep = peakStep;
    }

    /**
     * Returns the profile of an event found in a record of fixed steps.
     *
     * @param event the event
     * @param rain the record it was found in, mm in each step; for an event of tips, steps that share any time with it count whole
     * @return the profile; missing steps count as no rain
     * @throws IllegalArgumentException if a depth is negative, or the record does not reach over the event or has no rain in it
     */
    public static StormProfile of(RainfallEvent event, RegularSeries rain) {
        EventSteps during = EventSteps.of(rain, event.interval());
        if (during.missing() > during.rain().missing()) {
            throw new IllegalArgumentException(
                    "rain must reach over the event, " + event.interval() + ", was " + rain.interval());
        }
        return of(during.rain());
    }

    /**
     * Returns the profile of rain from its first step to its last.
     *
     * @param rain depth in each step, mm; NaN for missing
     * @return the profile; missing steps count as no rain
     * @throws IllegalArgumentException if a depth is negative or there is no rain
     */
    public static StormProfile of(RegularSeries rain) {
        Rain.requireNonNegative("rain", rain, "mm");
        double[] cumulative = new double[rain.size() + 1];
        CompensatedSum sum = new CompensatedSum();
        for (int i = 0; i < rain.size(); i++) {
            double depth = Double.isNaN(rain.value(i)) ? 0 : rain.value(i);
            sum.add(depth);
            cumulative[i + 1] = sum.value();
        }
        if (!(sum.value() > 0)) {
            throw new IllegalArgumentException("rain must hold some rain, had none in " + rain.interval());
        }
        return new StormProfile(cumulative, rain.step(), firstGreatest(rain));
    }

    private static int firstGreatest(RegularSeries rain) {
        int greatest = -1;
        for (int i = 0; i < rain.size(); i++) {
            if (rain.value(i) > (greatest < 0 ? 0 : rain.value(greatest))) {
                greatest = i;
            }
        }
        return greatest;
    }

    /**
     * Returns the share of the depth that fell in the first part of the duration.
     *
     * @param fraction part of the duration; in [0, 1]
     * @return share of the depth; from 0 to 1, never falling
     * @throws IllegalArgumentException if {@code fraction} is outside [0, 1] or NaN
     */
    public double depthShare(double fraction) {
        Require.inRange("fraction", fraction, 0, 1, "");
        double position = fraction * (cumulative.length - 1);
        int below = Math.min((int) position, cumulative.length - 2);
        double depth = cumulative[below] + (position - below) * (cumulative[below + 1] - cumulative[below]);
        return depth / cumulative[cumulative.length - 1];
    }

    /**
     * Returns the share of the depth in each quarter of the duration.
     *
     * @return four shares that add up to 1
     */
    public double[] quarterShares() {
        double[] shares = new double[4];
        for (int i = 0; i < 4; i++) {
            shares[i] = depthShare((i + 1) / 4.0) - depthShare(i / 4.0);
        }
        return shares;
    }

    /**
     * Returns the quarter with the greatest share of the depth.
     *
     * @return 1 to 4; the first of equals
     */
    public int quartile() {
        double[] shares = quarterShares();
        int greatest = 0;
        for (int i = 1; i < 4; i++) {
            // Shares of a steady rain differ by rounding alone; that must not name a later quarter.
            if (shares[i] > shares[greatest] + ROUNDING) {
                greatest = i;
            }
        }
        return greatest + 1;
    }

    /**
     * Returns the time from the start of the first step to the middle of the wettest step.
     *
     * @return time to peak; of the first of equally wet steps
     */
    public Duration timeToPeak() {
        return step.multipliedBy(peakStep).plus(step.dividedBy(2));
    }

    /**
     * Returns the time from the start to the centre of the depth.
     *
     * @return time to the centroid
     */
    public Duration timeToCentroid() {
        CompensatedSum moment = new CompensatedSum();
        for (int i = 0; i + 1 < cumulative.length; i++) {
            moment.add((i + 0.5) * (cumulative[i + 1] - cumulative[i]));
        }
        double steps = moment.value() / cumulative[cumulative.length - 1];
        return Duration.ofNanos(Math.round(steps * step.toNanos()));
    }

    @Override
    public String toString() {
        StringBuilder shares = new StringBuilder();
        Arrays.stream(quarterShares())
                .forEach(
                        share -> shares.append(shares.length() == 0 ? "" : ", ").append(Text.fixed(100 * share, 1)));
        return "StormProfile[quartile " + quartile() + " of " + shares + " %, peak after " + Text.duration(timeToPeak())
                + "]";
    }
}
