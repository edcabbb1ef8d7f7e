package dev.runnel.timeseries.csv;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assumptions.assumeThat;

import dev.runnel.timeseries.Quality;
import dev.runnel.timeseries.Reading;
import dev.runnel.timeseries.Series;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CsvWriterTest {
    private static final Instant T0 = Instant.parse("2026-01-01T00:00:00Z");

    @Test
    void writesOneLineForEachInstantThatAnySeriesHas() {
        Map<String, Series> series = new LinkedHashMap<>();
        series.put(
                "depth",
                Series.builder()
                        .add(T0, 0.1)
                        .add(new Reading(T0.plusSeconds(120), 1e-9, Quality.SUSPECT))
                        .build());
        series.put(
                "flow, L/s",
                Series.builder()
                        .add(T0.plusSeconds(60), 12)
                        .add(T0.plusSeconds(120), Double.NaN)
                        .build());
        assertThat(CsvWriter.standard().withComments("invented").withQuality().toText(series))
                .isEqualTo("""
                        # invented
                        time,depth,depth_quality,"flow, L/s","flow, L/s_quality"
                        2026-01-01T00:00:00Z,0.1,unchecked,,
                        2026-01-01T00:01:00Z,,,12,unchecked
                        2026-01-01T00:02:00Z,1.0E-9,suspect,,missing
                        """);
        assertThat(CsvWriter.standard().withDecimals(3).toText(Map.of("d", series.get("depth"))))
                .isEqualTo("time,d\n2026-01-01T00:00:00Z,0.100\n2026-01-01T00:02:00Z,0.000\n");
    }

    @Test
    void writesTablesWithQuotesWhereNeeded(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("events.csv");
        CsvWriter.standard()
                .writeTable(
                        file,
                        List.of("start", "depth", "note"),
                        List.of(List.of(T0, 12.5, "a \"big\" one"), List.of(T0, Double.NaN, "# 2, late")));
        assertThat(file).hasContent("""
                        start,depth,note
                        2026-01-01T00:00:00Z,12.5,"a ""big"" one"
                        2026-01-01T00:00:00Z,,"# 2, late"
                        """);
        assertThat(folder.toFile().listFiles()).containsExactly(file.toFile());
    }

    @Test
    void replacesAFileOnlyWhenTheNewOneIsComplete(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("x.csv");
        Files.writeString(file, "old");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvWriter.standard().writeTable(file, List.of("a"), List.of(List.of(1, 2))))
                .withMessage("rows must have 1 cells as the header, was [1, 2]");
        assertThat(file).hasContent("old");
        assertThat(folder.toFile().listFiles()).containsExactly(file.toFile());
        CsvWriter.standard().write(file, Map.of("d", Series.empty()));
        assertThat(file).hasContent("time,d\n");
    }

    @Test
    void writesFilesWithTheOrdinaryPermissions(@TempDir Path folder) throws IOException {
        assumeThat(folder.getFileSystem().supportedFileAttributeViews()).contains("posix");
        Path plain = Files.writeString(folder.resolve("plain.txt"), "x");
        Path file = folder.resolve("x.csv");
        CsvWriter.standard().write(file, Map.of("d", Series.empty()));
        assertThat(Files.getPosixFilePermissions(file)).isEqualTo(Files.getPosixFilePermissions(plain));
    }

    @Test
    void refusesLineEndsAndFoldersThatAreNotThere(@TempDir Path folder) {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvWriter.standard().withComments("a\nb"))
                .withMessage("comment must be one line, was \"a\uFFFDb\"");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvWriter.standard().toText(Map.of("a\r", Series.empty())))
                .withMessage("text must be one line, was \"a\uFFFD\"");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> CsvWriter.standard().withDecimals(16))
                .withMessage("decimals must be in [0, 15], was 16");
        Path file = folder.resolve("none").resolve("x.csv");
        assertThatThrownBy(() -> CsvWriter.standard().write(file, Map.of()))
                .isInstanceOf(UncheckedIOException.class)
                .hasMessage("cannot write " + file);
    }

    @Test
    void noTextIsAFormulaForASpreadsheet(@TempDir Path folder) throws IOException {
        Path file = folder.resolve("table.csv");
        CsvWriter.standard()
                .writeTable(
                        file,
                        List.of("site", "note", "depth"),
                        List.of(
                                List.of("a", "=HYPERLINK(\"x\")", -0.25),
                                List.of("b", "-5 mm at the sensor", "-0.30")));
        assertThat(Files.readAllLines(file))
                .containsExactly(
                        "site,note,depth", "a,\"'=HYPERLINK(\"\"x\"\")\",-0.25", "b,'-5 mm at the sensor,-0.30");
        assertThat(CsvTable.read(file, "site", "note", "depth").rows())
                .extracting(row -> row.text("note"))
                .containsExactly("=HYPERLINK(\"x\")", "-5 mm at the sensor");
    }
}
