package dev.runnel.rainfall.frequency;

import dev.runnel.base.Text;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.rainfall.event.SlidingMaximum;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.change.MannKendall;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import org.apiguardian.api.API;

/**
 * The greatest depth of each year for each of a list of durations, with the years that were too poorly measured left out
 * and named. Immutable and thread-safe.
 *
 * <p>A window lies wholly inside its year. Its depth is a true sliding maximum on the steps of the record; steps of the
 * same length as the duration miss part of the true maximum, which {@link #withClockCorrection} makes good on average.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class AnnualMaxima {
    /**
     * A year that did not count.
     *
     * @param year calendar year in which it starts
     * @param coverage share of its steps that were measured
     */
    public record ExcludedYear(int year, double coverage) {}

    private final List<Duration> durations;
    private final List<Integer> years;
    private final double[][] depths;
    private final List<ExcludedYear> excluded;
    private final Duration step;

    private AnnualMaxima(
            List<Duration> durations,
            List<Integer> years,
            double[][] depths,
            List<ExcludedYear> excluded,
            Duration step) {
        this.durations = durations;
        this.years = years;
        this.depths = depths;
        this.excluded = excluded;
        this.step = step;
    }

    /**
     * Returns the annual maxima of a record.
     *
     * @param rain depth in each step, mm; 0 or greater, NaN for missing
     * @param durations durations of rain, each at least one step long; at least one
     * @param rule how to cut and to judge years
     * @return the maxima
     * @throws IllegalArgumentException if a depth is negative, a duration shorter than a step, there is no duration, or
     *     no year counts
     */
    public static AnnualMaxima from(RegularSeries rain, List<Duration> durations, YearRule rule) {
        Rain.requireNonNegative("rain", rain, "mm");
        SlidingMaximum search = SlidingMaximum.of(durations);
        int first = rain.start().atZone(ZoneOffset.UTC).getYear() - 1;
        int last = rain.end().atZone(ZoneOffset.UTC).getYear();
        List<Integer> years = new ArrayList<>();
        List<ExcludedYear> excluded = new ArrayList<>();
        List<double[]> rows = new ArrayList<>();
        for (int year = first; year <= last; year++) {
            RegularSeries slice = rain.slice(rule.interval(year));
            if (slice.size() > 0) {
                double steps = rule.interval(year).hours() / Rain.hours(rain.step());
                double coverage = Math.min(1, (slice.size() - slice.missing()) / steps);
                if (coverage >= rule.minimumCoverage()) {
                    years.add(year);
                    rows.add(search.peaks(slice).stream()
                            .mapToDouble(PeakDepth::depthMm)
                            .toArray());
                } else {
                    excluded.add(new ExcludedYear(year, coverage));
                }
            }
        }
        if (years.isEmpty()) {
            throw new IllegalArgumentException(
                    "rain must have a year with coverage " + Text.number(rule.minimumCoverage()) + ", had " + excluded);
        }
        return new AnnualMaxima(
                List.copyOf(durations),
                List.copyOf(years),
                rows.toArray(double[][]::new),
                List.copyOf(excluded),
                rain.step());
    }

    /**
     * Returns the maxima multiplied by n/(n - 1/8), where n is the number of steps in the duration: what a clock that
     * cuts time at fixed instants takes from the true maximum on average. Source: Weiss (1964), Ratio of true to
     * fixed-interval maximum rainfall, Journal of the Hydraulics Division ASCE 90(HY1), 77-82.
     *
     * @return the corrected maxima
     */
    public AnnualMaxima withClockCorrection() {
        double[][] corrected = new double[depths.length][];
        for (int i = 0; i < depths.length; i++) {
            corrected[i] = depths[i].clone();
            for (int j = 0; j < corrected[i].length; j++) {
                corrected[i][j] *= clockFactor(Rain.hours(durations.get(j)) / Rain.hours(step));
            }
        }
        return new AnnualMaxima(durations, years, corrected, excluded, step);
    }

    /**
     * Returns the factor from a maximum over fixed steps to the true one, n/(n - 1/8), by Weiss (1964).
     *
     * @param steps n, number of fixed steps in the duration; at least 1
     * @return the factor, 8/7 for one step
     * @throws IllegalArgumentException if {@code steps} is below 1 or NaN
     */
    public static double clockFactor(double steps) {
        if (!(steps >= 1)) {
            throw new IllegalArgumentException("steps must be at least 1, was " + steps);
        }
        return steps / (steps - 0.125);
    }

    /**
     * Returns the durations.
     *
     * @return durations, in the order asked for
     */
    public List<Duration> durations() {
        return durations;
    }

    /**
     * Returns the years that count.
     *
     * @return calendar years in which they start, ascending
     */
    public List<Integer> years() {
        return years;
    }

    /**
     * Returns the years that do not count, with their coverage.
     *
     * @return years, ascending
     */
    public List<ExcludedYear> excludedYears() {
        return excluded;
    }

    /**
     * Returns the maxima of one duration.
     *
     * @param duration one of {@link #durations}
     * @return depths, mm, in the order of {@link #years}; a new array
     * @throws IllegalArgumentException if the duration was not asked for
     */
    public double[] depthsMm(Duration duration) {
        int at = durations.indexOf(duration);
        if (at < 0) {
            throw new IllegalArgumentException("duration must be one of " + durations + ", was " + duration);
        }
        double[] column = new double[depths.length];
        for (int i = 0; i < column.length; i++) {
            column[i] = depths[i][at];
        }
        return column;
    }

    /**
     * Fits a family to the maxima of one duration.
     *
     * @param duration one of {@link #durations}
     * @param family the family
     * @param method how to estimate the parameters
     * @return the fit; its return periods are among annual maxima
     * @throws IllegalArgumentException if the duration was not asked for, or there is no such fit of so few years
     */
    public Fit fit(Duration duration, DistributionFamily family, FitMethod method) {
        return Fit.of(family, method, depthsMm(duration));
    }

    /**
     * Tests the maxima of one duration for a trend over the years. A fit takes them as draws from one distribution: look
     * at this before fitting, and say so if it is significant. Years left out leave no gap in the order.
     *
     * @param duration one of {@link #durations}
     * @return the test of Mann and Kendall
     * @throws IllegalArgumentException if the duration was not asked for, or there are too few years for the test
     */
    public MannKendall trend(Duration duration) {
        return MannKendall.of(depthsMm(duration));
    }

    @Override
    public String toString() {
        return "AnnualMaxima[" + years.size() + " years " + years.get(0) + " to " + years.get(years.size() - 1) + ", "
                + excluded.size() + " excluded, durations " + durations + "]";
    }
}
