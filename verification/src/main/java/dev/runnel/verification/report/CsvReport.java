package dev.runnel.verification.report;

import de.siegmar.fastcsv.writer.CsvWriter;
import dev.runnel.internal.CellText;
import dev.runnel.internal.Text;
import dev.runnel.verification.Check;
import dev.runnel.verification.Results;
import java.io.IOException;
import java.io.StringWriter;
import java.util.stream.DoubleStream;
import org.apiguardian.api.API;

/**
 * The checks as CSV, one a line.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class CsvReport {
    private static final String[] COLUMNS = {
        "check",
        "module",
        "calculation",
        "source",
        "locator",
        "input",
        "expected",
        "computed",
        "deviation",
        "tolerance",
        "status",
        "column",
        "program"
    };

    private CsvReport() {}

    /**
     * Returns the report.
     *
     * @param results the results
     * @return text in CSV with a header; numbers in full precision, the expected value as printed
     * @throws IOException never in practice, the text is made in memory
     */
    public static String text(Results results) throws IOException {
        StringWriter text = new StringWriter();
        try (CsvWriter csv = CsvWriter.builder().build(text)) {
            csv.writeRecord(COLUMNS);
            for (Check check : results.checks()) {
                csv.writeRecord(
                        CellText.written(check.name()),
                        check.module(),
                        CellText.written(check.calculation()),
                        CellText.written(check.source().toString()),
                        CellText.written(check.locator()),
                        CellText.written(InputText.shortened(check.input())),
                        CellText.written(check.printed()),
                        number(check.computed().stream()),
                        number(check.deviation().stream()),
                        Text.number(check.tolerance()),
                        check.status().toString(),
                        CellText.written(check.column()),
                        CellText.written(check.program()));
            }
        }
        return text.toString();
    }

    private static String number(DoubleStream value) {
        return value.mapToObj(Text::number).findFirst().orElse("");
    }
}
