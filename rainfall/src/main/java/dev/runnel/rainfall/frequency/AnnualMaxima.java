package dev.runnel.rainfall.frequency;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import dev.runnel.rainfall.ddf.DdfTable;
import dev.runnel.rainfall.ddf.ReturnPeriodBasis;
import dev.runnel.rainfall.distribution.DistributionFamily;
import dev.runnel.rainfall.distribution.Fit;
import dev.runnel.rainfall.distribution.FitMethod;
import dev.runnel.rainfall.event.PeakDepth;
import dev.runnel.rainfall.event.SlidingMaximum;
import dev.runnel.rainfall.internal.Rain;
import dev.runnel.timeseries.EpochNanos;
import dev.runnel.timeseries.Interval;
import dev.runnel.timeseries.RegularSeries;
import dev.runnel.timeseries.change.MannKendall;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.SortedMap;
import org.apiguardian.api.API;

/**
 * The greatest depth of each year for each of a list of durations, with the years that were too poorly measured left out
 * and named. Immutable and thread-safe.
 *
 * <p>A step belongs to the year in which it starts, and a window lies on steps of one year: rain over the turn of the year is
 * cut there. Where the year turns inside a step, as with days read at 9 h, the rest of that step counts for the year before. Its
 * depth is a true sliding maximum on the steps of the record; steps of the
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
     * @param longestGap longest time without a measured step, the time outside the record included
     * @since 0.1
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public record ExcludedYear(int year, double coverage, Duration longestGap) {
        /**
         * Checks that nothing is missing.
         *
         * @param year calendar year in which it starts
         * @param coverage share of its steps that were measured
         * @param longestGap longest time without a measured step, the time outside the record included
         */
        public ExcludedYear {
            Objects.requireNonNull(longestGap, "longestGap");
        }

        @Override
        public String toString() {
            return "ExcludedYear[" + year + ", coverage " + Text.significant(coverage, 3) + ", longest gap "
                    + Text.duration(longestGap) + "]";
        }
    }

    private static final Duration SHORTEST_YEAR = Duration.ofDays(365);

    private final List<Duration> durations;
    private final List<Integer> years;
    private final double[][] depths;
    private final List<List<PeakDepth>> peaks;
    private final List<ExcludedYear> excluded;
    private final Duration step;
    private final boolean isCorrected;
    private final String naming;

    private AnnualMaxima(
            List<Duration> durations,
            List<Integer> years,
            double[][] depths,
            List<List<PeakDepth>> peaks,
            List<ExcludedYear> excluded,
            Duration step,
            boolean isCorrected,
            String naming) {
        this.durations = durations;
        this.years = years;
        this.depths = depths;
        this.peaks = peaks;
        this.excluded = excluded;
        this.step = step;
        this.isCorrected = isCorrected;
        this.naming = naming;
    }

    /**
     * Returns the annual maxima of a record.
     *
     * @param rain depth in each step, mm; 0 or greater, NaN for missing
     * @param durations durations of rain, each at least one step long and no longer than 365 days; at least one
     * @param rule how to cut and to judge years
     * @return the maxima
     * @throws IllegalArgumentException if a depth is negative, a duration shorter than a step or longer than 365 days, there
     *     is no duration, or no year counts
     */
    public static AnnualMaxima from(RegularSeries rain, List<Duration> durations, YearRule rule) {
        Rain.requireNonNegative("rain", rain, "mm");
        SlidingMaximum search = SlidingMaximum.of(durations);
        durations.forEach(AnnualMaxima::requireWithinYear);
        int first = rain.start().atZone(ZoneOffset.UTC).getYear() - 1;
        int last = rain.end().atZone(ZoneOffset.UTC).getYear();
        List<Integer> years = new ArrayList<>();
        List<ExcludedYear> excluded = new ArrayList<>();
        List<List<PeakDepth>> peaks = new ArrayList<>();
        for (int year = first; year <= last + 1; year++) {
            Interval interval = rule.interval(year);
            durations.forEach(duration -> requireWithin(interval, duration));
            RegularSeries slice = rain.slice(interval);
            if (slice.size() > 0) {
                double coverage = rule.coverage(slice, year);
                Duration gap = rule.longestGap(slice, year);
                if (coverage > 0 && coverage >= rule.minimumCoverage() && gap.compareTo(rule.longestGap()) <= 0) {
                    years.add(year);
                    peaks.add(search.peaks(slice));
                } else {
                    excluded.add(new ExcludedYear(year, coverage, gap));
                }
            }
        }
        if (years.isEmpty()) {
            throw new IllegalArgumentException("rain must have a year that " + rule + " accepts, had " + excluded);
        }
        double[][] depths = peaks.stream()
                .map(row -> row.stream().mapToDouble(PeakDepth::depthMm).toArray())
                .toArray(double[][]::new);
        return new AnnualMaxima(
                List.copyOf(durations),
                List.copyOf(years),
                depths,
                List.copyOf(peaks),
                List.copyOf(excluded),
                rain.step(),
                false,
                rule.namingText());
    }

    /**
     * Returns annual maxima that are already known, for example from a yearbook.
     *
     * @param years the years, rising; at least one
     * @param depthsMm greatest depth of each year by duration, mm; 0 or greater, as many as there are years; copied
     * @param step step of the clock they were read at, or zero if they are true sliding maxima
     * @return the maxima; without their times
     * @throws IllegalArgumentException if the years do not rise, there is no year or no duration, a duration is not
     *     greater than 0, shorter than the step or longer than 365 days, or a depth is negative or not finite
     */
    public static AnnualMaxima of(List<Integer> years, SortedMap<Duration, double[]> depthsMm, Duration step) {
        List<Duration> durations = List.copyOf(depthsMm.keySet());
        Require.atLeast("number of years", years.size(), 1);
        Require.atLeast("number of durations", durations.size(), 1);
        for (int i = 1; i < years.size(); i++) {
            if (years.get(i) <= years.get(i - 1)) {
                throw new IllegalArgumentException(
                        "years must rise, had " + years.get(i) + " after " + years.get(i - 1));
            }
        }
        EpochNanos.nonNegative("step", step);
        double[][] rows = new double[years.size()][durations.size()];
        for (int j = 0; j < durations.size(); j++) {
            Duration duration = durations.get(j);
            EpochNanos.positive("duration", duration);
            requireWithinYear(duration);
            if (duration.compareTo(step) < 0) {
                throw new IllegalArgumentException("duration must be at least the step " + Text.exactDuration(step)
                        + ", was " + Text.exactDuration(duration));
            }
            double[] column = depthsMm.get(duration);
            if (column == null || column.length != rows.length) {
                throw new IllegalArgumentException(
                        "depths of " + Text.exactDuration(duration) + " must be as many as the years, " + rows.length
                                + ", were " + (column == null ? 0 : column.length));
            }
            for (int i = 0; i < rows.length; i++) {
                rows[i][j] = Require.nonNegative(
                        "depth of " + Text.exactDuration(duration) + " in " + years.get(i), column[i], "mm");
            }
        }
        return new AnnualMaxima(durations, List.copyOf(years), rows, List.of(), List.of(), step, false, "");
    }

    private static void requireWithin(Interval season, Duration duration) {
        if (duration.compareTo(Duration.between(season.start(), season.end())) > 0) {
            throw new IllegalArgumentException(
                    "duration must be no longer than the season " + season + ", was " + Text.duration(duration));
        }
    }

    private static void requireWithinYear(Duration duration) {
        if (duration.compareTo(SHORTEST_YEAR) > 0) {
            throw new IllegalArgumentException(
                    "duration must be no longer than a year of 365 days, was " + Text.exactDuration(duration));
        }
    }

    /**
     * Returns the maxima multiplied by n/(n - 1/8), where n is the number of steps in the duration: what a clock that
     * cuts time at fixed instants takes from the true maximum on average. Source: Weiss (1964), Ratio of true to
     * fixed-interval maximum rainfall, Journal of the Hydraulics Division ASCE 90(HY1), 77-82.
     *
     * @return the corrected maxima; these themselves if they are corrected already
     */
    public AnnualMaxima withClockCorrection() {
        if (isCorrected) {
            return this;
        }
        double[][] corrected = new double[depths.length][];
        for (int i = 0; i < depths.length; i++) {
            corrected[i] = depths[i].clone();
            for (int j = 0; j < corrected[i].length; j++) {
                corrected[i][j] *= step.isZero() ? 1 : clockFactor(Rain.hours(durations.get(j)) / Rain.hours(step));
            }
        }
        return new AnnualMaxima(durations, years, corrected, peaks, excluded, step, true, naming);
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
            throw new IllegalArgumentException("steps must be at least 1, was " + Text.number(steps));
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
        Objects.requireNonNull(duration, "duration");
        int at = position(duration);
        double[] column = new double[depths.length];
        for (int i = 0; i < column.length; i++) {
            column[i] = depths[i][at];
        }
        return column;
    }

    private int position(Duration duration) {
        int at = durations.indexOf(duration);
        if (at < 0) {
            throw new IllegalArgumentException(
                    "duration must be one of " + Text.durations(durations) + ", was " + Text.exactDuration(duration));
        }
        return at;
    }

    /**
     * Returns when the maxima of one duration fell, with their depths as measured, without a correction of the clock.
     *
     * @param duration one of {@link #durations}
     * @return the greatest window of each of {@link #years}; empty if the maxima were given without their times
     * @throws IllegalArgumentException if the duration was not asked for
     */
    public List<PeakDepth> peaks(Duration duration) {
        Objects.requireNonNull(duration, "duration");
        int at = position(duration);
        return peaks.stream().map(row -> row.get(at)).toList();
    }

    /**
     * Fits a family to the maxima of one duration. A fit keeps nothing of what speaks against it: ask {@link #warnings(Duration)}
     * first.
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
     * Returns the table of separate fits to each duration. Nothing ties them together: the curves of a short record may
     * cross, which the table refuses. {@link ScaledDdf} cannot cross. The table says what it was made of, and how many
     * {@link #warnings()} there are.
     *
     * @param family the family
     * @param method how to estimate the parameters
     * @param years return periods among annual maxima, years; rising, greater than 1
     * @return depths by duration and return period
     * @throws IllegalArgumentException if a duration cannot be fitted or the fits cross; the message names row and
     *     column
     */
    public DdfTable table(DistributionFamily family, FitMethod method, double... years) {
        List<Duration> rising = durations.stream().sorted().toList();
        double[][] rows = rising.stream()
                .map(duration -> fit(duration, family, method))
                .map(fit -> Arrays.stream(years).map(fit::returnLevel).toArray())
                .toArray(double[][]::new);
        return DdfTable.of(ReturnPeriodBasis.ANNUAL_MAXIMUM, rising, years, rows)
                .withProvenance(family + " by " + method.toText() + " to each duration of " + this.years.size()
                        + " years, warnings " + warnings().size());
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

    /**
     * Returns what speaks against a fit to the maxima of one duration: a trend significant at 5 %, a value that the test
     * of Grubbs on the logarithms calls an outlier at 10 %, years without rain, years left out, fewer than 20 years
     * (common practice), and years that lack steps, whose maxima may be too low. None of it forbids a fit; each calls for a
     * look at the record.
     *
     * @param duration one of {@link #durations}
     * @return sentences for a report, with the figures they rest on; empty if nothing was found
     * @throws IllegalArgumentException if the duration was not asked for
     */
    public List<String> warnings(Duration duration) {
        Objects.requireNonNull(duration, "duration");
        return MaximaWarnings.of(this, duration);
    }

    /**
     * Returns what speaks against a fit to the maxima of any of the durations, see {@link #warnings(Duration)}. A
     * {@link ScaledDdf} keeps it; the table of separate fits says how much of it there is.
     *
     * @return sentences for a report, each after the durations it is about unless it is about all of them; empty if nothing
     *     was found
     */
    public List<String> warnings() {
        return MaximaWarnings.of(this);
    }

    @Override
    public String toString() {
        return "AnnualMaxima[" + years.size() + " years " + years.get(0) + " to " + years.get(years.size() - 1)
                + (naming.isEmpty() ? ", " : ", " + naming + ", ") + excluded.size() + " excluded, durations "
                + durations.stream().map(Text::duration).toList()
                + (isCorrected ? ", corrected for the clock]" : "]");
    }
}
