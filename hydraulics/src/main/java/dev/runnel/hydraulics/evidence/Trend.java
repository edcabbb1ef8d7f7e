package dev.runnel.hydraulics.evidence;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.timeseries.change.MannKendall;
import dev.runnel.timeseries.change.TheilSen;
import org.apiguardian.api.API;

/**
 * The drift of a daily figure over some days: the slope of Theil and Sen with its 95 % interval, and the two-sided p-value
 * of the test of Mann and Kendall against "no trend". Immutable and thread-safe.
 *
 * <p>What this is not: a proof. Both take the days as independent; weekends and wet weeks make neighbouring days alike, and
 * then p is smaller than it should be.
 *
 * @param slope change a day, unit of the figure
 * @param lowerSlope lower end of the 95 % interval of the slope; not above {@code slope}
 * @param upperSlope upper end; not below {@code slope}
 * @param pValue probability of a sequence at least as one-sided if there were no trend, in [0, 1]
 * @param first value of the fitted line on the first day
 * @param last value of the fitted line on the last day
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record Trend(double slope, double lowerSlope, double upperSlope, double pValue, double first, double last) {
    private static final int DIGITS = 3;
    private static final double CONFIDENCE = 0.95;

    /**
     * Checks the order.
     *
     * @param slope change a day
     * @param lowerSlope lower end of the 95 % interval of the slope
     * @param upperSlope upper end of the 95 % interval of the slope
     * @param pValue p-value, in [0, 1]
     * @param first value of the fitted line on the first day; finite
     * @param last value of the fitted line on the last day; finite
     * @throws IllegalArgumentException if a value is out of range
     */
    public Trend {
        Require.inRange("slope", slope, lowerSlope, upperSlope, "");
        Require.inRange("pValue", pValue, 0, 1, "");
        Require.finite("first", first, "");
        Require.finite("last", last, "");
    }

    /** Of at least three days, numbered upwards. */
    static Trend of(double[] days, double[] values) {
        TheilSen line = TheilSen.of(days, values, CONFIDENCE);
        return new Trend(
                line.slope(),
                Math.min(line.lower(), line.slope()), // limits between ranks are rounded
                Math.max(line.upper(), line.slope()),
                MannKendall.of(values).pValue(),
                line.intercept() + line.slope() * days[0],
                line.intercept() + line.slope() * days[days.length - 1]);
    }

    /**
     * Returns the change along the fitted line from the first day to the last, over the value on the first.
     *
     * @return relative change, for example −0.2 for a fall by a fifth; infinite if the line starts at 0 and does not stay
     *     there
     */
    public double relativeChange() {
        return last == first ? 0 : (last - first) / Math.abs(first);
    }

    /**
     * Tells which way the figure drifts.
     *
     * @param significance largest p-value that counts; in (0, 1)
     * @param minimumChange smallest relative change that counts; 0 or greater
     * @return the direction
     */
    Direction direction(double significance, double minimumChange) {
        if (!(pValue <= significance && Math.abs(relativeChange()) >= minimumChange) || slope == 0) {
            return Direction.NONE;
        }
        return slope > 0 ? Direction.UP : Direction.DOWN;
    }

    @Override
    public String toString() {
        return "Trend[" + Text.significant(slope, DIGITS) + " a day (95 % " + Text.significant(lowerSlope, DIGITS)
                + " to " + Text.significant(upperSlope, DIGITS) + "), " + Text.fixed(100 * relativeChange(), 1)
                + " % in all, p = " + Text.significant(pValue, DIGITS) + "]";
    }
}
