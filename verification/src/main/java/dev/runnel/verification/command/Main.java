package dev.runnel.verification.command;

import dev.runnel.verification.Check;
import dev.runnel.verification.Results;
import dev.runnel.verification.Selection;
import dev.runnel.verification.calculation.Calculations;
import dev.runnel.verification.oracle.ConduitPeers;
import dev.runnel.verification.report.CsvReport;
import dev.runnel.verification.report.HtmlReport;
import dev.runnel.verification.report.JUnitReport;
import dev.runnel.verification.report.MatrixReport;
import dev.runnel.verification.report.SignOffReport;
import dev.runnel.verification.report.SummaryReport;
import dev.runnel.verification.table.PublishedTable;
import dev.runnel.verification.table.TableFolder;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import javax.xml.stream.XMLStreamException;
import org.apiguardian.api.API;

/**
 * The command.
 *
 * @since 0.1
 */
@API(status = API.Status.EXPERIMENTAL, since = "0.1")
public final class Main {
    private Main() {}

    /**
     * Runs the command and ends the virtual machine with its exit code.
     *
     * @param arguments see {@code --help}
     */
    public static void main(String[] arguments) {
        PrintStream out = new PrintStream(new FileOutputStream(FileDescriptor.out), true, StandardCharsets.UTF_8);
        PrintStream err = new PrintStream(new FileOutputStream(FileDescriptor.err), true, StandardCharsets.UTF_8);
        int code = run(List.of(arguments), out, err);
        out.flush();
        err.flush();
        if (code != 0) {
            System.exit(code);
        }
    }

    /**
     * Runs the command.
     *
     * @param arguments see {@code --help}
     * @param out where the summary goes
     * @param err where complaints about the command line go
     * @return 0 if every value passes, 1 if one fails, 2 if something could not be run
     */
    public static int run(List<String> arguments, PrintStream out, PrintStream err) {
        Options options;
        try {
            options = Options.parse(arguments);
        } catch (IllegalArgumentException e) {
            err.println(e.getMessage());
            return 2;
        }
        if (options.help()) {
            out.print(Options.USAGE);
            return 0;
        }
        if (options.calculations()) {
            Calculations.all().forEach(calculation -> out.println(calculation.toText()));
            return 0;
        }
        // Beside the tables, from before they are read: one after the other they would leave a core idle.
        CompletableFuture<List<Check>> peers = CompletableFuture.supplyAsync(() -> peers(options));
        List<TableFolder> folders = new ArrayList<>(List.of(TableFolder.shipped()));
        options.tables().forEach(folder -> folders.add(TableFolder.read(folder)));
        if (options.list()) {
            return list(folders, options.selection(), out);
        }
        Results results = namedIfEmpty(with(VerificationRun.of(folders, options.selection()), peers.join()), options);
        out.print(SummaryReport.text(results));
        Path report = options.report().orElseGet(Main::defaultReport);
        try {
            write(results, report, options.selection(), options.day());
        } catch (IOException e) {
            err.println("cannot write the report to " + report + ": " + e);
            return 2;
        }
        out.println("Report: " + report.resolve("report.html"));
        out.println("One page to sign: " + report.resolve("sign-off.html"));
        return results.exitCode();
    }

    /** Prints what would run: nothing is computed. */
    private static int list(List<TableFolder> folders, Selection selection, PrintStream out) {
        int total = 0;
        boolean problems = false;
        for (TableFolder folder : folders) {
            for (PublishedTable table : folder.tables()) {
                int values = table.count(selection);
                total += values;
                if (values > 0) {
                    out.println(String.format(Locale.ROOT, "%6d  %s, %s", values, table.name(), table.source()));
                }
            }
            folder.problems().forEach(problem -> out.println("COULD NOT READ " + problem));
            problems |= !folder.problems().isEmpty();
        }
        out.println(String.format(Locale.ROOT, "%6d  values", total));
        return total == 0 || problems ? 2 : 0;
    }

    private static List<Check> peers(Options options) {
        return options.cases() == 0 || options.list()
                ? List.of()
                : ConduitPeers.compare(options.cases(), options.selection());
    }

    private static Results with(Results tables, List<Check> more) {
        List<Check> checks = new ArrayList<>(tables.checks());
        checks.addAll(more);
        return new Results(checks, tables.blanks(), tables.problems());
    }

    private static Results namedIfEmpty(Results results, Options options) {
        return results.checks().isEmpty() && results.problems().isEmpty()
                ? new Results(List.of(), 0, List.of("no expected value matches " + options.selection()))
                : results;
    }

    /**
     * Writes the report files.
     *
     * @param results the results
     * @param folder where; made if it is missing
     * @param selection what was compared
     * @param day the day of the run, for the page to sign
     * @throws IOException if a file cannot be written
     */
    public static void write(Results results, Path folder, Selection selection, Optional<LocalDate> day)
            throws IOException {
        Files.createDirectories(folder);
        Map<String, Written> files = new LinkedHashMap<>();
        files.put("report.html", () -> HtmlReport.text(results));
        files.put("report.csv", () -> CsvReport.text(results));
        files.put("report.xml", () -> JUnitReport.text(results));
        files.put("matrix.csv", () -> MatrixReport.text(results));
        files.put("sign-off.html", () -> SignOffReport.text(results, selection, day));
        List<Optional<IOException>> failures = files.entrySet().parallelStream()
                .map(file -> failure(folder.resolve(file.getKey()), file.getValue()))
                .toList();
        for (Optional<IOException> failure : failures) {
            if (failure.isPresent()) {
                throw failure.get();
            }
        }
    }

    /** The text of a report file. */
    @FunctionalInterface
    private interface Written {
        String text() throws IOException, XMLStreamException;
    }

    private static Optional<IOException> failure(Path file, Written written) {
        try {
            Files.writeString(file, written.text());
            return Optional.empty();
        } catch (XMLStreamException e) {
            return Optional.of(new IOException(file + " cannot be written", e));
        } catch (IOException e) {
            return Optional.of(e);
        }
    }

    /** Returns the folder beside the program if that stands in a build folder, else one in the working folder. */
    private static Path defaultReport() {
        try {
            Path program = Path.of(Main.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI());
            Path build = program.getParent();
            if (build != null && build.endsWith("target")) {
                Path report = build.resolve("verification");
                Path here = Path.of("").toAbsolutePath();
                return report.startsWith(here) ? here.relativize(report) : report;
            }
        } catch (URISyntaxException | SecurityException e) {
            // No place of its own: the working folder is as good.
        }
        return Path.of("verification-report");
    }
}
