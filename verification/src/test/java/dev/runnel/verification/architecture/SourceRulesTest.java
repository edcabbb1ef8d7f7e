package dev.runnel.verification.architecture;

import static org.assertj.core.api.Assertions.assertThat;

import dev.runnel.verification.House;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

class SourceRulesTest {
    private static final Set<String> TEXT = Set.of("java", "md", "xml", "csv", "txt", "properties", "jsh");

    @Test
    void everyFileIsInOrder() throws IOException {
        List<String> complaints = new ArrayList<>();
        int read = 0;
        for (Path file : House.files()) {
            String name = House.root().relativize(file).toString().replace('\\', '/');
            if (TEXT.contains(name.substring(name.lastIndexOf('.') + 1))) {
                complaints.addAll(SourceRules.complaints(name, Files.readString(file)));
                read++;
            }
        }
        assertThat(complaints).isEmpty();
        assertThat(read).isGreaterThan(20);
    }

    @Test
    void aTestThatNothingRunsIsFound() {
        assertThat(SourceRules.complaints("a/src/test/java/PipeChecks.java", "    @Test\n"))
                .singleElement()
                .asString()
                .contains("nothing runs it");
        assertThat(SourceRules.complaints("a/src/test/java/PipeTest.java", "    @Test\n"))
                .isEmpty();
    }

    @Test
    void workLeftUndoneIsFound() {
        assertThat(SourceRules.complaints("a/Pipe.java", "// TO" + "DO later\n"))
                .singleElement()
                .asString()
                .contains("unfinished");
        assertThat(SourceRules.complaints("a/Pipe.java", "// done\n")).isEmpty();
    }

    @Test
    void aPathOfOneMachineIsFound() {
        assertThat(SourceRules.complaints("a/notes.md", "see /ho" + "me/anna/pipe.csv\n"))
                .singleElement()
                .asString()
                .contains("somebody's machine");
        assertThat(SourceRules.complaints("a/notes.md", "docs/home/index.md\n")).isEmpty();
    }

    @Test
    void doublesThatAreEqualWithoutEqualHashesAreFound() {
        String fields = "    private final double area;\n    private final int count;\n";
        assertThat(SourceRules.complaints("a/Pipe.java", fields + "return count == that.count && area == that.area;\n"))
                .singleElement()
                .asString()
                .contains("area == that.area");
        assertThat(SourceRules.complaints("a/Pipe.java", fields + "return Double.compare(area, that.area) == 0;\n"))
                .isEmpty();
    }
}
