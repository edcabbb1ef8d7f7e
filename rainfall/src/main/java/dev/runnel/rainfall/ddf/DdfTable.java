package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Text;
import dev.runnel.rainfall.internal.Rain;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * A depth-duration-frequency relation given as a table. Immutable and thread-safe.
 *
 * <p>Between rows ln P is linear in ln D. Between columns P is linear in ln T with T counted in peaks over threshold: the form in
 * which an exponential law of the peaks is straight, on which Deutscher Wetterdienst's KOSTRA tables are built. Years of annual
 * maxima are converted first ({@link ReturnPeriodBasis}), to
 *
 * <blockquote>P linear in −ln(−ln(1 − 1/T)),</blockquote>
 *
 * <p>in which a Gumbel law is straight. So a table has one answer, in whichever basis it is given or asked. Linear in ln T of
 * annual maxima themselves would be lower between the columns: for a Gumbel law with a location of 30 mm and a scale of 8 mm by
 * 0.8 % between columns of 2 and 5 years, 4.3 % between 1.1 and 2, 0.1 % between 5 and 10. The depth at a
 * duration is first found in each column and then along T, so that depth and return period are inverse to each other
 * within rounding (1e-13 relative) and keep the order of the table. Tabulated values come back exactly.
 *
 * <p>Valid between the first and last duration and return period. A table has the accuracy of its source and of the
 * interpolation, which is best tested by leaving a part of it out. Three tables of NOAA Atlas 14 without half of their columns
 * give those back within 3.5 % at two years (between one and five) and 2.5 % above; without every second row, within 6 %, but
 * 10 % at 30 min between 15 and 60 min, where one of them has a kink.
 *
 * @since 0.1
 */
@API(status = API.Status.STABLE, since = "0.1")
public final class DdfTable implements DepthDurationFrequency {
    private final List<Duration> durations;
    private final double[] years;
    private final double[][] depths;
    private final ReturnPeriodBasis basis;
    private final double[] logHours;
    private final ReturnPeriodColumns columns;
    private final String provenance;

    private DdfTable(
            List<Duration> durations, double[] years, double[][] depths, ReturnPeriodBasis basis, String provenance) {
        this.durations = durations;
        this.years = years;
        this.depths = depths;
        this.basis = basis;
        this.logHours = durations.stream().mapToDouble(DdfTable::logHours).toArray();
        this.columns = ReturnPeriodColumns.of(years, basis);
        this.provenance = provenance;
    }

    /**
     * Returns the table of the given depths.
     *
     * @param basis what the return periods count
     * @param durations one for each row; rising, at least one
     * @param years return period for each column, years; rising, at least one
     * @param depthMm depths by row and column, mm; greater than 0, never falling with duration nor with return period, NaN
     *     where the table is blank; at least one in each row. Equal depths of several return periods, as the rounding of print
     *     makes them, have the shortest of these
     * @return the table
     * @throws IllegalArgumentException if durations or return periods do not rise, a depth breaks the order, or the
     *     sizes do not agree; the message names row and column
     */
    public static DdfTable of(ReturnPeriodBasis basis, List<Duration> durations, double[] years, double[][] depthMm) {
        Objects.requireNonNull(basis, "basis");
        Objects.requireNonNull(durations, "durations");
        double[][] depths = new double[depthMm.length][];
        for (int i = 0; i < depths.length; i++) {
            depths[i] = depthMm[i].clone();
        }
        List<Duration> rows = List.copyOf(durations);
        double[] columns = years.clone();
        DdfTableChecks.check(rows, columns, depths, basis);
        return new DdfTable(rows, columns, depths, basis, "");
    }

    /**
     * Reads a table from a CSV file in UTF-8.
     *
     * <p>The first line names the unit of duration, {@code duration_min} or {@code duration_h}, and after it the return
     * periods in years; each further line holds a duration and its depths in mm. Empty lines and lines that begin with
     * {@code #} are passed over. A cell may be blank.
     *
     * <pre>
     * # Marram Bay, invented
     * duration_min,1,2,5,10,30,100
     * 5,5.1,6.3,8.2,9.6,12.0,15.1
     * 15,8.9,11.0,14.2,16.7,20.9,26.2
     * </pre>
     *
     * @param file the file
     * @param basis what the return periods count
     * @return the table
     * @throws IllegalArgumentException if the text is not such a table; the message names file, line and column
     * @throws UncheckedIOException if the file cannot be read
     */
    public static DdfTable read(Path file, ReturnPeriodBasis basis) {
        return DdfTableText.table(NumberLines.read(file), basis);
    }

    /**
     * Reads a table from text in the form that {@link #read} takes.
     *
     * @param text lines of the table
     * @param basis what the return periods count
     * @return the table
     * @throws IllegalArgumentException if the text is not such a table; the message names line and column
     */
    public static DdfTable parse(String text, ReturnPeriodBasis basis) {
        return DdfTableText.table(NumberLines.parse(text, "text"), basis);
    }

