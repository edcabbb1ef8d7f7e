package dev.runnel.verification.table;

import static dev.runnel.verification.Tables.DESCRIPTOR;
import static dev.runnel.verification.Tables.ROWS;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.verification.Check;
import dev.runnel.verification.Status;
import dev.runnel.verification.Tables;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PublishedTableTest {
    @TempDir
    Path folder;

    private PublishedTable table(String descriptor, String rows) {
        return PublishedTable.read(Tables.write(folder, "means", descriptor, rows));
    }

    @Test
    void comparesEveryRow() {
        List<Check> checks = table(DESCRIPTOR, ROWS).checks();
        assertThat(checks).hasSize(2);
        Check first = checks.get(0);
        assertThat(first.name()).isEqualTo("means:1:value");
        assertThat(first.source()).hasToString("A. Tester (2001), Means");
        assertThat(first.module()).isEqualTo("timeseries");
        assertThat(first.input()).isEqualTo("sample=1 2 4");
        assertThat(first.computed()).hasValue(7 / 3.0);
        assertThat(first.tolerance()).isEqualTo(0.05);
        assertThat(first.status()).isEqualTo(Status.PASS);
    }

    @Test
    void aWrongValueFails() {
        Check check =
                table(DESCRIPTOR, "sample,mean\n1 2 4,2.2\n1 2,1.5\n").checks().get(0);
        assertThat(check.status()).isEqualTo(Status.FAIL);
        assertThat(check.share()).isGreaterThan(1);
    }

    @Test
    void anInputTheLibraryRefusesFailsWithItsMessage() {
        Check check =
                table(DESCRIPTOR, "sample,mean\n1 x 4,2.3\n1 2,1.5\n").checks().get(0);
        assertThat(check.status()).isEqualTo(Status.FAIL);
        assertThat(check.computed()).isEmpty();
        assertThat(check.remark()).isEqualTo("refused: input sample must be numbers separated by spaces, was \"x\"");
    }

    @Test
    void anExcludedRowIsShownNotJudged() {
        Check check = table(DESCRIPTOR, "sample,mean,exclude\n1 2 4,9.9,misprint of 2.3\n1 2,1.5,\n")
                .checks()
                .get(0);
        assertThat(check.status()).isEqualTo(Status.EXCLUDED);
        assertThat(check.remark()).isEqualTo("misprint of 2.3");
        assertThat(check.computed()).hasValue(7 / 3.0);
    }

    @Test
    void oneValueOfARowCanBeExcluded() {
        String descriptor = DESCRIPTOR.replace("values = 2", "values = 4")
                + "column.median = 1, their median\n"
                + "check.mean.tolerance = 0.06\n"
                + "check.median.calculation = statistics.quantile\n"
                + "check.median.input.probability = 0.5\n"
                + "check.median.expected = median\n";
        List<Check> checks = table(
                        descriptor, "sample,mean,median,exclude_median\n1 2 4,2.3,9,slip of the pen\n1 2,1.5,1.5,\n")
                .checks();
        assertThat(checks.stream().map(Check::status))
                .containsExactly(Status.PASS, Status.EXCLUDED, Status.PASS, Status.PASS);
        assertThat(checks.get(0).tolerance()).isEqualTo(0.06);
        assertThat(checks.get(3).tolerance()).isEqualTo(0.05);
    }

    @Test
    void blankCellsAreCounted() {
        PublishedTable table = table(DESCRIPTOR, "sample,mean\n1 2 4,2.3\n1 5,\n1 2,1.5\n");
        assertThat(table.blanks()).isEqualTo(1);
        assertThat(table.checks()).hasSize(2);
    }

    @Test
    void aRowCanNameItsOwnSourceAndPlace() {
        Check check = table(DESCRIPTOR, "sample,mean,source,locator\n1 2 4,2.3,B. Other (1999),p. 7\n1 2,1.5,,\n")
                .checks()
                .get(0);
        assertThat(check.source()).hasToString("B. Other (1999)");
        assertThat(check.locator()).isEqualTo("p. 7");
    }

    @Test
    void resultAndUnitsCanBeConverted() {
        String descriptor = DESCRIPTOR.replace("expected = mean", "expected = mean\nresult = result * 1000");
        Check check = table(descriptor, "sample,mean\n1 2 4,2333.3\n1 2,1500.0\n")
                .checks()
                .get(0);
        assertThat(check.status()).isEqualTo(Status.PASS);
    }

    @Test
    void aSampleCanComeFromAFile() throws Exception {
        Files.writeString(folder.resolve("one.csv"), "x\n1\n2\n4\n");
        Files.writeString(folder.resolve("two.csv"), "x\n1\n2\n");
        String descriptor = DESCRIPTOR.replace("text sample", "data {sample}.csv x");
        List<Check> checks =
                table(descriptor, "sample,mean\none,2.3\ntwo,1.5\n").checks();
        assertThat(checks.get(0).computed()).hasValue(7 / 3.0);
        assertThat(checks.get(0).input()).isEqualTo("sample=[3 values]");
        assertThat(checks.get(1).status()).isEqualTo(Status.PASS);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "year = 2001 | yeer = 2001 | means.table, line 2, column 1: key \"yeer\" is not known",
                "year = 2001 | # | key \"year\" is missing",
                "author = A. Tester | author = | means.table, line 1, column 9: author must have a value",
                "published | seen | line 5, column 14: provenance must be one of published, second-hand, fitted, from memory",
                "values = 2 | values = 3 | values = 3 must be the count of printed values in",
                "values = 2 | values = two | line 6, column 10: values must be a decimal number, was \"two\"",
                "values = 2 | values = 0 | values must be a whole number of 1 or more",
                "statistics.mean | statistics.meen | line 9, column 15: calculation must be a known calculation,",
                "input.sample = text sample | # | key \"input.sample\" is missing, statistics.mean needs it",
                "text sample | text samples | column \"samples\" of check \"value\" is not in",
                "text sample | sample + | input.sample must be a formula of columns, numbers",
                "expected = mean | expected = men | column \"men\" of check \"value\" is not in",
                "expected = mean | result = result | key \"expected\" is missing",
                "0.5 digit | half a digit | line 12, column 13: tolerance must be terms such as",
                "tolerance = 0.5 digit | # | key \"tolerance\" is missing",
                "reason = one decimal is printed | # | key \"reason\" is missing",
                "column.mean = 1, their mean | # | key \"column.mean\" is missing",
                "column.mean = 1, their mean | column.mean = 1 | column.mean must be unit, meaning",
                "year = 2001 | year = 2001;;column.more = 1, x | key \"column.more\" names no column of",
                "year = 2001 | year = 2001;;input.depth = 1 | input.depth is no input of [statistics.mean [sample]]",
                "year = 2001 | year = 2001;;check.a.input.depth = 1 | check.a.input.depth is no input of statistics.mean",
                "year = 2001 | year = 2001;;check.a.colour = 1 | key \"check.a.colour\" is not known",
                "text sample | data none.csv x | none.csv: there is no such file",
            })
    void aBadDescriptorSaysWhatIsWrong(String good, String bad, String message) {
        String descriptor = DESCRIPTOR.replace(good, bad.replace(";;", "\n"));
        assertThatThrownBy(() -> table(descriptor, ROWS))
                .isInstanceOf(TableException.class)
                .hasMessageContaining("means.")
                .hasMessageContaining(message);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "sample,mean\\n1 2,1.5,7\\n | means.csv, line 2: must have 2 cells as the header, has 3",
                "sample,mean\\n | means.csv: must have a header and at least one row",
                "sample,mean,mean\\n1,1,1\\n | line 1: column names must differ",
                "sample,mean value\\n1,1\\n | line 1: a column name must be letters, digits and _, was \"mean value\"",
            })
    void aBadCsvFileSaysWhatIsWrong(String rows, String message) {
        assertThatThrownBy(() -> table(DESCRIPTOR, rows.replace("\\n", "\n")))
                .isInstanceOf(TableException.class)
                .hasMessageContaining(message);
    }

    @Test
    void anUnreadableNumberIsNamedByFileLineAndColumn() {
        PublishedTable table =
                table(DESCRIPTOR, "# comment\nsample,mean\n1 2,1.5\n1 2 4,2,3\n".replace("2,3", "\"2,3\""));
        assertThatThrownBy(table::checks)
                .isInstanceOf(TableException.class)
                .hasMessageContaining("means.csv, line 4, column \"mean\": must be a decimal number, was \"2,3\"");
    }

    @Test
    void aMissingCsvFileIsNamed() throws Exception {
        Path descriptor = Tables.write(folder, "means", DESCRIPTOR, ROWS);
        Files.delete(folder.resolve("means.csv"));
        assertThatThrownBy(() -> PublishedTable.read(descriptor))
                .isInstanceOf(TableException.class)
                .hasMessageContaining("means.csv: there is no such file");
    }
}
