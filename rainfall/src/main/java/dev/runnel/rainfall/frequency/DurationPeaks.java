package dev.runnel.rainfall.frequency;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.RegularSeries;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.SortedMap;
import org.apiguardian.api.API;

/**
 * The greatest independent depths of a record for each of a list of durations, so many a year (partial-duration series).
 * Immutable and thread-safe.
 *
 * <p>For one duration the window with the greatest depth counts first, then the greatest that keeps the separation from
 * all before it, and so on. A dry year gives few, a wet one many; among equal depths the earlier counts first. What is
 * left out next is the threshold. A peak lies above its threshold: windows equal to it do not count, so that with the depths of a
 * bucket, which are often equal, there may be fewer peaks than asked for; {@link #equalToThreshold} says how many were left out.
 * Return periods from these peaks count every exceedance, see {@link PeaksOverThreshold}.
 *
 * <p>Source: World Meteorological Organization (2009), Guide to Hydrological Practices, WMO-168, volume II, section 5.7
 * (from memory); the rule of the greatest first is common practice.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DurationPeaks {
    private record OfDuration(PeaksOverThreshold peaks, List<PeakDepth> windows, int equal) {
        /** The window that gave the threshold was never asked for: only others as deep are left out. */
        OfDuration withoutItsThreshold() {
            return new OfDuration(peaks, windows, equal - 1);
        }
    }

    private final Map<Duration, OfDuration> byDuration;
    private final Duration step;
    private final double years;
    private final boolean isCorrected;

    private DurationPeaks(Map<Duration, OfDuration> byDuration, Duration step, double years, boolean isCorrected) {
        this.byDuration = byDuration;
        this.step = step;
        this.years = years;
        this.isCorrected = isCorrected;
    }

    /**
     * Returns the greatest peaks of a record, as many as come to the given number a year.
     *
     * @param rain depth in each step, mm; 0 or greater, NaN for missing: it counts as no rain and not as time measured
     * @param durations durations of rain, each a whole number of steps; at least one
     * @param peaksPerYear peaks a year of measured time, rounded down in all; greater than 0, 1 to 5 are usual
     * @param separation least time between the end of one window and the start of the next; 0 or longer
     * @return the peaks
     * @throws IllegalArgumentException if an argument is out of range, the record has not that many separate wet windows and one
     *     more, or all of those are equal, so that none lies above the threshold
     */
    public static DurationPeaks from(
            RegularSeries rain, List<Duration> durations, double peaksPerYear, Duration separation) {
        Require.positive("peaksPerYear", peaksPerYear, "1/year");
        Require.atLeast("number of durations", durations.size(), 1);
        double years = years(rain);
        int wanted = Require.atLeast(
                "number of peaks in " + Text.significant(years, 4) + " years", (int) (peaksPerYear * years), 1);
        Map<Duration, OfDuration> found = new LinkedHashMap<>();
        for (Duration duration : durations) {
            List<PeakDepth> windows = PeakWindows.greatest(rain, duration, separation, wanted + 1);
            if (windows.size() <= wanted) {
                throw new IllegalArgumentException("rain must have more than " + wanted + " separate wet windows of "
                        + Text.exactDuration(duration) + ", had " + windows.size());
            }
            double threshold = windows.get(wanted).depthMm();
            OfDuration above = above(rain, duration, separation, threshold, years);
            if (above.windows.isEmpty()) {
                throw new IllegalArgumentException("rain must have windows of " + Text.exactDuration(duration)
                        + " above the threshold of "
                        + Text.significant(threshold, 4) + " mm that " + wanted + " peaks ask for, had " + above.equal
                        + " equal to it and none above");
            }
            found.put(duration, above.withoutItsThreshold());
        }
        return new DurationPeaks(found, rain.step(), years, false);
    }

    /**
     * Returns the peaks of a record above given thresholds.
     *
     * @param rain depth in each step, mm; 0 or greater, NaN for missing
     * @param thresholdsMm threshold by duration, mm; 0 or greater; each duration a whole number of steps
     * @param separation least time between the end of one window and the start of the next; 0 or longer
     * @return the peaks; for a duration there may be none
     * @throws IllegalArgumentException if an argument is out of range, or nothing was measured
     */
    public static DurationPeaks from(
            RegularSeries rain, SortedMap<Duration, Double> thresholdsMm, Duration separation) {
        Require.atLeast("number of durations", thresholdsMm.size(), 1);
        double years = years(rain);
        Map<Duration, OfDuration> found = new LinkedHashMap<>();
        thresholdsMm.forEach((duration, threshold) -> {
            Require.nonNegative("threshold of " + Text.exactDuration(duration), threshold, "mm");
            found.put(duration, above(rain, duration, separation, threshold, years));
        });
        return new DurationPeaks(found, rain.step(), years, false);
    }

    private static double years(RegularSeries rain) {
        Rain.requireNonNegative("rain", rain, "mm");
        return Require.positive(
                "years measured", (rain.size() - rain.missing()) * Rain.hours(rain.step()) / (24 * 365.25), "years");
    }

    private static OfDuration above(
            RegularSeries rain, Duration duration, Duration separation, double threshold, double years) {
        List<PeakDepth> reaching = PeakWindows.reaching(rain, duration, separation, threshold);
        List<PeakDepth> inOrder = reaching.stream()
                .filter(window -> PeakWindows.isAbove(window.depthMm(), threshold))
                .sorted(Comparator.comparing(PeakDepth::start))
                .toList();
        double[] depths = inOrder.stream().mapToDouble(PeakDepth::depthMm).toArray();
        return new OfDuration(
                PeaksOverThreshold.ofThresholdAndYears(threshold, years, depths),
                inOrder,
                reaching.size() - inOrder.size());
    }

    /**
     * Returns peaks and thresholds multiplied by the factor of the clock, see {@link AnnualMaxima#clockFactor}. The
     * windows stay as measured.
     *
     * @return the corrected peaks; these themselves if they are corrected already
     */
    public DurationPeaks withClockCorrection() {
        if (isCorrected) {
            return this;
        }
        Map<Duration, OfDuration> corrected = new LinkedHashMap<>();
        byDuration.forEach((duration, found) -> {
            double factor = AnnualMaxima.clockFactor(Rain.hours(duration) / Rain.hours(step));
            double[] depths = found.peaks.peaks();
            for (int i = 0; i < depths.length; i++) {
                depths[i] *= factor;
            }
            corrected.put(
                    duration,
                    new OfDuration(
                            PeaksOverThreshold.ofThresholdAndYears(factor * found.peaks.threshold(), years, depths),
                            found.windows,
                            found.equal));
        });
        return new DurationPeaks(corrected, step, years, true);
    }

    /**
     * Returns the durations.
     *
     * @return durations, in the order asked for
     */
    public List<Duration> durations() {
        return List.copyOf(byDuration.keySet());
    }

    /**
     * Returns the measured time.
     *
     * @return years of 365.25 days
     */
    public double yearsMeasured() {
        return years;
    }

    /**
     * Returns the peaks of one duration.
     *
     * @param duration one of {@link #durations}
     * @return its peaks in the order of time, with their threshold
     * @throws IllegalArgumentException if the duration was not asked for
     */
    public PeaksOverThreshold peaks(Duration duration) {
        return of(duration).peaks;
    }

    /**
     * Returns when the peaks of one duration fell.
     *
     * @param duration one of {@link #durations}
     * @return its windows in the order of time, with their depths as measured
     * @throws IllegalArgumentException if the duration was not asked for
     */
    public List<PeakDepth> windows(Duration duration) {
        return of(duration).windows;
    }

    /**
     * Returns how many windows of one duration were left out because they are as deep as the threshold, and not deeper.
     *
     * @param duration one of {@link #durations}
     * @return windows that keep the separation from all that count and from each other, without the one that gave the threshold
     *     where a number of peaks a year was asked for; 0 for a threshold of 0
     * @throws IllegalArgumentException if the duration was not asked for
     */
    public int equalToThreshold(Duration duration) {
        return of(duration).equal;
    }

    private OfDuration of(Duration duration) {
        OfDuration found = byDuration.get(Objects.requireNonNull(duration, "duration"));
        if (found == null) {
            throw new IllegalArgumentException(
                    "duration must be one of " + Text.durations(durations()) + ", was " + Text.exactDuration(duration));
        }
        return found;
    }

    @Override
    public String toString() {
        List<String> each = new ArrayList<>();
        byDuration.forEach((duration, found) -> each.add(found.windows.size() + " above "
                + Text.significant(found.peaks.threshold(), 4) + " mm in " + Text.duration(duration)
                + (found.equal == 0 ? "" : " (" + found.equal + " equal to it left out)")));
        return "DurationPeaks[" + String.join(", ", each) + "; " + Text.significant(years, 4) + " years"
                + (isCorrected ? ", corrected for the clock]" : "]");
    }
}
