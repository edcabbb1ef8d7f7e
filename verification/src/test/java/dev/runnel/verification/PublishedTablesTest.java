package dev.runnel.verification;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.DynamicTest.dynamicTest;

import dev.runnel.verification.calculation.Calculation;
import dev.runnel.verification.calculation.Calculations;
import dev.runnel.verification.command.Main;
import dev.runnel.verification.command.VerificationRun;
import dev.runnel.verification.table.PublishedTable;
import dev.runnel.verification.table.TableFolder;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/** Every table that is shipped, printed or derived, in every build; leaves the reports where the command leaves them. */
class PublishedTablesTest {
    /** What was there when this line was written last: tables may be added, none may be lost. */
    private static final int LEAST_VALUES = 12_380;

    private static final Set<Provenance> WEAK = Set.of(Provenance.FROM_MEMORY, Provenance.FITTED);

    private static final TableFolder SHIPPED = WholeRun.tables();

    @TestFactory
    Stream<DynamicTest> everyExpectedValueIsReproduced() {
        Map<String, List<Check>> byTable = all().checks().stream().collect(Collectors.groupingBy(Check::table));
        return SHIPPED.tables().stream()
                .map(table -> dynamicTest(table.name() + ", " + table.source(), () -> {
                    List<Check> checks = byTable.getOrDefault(table.name(), List.of());
                    assertThat(checks).hasSize(table.values());
                    assertThat(checks)
                            .filteredOn(check -> check.status() == Status.FAIL)
                            .isEmpty();
                }));
    }

    @Test
    void twoRunsAreTheSame() {
        Selection some = Selection.all().withModule("timeseries");
        assertThat(VerificationRun.of(List.of(SHIPPED), some)).isEqualTo(VerificationRun.of(List.of(SHIPPED), some));
    }

    @Test
    void everyTableCanBeRead() {
        assertThat(SHIPPED.problems()).isEmpty();
    }

    @Test
    void noValueIsLost() {
        assertThat(SHIPPED.tables().stream().mapToInt(PublishedTable::values).sum())
                .isGreaterThanOrEqualTo(LEAST_VALUES);
    }

    @Test
    void namesAreUnique() {
        List<Check> checks = all().checks();
        assertThat(checks.stream().map(Check::name)).doesNotHaveDuplicates();
    }

    @Test
    void whatIsFromMemoryOrFittedIsNeverTheOnlyEvidence() {
        Set<String> weak = calculations(true);
        weak.removeAll(calculations(false));
        assertThat(weak).isEmpty();
    }

    @Test
    void everyCalculationIsCheckedByATable() {
        Set<String> unchecked =
                Calculations.all().stream().map(Calculation::name).collect(Collectors.toCollection(TreeSet::new));
        unchecked.removeAll(calculations(false));
        assertThat(unchecked).isEmpty();
    }

    @Test
    void everyExclusionHasAReason() {
        assertThat(all().checks())
                .filteredOn(check -> check.status() == Status.EXCLUDED)
                .allSatisfy(check -> assertThat(check.remark()).hasSizeGreaterThan(10));
    }

    @Test
    void theReportsAreWritten() throws Exception {
        Path folder = Path.of("target", "verification");
        Main.write(all(), folder, Selection.all(), Optional.empty());
        assertThat(folder.resolve("report.csv")).isNotEmptyFile();
        assertThat(folder.resolve("report.xml")).isNotEmptyFile();
        assertThat(folder.resolve("report.html")).isNotEmptyFile();
        assertThat(folder.resolve("sign-off.html")).isNotEmptyFile();
    }

    private static Results all() {
        return WholeRun.results();
    }

    private static Set<String> calculations(boolean weak) {
        return all().checks().stream()
                .filter(check -> check.status() == Status.PASS)
                .filter(check -> WEAK.contains(check.source().provenance()) == weak)
                .map(Check::calculation)
                .collect(Collectors.toCollection(TreeSet::new));
    }
}
