package dev.runnel.hydraulics.watch;

import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.change.TheilSen;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;

/** When the highest level of a dry day would reach the alarm and the soffit, if it goes on as in the last two weeks. */
final class LevelForecasts {
    /** Blocks of the last two weeks that a forecast rests on: what rises faster now counts; chosen here. */
    private static final long FORECAST_BLOCKS = 14L * ChangeSeries.BLOCKS_PER_DAY;

    /** Confidence of the slope that a forecast rests on. */
    private static final double FORECAST_CONFIDENCE = 0.95;

    /** No forecast beyond a year: by then the rise is another; its latest day is told up to ten; chosen here. */
    private static final double LONGEST_FORECAST_DAYS = 365;

    private static final double LATEST_FORECAST_DAYS = 3650;

    private LevelForecasts() {}

    /** Gives an open finding its forecasts anew. */
    static void make(WatchRule rule, ChangeSeries series, long start, long block, Track open) {
        SiteBaseline baseline = rule.baseline();
        open.alarm = Optional.empty();
        open.soffit = Optional.empty();
        if (!(series.scale(ChangeSeries.D) > 0)) {
            return;
        }
        Ring blocks = series.blocks;
        int from = blocks.from(Math.max(start, block - FORECAST_BLOCKS));
        double[] times = new double[blocks.size()];
        double[] levels = new double[blocks.size()];
        int count = 0;
        for (int i = from; i < blocks.size(); i++) {
            if (!Double.isNaN(blocks.value(i, ChangeSeries.D))) {
                times[count] = (double) (blocks.number(i) - block) / ChangeSeries.BLOCKS_PER_DAY;
                levels[count++] = baseline.usualPeak() * Math.exp(blocks.value(i, ChangeSeries.D));
            }
        }
        if (count < ChangeSeries.BLOCKS_PER_DAY || !mayRise(levels, count)) {
            return;
        }
        TheilSen line = TheilSen.of(Arrays.copyOf(times, count), Arrays.copyOf(levels, count), FORECAST_CONFIDENCE);
        if (rule.alarmLevel().isPresent()) {
            open.alarm = forecast(line, block, rule.alarmLevel().orElseThrow());
        }
        double soffit = baseline.monitor().soffit();
        if (Double.isFinite(soffit)) {
            open.soffit = forecast(line, block, soffit);
        }
    }

    /** Whether half of all pairs rise: else the slope is no rise, and its lower limit none either. A quick look. */
    private static boolean mayRise(double[] levels, int count) {
        int more = 0;
        for (int i = 0; i < count; i++) {
            for (int j = i + 1; j < count; j++) {
                if (levels[j] > levels[i]) {
                    more++;
                } else {
                    more--;
                }
            }
        }
        return more >= 0;
    }

    private static Optional<LevelForecast> forecast(TheilSen line, long block, double level) {
        double rise = level - line.intercept();
        if (!(rise > 0
                && line.lower() > 0
                && rise / line.slope() <= LONGEST_FORECAST_DAYS
                && rise / line.lower() <= LATEST_FORECAST_DAYS)) {
            return Optional.empty();
        }
        return Optional.of(new LevelForecast(
                level,
                after(block, rise / line.slope()),
                after(block, rise / line.upper()),
                after(block, rise / line.lower())));
    }

    private static Instant after(long block, double days) {
        return EpochNanos.toInstant(ChangeSeries.time(block + 1)).plusSeconds(Math.round(days * 86_400));
    }
}
