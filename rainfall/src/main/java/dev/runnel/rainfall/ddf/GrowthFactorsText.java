package dev.runnel.rainfall.ddf;

import dev.runnel.internal.Text;
import java.util.Arrays;

/** Makes {@link GrowthFactors} of lines and says where they go wrong. */
final class GrowthFactorsText {
    private static final String EXPECTED = "a line such as m5_mm,2M,1M,M2,M10,M100";
    private static final double FIVE_YEARS =
            ReturnPeriodBasis.ANNUAL_MAXIMUM.convert(5, ReturnPeriodBasis.PEAKS_OVER_THRESHOLD);

    private GrowthFactorsText() {}

    static GrowthFactors factors(NumberLines text, String provenance) {
        double[] years = years(text, text.header(EXPECTED));
        FactorTable table = FactorTable.of(
                text, years.length, true, (m5, column, above, values) -> check(years, m5, column, above, values));
        int at = Arrays.binarySearch(years, FIVE_YEARS);
        if (at >= 0) {
            return new GrowthFactors(provenance, years, table);
        }
        double[][] values = Arrays.stream(table.values())
                .map(row -> inserted(row, -at - 1, 1))
                .toArray(double[][]::new);
        return new GrowthFactors(
                provenance, inserted(years, -at - 1, FIVE_YEARS), new FactorTable(table.rows(), values));
    }

    private static double[] inserted(double[] row, int at, double value) {
        double[] longer = Arrays.copyOf(row, row.length + 1);
        System.arraycopy(row, at, longer, at + 1, row.length - at);
        longer[at] = value;
        return longer;
    }

    private static double[] years(NumberLines text, NumberLines.Line header) {
        if (!header.cell(1).equals("m5_mm")) {
            throw text.wrong(header, 1, "must be m5_mm, was '" + header.cell(1) + "'");
        }
        if (header.cells().length < 2) {
            throw text.wrong(header, 1, "must be followed by return periods, " + EXPECTED);
        }
        double[] years = new double[header.cells().length - 1];
        for (int column = 2; column <= header.cells().length; column++) {
            int at = column - 2;
            String head = header.cell(column);
            text.checked(header, column, () -> years[at] = years(head));
            if (at > 0 && !(years[at] > years[at - 1])) {
                throw text.wrong(
                        header,
                        column,
                        "return period must be rarer than " + header.cell(column - 1) + " before it, was " + head);
            }
        }
        return years;
    }

    /** Peaks over threshold from 2M (twice a year), M10 (annual maxima) or 10 (years). */
    private static double years(String head) {
        try {
            if (head.endsWith("M")) {
                double timesAYear = Double.parseDouble(head.substring(0, head.length() - 1));
                return ReturnPeriodBasis.PEAKS_OVER_THRESHOLD.requireYears(head, 1 / timesAYear);
            }
            if (head.startsWith("M")) {
                double years = Double.parseDouble(head.substring(1));
                ReturnPeriodBasis.ANNUAL_MAXIMUM.requireYears(head, years);
                return ReturnPeriodBasis.ANNUAL_MAXIMUM.convert(years, ReturnPeriodBasis.PEAKS_OVER_THRESHOLD);
            }
            return ReturnPeriodBasis.PEAKS_OVER_THRESHOLD.requireYears("return period", Double.parseDouble(head));
        } catch (NumberFormatException e) {
            throw new IllegalArgumentException(
                    "return period must be such as 2M (twice a year), M10 (years, annual maxima) or 10 (years, peaks over"
                            + " threshold), was '" + head + "'",
                    e);
        }
    }

    private static void check(double[] years, double m5, int column, FactorTable above, double[] values) {
        double factor = values[column];
        double least = years[column] > FIVE_YEARS ? 1 : 0;
        double greatest = years[column] < FIVE_YEARS ? 1 : Double.POSITIVE_INFINITY;
        for (int left = 0; left < column; left++) {
            least = Double.isNaN(values[left]) ? least : Math.max(least, values[left]);
        }
        if (years[column] == FIVE_YEARS ? factor != 1 : !(factor > least && factor < greatest)) {
            throw new IllegalArgumentException("growth factor must be "
                    + (years[column] == FIVE_YEARS
                            ? "1 for M5"
                            : "above " + Text.number(least)
                                    + (greatest == 1 ? " and below 1, being more frequent than M5" : " and finite"))
                    + ", was " + Text.number(factor));
        }
        if (above.rows().length > 0) {
            double before = above.lastRow() * above.values()[above.rows().length - 1][column];
            if (m5 * factor < before) {
                throw new IllegalArgumentException("depth must not fall as M5 rises, below " + Text.number(before)
                        + " mm in the line before, was " + Text.number(m5 * factor) + " mm");
            }
        }
    }
}
