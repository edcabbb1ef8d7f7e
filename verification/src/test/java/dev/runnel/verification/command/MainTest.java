package dev.runnel.verification.command;

import static dev.runnel.verification.Tables.DESCRIPTOR;
import static dev.runnel.verification.Tables.ROWS;
import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.verification.Tables;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MainTest {
    private static final String WATER = String.join(
            "\n",
            "author = A. Tester",
            "year = 2001",
            "work = Water",
            "locator = p. 2",
            "provenance = published",
            "values = 1",
            "column.t = degrees C, temperature",
            "column.rho = kg/m3, density",
            "calculation = water.density",
            "input.celsius = t",
            "expected = rho",
            "tolerance = 0.056",
            "reason = two decimals are printed, at the saturation pressure",
            "");

    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final ByteArrayOutputStream err = new ByteArrayOutputStream();

    @TempDir
    Path folder;

    /** Runs the tables of the test folder alone, by their author's name. */
    private int run(String... more) {
        List<String> arguments = new ArrayList<>(List.of("--report", report().toString(), "--cases", "0"));
        arguments.addAll(List.of(more));
        return Main.run(
                arguments,
                new PrintStream(out, true, StandardCharsets.UTF_8),
                new PrintStream(err, true, StandardCharsets.UTF_8));
    }

    private int runTables() {
        return run("--source", "a. tester", "--tables", folder.resolve("tables").toString());
    }

    private Path report() {
        return folder.resolve("report");
    }

    private void table(String name, String descriptor, String rows) {
        Tables.write(folder.resolve("tables"), name, descriptor, rows);
    }

    private String printed() {
        return out.toString(StandardCharsets.UTF_8);
    }

    @Test
    void endsWith0IfEveryValuePasses() throws Exception {
        table("means", DESCRIPTOR, ROWS);
        assertThat(runTables()).isZero();
        assertThat(printed())
                .contains("     2     0         0")
                .contains("A. Tester (2001), Means")
                .contains("Total: 2 values from 1 sources, 2 pass (2 published), 0 fail, 0 excluded")
                .contains("PASS: every value that is not excluded lies within its tolerance.");
        assertThat(Files.readAllLines(report().resolve("report.csv")))
                .first()
                .isEqualTo(
                        "check,module,calculation,source,locator,input,expected,computed,deviation,tolerance,status,column,program");
    }

    @Test
    void endsWith1IfAValueFails() {
        table("means", DESCRIPTOR, ROWS.replace("2.3", "2.4"));
        assertThat(runTables()).isEqualTo(1);
        assertThat(printed())
                .contains("FAILED")
                .contains("means:1:value: expected 2.4, computed 2.3333333, tolerance 0.05 1")
                .contains("FAIL: 1 values lie outside their tolerance.");
    }

    @Test
    void endsWith2IfATableCannotBeRunButRunsTheOthers() {
        table("means", DESCRIPTOR, ROWS);
        table("more", DESCRIPTOR.replace("statistics.mean", "statistics.none"), ROWS);
        assertThat(runTables()).isEqualTo(2);
        assertThat(printed())
                .contains("     2     0         0")
                .contains("COULD NOT RUN")
                .contains("more.table, line 9, column 15: calculation must be a known calculation");
    }

    @Test
    void endsWith2ForAnUnreadableNumber() {
        table("means", DESCRIPTOR, ROWS.replace("2.3", "2.x"));
        assertThat(runTables()).isEqualTo(2);
        assertThat(printed()).contains("means.csv, line 2, column \"mean\": must be a decimal number, was \"2.x\"");
    }

    @Test
    void endsWith2IfNothingMatches() {
        assertThat(run("--source", "nobody wrote this")).isEqualTo(2);
        assertThat(printed()).contains("no expected value matches --source nobody wrote this");
    }

    @Test
    void endsWith2ForAFolderWithoutTables() throws Exception {
        Files.createDirectories(folder.resolve("tables"));
        assertThat(runTables()).isEqualTo(2);
        assertThat(printed()).contains("holds no file NAME.table");
    }

    @Test
    void endsWith2ForAFolderThatIsNotThere() {
        assertThat(runTables()).isEqualTo(2);
        assertThat(printed()).contains("is not a folder that can be read");
    }

    @Test
    void endsWith2IfTwoTablesHaveOneName() {
        table("means", DESCRIPTOR, ROWS);
        Tables.write(folder.resolve("tables").resolve("below"), "means", DESCRIPTOR, ROWS);
        assertThat(runTables()).isEqualTo(2);
        assertThat(printed()).contains("another table is named means");
    }

    @Test
    void endsWith2IfTheReportCannotBeWritten() throws Exception {
        table("means", DESCRIPTOR, ROWS);
        Files.writeString(report(), "a file where a folder should be");
        assertThat(runTables()).isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("cannot write the report to");
    }

    @Test
    void endsWith2ForABadCommandLine() {
        assertThat(run("--modul", "rainfall")).isEqualTo(2);
        assertThat(run("--module")).isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8))
                .contains("unknown option \"--modul\", see --help")
                .contains("option --module must be followed by a value, see --help");
    }

    @Test
    void listsWhatIsExcluded() {
        table("means", DESCRIPTOR, "sample,mean,exclude\n1 2 4,9.9,misprint of 2.3\n1 2,1.5,\n");
        assertThat(runTables()).isZero();
        assertThat(printed())
                .contains("Excluded, each with its reason")
                .contains("means:1:value: expected 9.9, computed 2.3333333")
                .contains(" - misprint of 2.3")
                .contains("1 pass (1 published), 0 fail, 1 excluded");
    }

    @Test
    void recomputesRandomConduits() {
        assertThat(run("--source", "independent recomputation with Brent", "--cases", "50"))
                .isZero();
        assertThat(printed()).contains("Total: 6 values from 1 sources, 6 pass (6 derived oracle)");
    }

    @Test
    void writesAPageToSignWithTheDayThatWasGiven() throws Exception {
        table("means", DESCRIPTOR, ROWS);
        assertThat(run(
                        "--source",
                        "a. tester",
                        "--tables",
                        folder.resolve("tables").toString(),
                        "--day",
                        "2026-11-28"))
                .isZero();
        assertThat(report().resolve("sign-off.html"))
                .content()
                .contains("<dt>Selection</dt><dd>--source a. tester</dd>")
                .contains("<dt>Day</dt><dd>2026-11-28</dd>");
        assertThat(run("--day", "28.11.2026")).isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8))
                .contains("option --day must be a day such as 2026-11-28, was \"28.11.2026\"");
    }

    @Test
    void endsWith2ForABadCount() {
        assertThat(run("--cases", "many")).isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8))
                .contains("option --cases must be a count of 0 or more, was \"many\"");
    }

    @Test
    void runsOneModule() {
        table("means", DESCRIPTOR, ROWS);
        table("water", WATER, "t,rho\n15,999.06\n");
        assertThat(runTables()).isZero();
        assertThat(printed()).contains("timeseries: ", "hydraulics: ", "Total: 3 values");
        out.reset();
        assertThat(run(
                        "--module",
                        "timeseries",
                        "--source",
                        "a. tester",
                        "--tables",
                        folder.resolve("tables").toString()))
                .isZero();
        assertThat(printed()).contains("timeseries: ", "Total: 2 values").doesNotContain("hydraulics: ");
    }

    @Test
    void oneModuleAloneHasManyTables() {
        assertThat(run("--list", "--module", "timeseries")).isZero();
        long listed = printed().lines().count();
        out.reset();
        assertThat(run("--list")).isZero();
        assertThat(listed).isBetween(20L, printed().lines().count() - 20);
    }

    @Test
    void listsTheTablesWithoutComputing() {
        table("means", DESCRIPTOR, ROWS);
        assertThat(run(
                        "--list",
                        "--source",
                        "a. tester",
                        "--tables",
                        folder.resolve("tables").toString()))
                .isZero();
        assertThat(printed().lines()).containsExactly("     2  means, A. Tester (2001), Means", "     2  values");
        assertThat(report()).doesNotExist();
    }

    @Test
    void choosesByCalculationProvenanceAndVersion() {
        table("means", DESCRIPTOR, ROWS);
        table("later", DESCRIPTOR + "since = 7.2\n", ROWS);
        String tables = folder.resolve("tables").toString();
        assertThat(run("--calculation", "statistics.me", "--since", "7.1.9", "--tables", tables))
                .isZero();
        assertThat(printed()).contains("Total: 2 values from 1 sources, 2 pass (2 published)");
        assertThat(run("--calculation", "statistics.mean", "--provenance", "from memory", "--since", "7", "--list"))
                .isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8))
                .contains("option --since must be a version such as 0.1 or 0.1.2, was \"7\"");
        assertThat(run("--provenance", "guessed")).isEqualTo(2);
        assertThat(err.toString(StandardCharsets.UTF_8)).contains("option --provenance must be one of published,");
    }

    @Test
    void listsTheCalculations() {
        assertThat(run("--calculations")).isZero();
        assertThat(printed())
                .contains("water.density [kg/m3] of celsius" + System.lineSeparator())
                .contains("section.area [m2] of [depth, ");
    }

    @Test
    void helps() {
        assertThat(run("--help")).isZero();
        assertThat(printed()).contains("--tables FOLDER").contains("Ends with 0 if every value passes");
    }
}
