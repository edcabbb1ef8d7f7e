package dev.runnel.verification.junit;

import static dev.runnel.verification.Tables.DESCRIPTOR;
import static dev.runnel.verification.Tables.ROWS;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import dev.runnel.verification.Selection;
import dev.runnel.verification.Tables;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ProofTest {
    @TempDir
    Path folder;

    /** As an embedder would write it. */
    @ParameterizedTest
    @MethodSource
    void everyExpectedValueHolds(TableProof table) {
        assertThat(table.verify()).isNotEmpty();
    }

    static Stream<TableProof> everyExpectedValueHolds() {
        return Proof.tables(Selection.all().withCalculation("section.area")).limit(3);
    }

    @Test
    void allTablesAreOffered() {
        assertThat(Proof.tables()).hasSizeGreaterThan(200);
    }

    @Test
    void ownTablesRunToo() {
        Tables.write(folder, "means", DESCRIPTOR, ROWS);
        List<TableProof> tables = Proof.tables(folder).toList();
        assertThat(tables).singleElement().hasToString("means, A. Tester (2001), Means");
        assertThat(tables.get(0).verify()).hasSize(2);
    }

    @Test
    void aValueThatFailsIsShown() {
        Tables.write(folder, "means", DESCRIPTOR, ROWS.replace("2.3", "2.4"));
        TableProof table = Proof.tables(folder).findFirst().orElseThrow();
        assertThatThrownBy(table::verify)
                .isInstanceOf(AssertionError.class)
                .hasMessage("1 of 2 values fail in means, A. Tester (2001), Means\n"
                        + "  means:1:value: expected 2.4 1, computed 2.3333333333333335, tolerance 0.05"
                        + "; column mean, calculation statistics.mean");
    }

    @Test
    void aFolderWithoutTablesFails() {
        assertThat(Proof.tables(folder.resolve("none")).toList())
                .singleElement()
                .satisfies(table -> assertThatThrownBy(table::verify)
                        .isInstanceOf(AssertionError.class)
                        .hasMessageContaining("is not a folder that can be read"));
    }
}
