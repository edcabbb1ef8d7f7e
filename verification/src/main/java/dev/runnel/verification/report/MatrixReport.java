package dev.runnel.verification.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import dev.runnel.internal.CellText;
import dev.runnel.internal.Text;
import dev.runnel.verification.Check;
import dev.runnel.verification.Results;
import dev.runnel.verification.Status;
import java.io.IOException;
import java.io.StringWriter;
import java.util.List;
import org.apiguardian.api.API;

/**
 * Which source stands behind which public calculation of the library, as CSV: a line for each public calculation and
 * source, with provenance and the worst share of the tolerance that a passing value uses.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class MatrixReport {
    private MatrixReport() {}

    /**
     * Returns the matrix.
     *
     * @param results the results
     * @return text in CSV with a header; a public calculation that no value reaches has one line with the reason
     * @throws IOException never in practice, the text is made in memory
     */
    public static String text(Results results) throws IOException {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().build(text)) {
            csv.writeRecord(
                    "method",
                    "reached",
                    "calculation",
                    "source",
                    "provenance",
                    "pass",
                    "fail",
                    "excluded",
                    "worst",
                    "reason");
            for (PublicCalculations.Method method : PublicCalculations.all()) {
                int before = text.getBuffer().length();
                for (Group source :
                        Group.by(of(method, results), check -> check.calculation() + "\t" + check.source())) {
                    line(csv, method, source);
                }
                if (text.getBuffer().length() == before) {
                    csv.writeRecord(method.name(), "", "", "", "", "0", "0", "0", "", method.reason());
                }
            }
        }
        return text.toString();
    }

    private static List<Check> of(PublicCalculations.Method method, Results results) {
        var asked = method.calculations();
        return results.checks().stream()
                .filter(check -> asked.contains(check.calculation()))
                .toList();
    }

    private static void line(CsvWriter csv, PublicCalculations.Method method, Group source) {
        Check first = source.checks().get(0);
        csv.writeRecord(
                method.name(),
                method.straight().contains(first.calculation()) ? "straight" : "through",
                CellText.written(first.calculation()),
                CellText.written(first.source().citation()),
                first.source().provenance().toString(),
                Long.toString(source.count(Status.PASS)),
                Long.toString(source.count(Status.FAIL)),
                Long.toString(source.count(Status.EXCLUDED)),
                Text.significant(source.worstShare(), 3),
                "");
    }
}
