package dev.runnel.timeseries.csv;

import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.io.IOException;
import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CsvRefusalsTest {
    private static final CsvLayout DEPTH = CsvLayout.of("time").withColumn("depth");

    @Test
    void refusesFilesOfAnotherKind(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("x.csv");
        Files.write(file, new byte[] {'t', 'i', '\n', 'P', 'K', 3, 4, 0});
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.read(file, DEPTH))
                .withMessage("x.csv, line 2: file must be text in the layout's charset, was something else: "
                        + "it holds the control character 3");
        Files.writeString(file, "");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.read(file, DEPTH))
                .withMessage("x.csv: file must have a header line with time, was empty");
        Files.writeString(file, "# only a comment\n\n");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.read(file, DEPTH))
                .withMessage("x.csv: file must have a header line with time, was empty");
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        CsvRecords.read(file, CsvLayout.of("1").withColumn("2").withoutHeader()))
                .withMessage("x.csv: file must have a line of data, was empty");
        Files.writeString(file, "\nzeit,tiefe\n");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.read(file, DEPTH))
                .withMessage("x.csv, line 2: column must be one of zeit, tiefe, was time");
        Files.writeString(file, "time,depth,depth\n");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.read(file, DEPTH))
                .withMessage("x.csv, line 1, column 3: column name must be there once, was there again: depth");
        Files.writeString(file, "time,\"depth\n");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.read(file, DEPTH))
                .withMessage("x.csv, line 1, column 2: a quote in the header must be closed on its line, was not");
        Files.writeString(file, "x".repeat(1_100_000));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.read(file, DEPTH))
                .withMessage("x.csv, line 1: a line must have at most 1048576 bytes, was longer: "
                        + "is this a file of records?");
        Path none = folder.resolve("none.csv");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.read(none, DEPTH))
                .withMessage("file must exist, was " + none);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.read(folder, DEPTH))
                .withMessage("file must be a file, was the folder " + folder);
    }

    @Test
    void aLayoutMustFitWhatIsRead() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.parse("time\n", CsvLayout.of("time")))
                .withMessage("layout must have a column of values, was CsvLayout[time in time]");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.readInstants("x", new StringReader(""), DEPTH))
                .withMessage("layout must have no column of values for bare instants, was "
                        + "CsvLayout[time in time, depth from depth]");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvRecords.parse("time,depth\n", DEPTH).series("flow"))
                .withMessage("name must be one of [depth], was flow");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DEPTH.withColumn("depth"))
                .withMessage("column must have a name of its own, was depth");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvLayout.of(" "))
                .withMessage("timeColumn must not be blank, was \" \"");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvColumn.of(""))
                .withMessage("name must not be blank, was \"\"");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> DEPTH.withIssueLimit(-1))
                .withMessage("limit must be at least 0, was -1");
    }
}
