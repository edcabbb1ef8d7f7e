package dev.runnel.verification.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import dev.runnel.internal.CellText;
import dev.runnel.internal.Text;
import dev.runnel.verification.Check;
import dev.runnel.verification.Results;
import dev.runnel.verification.Status;
import java.io.IOException;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
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
            // Many methods are reached by one calculation: what stands behind it is counted once.
            List<Behind> all = Group.by(results.checks(), check -> check.calculation() + "\t" + check.source()).stream()
                    .map(Behind::of)
                    .toList();
            for (PublicCalculations.Method method : PublicCalculations.all()) {
                int before = text.getBuffer().length();
                Set<String> asked = method.calculations();
                for (Behind each : all) {
                    if (asked.contains(each.calculation())) {
                        line(csv, method, each);
                    }
                }
                if (text.getBuffer().length() == before) {
                    csv.writeRecord(method.name(), "", "", "", "", "0", "0", "0", "", method.reason());
                }
            }
        }
        return text.toString();
    }

    /** A calculation and a source, with what the source's values say of it. */
    private record Behind(String calculation, List<String> cells) {
        static Behind of(Group source) {
            Check first = source.checks().get(0);
            return new Behind(
                    first.calculation(),
                    List.of(
                            CellText.written(first.calculation()),
                            CellText.written(first.source().citation()),
                            first.source().provenance().toString(),
                            Long.toString(source.count(Status.PASS)),
                            Long.toString(source.count(Status.FAIL)),
                            Long.toString(source.count(Status.EXCLUDED)),
                            Text.significant(source.worstShare(), 3),
                            ""));
        }
    }

    private static void line(CsvWriter csv, PublicCalculations.Method method, Behind behind) {
        List<String> cells = new ArrayList<>();
        cells.add(method.name());
        cells.add(method.straight().contains(behind.calculation()) ? "straight" : "through");
        cells.addAll(behind.cells());
        csv.writeRecord(cells);
    }
}
