package dev.runnel.verification.oracle;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assumptions.assumeThat;

import dev.runnel.verification.House;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The command that makes the tables again, tried on small programs. Only where there is Python, which the proof does not need. */
class RemakeTest {
    private static final String ORACLE = "verification/src/oracle/";

    @TempDir
    private Path house;

    private Path tables;

    private record Ended(int code, String said) {}

    @BeforeEach
    void aHouseWithoutPrograms() throws IOException {
        assumeThat(hasPython()).as("Python is installed").isTrue();
        tables = house.resolve("verification/src/main/resources/dev/runnel/verification/tables/rainfall");
        Files.createDirectories(tables);
        Files.createDirectories(house.resolve(ORACLE));
        Files.copy(House.root().resolve(ORACLE + "remake.py"), house.resolve(ORACLE + "remake.py"));
    }

    @Test
    void aProgramWritesItsOwnTableAgain() throws IOException {
        program("one.py", "one.csv", "a\n1\n");
        table("one", "a\n1\n", "one.py");
        assertThat(remake()).isEqualTo(new Ended(0, ""));
    }

    @Test
    void whatChangedIsToldAndNotKept() throws IOException {
        program("one.py", "one.csv", "a\n2\n");
        table("one", "a\n1\n", "one.py");
        assertThat(remake().code()).isEqualTo(1);
        assertThat(tables.resolve("one.csv")).hasContent("a\n1\n");
    }

    @Test
    void aTableOfAnotherProgramIsRefused() throws IOException {
        program("one.py", "one.csv", "a\n1\n");
        program("two.py", "one.csv", "a\n1\n");
        table("one", "a\n1\n", "one.py");
        table("two", "b\n1\n", "two.py");
        Ended ended = remake("--keep");
        assertThat(ended.code()).isEqualTo(2);
        assertThat(ended.said())
                .isEqualTo("REFUSED: " + ORACLE + "two.py writes what is not its own: rainfall/one.csv is by " + ORACLE
                        + "one.py");
    }

    @Test
    void twoProgramsThatWriteOneFileOfDataAreRefused() throws IOException {
        program("one.py", "sample.csv", "a\n1\n");
        program("two.py", "sample.csv", "a\n1\n");
        table("one", "a\n1\n", "one.py");
        table("two", "b\n1\n", "two.py");
        Ended ended = remake("--keep");
        assertThat(ended.code()).isEqualTo(2);
        assertThat(ended.said()).contains("two.py writes what is not its own: rainfall/sample.csv is by");
        assertThat(tables.resolve("sample.csv")).doesNotExist();
    }

    @Test
    void programsNamedTogetherShareATable() throws IOException {
        program("one.py", "one.csv", "a\n1\n");
        program("two.py", "one.csv", "a\n1\n");
        table("one", "a\n1\n", "one.py, " + ORACLE + "two.py");
        assertThat(remake()).isEqualTo(new Ended(0, ""));
    }

    private void program(String name, String file, String content) throws IOException {
        Files.writeString(
                house.resolve(ORACLE + name),
                "import pathlib, sys\n(pathlib.Path(sys.argv[1]) / '" + file + "').write_text('''" + content
                        + "''')\n");
    }

    private void table(String name, String rows, String programs) throws IOException {
        Files.writeString(tables.resolve(name + ".csv"), rows);
        Files.writeString(
                tables.resolve(name + ".table"), "provenance = derived oracle\nprogram = " + ORACLE + programs + "\n");
    }

    /** How it ended, and what it refused. */
    private Ended remake(String... arguments) throws IOException {
        List<String> command = new ArrayList<>(
                List.of("python3", house.resolve(ORACLE + "remake.py").toString()));
        command.addAll(List.of(arguments));
        Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
        List<String> said;
        try (var lines = process.inputReader(StandardCharsets.UTF_8)) {
            said = lines.lines().toList();
        }
        return new Ended(
                process.onExit().join().exitValue(),
                String.join(
                        "\n",
                        said.stream().filter(line -> line.startsWith("REFUSED")).toList()));
    }

    private static boolean hasPython() {
        try {
            return new ProcessBuilder("python3", "--version")
                            .start()
                            .onExit()
                            .join()
                            .exitValue()
                    == 0;
        } catch (IOException e) {
            return false;
        }
    }
}
