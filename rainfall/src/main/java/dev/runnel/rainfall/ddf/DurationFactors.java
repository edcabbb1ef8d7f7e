package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.apiguardian.api.API;

/**
 * Factors Z1 of the Wallingford Procedure: five-year depth of a duration over that of 60 minutes, M5-D/M5-60, by the ratio
 * r of the 60-minute to the two-day depth. Immutable and thread-safe. Linear in r between rows.
 *
 * <p><b>The table that comes with this library is from memory</b>: two published calculation sheets confirm it for r 0.35 and
 * 0.40 to 0.005 at most durations, the rest is unconfirmed. If you own the procedure, {@link #read} the printed factors, which
 * may also go beyond 24 hours.
 *
 * <p>Sources: National Water Council (1981), Wallingford Procedure; BRE (1991), Digest 365.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class DurationFactors {
    private static final String EXPECTED = "a line such as r,5,15,30,60,120,1440";

    private final String provenance;
    private final List<Duration> durations;
    private final FactorTable table;

    private DurationFactors(String provenance, List<Duration> durations, FactorTable table) {
        this.provenance = provenance;
        this.durations = durations;
        this.table = table;
    }

    /**
     * Returns the factors Z1 for r 0.12 to 0.45 and 5 min to 24 h. From memory. Reads the table; keep the value.
     *
     * @return the factors
     */
    public static DurationFactors floodStudies1975() {
        return factors(
                NumberLines.resource("flood-studies-duration-factors.csv"),
                "Wallingford Procedure (1981) Z1, from memory, unconfirmed");
    }

    /**
     * Reads factors from a CSV file in UTF-8, such as those of a printed table that you own.
     *
     * <p>The first line begins with {@code r} and names the durations in minutes, rising; each further line holds r and its
     * factors, never falling with duration, 1 at 60 minutes. Empty lines and lines that begin with {@code #} are passed over.
     *
     * <pre>
     * # invented
     * r,30,60,1440,2880
     * 0.2,0.7,1,3.8,5
     * 0.4,0.8,1,2.2,2.6
     * </pre>
     *
     * @param file the file
     * @param provenance where the factors come from, as it should stand in a report; not blank
     * @return the factors
     * @throws IllegalArgumentException if the text is not such a table; the message names file, line and column
     * @throws UncheckedIOException if the file cannot be read
     */
    public static DurationFactors read(Path file, String provenance) {
        return factors(NumberLines.read(file), ProvenanceText.require(provenance));
    }

    /**
     * Reads factors from text in the form that {@link #read} takes.
     *
     * @param text lines of the table
     * @param provenance where the factors come from, as it should stand in a report; not blank
     * @return the factors
     * @throws IllegalArgumentException if the text is not such a table; the message names line and column
     */
    public static DurationFactors parse(String text, String provenance) {
        return factors(NumberLines.parse(text, "text"), ProvenanceText.require(provenance));
    }

    private static DurationFactors factors(NumberLines text, String provenance) {
        List<Duration> durations = durations(text, text.header(EXPECTED));
        int hour = durations.indexOf(Duration.ofHours(1));
        FactorTable table = FactorTable.of(text, durations.size(), false, (r, column, above, values) -> {
            Require.inRange("r", r, 0, 1, "");
            double least = column == 0 ? 0 : values[column - 1];
            if (column == hour ? values[column] != 1 || least > 1 : !(values[column] > 0 && values[column] >= least)) {
                throw new IllegalArgumentException("factor must be " + (column == hour ? "1 at 60 minutes" : "above 0")
                        + " and not below " + Text.number(least) + ", was " + Text.number(values[column]));
            }
        });
        return new DurationFactors(provenance, durations, table);
    }

    private static List<Duration> durations(NumberLines text, NumberLines.Line header) {
        if (!header.cell(1).equals("r")) {
            throw text.wrong(header, 1, "must be r, was '" + header.cell(1) + "'");
        }
        if (header.cells().length < 2) {
            throw text.wrong(header, 1, "must be followed by durations in minutes, " + EXPECTED);
        }
        List<Duration> durations = new ArrayList<>();
        for (int column = 2; column <= header.cells().length; column++) {
            durations.add(Duration.ofNanos(Math.round(text.number(header, column) * 60e9)));
            text.checked(header, column, () -> DdfTableChecks.checkDuration(durations, durations.size() - 1));
        }
        return List.copyOf(durations);
    }

    /**
     * Returns a factor.
     *
     * @param ratio r; in the range of the table
     * @param duration one of {@link #durations}
     * @return Z1
     * @throws IllegalArgumentException if r is out of range or the table has no such duration
     */
    public double factor(double ratio, Duration duration) {
        Objects.requireNonNull(duration, "duration");
        int column = durations.indexOf(duration);
        if (column < 0) {
            throw new IllegalArgumentException(
                    "duration must be one of " + Text.durations(durations) + ", was " + Text.exactDuration(duration));
        }
        return table.row(requireRatio(ratio))[column];
    }

    double requireRatio(double ratio) {
        return Require.inRange("ratio", ratio, table.firstRow(), table.lastRow(), "");
    }

    /**
     * Returns the durations of the table.
     *
     * @return durations, rising
     */
    public List<Duration> durations() {
        return durations;
    }

    /**
     * Returns the least ratio of the table.
     *
     * @return r
     */
    public double smallestRatio() {
        return table.firstRow();
    }

    /**
     * Returns the greatest ratio of the table.
     *
     * @return r
     */
    public double greatestRatio() {
        return table.lastRow();
    }

    /**
     * Returns where the factors come from.
     *
     * @return for those of this library with the words "from memory, unconfirmed"
     */
    public String provenance() {
        return provenance;
    }

    @Override
    public String toString() {
        return "DurationFactors[" + provenance + ", " + Text.duration(durations.get(0)) + " to "
                + Text.duration(durations.get(durations.size() - 1))
                + ", r " + Text.significant(smallestRatio(), 6) + " to " + Text.significant(greatestRatio(), 6) + "]";
    }
}
