package dev.runnel.verification;

import dev.runnel.verification.command.VerificationRun;
import dev.runnel.verification.report.MatrixReport;
import dev.runnel.verification.table.TableFolder;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/** All shipped tables, run once for all tests that ask. */
public final class WholeRun {
    private static final TableFolder TABLES = TableFolder.shipped();
    private static final Results RESULTS = VerificationRun.of(List.of(TABLES), Selection.all());

    private WholeRun() {}

    public static TableFolder tables() {
        return TABLES;
    }

    public static Results results() {
        return RESULTS;
    }

    /**
     * For each class with public calculations how many published or second-hand values pass that reach one of them; the
     * class as named below {@code dev.runnel}.
     */
    public static Map<String, Long> publishedByClass() {
        Map<String, Long> counts = new TreeMap<>();
        try {
            MatrixReport.text(RESULTS).lines().skip(1).forEach(line -> {
                String name = line.substring(0, line.indexOf('#'));
                counts.merge(name, published(line), Long::sum);
            });
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return counts;
    }

    /** A line ends with provenance, pass, fail, excluded, worst share, reason; a citation before may hold commas. */
    private static long published(String line) {
        for (Provenance each : List.of(Provenance.PUBLISHED, Provenance.SECOND_HAND)) {
            int at = line.lastIndexOf("," + each + ",");
            if (at >= 0) {
                return Long.parseLong(
                        line.substring(at + each.toString().length() + 2).split(",")[0]);
            }
        }
        return 0;
    }
}