    /**
     * Returns the same table with a word on where it comes from, which its text then shows.
     *
     * @param provenance source, site and date, as they should stand in a report; may be empty
     * @return the table
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public DdfTable withProvenance(String provenance) {
        return new DdfTable(durations, years, depths, basis, Objects.requireNonNull(provenance, "provenance"));
    }

    /**
     * Returns where the table comes from.
     *
     * @return as it was given; empty if it was not
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public String provenance() {
        return provenance;
    }

    @Override
    public double depthMm(Duration duration, double returnPeriodYears) {
        requireCovered(duration);
        double[] row = row(duration);
        ReturnPeriodColumns known = columns.without(row);
        if (!known.equals(columns)
                && !(returnPeriodYears >= known.smallest() && returnPeriodYears <= known.greatest())) {
            throw new IllegalArgumentException("returnPeriodYears must be in [" + Text.number(known.smallest()) + ", "
                    + Text.number(known.greatest()) + "] years for " + Text.exactDuration(duration)
                    + ", beyond which the table is blank, was " + Text.number(returnPeriodYears));
        }
        return known.depthMm(withoutBlanks(row), returnPeriodYears);
    }

    @Override
    public ReturnPeriod returnPeriod(Duration duration, double depthMm) {
        requireCovered(duration);
        double[] row = row(duration);
        return columns.without(row).returnPeriod(withoutBlanks(row), depthMm);
    }

    private static double[] withoutBlanks(double[] row) {
        return Arrays.stream(row).filter(depth -> !Double.isNaN(depth)).toArray();
    }

    /**
     * Returns the cells that are blank. They are left out: between known cells of their row the depth is interpolated over them,
     * and beyond them the table has no answer for that duration.
     *
     * @return such as {@code 15 min at 100 years}; none in a full table
     */
    @API(status = API.Status.EXPERIMENTAL, since = "0.1")
    public List<String> blanks() {
        List<String> blanks = new ArrayList<>();
        for (int row = 0; row < depths.length; row++) {
            for (int column = 0; column < years.length; column++) {
                if (Double.isNaN(depths[row][column])) {
                    blanks.add(Text.duration(durations.get(row)) + " at " + Text.number(years[column]) + " years");
                }
            }
        }
        return List.copyOf(blanks);
    }

    private void requireCovered(Duration duration) {
        if (!covers(duration)) {
            throw new IllegalArgumentException("duration must be in [" + Text.exactDuration(shortestDuration()) + ", "
                    + Text.exactDuration(longestDuration()) + "], was " + Text.exactDuration(duration));
        }
    }

    /** The depths at a duration for all return periods. */
    private double[] row(Duration duration) {
        int found = Collections.binarySearch(durations, duration);
        if (found >= 0) {
            return depths[found];
        }
        int upper = -found - 1;
        double share = (logHours(duration) - logHours[upper - 1]) / (logHours[upper] - logHours[upper - 1]);
        double[] row = new double[years.length];
        for (int i = 0; i < row.length; i++) {
            row[i] = depths[upper - 1][i] * Math.pow(depths[upper][i] / depths[upper - 1][i], share);
        }
        return row;
    }

    private static double logHours(Duration duration) {
        return Math.log(Rain.hours(duration));
    }

    @Override
    public ReturnPeriodBasis basis() {
        return basis;
    }

    @Override
    public Duration shortestDuration() {
        return durations.get(0);
    }

    @Override
    public Duration longestDuration() {
        return durations.get(durations.size() - 1);
    }

    @Override
    public double smallestYears() {
        return years[0];
    }

    @Override
    public double greatestYears() {
        return years[years.length - 1];
    }

    /**
     * Returns the durations of the rows.
     *
     * @return durations, rising
     */
    public List<Duration> durations() {
        return durations;
    }

    /**
     * Returns the return periods of the columns.
     *
     * @return years, rising; a copy
     */
    public double[] years() {
        return years.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof DdfTable that
                && basis == that.basis
                && provenance.equals(that.provenance)
                && durations.equals(that.durations)
                && Arrays.equals(years, that.years)
                && Arrays.deepEquals(depths, that.depths);
    }

    @Override
    public int hashCode() {
        return Objects.hash(basis, provenance, durations, Arrays.hashCode(years), Arrays.deepHashCode(depths));
    }

    @Override
    public String toString() {
        return "DdfTable[" + durations.size() + " durations " + Text.duration(shortestDuration()) + " to "
                + Text.duration(longestDuration()) + ", "
                + years.length + " return periods " + Text.significant(smallestYears(), 6) + " to "
                + Text.significant(greatestYears(), 6) + " years, " + basis.toText()
                + (blanks().isEmpty() ? "" : ", blank " + blanks())
                + (provenance.isEmpty() ? "]" : "; " + provenance + "]");
    }
}
