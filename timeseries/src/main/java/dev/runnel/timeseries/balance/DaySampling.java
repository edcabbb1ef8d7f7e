package dev.runnel.timeseries.balance;

import dev.runnel.internal.Text;
import dev.runnel.timeseries.Series;
import dev.runnel.timeseries.Statistics;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.apiguardian.api.API;

/**
 * How well readings at intervals tell what a rate adds up to over one day. Behind pumps the flow comes in strokes, of which
 * readings minutes apart see some and miss others: the mean of weeks is sound then, a single day may be far off. Immutable and
 * thread-safe.
 *
 * <p>The readings tell it themselves. The 1st, 3rd, 5th ... reading of a day and the 2nd, 4th, 6th ... are two samples of the
 * same water, so half the difference of their means m1 and m2 over the mean is about the error of the day by its sampling, as
 * long as strokes and readings do not keep step:
 *
 * <p>halves = 1.4826 median |m1 - m2|/(m1 + m2)
 *
 * <p>Where they keep step both halves see the same part of the strokes, and the error shows from day to day only. So the second
 * measure bounds it: no error of single days, whatever its cause, is larger than what days scatter by,
 *
 * <p>scatter = 1.4826 median |V/median of V from 7 days before to 7 days after - 1|
 *
 * <p>with V the mean rate of a day. Part of it is true, for people do not use the same water each day. The factor makes a
 * standard deviation of the median for errors of the normal law (Hampel 1974, from memory). Limits are chosen here.
 *
 * @param days how many complete days the figures rest on
 * @param halves typical relative error of a day by the two halves of its readings; NaN without a day
 * @param scatter typical relative deviation of a day from those around it; NaN where no day has four more within seven days
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public record DaySampling(int days, double halves, double scatter) {
    /** Chosen here: readings of water that flows give less than 0.01 on invented sites, of strokes more than 0.03. */
    private static final double COARSE = 0.02;

    private static final int DAYS_BESIDE = 7;
    private static final int FEWEST_DAYS = 5;
    private static final int FEWEST_READINGS = 4;
    private static final double TO_DEVIATION = 1.4826;

    /**
     * Compares the halves of the readings of each complete day, and days with those around them. Days with fewer than four
     * usable readings, a mean of 0 or less, or readings of 0 alone say nothing.
     *
     * @param rate the readings that were added up
     * @param totals what they add up to, in the order of the days
     * @return the figures
     */
    public static DaySampling of(Series rate, List<DailyTotal> totals) {
        Objects.requireNonNull(rate, "rate");
        List<DailyTotal> days = new ArrayList<>();
        List<Double> apart = new ArrayList<>();
        for (DailyTotal day : totals) {
            double halves = halves(rate.slice(day.interval()));
            if (day.isComplete() && day.mean() > 0 && !Double.isNaN(halves)) {
                days.add(day);
                apart.add(halves);
            }
        }
        double[] halves = apart.stream().mapToDouble(Double::doubleValue).toArray();
        double[] beside = IntStream.range(0, days.size())
                .mapToDouble(i -> beside(days, i))
                .filter(Double::isFinite)
                .toArray();
        return new DaySampling(days.size(), TO_DEVIATION * median(halves), TO_DEVIATION * median(beside));
    }

    /** NaN of too few readings, or none but 0. */
    private static double halves(Series day) {
        double[] values = day.toUsableValues();
        double[] sums = new double[2];
        int place = 0;
        for (double value : values) {
            if (!Double.isNaN(value)) {
                sums[place++ % 2] += value;
            }
        }
        if (place < FEWEST_READINGS) {
            return Double.NaN;
        }
        int ofSecond = place / 2;
        double first = sums[0] / (place - ofSecond);
        double second = sums[1] / ofSecond;
        return Math.abs(first - second) / Math.abs(first + second);
    }

    private static double beside(List<DailyTotal> days, int place) {
        DailyTotal day = days.get(place);
        int from = place;
        while (from > 0 && isBeside(day, days.get(from - 1))) {
            from--;
        }
        int to = place + 1;
        while (to < days.size() && isBeside(day, days.get(to))) {
            to++;
        }
        double[] means =
                days.subList(from, to).stream().mapToDouble(DailyTotal::mean).toArray();
        return means.length < FEWEST_DAYS ? Double.NaN : Math.abs(day.mean() / median(means) - 1);
    }

    private static boolean isBeside(DailyTotal day, DailyTotal other) {
        return Math.abs(other.date().toEpochDay() - day.date().toEpochDay()) <= DAYS_BESIDE;
    }

    private static double median(double[] values) {
        return values.length == 0 ? Double.NaN : Statistics.of(values).median();
    }

    /**
     * Tells whether the readings are too far apart for what flows between them: whether the halves of a day differ by more than
     * 2 % of it. Then a single day may be off by up to about twice the scatter.
     *
     * @return true above the limit
     */
    public boolean isCoarse() {
        return halves > COARSE;
    }

    @Override
    public String toString() {
        return "DaySampling[" + days + (days == 1 ? " day" : " days")
                + (Double.isNaN(halves) ? "" : ", halves " + Text.significant(100 * halves, 3) + " % apart")
                + (Double.isNaN(scatter) ? "" : ", scatter " + Text.significant(100 * scatter, 3) + " %")
                + (isCoarse() ? ", coarse" : "") + "]";
    }
}
