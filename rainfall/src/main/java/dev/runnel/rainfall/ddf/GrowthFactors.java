package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Require;
import dev.runnel.internal.Text;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import org.apiguardian.api.API;

/**
 * Growth factors of the Flood Studies Report: depth of another return period over the five-year depth of the same
 * duration, MT/M5, by the five-year depth. Immutable and thread-safe.
 *
 * <p><b>Two kinds of return period.</b> {@code 2M} and {@code 1M} are depths reached twice and once a year: peaks over
 * threshold of 0.5 and 1 year. {@code M2} to {@code M10000} are years in annual maxima; M5 is one of them and has the factor
 * 1. To lie on one scale all are kept as peaks over threshold, by Langbein's relation
 * ({@link ReturnPeriodBasis}): M2 is 1.44 years there, M5 is 4.48, M10 is 9.49. Between them the factor is linear in ln T,
 * between five-year depths linear in depth.
 *
 * <p><b>Where the Wallingford Procedure differs.</b> Its factors Z2, which BRE Digest 365 took over, are those of the Flood
 * Studies Report at 1, 2 ... 100 years of peaks over threshold, which is why Z2 at five years is above 1. Seen, not read
 * anywhere: the table of England and Wales here, read so, gives 104 of the 108 factors of Z2 to 0.01 and all to
 * 0.014.
 *
 * <p><b>The three tables that come with this library are from memory, unconfirmed</b>; their {@link #provenance} says so.
 * If you own the report, {@link #read} the printed factors instead.
 *
 * <p>Sources: NERC (1975), Flood Studies Report, volume II, table 2.7; National Water Council (1981), Wallingford
 * Procedure; BRE (1991), Digest 365. Superseded for design in the United Kingdom: for the checking of older work only.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class GrowthFactors {
    private final String provenance;
    private final ReturnPeriodColumns columns;
    private final FactorTable table;

    GrowthFactors(String provenance, double[] years, FactorTable table) {
        this.provenance = provenance;
        this.columns = ReturnPeriodColumns.of(years, ReturnPeriodBasis.PEAKS_OVER_THRESHOLD);
        this.table = table;
    }

    /**
     * Returns the factors Z2 of the Wallingford Procedure for England and Wales, 1 to 100 years of peaks over threshold and
     * five-year depths of 5 to 200 mm. From memory; two published calculation sheets confirm the ten-year column to 0.01
     * between 7 and 53 mm. Reads the table; keep the value.
     *
     * @return the factors
     */
    public static GrowthFactors floodStudiesEnglandAndWalesShort() {
        return shipped(
                "flood-studies-growth-england-wales-short.csv",
                "Wallingford Procedure (1981) Z2, England and Wales, from memory, unconfirmed");
    }

    /**
     * Returns the factors of the Flood Studies Report for England and Wales, twice a year to 10000 years and five-year depths
     * of 0.5 to 1000 mm. From memory, unconfirmed. Reads the table; keep the value.
     *
     * @return the factors
     */
    public static GrowthFactors floodStudiesEnglandAndWales() {
        return shipped(
                "flood-studies-growth-england-wales.csv",
                "NERC (1975) table 2.7, England and Wales, from memory, unconfirmed");
    }

    /**
     * Returns the factors of the Flood Studies Report for Scotland and Northern Ireland, twice a year to 10000 years and
     * five-year depths of 0.5 to 1000 mm. From memory, unconfirmed. Reads the table; keep the value.
     *
     * @return the factors
     */
    public static GrowthFactors floodStudiesScotlandAndNorthernIreland() {
        return shipped(
                "flood-studies-growth-scotland-northern-ireland.csv",
                "NERC (1975) table 2.7, Scotland and Northern Ireland, from memory, unconfirmed");
    }

    private static GrowthFactors shipped(String resource, String provenance) {
        return GrowthFactorsText.factors(NumberLines.resource(resource), provenance);
    }

    /**
     * Reads factors from a CSV file in UTF-8, such as those of a printed table that you own.
     *
     * <p>The first line begins with {@code m5_mm} and names the return periods, rising: {@code 2M} is reached twice a year,
     * {@code M10} is ten years in annual maxima, a bare {@code 10} is ten years of peaks over threshold. Each further line
     * holds a five-year depth in mm and its factors, below 1 for what is more frequent than M5 and above 1 for what is rarer; a
     * cell may be left blank. M5 itself need not be there; it is 1. Empty lines and lines that begin with {@code #} are passed
     * over.
     *
     * <pre>
     * # invented
     * m5_mm,2M,1M,M2,M10,M100
     * 5,0.5,0.6,0.7,1.2,1.8
     * 50,0.6,0.7,0.8,1.1,1.7
     * </pre>
     *
     * @param file the file
     * @param provenance where the factors come from, as it should stand in a report; not blank
     * @return the factors
     * @throws IllegalArgumentException if the text is not such a table, the factors do not rise with return period, or the
     *     depths of a column fall as the five-year depth rises; the message names file, line and column
     * @throws UncheckedIOException if the file cannot be read
     */
    public static GrowthFactors read(Path file, String provenance) {
        return GrowthFactorsText.factors(NumberLines.read(file), ProvenanceText.require(provenance));
    }

    /**
     * Reads factors from text in the form that {@link #read} takes.
     *
     * @param text lines of the table
     * @param provenance where the factors come from, as it should stand in a report; not blank
     * @return the factors
     * @throws IllegalArgumentException if the text is not such a table; the message names line and column
     */
    public static GrowthFactors parse(String text, String provenance) {
        return GrowthFactorsText.factors(NumberLines.parse(text, "text"), ProvenanceText.require(provenance));
    }

    /**
     * Returns the growth from a five-year depth.
     *
     * @param m5Mm five-year depth M5, mm; in the range of the table
     * @return MT/M5 for each return period; that of the table at its rows and columns
     * @throws IllegalArgumentException if the depth is out of range
     */
    public GrowthCurve fromM5(double m5Mm) {
        return new GrowthCurve(m5Mm, columns, row(m5Mm));
    }

    /** Factors for each of {@link #years}; NaN where blank. */
    double[] row(double m5Mm) {
        return table.row(Require.inRange("m5Mm", m5Mm, table.firstRow(), table.lastRow(), "mm"));
    }

    /**
     * Returns the return periods of the table.
     *
     * @return years, peaks over threshold, rising; a copy
     */
    public double[] years() {
        return columns.years().clone();
    }

    /**
     * Returns the least five-year depth of the table.
     *
     * @return M5, mm
     */
    public double smallestM5Mm() {
        return table.firstRow();
    }

    /**
     * Returns the greatest five-year depth of the table.
     *
     * @return M5, mm
     */
    public double greatestM5Mm() {
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
        return "GrowthFactors[" + provenance + ", " + Text.significant(columns.smallest(), 4) + " to "
                + Text.significant(columns.greatest(), 4) + " years, peaks over threshold, M5 "
                + Text.significant(smallestM5Mm(), 6) + " to " + Text.significant(greatestM5Mm(), 6) + " mm]";
    }
}
